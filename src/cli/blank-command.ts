// `seamwright blank`: describes a blank.
import { describeBlank } from '../job/describe-blank.ts';
import { exitStatus } from '../job/report.ts';
import { givenBlank } from './blank-input.ts';
import type { BlankFlags } from './options.ts';
import { printFindings, printJson } from './output.ts';

export async function blankCommand(file: string | undefined, flags: BlankFlags): Promise<number> {
  const { blank, named } = await givenBlank(file, flags);
  const { report, lines, checks } = describeBlank(blank, named, flags.units);
  if (flags.json) printJson({ blank: report, checks });
  else process.stdout.write(`${lines.join('\n')}\n`);
  printFindings(checks);
  return exitStatus(checks);
}

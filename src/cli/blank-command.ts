// `seamwright blank`: describes a blank.
import { type Finding, Refused } from '../finding.ts';
import { describeBlank } from '../job/describe-blank.ts';
import { readVolume } from '../job/read-coats.ts';
import { exitStatus } from '../job/report.ts';
import type { JobCoat } from '../job/resolved-job.ts';
import { givenBlank } from './blank-input.ts';
import { FlagLengths } from './flag-lengths.ts';
import type { BlankFlags } from './options.ts';
import { printFindings, printJson } from './output.ts';

export interface DescribeFlags extends BlankFlags {
  readonly coat: readonly string[];
}

/** Coats by thickness, or by what is poured, such as `12ml`. */
function coatsOfFlags(flags: DescribeFlags): readonly JobCoat[] {
  const problems: Finding[] = [];
  const lengths = new FlagLengths(flags.units);
  const coats = flags.coat.flatMap((text, i): JobCoat[] => {
    const name = `coat ${i + 1}`;
    if (!/l$/i.test(text.trim()))
      return [{ name, thickness: lengths.read('--coat', text) ?? 0, over: false }];
    const place = {
      file: '',
      key: '--coat',
      units: flags.units,
      report: (found: Finding) => void problems.push(found),
    };
    const volume = readVolume(text, place);
    return volume === undefined ? [] : [{ name, volume, over: false }];
  });
  lengths.finish();
  if (problems.length > 0) throw new Refused(problems);
  return coats;
}

export async function blankCommand(file: string | undefined, flags: DescribeFlags): Promise<number> {
  const { blank, named } = await givenBlank(file, flags);
  const { report, coats, lines, checks } = describeBlank(blank, named, flags.units, coatsOfFlags(flags));
  if (flags.json) printJson({ blank: report, ...(coats.length > 0 ? { coats } : {}), checks });
  else process.stdout.write(`${lines.join('\n')}\n`);
  printFindings(checks);
  return exitStatus(checks);
}

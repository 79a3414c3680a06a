// `seamwright blank`: describes a blank.
import { flatBand } from '../blank/flat-band.ts';
import { fitStraightWall } from '../blank/straight-wall.ts';
import { wallFindings } from '../blank/wall-findings.ts';
import { describeBlank } from '../job/describe-blank.ts';
import { blankReport, exitStatus } from '../job/report.ts';
import { type BlankFlags, givenBlank } from './blank-input.ts';
import { printFindings, printJson } from './output.ts';

export async function blankCommand(file: string | undefined, flags: BlankFlags): Promise<number> {
  const { blank, named } = await givenBlank(file, flags);
  const wall = fitStraightWall(blank);
  const flat = flatBand(wall, blank);
  const checks = wallFindings(blank, wall).map((finding) => ({
    ...finding,
    where: { file: named, ...finding.where },
  }));
  if (flags.json) printJson({ blank: blankReport(wall, flat), checks });
  else process.stdout.write(`${describeBlank(blank, wall, flat, flags.units).join('\n')}\n`);
  printFindings(checks);
  return exitStatus(checks);
}

// `seamwright blank`: describes a blank.
import { describeBlank } from '../job/blank/describe-blank.ts';
import { pictureFiles } from '../job/pictures/picture-files.ts';
import { profileOfBlankAlone } from '../job/pictures/profile-picture.ts';
import type { FileReport } from '../job/report.ts';
import type { Blank } from '../job/typed/read-blank.ts';
import { givenBlank } from './blank-input.ts';
import { coatsOfFlags } from './coat-flags.ts';
import { delivered } from './delivery.ts';
import { type FilmFlags, givesOfFlags } from './film-flags.ts';
import { FlagLengths } from './flag-lengths.ts';
import type { BlankFlags } from './options.ts';
import { exitStatus, printFindings, printJson } from './output.ts';
import { loadTools } from './tools.ts';
import { told, unitsTold } from './units-told.ts';

export interface DescribeFlags extends BlankFlags, FilmFlags {
  readonly coat: readonly string[];
}

/** The picture of the profile, as profile.svg and profile.png. */
async function writeProfile(
  blank: Blank,
  units: DescribeFlags['units'],
  folder: string,
): Promise<readonly FileReport[]> {
  const { words, ...tools } = await loadTools();
  const files = pictureFiles('profile', profileOfBlankAlone(blank, units, words), tools);
  await delivered(folder, async (delivery) => {
    for (const { file, content } of files) await delivery.stage(file, content);
  });
  return files.map(({ file, role }) => ({ file, role }));
}

const writtenTo = (folder: string | undefined, files: readonly FileReport[]): readonly string[] =>
  folder === undefined ? [] : [`written to ${folder}: ${files.map(({ file }) => file).join(', ')}`];

export async function blankCommand(file: string | undefined, flags: DescribeFlags): Promise<number> {
  const { blank, typedIn } = await givenBlank(file, flags);
  const lengths = new FlagLengths(flags.units);
  const asked = coatsOfFlags(flags.coat, lengths);
  const gives = givesOfFlags(flags, lengths);
  lengths.finish();
  const { report, coats, lines, checks } = describeBlank(blank, typedIn, unitsTold(), asked, gives);
  const files = flags.out === undefined ? [] : await writeProfile(blank, unitsTold(), flags.out);
  if (flags.json)
    printJson({
      blank: report,
      ...(coats.length > 0 ? { coats } : {}),
      checks,
      ...(files.length > 0 ? { files } : {}),
    });
  else process.stdout.write(`${[...lines.map(told), ...writtenTo(flags.out, files)].join('\n')}\n`);
  printFindings(checks);
  return exitStatus(checks);
}

// `seamwright repeat`: what a tile repeats by, and the ways it can close on a blank.
import { basename } from 'node:path';
import { jsonContent } from '../job/deliverables.ts';
import { pictureFiles } from '../job/pictures/picture-files.ts';
import { joinsPicture } from '../job/repeat/joins-picture.ts';
import { describeRepeat, type RepeatDescription } from '../job/repeat/repeat.ts';
import { type WaysPictureInput, waysDrawn, waysPicture } from '../job/repeat/ways-picture.ts';
import { isJob, readBlank } from '../job/typed/read-blank.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { standardArtwork, standardJob } from '../job/typed/resolved-job.ts';
import { unitsOf } from '../job/typed/schema-values.ts';
import { leastSize } from '../lengths/length.ts';
import { bandOf } from './band-flag.ts';
import { coloursOf, groundOf, traceOf } from './colours-flag.ts';
import { delivered } from './delivery.ts';
import { readBytes, readText } from './files.ts';
import { FlagLengths } from './flag-lengths.ts';
import { type FontGiven, fontsGiven } from './font-flag.ts';
import { givenJob } from './job-input.ts';
import type { CommonOptions } from './options.ts';
import { exitStatus, printFindings, printJson } from './output.ts';
import { loadTools } from './tools.ts';
import { tellIn, unitsTold } from './units-told.ts';

export interface RepeatFlags extends CommonOptions {
  readonly band?: string;
  readonly artAcross?: string;
  readonly colours?: string;
  readonly ground?: readonly string[];
  readonly font?: readonly string[];
}

/** What of a job, or of a blank alone, the pattern has to go around; `own`: fonts that the job names. */
async function groundFile(
  file: string,
): Promise<
  Pick<WaysPictureInput, 'job' | 'jobFile' | 'blank' | 'blankFile'> & { own: readonly FontGiven[] }
> {
  const typed = parseJson(await readText(file, file), file);
  tellIn(unitsOf(typed, 'mm'));
  if (!isJob(typed)) {
    const blank = readBlank(typed, file);
    const job = {
      ...standardJob,
      name: blank.name,
      units: 'mm',
      blank: { kind: 'here', blank },
      artwork: standardArtwork,
    } as const;
    return { job, jobFile: undefined, blank, blankFile: file, own: [] };
  }
  const { job, blank, blankFile, beside } = await givenJob(typed, file);
  const artwork = job.artwork ?? standardArtwork;
  const own = await Promise.all(
    (artwork.fonts ?? []).map(async (font, i) => {
      const bytes = await readBytes(beside(font), font, { file, key: `artwork.fonts[${i}]` });
      return { file: font, bytes };
    }),
  );
  return { job: { ...job, artwork }, jobFile: file, blank, blankFile, own };
}

/** Width of the pictures, px. */
const pictureWidth = 2000;

/** The ways and joins as repeat.json, with pictures of them; gives the line that says so. */
async function writeFindings(
  input: WaysPictureInput,
  described: RepeatDescription,
  folder: string,
): Promise<string> {
  const drawn = (stem: string, svg: string) => pictureFiles(stem, svg, input.tools, pictureWidth);
  const ways = described.ways.length > 0 ? drawn('ways', waysPicture(input, described)) : [];
  const report = { file: 'repeat.json', role: 'report', content: jsonContent(described.report) };
  const joins = drawn('joins', joinsPicture(described, input.art.file, input.tools.words, input.units));
  const files = [report, ...joins, ...ways];
  await delivered(folder, async (delivery) => {
    for (const { file, content } of files) await delivery.stage(file, content);
  });
  const count = waysDrawn(input, described);
  const some =
    count < described.ways.length
      ? `; the art is fine: the first ${count} of ${described.ways.length} ways are drawn`
      : '';
  return `written to ${folder}: ${files.map(({ file }) => file).join(', ')}${some}`;
}

/** Told on standard error, for ways of fine artwork take seconds each. */
const tellWay = (number: number, total: number): void => {
  process.stderr.write(`repeat: drawing way ${number} of ${total}\n`);
};

export async function repeatCommand(tile: string, file: string, flags: RepeatFlags): Promise<number> {
  const lengths = new FlagLengths(flags.units);
  const band = bandOf(flags.band, lengths);
  const across = lengths.read('--art-across', flags.artAcross, 'positive', { least: leastSize });
  const colours = coloursOf(flags.colours, lengths);
  const ground = groundOf(flags.ground, lengths);
  lengths.finish();
  const content = await readBytes(tile, tile);
  const { job, own, ...wall } = await groundFile(file);
  const tools = await loadTools();
  const input = {
    ...wall,
    job: band ? { ...job, band } : job,
    art: { content, file: basename(tile), ...traceOf({ across, colours, ground }) },
    units: unitsTold(),
    fonts: await fontsGiven(flags.font, tools, own),
    normalise: tools.normalise,
    tools,
    progress: tellWay,
    next: (says: string) => process.stderr.write(`repeat: ${says}\n`),
  };
  const described = describeRepeat(input);
  const { report, lines } = described;
  const written = flags.out === undefined ? [] : [await writeFindings(input, described, flags.out)];
  if (flags.json) printJson(report);
  else process.stdout.write(`${[...lines, ...written].join('\n')}\n`);
  printFindings(report.checks);
  return exitStatus(report.checks);
}

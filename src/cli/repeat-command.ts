// `seamwright repeat`: what a tile repeats by, and the ways it can close on a blank.
import { basename } from 'node:path';
import { isJob, readBlank } from '../job/read-blank.ts';
import { parseJson } from '../job/read-json.ts';
import { describeRepeat, type RepeatInput } from '../job/repeat.ts';
import { standardArtwork, standardJob } from '../job/resolved-job.ts';
import { bandOf } from './band-flag.ts';
import { coloursOf, traceOf } from './colours-flag.ts';
import { delivered } from './delivery.ts';
import { readBytes, readText } from './files.ts';
import { FlagLengths } from './flag-lengths.ts';
import { givenJob } from './job-input.ts';
import type { CommonOptions } from './options.ts';
import { exitStatus, printFindings, printJson } from './output.ts';
import { loadTools } from './tools.ts';

export interface RepeatFlags extends CommonOptions {
  readonly band?: string;
  readonly artAcross?: string;
  readonly colours?: string;
}

/** What of a job, or of a blank alone, the pattern has to go around. */
async function groundFile(
  file: string,
): Promise<Pick<RepeatInput, 'job' | 'jobFile' | 'blank' | 'blankFile'>> {
  const typed = parseJson(await readText(file, file), file);
  if (!isJob(typed)) {
    const blank = readBlank(typed, file);
    const job = { ...standardJob, artwork: standardArtwork };
    return { job, jobFile: undefined, blank, blankFile: file };
  }
  const { job, blank, blankFile } = await givenJob(typed, file);
  return { job: { ...job, artwork: job.artwork ?? standardArtwork }, jobFile: file, blank, blankFile };
}

/** The ways and joins as repeat.json; gives the line that says so. */
async function writeFindings(report: object, folder: string): Promise<string> {
  await delivered(folder, async (delivery) => {
    await delivery.stage('repeat.json', `${JSON.stringify(report, undefined, 2)}\n`);
  });
  return `written to ${folder}: repeat.json`;
}

export async function repeatCommand(tile: string, file: string, flags: RepeatFlags): Promise<number> {
  const lengths = new FlagLengths(flags.units);
  const band = bandOf(flags.band, lengths);
  const across = lengths.read('--art-across', flags.artAcross, 'positive');
  const colours = coloursOf(flags.colours, lengths);
  lengths.finish();
  const content = await readBytes(tile, tile);
  const { job, ...ground } = await groundFile(file);
  const { normalise } = await loadTools();
  const { report, lines } = describeRepeat({
    ...ground,
    job: band ? { ...job, band } : job,
    art: { content, file: basename(tile), ...traceOf({ across, colours }) },
    units: flags.units,
    normalise,
  });
  const written = flags.out === undefined ? [] : [await writeFindings(report, flags.out)];
  if (flags.json) printJson(report);
  else process.stdout.write(`${[...lines, ...written].join('\n')}\n`);
  printFindings(report.checks);
  return exitStatus(report.checks);
}

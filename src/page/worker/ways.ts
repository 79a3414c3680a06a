// How the artwork repeats, kept while it is asked about: each way's picture needs the same study.

import type { RepeatDescription } from '../../job/repeat/repeat.ts';
import type { WaysPictureInput } from '../../job/repeat/ways-picture.ts';
import { bytesOf, type FileBytes } from '../../job/typed/named-files.ts';
import { standardArtwork } from '../../job/typed/resolved-job.ts';
import type { BenchAsked } from '../model/messages.ts';
import { loadTools } from './engine.ts';
import { givenJob } from './given.ts';
import { recallOf } from './remembering.ts';

interface Studied {
  readonly input: WaysPictureInput;
  readonly described: RepeatDescription;
}

let last: { readonly of: string; readonly is: Studied } | undefined;

/** @throws Refused where job, vessel or artwork can't be used. */
export async function studied(bench: BenchAsked, files: FileBytes): Promise<Studied> {
  // Files are named by marks, which differ where bytes do.
  const of = JSON.stringify(bench);
  if (last?.of === of) return last.is;
  const { describeRepeat, fontsOf } = await import('./artwork.ts');
  const { job, ...ground } = givenJob(bench, files);
  const tools = await loadTools();
  const artwork = job.artwork ?? standardArtwork;
  const art = { content: bytesOf(files, artwork.file), file: artwork.file };
  const { normalise } = tools;
  const over = (artwork.over ?? []).map((one) => ({ ...one, content: bytesOf(files, one.file) }));
  const fonts = fontsOf({ job, files, tools });
  const shown = { art, over, fonts, units: bench.units };
  const recall = recallOf(bench);
  const input = { ...ground, ...shown, job: { ...job, artwork }, normalise, tools, recall };
  const is = { input, described: describeRepeat(input) };
  last = { of, is };
  return is;
}

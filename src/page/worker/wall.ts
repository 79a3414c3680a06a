// The vessel alone, by its readings: its wall drawn, and what is known of it.
import { describeBlank } from '../../job/blank/describe-blank.ts';
import { type PictureWindow, shownProfile } from '../../job/pictures/profile-picture.ts';
import type { JobTools } from '../../job/tools.ts';
import type { AnswerOf, BenchAsked } from '../model/messages.ts';
import { givenBlank } from './given.ts';

/** @throws Refused with every problem of the blank, each with its key. */
export function wallOf(
  bench: Omit<BenchAsked, 'files'>,
  words: JobTools['words'],
  window?: PictureWindow,
): AnswerOf<'vessel'> {
  const blank = givenBlank(bench);
  const { report, lines, checks } = describeBlank(blank, bench.blankFile, bench.units);
  const profile = shownProfile(blank, bench.units, words, window);
  return { profile, lines, checks, length: report.along, flatBands: report.flatBands };
}

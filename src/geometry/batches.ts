// Much work in parts: what lies apart is looked at a batch at a time, so that figures of all of it are never held at once.

import type { Box } from './box.ts';
import type { Contour } from './contour.ts';
import { segmentCount } from './kept-contour.ts';
import { boxesSideBySide } from './rings-apart.ts';

/** How many chords contours come to, about: their weight in a batch. */
export const chordsAbout = (contours: readonly Contour[] = []): number =>
  10 * contours.reduce((sum, contour) => sum + segmentCount(contour), 0);

/** Enough to a batch that beginning one costs nothing, and few enough that it stays in a processor's cache. */
const enough = 20_000;

/**
 * Numbers of boxes in batches, each lowest first: no box of one batch meets one of another. Batches go up the sheet, each of sets of
 * boxes that weigh `enough` together, or of one set that weighs more.
 */
export function batchesApart(
  boxes: readonly Box[],
  weightOf: (number: number) => number,
): readonly (readonly number[])[] {
  const total = boxes.reduce((sum, _, i) => sum + weightOf(i), 0);
  if (total <= enough) return boxes.length === 0 ? [] : [boxes.map((_, i) => i)];
  return inBatches(boxesSideBySide(boxes), boxes, weightOf);
}

/** The same without boxes that meet no other, where `isClear` says that there is nothing to look at in one. */
export const batchesBut = (
  isClear: (number: number) => boolean,
  boxes: readonly Box[],
  weightOf: (number: number) => number,
): readonly (readonly number[])[] =>
  inBatches(
    boxesSideBySide(boxes).filter((set) => set.length > 1 || !set.every(isClear)),
    boxes,
    weightOf,
  );

function inBatches(
  apart: readonly (readonly number[])[],
  boxes: readonly Box[],
  weightOf: (number: number) => number,
): readonly (readonly number[])[] {
  const sets = apart.map((members) => ({
    members,
    low: members.reduce((low, i) => Math.min(low, boxes[i]?.minY ?? low), Infinity),
  }));
  const batches: number[][] = [];
  let [batch, weight]: [number[], number] = [[], 0];
  for (const { members } of sets.sort((a, b) => a.low - b.low)) {
    for (const i of members) {
      batch.push(i);
      weight += weightOf(i);
    }
    if (weight < enough) continue;
    batches.push(batch);
    [batch, weight] = [[], 0];
  }
  if (batch.length > 0) batches.push(batch);
  return batches.map((members) => members.sort((a, b) => a - b));
}

// Lines that are there twice, wholly or in part, and edges of two layers that lie on one another.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import { between, type Point } from '../geometry/point.ts';
import { precision } from '../geometry/tolerance.ts';
import { eachNearPair, type LineChords, lineChords } from './line-chords.ts';

/** One contour that runs along another. */
export interface DoubledLine {
  /** The two lines, the earlier first. */
  readonly lines: readonly [number, number];
  /** A place on both. */
  readonly at: Point;
  /** How far they run together, mm. */
  readonly length: number;
}

/** Lines that run together for less than this touch, mm. Common practice, no source. */
const leastTogether = 0.5;

/** Longest chord, mm: how finely places are told. */
const longest = 1;

/** What of chord k the other covers. */
interface Cover {
  length: number;
  readonly at: Point;
}

/**
 * Contours that run along others, each told once, with the one it runs along farthest. `isPair`: whether two lines can
 * double each other, as those of one layer do.
 */
export function doubledLines(
  lines: readonly DrawnLine[],
  tolerance: number,
  isPair: (a: DrawnLine, b: DrawnLine) => boolean,
): DoubledLine[] {
  const chords = lineChords(lines, { tolerance, longest });
  const together = new Map<string, Cover>();
  eachNearPair(chords, longest, precision, (k, other) => {
    const [a, b] = [lineOf(chords, lines, k), lineOf(chords, lines, other)];
    if (!a || !b || !isPair(a, b)) return;
    const shared = sharedStretch(chords, k, other);
    if (!shared) return;
    const [one, two] = [chords.contour[k] ?? 0, chords.contour[other] ?? 0].sort((m, n) => m - n);
    const key = `${two} ${one}`;
    const known = together.get(key);
    if (known) known.length += shared.length;
    else together.set(key, { length: shared.length, at: shared.at });
  });
  return farthest(chords, together);
}

const lineOf = (chords: LineChords, lines: readonly DrawnLine[], k: number): DrawnLine | undefined =>
  lines[chords.contours[chords.contour[k] ?? 0]?.line ?? -1];

/** The stretch of chord k that another lies on, within the precision; undefined where they only touch. */
function sharedStretch(
  { x, y, toX, toY }: LineChords,
  k: number,
  other: number,
): { readonly length: number; readonly at: Point } | undefined {
  const from = { x: x[k] ?? 0, y: y[k] ?? 0 };
  const [dx, dy] = [(toX[k] ?? 0) - from.x, (toY[k] ?? 0) - from.y];
  const length = Math.hypot(dx, dy);
  const along = (px: number, py: number) => ((px - from.x) * dx + (py - from.y) * dy) / (length * length);
  const beside = (px: number, py: number) => ((px - from.x) * dy - (py - from.y) * dx) / length;
  const [ax, ay, bx, by] = [x[other] ?? 0, y[other] ?? 0, toX[other] ?? 0, toY[other] ?? 0];
  const [ta, tb] = [along(ax, ay), along(bx, by)];
  const [start, end] = [Math.max(0, Math.min(ta, tb)), Math.min(1, Math.max(ta, tb))];
  if (!((end - start) * length > precision)) return undefined;
  const [da, db] = [beside(ax, ay), beside(bx, by)];
  const off = (t: number) => da + ((db - da) * (t - ta)) / (tb - ta);
  if (Math.abs(off(start)) > precision || Math.abs(off(end)) > precision) return undefined;
  const to = { x: toX[k] ?? 0, y: toY[k] ?? 0 };
  return { length: (end - start) * length, at: between(from, to, (start + end) / 2) };
}

/** For each contour the earlier one it runs along farthest, if far enough to be meant. */
function farthest({ contours }: LineChords, together: ReadonlyMap<string, Cover>): DoubledLine[] {
  const best = new Map<number, DoubledLine>();
  for (const [key, { length, at }] of together) {
    const [later = 0, earlier = 0] = key.split(' ').map(Number);
    const shorter = Math.min(contours[later]?.length ?? 0, contours[earlier]?.length ?? 0);
    if (length < Math.min(leastTogether, 0.9 * shorter) || length <= (best.get(later)?.length ?? 0)) continue;
    best.set(later, { lines: [contours[earlier]?.line ?? 0, contours[later]?.line ?? 0], at, length });
  }
  return [...best.values()];
}

// Lines that are there twice, wholly or in part, and edges of two layers that lie on one another.
import type { DrawnLine } from '../../drawing/drawn-line.ts';
import { batchesBut, chordsAbout } from '../../geometry/batches.ts';
import { grow, hullBox } from '../../geometry/box.ts';
import { between, norm, type Point } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import { eachNearPair, type LineChords, lineChords } from './line-chords.ts';
import { staysApart } from './plain-line.ts';

/** One contour that runs along another. */
export interface DoubledLine {
  /** The two lines, the earlier first. */
  readonly lines: readonly [number, number];
  /** A place on both. */
  readonly at: Point;
  /** How far they run together, mm. */
  readonly length: number;
}

/** Rounder than this nothing drawn is, mm: two such circles that touch run together no farther than lines that only touch. */
const roundest = 100;

/** Lines that run together for less than this touch, mm: circles of that radius stay so near each other for as long. */
const leastTogether = (apart: number): number => 2 * Math.sqrt(apart * roundest);

/** Longest chord, mm: how finely places are told. */
const longest = 1;

/** What of chord k the other covers. */
interface Cover {
  length: number;
  readonly at: Point;
}

export interface DoublingOptions {
  /** Sagitta of the chords that stand in for curves, mm. */
  readonly tolerance: number;
  /** Lines no farther apart than this are one, mm; the precision if left out. */
  readonly apart?: number;
  /** Whether two lines can double each other, as those of one layer do. */
  readonly isPair: (a: DrawnLine, b: DrawnLine) => boolean;
}

/** Contours that run along others, each told once, with the one it runs along farthest. */
export function doubledLines(lines: readonly DrawnLine[], options: DoublingOptions): DoubledLine[] {
  const { apart = precision } = options;
  const boxes = lines.map(({ contours }) => grow(hullBox(contours), apart));
  const isAlone = (i: number) => standsAlone(lines[i], options);
  return batchesBut(isAlone, boxes, (i) => chordsAbout(lines[i]?.contours))
    .flatMap((members) => {
      const some = members.flatMap((i) => lines[i] ?? []);
      return doubledAmong(some, options).map(({ lines: [one, other], ...rest }): DoubledLine => {
        return { ...rest, lines: [members[one] ?? 0, members[other] ?? 0] };
      });
    })
    .sort((a, b) => a.lines[0] - b.lines[0]);
}

/** Whether a line that comes near no other surely does not run along itself. */
function standsAlone(
  line: DrawnLine | undefined,
  { tolerance, apart = precision }: DoublingOptions,
): boolean {
  const [contour, ...others] = line?.contours ?? [];
  return contour !== undefined && others.length === 0 && staysApart(contour, apart, { tolerance, longest });
}

function doubledAmong(
  lines: readonly DrawnLine[],
  { tolerance, apart = precision, isPair }: DoublingOptions,
): DoubledLine[] {
  const chords = lineChords(lines, { tolerance, longest });
  // By the numbers of both contours in one: of a shape that is there hundreds of times, texts for keys took half of the time.
  const together = new Map<number, Cover>();
  eachNearPair(chords, longest, apart, (k, other) => {
    const a = lineOf(chords, lines, k);
    const b = lineOf(chords, lines, other);
    if (!a || !b || !isPair(a, b)) return;
    const shared = sharedStretch(chords, k, other, apart);
    if (!shared) return;
    const [own, others] = [chords.contour[k] ?? 0, chords.contour[other] ?? 0];
    const key = Math.max(own, others) * chords.contours.length + Math.min(own, others);
    const known = together.get(key);
    if (known) known.length += shared.length;
    else together.set(key, { length: shared.length, at: shared.at });
  });
  return farthest(chords, together, leastTogether(apart));
}

const lineOf = (chords: LineChords, lines: readonly DrawnLine[], k: number): DrawnLine | undefined =>
  lines[chords.contours[chords.contour[k] ?? 0]?.line ?? -1];

/** The stretch of chord k that another lies on, within so much; undefined where they only touch. */
function sharedStretch(
  { x, y, toX, toY }: LineChords,
  k: number,
  other: number,
  apart: number,
): { readonly length: number; readonly at: Point } | undefined {
  const fromX = x[k] ?? 0;
  const fromY = y[k] ?? 0;
  const dx = (toX[k] ?? 0) - fromX;
  const dy = (toY[k] ?? 0) - fromY;
  const length = norm(dx, dy);
  const ax = (x[other] ?? 0) - fromX;
  const ay = (y[other] ?? 0) - fromY;
  const bx = (toX[other] ?? 0) - fromX;
  const by = (toY[other] ?? 0) - fromY;
  const ta = (ax * dx + ay * dy) / (length * length);
  const tb = (bx * dx + by * dy) / (length * length);
  const start = Math.max(0, Math.min(ta, tb));
  const end = Math.min(1, Math.max(ta, tb));
  if (!((end - start) * length > precision)) return undefined;
  const da = (ax * dy - ay * dx) / length;
  const db = (bx * dy - by * dx) / length;
  const off = (t: number) => da + ((db - da) * (t - ta)) / (tb - ta);
  if (Math.abs(off(start)) > apart || Math.abs(off(end)) > apart) return undefined;
  const from = { x: fromX, y: fromY };
  const to = { x: toX[k] ?? 0, y: toY[k] ?? 0 };
  return { length: (end - start) * length, at: between(from, to, (start + end) / 2) };
}

/** For each contour the earlier one it runs along farthest, if far enough to be meant. */
function farthest(
  { contours }: LineChords,
  together: ReadonlyMap<number, Cover>,
  least: number,
): DoubledLine[] {
  const best = new Map<number, DoubledLine>();
  for (const [key, { length, at }] of together) {
    const [later, earlier] = [Math.floor(key / contours.length), key % contours.length];
    const shorter = Math.min(contours[later]?.length ?? 0, contours[earlier]?.length ?? 0);
    if (length < Math.min(least, 0.9 * shorter) || length <= (best.get(later)?.length ?? 0)) continue;
    best.set(later, { lines: [contours[earlier]?.line ?? 0, contours[later]?.line ?? 0], at, length });
  }
  return [...best.values()];
}

// What is wrong with lines as they were drawn: open, crossing themselves, with nodes closer than a blade can step.
import type { DrawnLine } from '../../drawing/drawn-line.ts';
import { batchesApart, chordsAbout } from '../../geometry/batches.ts';
import { hullBox } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import type { Contour } from '../../geometry/contour.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { eachNearPair, type LineChords, lineChords } from './line-chords.ts';
import { isPlain } from './plain-line.ts';

export interface LineFault {
  /** The line it is in, as an index. */
  readonly line: number;
  readonly at: Point;
  /** Open: mm between its two ends. Crossing: how often. Close nodes: mm between the closest two. */
  readonly size: number;
}

export interface OpenLine extends LineFault {
  /** mm from one of its ends to the nearest end of another open line of its colour; undefined where there is none near. */
  readonly nearest: number | undefined;
}

interface Ends {
  readonly line: number;
  readonly colour: string;
  readonly from: Point;
  readonly to: Point;
}

/** The ends of a contour that stays open; undefined where it is closed, or ends where it began. */
function endsOf({ closed, segments }: Contour): { readonly from: Point; readonly to: Point } | undefined {
  const from = segments[0]?.from;
  const to = segments.at(-1)?.to;
  return closed || !from || !to || distance(from, to) <= joinTolerance ? undefined : { from, to };
}

/** Ends farther apart than this belong to different lines for every purpose, mm. */
const farthestEnd = 10;

/** Contours whose end is not where they began. */
export function openLines(lines: readonly DrawnLine[]): OpenLine[] {
  const open = lines.flatMap(({ contours, colour }, line): Ends[] =>
    contours.flatMap((contour) => {
      const ends = endsOf(contour);
      return ends ? [{ line, colour, ...ends }] : [];
    }),
  );
  const finders = new Map(
    [...new Set(open.map(({ colour }) => colour))].map((colour) => [
      colour,
      new EndFinder(open.filter((one) => one.colour === colour)),
    ]),
  );
  return open.map((one) => ({
    line: one.line,
    at: one.to,
    size: distance(one.from, one.to),
    nearest: finders.get(one.colour)?.nearest(one),
  }));
}

/** The ends of open lines, indexed. */
class EndFinder {
  readonly #ends: readonly { readonly of: Ends; readonly at: Point }[];
  readonly #index: BoxIndex;

  constructor(open: readonly Ends[]) {
    this.#ends = open.flatMap((of) => [
      { of, at: of.from },
      { of, at: of.to },
    ]);
    this.#index = new BoxIndex(this.#ends.length, (add) => {
      for (const { at } of this.#ends) add(at.x, at.y, at.x, at.y);
    });
  }

  /** mm from an end of a line to the nearest of another's; undefined where there is none near. */
  nearest(one: Ends): number | undefined {
    const gaps = [one.from, one.to].flatMap((end) =>
      // Of three at least one is of another line.
      this.#index.nearest(end.x, end.y, 3).flatMap((n) => {
        const other = this.#ends[n];
        return other && other.of !== one ? [distance(other.at, end)] : [];
      }),
    );
    const gap = Math.min(...gaps);
    return gap <= farthestEnd ? gap : undefined;
  }
}

/** Longest chord for crossings, mm. */
const longest = 5;

/** Crossings nearer than this are one, or a touch that was counted from both sides, mm. */
const samePlace = 1e-6;

/** Contours that cross themselves, with how often, and where first. */
export function selfCrossings(drawn: readonly DrawnLine[], tolerance: number): LineFault[] {
  const lines = drawn.map((line) => ({
    ...line,
    contours: line.contours.filter((contour) => !isPlain(contour, { tolerance, longest })),
  }));
  return batchesApart(
    lines.map(({ contours }) => hullBox(contours)),
    (i) => chordsAbout(lines[i]?.contours),
  )
    .flatMap((members) => {
      const some = members.flatMap((i) => lines[i] ?? []);
      return crossingsAmong(some, tolerance).map((fault) => ({ ...fault, line: members[fault.line] ?? 0 }));
    })
    .sort((a, b) => a.line - b.line);
}

function crossingsAmong(lines: readonly DrawnLine[], tolerance: number): LineFault[] {
  const chords = lineChords(lines, { tolerance, longest });
  const found = new Map<number, Places>();
  eachNearPair(chords, longest, 0, (k, other) => {
    const contour = chords.contour[k] ?? 0;
    if (contour !== chords.contour[other] || areNeighbours(chords, k, other)) return;
    const at = crossing(chords, k, other);
    if (!at) return;
    const places = found.get(contour) ?? new Places();
    found.set(contour, places);
    places.turn(at);
  });
  return [...found].flatMap(([contour, { first: at, count }]) =>
    at ? [{ line: chords.contours[contour]?.line ?? 0, at, size: count }] : [],
  );
}

/** Places of which one met a second time is none: a touch, counted from both sides. */
class Places {
  readonly #cells = new Map<string, Point>();

  /** Take a place in, or take out the one that is there. */
  turn(at: Point): void {
    const [column, row] = [Math.round(at.x / samePlace), Math.round(at.y / samePlace)];
    for (const dx of [0, -1, 1])
      for (const dy of [0, -1, 1]) {
        const key = `${column + dx} ${row + dy}`;
        const place = this.#cells.get(key);
        if (place === undefined || distance(place, at) > samePlace) continue;
        this.#cells.delete(key);
        return;
      }
    this.#cells.set(`${column} ${row}`, at);
  }

  get first(): Point | undefined {
    return this.#cells.values().next().value;
  }

  get count(): number {
    return this.#cells.size;
  }
}

function areNeighbours({ index, contour, contours }: LineChords, k: number, other: number): boolean {
  const apart = Math.abs((index[k] ?? 0) - (index[other] ?? 0));
  if (apart === 1) return true;
  const line = contours[contour[k] ?? 0];
  return line?.closed === true && apart === line.count - 1;
}

/** How far a place lies to the left of the line from one to another, times their distance. */
const leftOf = (px: number, py: number, qx: number, qy: number, x: number, y: number): number =>
  (qx - px) * (y - py) - (qy - py) * (x - px);

/** Where two chords cross. A place on a chord's line counts to its left, so that a crossing at a node counts once. */
function crossing({ x, y, toX, toY }: LineChords, k: number, other: number): Point | undefined {
  const ax = x[k] ?? 0;
  const ay = y[k] ?? 0;
  const bx = toX[k] ?? 0;
  const by = toY[k] ?? 0;
  const cx = x[other] ?? 0;
  const cy = y[other] ?? 0;
  const dx = toX[other] ?? 0;
  const dy = toY[other] ?? 0;
  const c = leftOf(ax, ay, bx, by, cx, cy);
  const d = leftOf(ax, ay, bx, by, dx, dy);
  if (c >= 0 === d >= 0) return undefined;
  const a = leftOf(cx, cy, dx, dy, ax, ay);
  const b = leftOf(cx, cy, dx, dy, bx, by);
  if (a >= 0 === b >= 0) return undefined;
  const t = c / (c - d);
  return { x: cx + t * (dx - cx), y: cy + t * (dy - cy) };
}

/** Lines with nodes closer than `step`, mm: the closest two, and how many there are. */
export function closeNodes(
  lines: readonly DrawnLine[],
  step: number,
): readonly (LineFault & { readonly count: number })[] {
  return lines.flatMap(({ contours }, line) => {
    const close = contours
      .flatMap(({ segments }) => segments)
      .map(({ from, to }) => ({ at: from, size: distance(from, to) }))
      .filter(({ size }) => size > 0 && size < step);
    const [first, ...others] = close;
    if (!first) return [];
    const closest = others.reduce((a, b) => (b.size < a.size ? b : a), first);
    return [{ line, ...closest, count: close.length }];
  });
}

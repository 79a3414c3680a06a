// Lines of one level through a grid of samples, by linear interpolation between them.
import type { Point } from './point.ts';

/** Samples in rows, 0 to 255, each in the middle of its unit square; x to the right, y down. */
export interface SampleGrid {
  readonly width: number;
  readonly height: number;
  readonly values: Uint8Array;
}

/** Half of the range: a square half covered. */
const level = 127.5;

/** Corners of squares in rows and columns: the sample at each, its number, and where it lies. */
interface Corners {
  readonly columns: number;
  readonly rows: number;
  readonly sampleAt: (i: number, j: number) => number;
  readonly numberOf: (i: number, j: number) => number;
  readonly placeOf: (i: number, j: number) => Point;
}

/**
 * The closed lines around all that lies above half, with it on one side throughout. The grid's own edge closes what
 * reaches it. Source: marching squares; where two corners above lie across from two below, those above are kept apart.
 */
export function levelLines({ width, height, values }: SampleGrid): Point[][] {
  const placeIn = (i: number, most: number): number => Math.min(most, Math.max(0, i - 1.5));
  // Around the samples: their like at the very edge, and nothing right behind it.
  return linesThrough({
    columns: width + 4,
    rows: height + 4,
    sampleAt: (i, j) => {
      if (i === 0 || j === 0 || i === width + 3 || j === height + 3) return 0;
      const [x, y] = [Math.min(width - 1, Math.max(0, i - 2)), Math.min(height - 1, Math.max(0, j - 2))];
      return values[y * width + x] ?? 0;
    },
    numberOf: (i, j) => j * (width + 4) + i,
    placeOf: (i, j) => ({ x: placeIn(i, width), y: placeIn(j, height) }),
  });
}

/** A line of a grid that goes on in its own copies, from its first point on; `by`: how far on, in whole grids, it begins again. */
export interface WrappedLine {
  readonly points: readonly Point[];
  readonly by: { readonly i: number; readonly j: number };
}

/**
 * The same of a grid whose copies lie all around it: each line once, walked on across the grid's edges. One that comes back
 * to where it began has no `by`; any other goes on for ever. Needs at least four samples each way.
 */
export function wrappedLevelLines({ width, height, values }: SampleGrid): WrappedLine[] {
  const numberOf = (i: number, j: number) => (j % height) * width + (i % width);
  const lines = linesThrough({
    columns: width + 1,
    rows: height + 1,
    sampleAt: (i, j) => values[numberOf(i, j)] ?? 0,
    numberOf,
    placeOf: (i, j) => ({ x: i + 0.5, y: j + 0.5 }),
  });
  return lines.map((places) => {
    const [first = { x: 0, y: 0 }] = places;
    let at = first;
    const points = places.map((place) => {
      at = nearestCopy(place, at, width, height);
      return at;
    });
    const end = nearestCopy(first, at, width, height);
    return {
      points,
      by: { i: Math.round((end.x - first.x) / width), j: Math.round((end.y - first.y) / height) },
    };
  });
}

/** The copy of a place that lies nearest to another. */
const nearestCopy = (place: Point, to: Point, width: number, height: number): Point => ({
  x: place.x + width * Math.round((to.x - place.x) / width),
  y: place.y + height * Math.round((to.y - place.y) / height),
});

function linesThrough({ columns, rows, sampleAt, numberOf, placeOf }: Corners): Point[][] {
  /** Each crossing of a side of a square, by that side, and the side that the line goes on to. */
  const next = new Map<number, number>();
  const places = new Map<number, Point>();
  // Sides are numbered two to a corner: the one to its right, then the one below it.
  const above = (i: number, j: number): number => 2 * numberOf(i, j);
  const left = (i: number, j: number): number => above(i, j) + 1;
  const cross = (side: number, i: number, j: number, i2: number, j2: number) => {
    const [from, to] = [sampleAt(i, j), sampleAt(i2, j2)];
    const t = (level - from) / (to - from);
    const [p, q] = [placeOf(i, j), placeOf(i2, j2)];
    places.set(side, { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) });
  };
  for (let j = 0; j < rows - 1; j++) {
    let [a, d] = [sampleAt(0, j) > level, sampleAt(0, j + 1) > level];
    for (let i = 0; i < columns - 1; i++) {
      const [b, c] = [sampleAt(i + 1, j) > level, sampleAt(i + 1, j + 1) > level];
      if (a !== b || b !== c || c !== d) {
        const [top, right, bottom, leftSide] = [above(i, j), left(i + 1, j), above(i, j + 1), left(i, j)];
        link(next, [a, b, c, d], [top, right, bottom, leftSide]);
        if (a !== b) cross(top, i, j, i + 1, j);
        if (a !== d) cross(leftSide, i, j, i, j + 1);
      }
      [a, d] = [b, c];
    }
  }
  return chained(next, (side) => places.get(side) ?? { x: 0, y: 0 });
}

/**
 * The lines through one square. Going round its corners a, b, c, d, each stretch of corners above is cut off by one line,
 * from the side behind its last corner to the side before its first; so every side is left by one line at most.
 */
function link(next: Map<number, number>, corners: readonly boolean[], sides: readonly number[]): void {
  for (const [k, isAbove] of corners.entries()) {
    const after = (k + 1) % 4;
    if (!isAbove || corners[after]) continue;
    let first = k;
    while (corners[(first + 3) % 4] && (first + 3) % 4 !== k) first = (first + 3) % 4;
    const [from, to] = [sides[k], sides[(first + 3) % 4]];
    if (from !== undefined && to !== undefined) next.set(from, to);
  }
}

function chained(next: Map<number, number>, placeOf: (side: number) => Point): Point[][] {
  const lines: Point[][] = [];
  for (const start of next.keys()) {
    const line: Point[] = [];
    for (let side: number | undefined = start; side !== undefined; ) {
      const following = next.get(side);
      if (following === undefined) break;
      next.delete(side);
      line.push(placeOf(side));
      side = following;
    }
    if (line.length > 2) lines.push(line);
  }
  return lines;
}

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

/** Corners of squares in rows and columns: the sample at each, and where it lies. Numbered row by row, as far `across` and `down`, then over again. */
interface Corners {
  readonly columns: number;
  readonly rows: number;
  readonly across: number;
  readonly down: number;
  readonly sampleAt: (i: number, j: number) => number;
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
    across: width + 4,
    down: height + 4,
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
  const lines = linesThrough({
    columns: width + 1,
    rows: height + 1,
    across: width,
    down: height,
    sampleAt: (i, j) => values[(j % height) * width + (i % width)] ?? 0,
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

/** Sides of a square in the order of going round it: above it, to its right, below it, to its left. */
type Way = 0 | 1 | 2 | 3;

/**
 * The lines through one square, by which of its corners a, b, c, d lie above (1, 2, 4, 8): the side each comes in by, and the one it
 * leaves by. Going round, each stretch of corners above is cut off by one line, from the side behind its last corner to the side before
 * its first; so every side is left by one line at most.
 */
const linesIn: readonly (readonly (readonly [Way, Way])[])[] = Array.from({ length: 16 }, (_, above) => {
  const isAbove = (k: number) => ((above >> (k % 4)) & 1) === 1;
  return ([0, 1, 2, 3] as const).flatMap((k): (readonly [Way, Way])[] => {
    if (!isAbove(k) || isAbove(k + 1)) return [];
    let first: number = k;
    while (isAbove(first + 3) && (first + 3) % 4 !== k) first = (first + 3) % 4;
    return [[k, ((first + 3) % 4) as Way]];
  });
});

/**
 * Which side a line goes on to from each side that it crosses: of a large picture there are millions, so it is a byte a side. Sides are
 * numbered two to a corner: the one to its right, then the one below it.
 */
class Crossings {
  readonly #corners: Corners;
  /** One more than the way out of the square, and 4 more where that is not the square that begins at the side's own corner; 0 of sides not crossed. */
  readonly #ways: Uint8Array;
  /** Sides crossed, in the order they were found. */
  readonly #found: number[] = [];

  constructor(corners: Corners) {
    this.#corners = corners;
    this.#ways = new Uint8Array(2 * corners.across * corners.down);
  }

  /** A line through the square of a corner. */
  put(i: number, j: number, from: Way, to: Way): void {
    const side = this.#side(i, j, from);
    this.#ways[side] = 1 + to + (from === 1 || from === 2 ? 4 : 0);
    this.#found.push(side);
  }

  /** The lines from side to side, each from where it was found first. */
  lines(): Point[][] {
    const lines: Point[][] = [];
    for (const start of this.#found) {
      const line: Point[] = [];
      for (let side = start; ; ) {
        const way = this.#ways[side] ?? 0;
        if (way === 0) break;
        this.#ways[side] = 0;
        line.push(this.#placeOf(side));
        side = this.#after(side, way - 1);
      }
      if (line.length > 2) lines.push(line);
    }
    return lines;
  }

  #side(i: number, j: number, way: Way): number {
    const { across, down } = this.#corners;
    const [x, y] = [way === 1 ? i + 1 : i, way === 2 ? j + 1 : j];
    return 2 * ((y % down) * across + (x % across)) + (way & 1);
  }

  #after(side: number, way: number): number {
    const { across, down } = this.#corners;
    const corner = side >> 1;
    const back = way >> 2;
    const isUpright = side & 1;
    const i = (corner % across) - back * isUpright;
    const j = Math.floor(corner / across) - back * (1 - isUpright);
    return this.#side(i < 0 ? i + across : i, j < 0 ? j + down : j, (way & 3) as Way);
  }

  #placeOf(side: number): Point {
    const { across, sampleAt, placeOf } = this.#corners;
    const corner = side >> 1;
    const [i, j] = [corner % across, Math.floor(corner / across)];
    const [i2, j2] = side & 1 ? [i, j + 1] : [i + 1, j];
    const [from, to] = [sampleAt(i, j), sampleAt(i2, j2)];
    const t = (level - from) / (to - from);
    const [p, q] = [placeOf(i, j), placeOf(i2, j2)];
    return { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
  }
}

function linesThrough(corners: Corners): Point[][] {
  const { columns, rows, sampleAt } = corners;
  const crossings = new Crossings(corners);
  for (let j = 0; j < rows - 1; j++) {
    let a = sampleAt(0, j) > level ? 1 : 0;
    let d = sampleAt(0, j + 1) > level ? 8 : 0;
    for (let i = 0; i < columns - 1; i++) {
      const b = sampleAt(i + 1, j) > level ? 2 : 0;
      const c = sampleAt(i + 1, j + 1) > level ? 4 : 0;
      const above = a + b + c + d;
      if (above > 0 && above < 15)
        for (const [from, to] of linesIn[above] ?? []) crossings.put(i, j, from, to);
      a = b >> 1;
      d = c << 1;
    }
  }
  return crossings.lines();
}

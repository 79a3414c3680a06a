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

/**
 * The closed lines around all that lies above half, with it on one side throughout. The grid's own edge closes what
 * reaches it. Source: marching squares; where two corners above lie across from two below, those above are kept apart.
 */
export function levelLines(grid: SampleGrid): Point[][] {
  const { width, height, values } = grid;
  // Around the samples: their like at the very edge, and nothing right behind it.
  const columns = width + 4;
  const sampleAt = (i: number, j: number): number => {
    if (i === 0 || j === 0 || i === width + 3 || j === height + 3) return 0;
    const [x, y] = [Math.min(width - 1, Math.max(0, i - 2)), Math.min(height - 1, Math.max(0, j - 2))];
    return values[y * width + x] ?? 0;
  };
  const placeOf = (i: number, most: number): number => Math.min(most, Math.max(0, i - 1.5));
  /** Each crossing of a side of a square, by that side, and the side that the line goes on to. */
  const next = new Map<number, number>();
  // Sides are numbered two to a corner: the one to its right, then the one below it.
  const above = (i: number, j: number): number => 2 * (j * columns + i);
  const left = (i: number, j: number): number => above(i, j) + 1;
  for (let j = 0; j < height + 3; j++) {
    let [a, d] = [sampleAt(0, j) > level, sampleAt(0, j + 1) > level];
    for (let i = 0; i < width + 3; i++) {
      const [b, c] = [sampleAt(i + 1, j) > level, sampleAt(i + 1, j + 1) > level];
      if (a !== b || b !== c || c !== d) {
        const [top, right, bottom, leftSide] = [above(i, j), left(i + 1, j), above(i, j + 1), left(i, j)];
        link(next, [a, b, c, d], [top, right, bottom, leftSide]);
      }
      [a, d] = [b, c];
    }
  }
  return chained(next, (side) => {
    const corner = side >> 1;
    const [i, j] = [corner % columns, Math.floor(corner / columns)];
    const [i2, j2] = side % 2 === 0 ? [i + 1, j] : [i, j + 1];
    const [from, to] = [sampleAt(i, j), sampleAt(i2, j2)];
    const t = (level - from) / (to - from);
    const [x, y] = [placeOf(i, width), placeOf(j, height)];
    return { x: x + t * (placeOf(i2, width) - x), y: y + t * (placeOf(j2, height) - y) };
  });
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

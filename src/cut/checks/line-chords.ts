// Drawn lines as chords in plain columns, each with where it is on its own contour.

import type { DrawnLine } from '../../drawing/drawn-line.ts';
import { norm } from '../../geometry/point.ts';
import { ChordSquares, type Chords } from './chord-grid.ts';
import { cornersOf } from './edge-chords.ts';

export interface LineChords extends Chords {
  /** The contour of each chord, numbered through all lines. */
  readonly contour: Int32Array;
  /** The number of each chord on its contour. */
  readonly index: Int32Array;
  readonly contours: readonly ChordedLine[];
}

export interface ChordedLine {
  readonly line: number;
  /** How many chords it has. */
  readonly count: number;
  readonly closed: boolean;
  /** mm */
  readonly length: number;
}

/** `tolerance`: sagitta of the chords; `longest`: of a chord, mm. */
export function lineChords(
  lines: readonly DrawnLine[],
  options: { readonly tolerance: number; readonly longest: number },
): LineChords {
  const runs = lines.flatMap(({ contours }, line) =>
    contours.map((contour) => {
      const corners = cornersOf(contour, options);
      return { line, corners, closed: contour.closed };
    }),
  );
  const chordsIn = ({ corners, closed }: (typeof runs)[number]) =>
    corners.x.length < 2 ? 0 : corners.x.length - (closed ? 0 : 1);
  const count = runs.reduce((sum, run) => sum + chordsIn(run), 0);
  const [x, y, toX, toY] = [0, 1, 2, 3].map(() => new Float64Array(count)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const contour = new Int32Array(count);
  const index = new Int32Array(count);
  let k = 0;
  const contours = runs.map((run, i): ChordedLine => {
    const own = chordsIn(run);
    let length = 0;
    for (let n = 0; n < own; n++, k++) {
      const { corners } = run;
      const next = n + 1 === corners.x.length ? 0 : n + 1;
      const [px, py] = [corners.x[n] ?? 0, corners.y[n] ?? 0];
      const [qx, qy] = [corners.x[next] ?? 0, corners.y[next] ?? 0];
      x[k] = px;
      y[k] = py;
      toX[k] = qx;
      toY[k] = qy;
      contour[k] = i;
      index[k] = n;
      length += norm(qx - px, qy - py);
    }
    return { line: run.line, count: own, closed: run.closed, length };
  });
  return { count, x, y, toX, toY, contour, index, contours };
}

/** A long chord may lie across so many squares: more would take longer to fill than they spare in looking. */
const squaresALongChord = 8;

/** Sides of squares that hold a few chords each; `longest`: that no chord is longer than, mm. */
function squareSide({ count, contours }: LineChords, longest: number): number {
  const mean = contours.reduce((sum, { length }) => sum + length, 0) / Math.max(1, count);
  return Math.min(longest, Math.max(2 * mean, longest / squaresALongChord));
}

/** Call `visit` for every two chords whose boxes come within `reach` of each other, the lower number first. */
export function eachNearPair(
  chords: LineChords,
  longest: number,
  reach: number,
  visit: (k: number, other: number) => void,
): void {
  const squares = new ChordSquares(chords, squareSide(chords, longest));
  const near: number[] = [];
  for (let k = 0; k < chords.count; k++) {
    const x0 = chords.x[k] ?? 0;
    const y0 = chords.y[k] ?? 0;
    const x1 = chords.toX[k] ?? 0;
    const y1 = chords.toY[k] ?? 0;
    const found = squares.near(
      Math.min(x0, x1) - reach,
      Math.min(y0, y1) - reach,
      Math.max(x0, x1) + reach,
      Math.max(y0, y1) + reach,
      near,
    );
    for (let i = 0; i < found; i++) {
      const other = near[i] ?? 0;
      if (other > k) visit(k, other);
    }
  }
}

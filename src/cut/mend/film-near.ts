// The film near places, cut out of the whole: what is done to a few places of a large film costs what they cost.
import { type Box, boxCorners, grow } from '../../geometry/box.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';

export interface FilmNear {
  /** The film near the places, cut off straight where it goes on. */
  readonly film: readonly Shape[];
  /** Rectangles around the places, edge to edge: so far the film was not cut off within the reach of what is done to it. */
  readonly sure: readonly Shape[];
}

/** Cells that the film is cut out by are so many times as wide as the reach. */
const cellReaches = 4;

/** The film cut off lies this much farther out than it has to, mm: far more than any rounding. */
const spare = 0.1;

/** The film around places as far as `around`, mm, and so much more that within it nothing that reaches `reach` sees the cut. */
export function filmNear(
  shapes: readonly Shape[],
  places: Iterable<Point>,
  { around, reach }: { readonly around: number; readonly reach: number },
): FilmNear {
  const cells = cellsAround(places, around, cellReaches * around);
  const film = clippedShapes(
    shapes,
    cells.map((box) => rectangle(grow(box, reach + spare))),
    'intersection',
    chordTolerance,
  );
  return { film, sure: cells.map(rectangle) };
}

const rectangle = (box: Box): Shape => ({ contours: [polygon(boxCorners(box))] });

/** The cells of a grid that any place comes nearer to than `around`, those side by side in a row as one. */
function cellsAround(places: Iterable<Point>, around: number, width: number): Box[] {
  const rows = new Map<number, Set<number>>();
  const cellOf = (x: number) => Math.floor(x / width);
  for (const { x, y } of places)
    for (let row = cellOf(y - around); row <= cellOf(y + around); row++) {
      const columns = rows.get(row) ?? new Set();
      rows.set(row, columns);
      for (let column = cellOf(x - around); column <= cellOf(x + around); column++) columns.add(column);
    }
  return [...rows].flatMap(([row, columns]) =>
    runs([...columns].sort((a, b) => a - b)).map(({ first, last }) => ({
      minX: first * width,
      minY: row * width,
      maxX: (last + 1) * width,
      maxY: (row + 1) * width,
    })),
  );
}

/** Whole numbers in order, those that follow one another as one run. */
function runs(numbers: readonly number[]): { readonly first: number; readonly last: number }[] {
  const found: { first: number; last: number }[] = [];
  for (const number of numbers) {
    const run = found.at(-1);
    if (run && run.last + 1 === number) run.last = number;
    else found.push({ first: number, last: number });
  }
  return found;
}

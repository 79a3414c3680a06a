// The areas of one colour of a picture, from how much of each pixel it covers.
import { Refused, stop } from '../../finding.ts';
import { type Affine, moveContour } from '../../geometry/affine.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { fitPoints } from '../../geometry/fit-points.ts';
import { levelLines, type SampleGrid, wrappedLevelLines } from '../../geometry/level-lines.ts';
import { signedArea } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { type WrappedTile, wrappedShapes } from './wrapped-shapes.ts';

/** A picture's size, mm. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
  /** mm a pixel, across and up. */
  readonly pixel: { readonly x: number; readonly y: number };
}

/** How far, in pixels, what is fitted may lie from the traced edge. */
const fitMiss = 0.2;

/** Directions of an edge are taken over so many pixels. */
const reach = 2.5;

/** Areas of fewer pixels are specks of the picture, not of the art. */
export const leastPixels = 6;

/** More patches of one colour than this are a photograph, or noise. */
export const mostPatches = 10_000;

/** The areas of a colour in a picture that stands alone: cut at its edge. */
export function shapesIn(grid: SampleGrid, { pixel }: PictureSize, file: string): Shape[] {
  const all = levelLines(grid);
  const lines = all.filter(isNoSpeck);
  refuseFine(grid, all, file);
  if (lines.length > mostPatches) throw tooBusy(file);
  const contours = lines.map((points) => moveContour(toMm(pixel), fitPoints(points, fitted)));
  return filledShapes(contours, 'evenodd', chordTolerance);
}

/** A line that runs on through more of a picture's copies before it comes back was led on from line to line by chance. */
const mostCopies = 12;

/**
 * Those of a picture that goes on across its borders: they go on in its copies. Undefined where edges only seem to: in a fine hatch
 * one stands near every other, wherever it was cut.
 */
export function shapesAround(
  grid: SampleGrid,
  { width, height, pixel }: PictureSize,
  file: string,
): Shape[] | undefined {
  const all = wrappedLevelLines(grid);
  if (all.some(({ by }) => Math.abs(by.i) + Math.abs(by.j) > mostCopies)) return undefined;
  const lines = all.filter(({ points, by }) => by.i !== 0 || by.j !== 0 || isNoSpeck(points));
  refuseFine(
    grid,
    all.filter(({ by }) => by.i === 0 && by.j === 0).map(({ points }) => points),
    file,
  );
  if (lines.length > mostPatches) throw tooBusy(file);
  const edges = lines.map(({ points, by }) => {
    const on = by.i === 0 && by.j === 0 ? {} : { by: { x: by.i * grid.width, y: by.j * grid.height } };
    return { by, contour: moveContour(toMm(pixel), fitPoints(points, { ...fitted, ...on })) };
  });
  return wrappedShapes(edges, { width, height, sure: surePlace(grid, pixel) });
}

/** Specks are left out; where they are so large a share of a picture, they are the art. */
const mostInSpecks = 0.1;

/** Of a picture whose art, or whose holes, are too small to follow a whole sheet would be left, or nothing. */
function refuseFine({ width, height }: SampleGrid, lines: readonly (readonly Point[])[], file: string): void {
  const specks = lines.filter((points) => !isNoSpeck(points));
  const area = specks.reduce((sum, points) => sum + Math.abs(signedArea(polygon(points))), 0);
  if (area > mostInSpecks * width * height) throw new Refused([stop('no-area', { file }, tooFine)]);
}

export const tooFine = `shows mostly what is no larger than ${leastPixels} pixels, which can't be followed; save it two or three times as large, so that its thinnest lines are three pixels wide`;

const isNoSpeck = (points: readonly Point[]): boolean => Math.abs(signedArea(polygon(points))) >= leastPixels;

const fitted = { tolerance: fitMiss, reach };

const toMm = (pixel: Point): Affine => ({ a: pixel.x, b: 0, c: 0, d: pixel.y, e: 0, f: 0 });

/** The middle of the pixel that, with those around it, tells most surely whether it is film. */
function surePlace({ width, height, values }: SampleGrid, pixel: Point): WrappedTile['sure'] {
  let [best, most] = [0, -1];
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1 && most < surest; x++) {
      let least = surest;
      for (let v = y - 1; v <= y + 1; v++)
        for (let u = x - 1; u <= x + 1; u++)
          least = Math.min(least, sureness(values[v * width + u], values[y * width + x]));
      if (least > most) [best, most] = [y * width + x, least];
    }
  const at = { x: ((best % width) + 0.5) * pixel.x, y: (Math.floor(best / width) + 0.5) * pixel.y };
  return { at, isFilm: (values[best] ?? 0) > half };
}

/** Half of a pixel covered; and the farthest from it. */
const half = 127.5;
const surest = 127;

/** How far a pixel is from being half covered, on the side that another is on; below 0 on the other. */
const sureness = (value = 0, middle = 0): number => (middle > half ? value - half : half - value);

export function tooBusy(file: string): Refused {
  const says = `falls into more than ${mostPatches} patches, as a photograph or noise does; trace a plain drawing, smooth the picture, or give fewer "colours"`;
  return new Refused([stop('too-busy', { file }, says)]);
}

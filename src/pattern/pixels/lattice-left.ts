// What a lattice leaves unexplained of a picture: how much of it differs a step away, pixel by pixel.
import type { Point } from '../../geometry/point.ts';
import { type Lattice, step } from '../lattice/lattice.ts';
import type { Planes } from './planes.ts';
import type { Looked } from './step-blocks.ts';

/** So many pixels are looked at, evenly spread. */
const mostPlaces = 20_000;

/** Fewer pixels than these tell nothing. */
const leastPlaces = 400;

/** The least share of the picture that must show again a step of a lattice away. */
const leastOverlap = 0.03;

/** The share of a picture that shows again a step away. */
export const overlapOf = ({ x, y }: Point, { width, height }: Pick<Planes, 'width' | 'height'>): number =>
  Math.max(0, 1 - Math.abs(x) / width) * Math.max(0, 1 - Math.abs(y) / height);

/** The shortest steps of a lattice, one of each way, by which enough of a picture shows again; and so many times them. */
export const stepsShown = (
  lattice: Lattice,
  picture: Planes,
  times: readonly number[] = [1],
): readonly { readonly i: number; readonly j: number; readonly by: Point }[] =>
  shortest
    .flatMap(([i, j]) => times.map((n) => [i * n, j * n] as const))
    .map(([i, j]) => ({ i, j, by: step(lattice, i, j) }))
    .filter(({ by }) => overlapOf(by, picture) >= leastOverlap);

const shortest = [
  [1, 0],
  [0, 1],
  [1, 1],
  [1, -1],
] as const;

/**
 * The share of the variance that differs a step away, noise left out; undefined where too little can be told. Looked at only where
 * another lattice can be looked at too, so that the two can be compared: what hides part of the picture then spoils both.
 */
export function leftBy(
  { picture, variance, noise }: Looked,
  lattice: Lattice,
  beside: Lattice,
): number | undefined {
  const { width, height } = picture;
  const tested = stepsShown(beside, picture).map(({ by }) => by);
  const isInside = (x: number, y: number) => x >= 0 && y >= 0 && x < width - 1 && y < height - 1;
  const isTested = (x: number, y: number) =>
    tested.some((by) => isInside(x + by.x, y + by.y) || isInside(x - by.x, y - by.y));
  const every = Math.max(1, Math.floor(Math.sqrt((width * height) / mostPlaces)));
  let [squares, count] = [0, 0];
  for (const { by } of stepsShown(lattice, picture))
    for (let y = 0; y < height; y += every)
      for (let x = 0; x < width; x += every) {
        const [u, v] = [x + by.x, y + by.y];
        if (!isInside(u, v) || !isTested(x, y) || !isTested(u, v)) continue;
        squares += differsAt(picture, x, y, u, v);
        count++;
      }
  return count < leastPlaces ? undefined : Math.max(0, squares / count - 2 * noise) / (2 * variance);
}

/** The square of what differs between a pixel and a place, all channels together. */
function differsAt({ width, planes }: Planes, x: number, y: number, u: number, v: number): number {
  const [left, top] = [Math.floor(u), Math.floor(v)];
  const [fx, fy] = [u - left, v - top];
  const j = top * width + left;
  let squares = 0;
  for (const plane of planes) {
    const there =
      ((plane[j] ?? 0) * (1 - fx) + (plane[j + 1] ?? 0) * fx) * (1 - fy) +
      ((plane[j + width] ?? 0) * (1 - fx) + (plane[j + width + 1] ?? 0) * fx) * fy;
    squares += (there - (plane[y * width + x] ?? 0)) ** 2;
  }
  return squares;
}

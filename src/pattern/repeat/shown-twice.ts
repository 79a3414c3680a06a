// How much of a crop shows again by a lattice: what shows once is nowhere held against anything.
import { add, scale, subtract } from '../../geometry/point.ts';
import type { Lattice } from '../lattice/lattice.ts';
import type { Size } from '../tile/cut-shapes.ts';

/** Where less than this shows twice, which 1.3 periods each way do, steps between things put down by hand make lattices as well. */
export const leastTold = 0.7;

/** Places a side of a crop that are looked at. */
const placesAside = 24;

/** The share of a crop that shows again a step of a lattice away. */
export function shownTwice({ a, b }: Lattice, { width, height }: Size): number {
  const steps = [a, b, add(a, b), subtract(a, b)].flatMap((p) => [p, scale(p, -1)]);
  const isIn = (x: number, y: number) => x >= 0 && y >= 0 && x <= width && y <= height;
  const places = Array.from({ length: placesAside ** 2 }, (_, i) => ({
    x: (((i % placesAside) + 0.5) * width) / placesAside,
    y: ((Math.floor(i / placesAside) + 0.5) * height) / placesAside,
  }));
  return places.filter((at) => steps.some((by) => isIn(at.x + by.x, at.y + by.y))).length / places.length;
}

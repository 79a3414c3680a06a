// How a piece must be turned to lie within a sheet.
import { moveContour, rotation } from '../geometry/affine.ts';
import type { Contour } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { NestSheet } from './nest-board.ts';

const degree = Math.PI / 180;

/** Turns tried: as drawn, a quarter turn, then every degree between, the nearest to upright first. */
const turnsTried: readonly number[] = [
  0,
  90,
  ...Array.from({ length: 89 }, (_, i) => [i + 1, -(i + 1)]).flat(),
].map((turn) => turn * degree);

/** By how much a piece turned by an angle is larger than the room, mm; 0 or less where it fits. */
function excess(contour: Contour, { length, height }: NestSheet, turn: number): number {
  const box = tightBox([moveContour(rotation(turn), contour)]);
  return Math.max(box.maxX - box.minX - length, box.maxY - box.minY - height);
}

/**
 * The turn, radians, at which a piece lies within a sheet's usable room; as near to upright as may be, to a degree;
 * undefined where it does not fit at any.
 */
export const turnToFit = (contour: Contour, room: NestSheet): number | undefined =>
  turnsTried.find((turn) => excess(contour, room, turn) <= 0);

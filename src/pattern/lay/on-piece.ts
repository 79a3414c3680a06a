// What of the art that is cut past the edges of a piece still reaches onto it.

import { boxCorners } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { startOf } from '../../geometry/kept-contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { radiusAt, toWall } from '../../unroll/flat-wall.ts';
import { sideTurns, type Template } from '../../unroll/template.ts';

/**
 * Whether a shape reaches onto a piece with straight ends. One that lies past one of its edges is in the waste whole and would
 * be cut for nothing. Its box is looked at: it is past a side where all its corners are, for the side is straight; and past the
 * foot or the lip where they are by more than an arc can stand over a chord as long as the box. So a few that lie past a
 * corner of the piece, or by less than that, are taken to reach.
 */
export function reachesOnto(template: Template): (shape: Shape) => boolean {
  const { wall, piece } = template;
  // An arc of radius R stands over a chord of length L by a² / (R + √(R² - a²)), a = L / 2: never more than L² / 4R.
  const bend = Math.abs(wall.sine) / (4 * Math.min(radiusAt(wall, piece.from), radiusAt(wall, piece.to)));
  const placed = (at: Point) => {
    const { turn, along } = toWall(wall, at);
    const [left, right] = sideTurns(template, along);
    return { turn, along, left, right };
  };
  const isOn = (at: Point): boolean => {
    const { turn, along, left, right } = placed(at);
    return along >= piece.from && along <= piece.to && turn >= left && turn <= right;
  };
  return ({ contours }) => {
    const [outer] = contours;
    const first = outer && startOf(outer);
    if (first && isOn(first)) return true;
    const box = tightBox(contours);
    const over = bend * ((box.maxX - box.minX) ** 2 + (box.maxY - box.minY) ** 2);
    const corners = boxCorners(box).map(placed);
    return !(
      corners.every(({ along }) => along > piece.to + over) ||
      corners.every(({ along }) => along < piece.from - over) ||
      corners.every(({ turn, left }) => turn < left) ||
      corners.every(({ turn, right }) => turn > right)
    );
  };
}

// Places of the wall outlined on the guide: what has to stay bare, and where single motifs will lie.
import {
  type Contour,
  type LineSegment,
  line,
  polygon,
  reverseContour,
  type Shape,
} from '../../geometry/contour.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { levelAngle, toFlat, type WallPoint } from '../../unroll/flat-wall.ts';
import { type Footprint, turnsWithin } from '../../unroll/footprint.ts';
import { levelLine, outline, type Template, turnsOfPiece } from '../../unroll/template.ts';

/** A stretch of the wall. `turn.to` is above `turn.from`, and may be past 1 where it runs through turn 0. */
export interface WallPatch {
  readonly turn?: { readonly from: number; readonly to: number };
  readonly along: { readonly from: number; readonly to: number };
}

/** Whole turns by which a place may come again on one piece: to the left of turn 0, and in the overlap. */
export const comesAgain = [-1, 0, 1] as const;

/** The parts of a patch that lie on the piece, in the sheet's own frame; the overlap's part is one of its own. */
export function patchOnPiece(template: Template, { turn, along }: WallPatch): readonly Shape[] {
  const { piece } = template;
  const [from, to] = [Math.max(along.from, piece.from), Math.min(along.to, piece.to)];
  if (!(from < to)) return [];
  // All around, it is the piece itself between two heights: its sides are straight on the sheet.
  if (!turn && !template.winding) return [{ contours: [outline({ ...template, piece: { from, to } })] }];
  const { from: leftmost, to: rightmost } = turnsOfPiece(template);
  const runs = turn ? comesAgain.map((k) => [turn.from + k, turn.to + k]) : [[leftmost, rightmost]];
  const whole = runs.flatMap(([start = 0, end = 0]) => {
    const [a, b] = [Math.max(start, leftmost), Math.min(end, rightmost)];
    return a < b ? [{ contours: [patchOutline(template, a, b, { from, to })] }] : [];
  });
  return within(template, whole);
}

/** The outline of a stretch of the wall from one turn to another, in the sheet's own frame. */
export function patchOutline(
  { wall }: Template,
  left: number,
  right: number,
  along: { readonly from: number; readonly to: number },
): Contour {
  const side = (turn: number, from: number, to: number): LineSegment =>
    line(toFlat(wall, { turn, along: from }), toFlat(wall, { turn, along: to }));
  return {
    closed: true,
    segments: [
      ...levelLine(wall, along.from, left, right).segments,
      side(right, along.from, along.to),
      ...reverseContour(levelLine(wall, along.to, left, right)).segments,
      side(left, along.to, along.from),
    ],
  };
}

const everywhere = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY };

/**
 * The parts of an upright rectangle about a place that lie on the piece, in the sheet's own frame. On a sheet of more than half a ring what
 * comes a turn later would lie where the other end of it is: it counts only at turns that the piece has.
 */
export function footprintOnPiece(
  template: Template,
  { across, up }: Footprint,
  { turn, along }: WallPoint,
): readonly Shape[] {
  const { wall } = template;
  const { from, to } = turnsOfPiece(template);
  const reach = turnsWithin(wall, { across, up }, along, everywhere)?.outer ?? 1;
  const seen = comesAgain.filter((k) => turn + k + reach > from && turn + k - reach < to);
  const whole = seen.map((k) => {
    const middle = toFlat(wall, { turn: turn + k, along });
    const angle = levelAngle(wall, turn + k);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const corner = (x: number, y: number) => ({
      x: middle.x + x * cos - y * sin,
      y: middle.y + x * sin + y * cos,
    });
    const [x, y] = [across / 2, up / 2];
    return { contours: [polygon([corner(-x, y), corner(x, y), corner(x, -y), corner(-x, -y)])] };
  });
  return whole.flatMap((copy) => within(template, [copy]));
}

const within = (template: Template, shapes: readonly Shape[]): readonly Shape[] =>
  shapes.length === 0
    ? []
    : clippedShapes(shapes, [{ contours: [outline(template)] }], 'intersection', chordTolerance);

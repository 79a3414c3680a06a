// A piece of film for the picture: its drawing, and where on the wall every point of it comes to lie.
import type { Drawing } from '../../drawing/drawing.ts';
import { type Point, subtract } from '../../geometry/point.ts';
import { toWall, type WallPoint } from '../../unroll/flat-wall.ts';
import { type RolledVessel, sidesAt } from './rolled-vessel.ts';

/** A wrap, or one of several pieces that cover the wall together. */
export interface RolledSheet {
  readonly drawing: Drawing;
  /** From the drawing's numbers to the wall. */
  readonly toWall: (p: Point) => WallPoint;
  /** The finished band of this piece, mm along. */
  readonly band: { readonly from: number; readonly to: number };
  /** The turns at which the finished piece begins and ends at a height. */
  readonly sidesAt: (along: number) => readonly [number, number];
}

/** A drawing on its vessel's own sheet. */
export const sheetOf = (drawing: Drawing, vessel: RolledVessel): RolledSheet => ({
  drawing,
  toWall: (p) => toWall(vessel.wall, subtract(p, vessel.origin)),
  band: vessel.band,
  sidesAt: (along) => sidesAt(vessel, along),
});

// A motif that is cut apart, laid upright on a sheet of its own.
import { uprightTurn } from '../cut/motif-drawing.ts';
import { layMotif } from '../pattern/motif.ts';
import type { WrapLayer } from '../pattern/wrap.ts';
import type { FlatWall, WallPoint } from '../unroll/flat-wall.ts';
import type { SheetLengths } from '../unroll/sheet-wall.ts';
import { wallOfMotif } from './motif-places.ts';
import { motifOnSheet } from './on-sheet.ts';
import type { PlacedMotif } from './placed-motif.ts';
import type { Plan } from './plan.ts';

/** A motif on a sheet of its own, in the flat wall's frame. */
export interface LaidApart {
  readonly wall: FlatWall;
  /** Its place, mm on the sheet. */
  readonly at: WallPoint;
  readonly layers: readonly WrapLayer[];
  readonly lengths: SheetLengths;
}

/** A motif laid on the wall that it would lie on apart from the wrap. */
export function laidApart(plan: Plan, placed: PlacedMotif): LaidApart {
  const { lengths } = plan;
  const wall = wallOfMotif(plan, placed.at);
  const { at, lay, motif } = motifOnSheet(placed, lengths);
  const { layers } = layMotif(motif.layers, wall, { at: { turn: uprightTurn, along: at.along }, lay });
  return { wall, at, layers, lengths };
}

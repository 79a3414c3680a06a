// Motifs laid by themselves, upright on a sheet of their own: as those are that are cut apart.
import type { Band } from '../../blank/flat-band.ts';
import { uprightTurn } from '../../cut/drawings/motif-drawing.ts';
import { pointAt } from '../../geometry/segment.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { layMotif, shapesOf } from '../../pattern/rigid/motif.ts';
import { type FlatWall, toWall, type WallPoint } from '../../unroll/flat-wall.ts';
import type { SheetLengths } from '../../unroll/sheet-wall.ts';
import { motifOnSheet } from '../plan/on-sheet.ts';
import type { Plan } from '../plan/plan.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import { wallOfMotif } from './motif-places.ts';

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

/** How a motif reaches: up the wall or the sheet, and around it, in turns that may be below 0 or past 1. */
export interface MotifReach extends Band {
  readonly turns: Band;
}

/** A motif of a job laid by itself, once for all who ask. */
export interface LaidMotif extends LaidApart {
  readonly placed: PlacedMotif;
  /** The plan of the piece it lies on, or of the nearest. */
  readonly plan: Plan;
  /** How it reaches over the sheet, cut apart or not. */
  readonly reach: MotifReach;
}

/** The motifs of a job, each on the nearest of its pieces: at least one. */
export function laidMotifs(plans: readonly Plan[], motifs: readonly PlacedMotif[]): readonly LaidMotif[] {
  return motifs.map((placed) => {
    const plan = planUnder(plans, placed);
    const laid = laidApart(plan, placed);
    return { ...laid, placed, plan, reach: reachOf(laid) };
  });
}

function planUnder(plans: readonly Plan[], { at: { along } }: PlacedMotif): Plan {
  const away = ({ band }: Plan) => Math.max(0, band.from - along, along - band.to);
  const [first] = [...plans].sort((a, b) => away(a) - away(b));
  if (!first) throw new Error('a job has at least one piece');
  return first;
}

/** Places looked at on each curve: what it reaches between two of them is under a hundredth of its bend. */
const places = Array.from({ length: 12 }, (_, i) => i / 12);

function reachOf({ wall, layers, at }: LaidApart): MotifReach {
  let [from, to, start, end] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { contours } of shapesOf(layers))
    for (const { segments } of contours)
      for (const s of segments)
        for (const t of places) {
          const { along, turn } = toWall(wall, pointAt(s, t));
          from = Math.min(from, along);
          to = Math.max(to, along);
          start = Math.min(start, turn);
          end = Math.max(end, turn);
        }
  const by = at.turn - uprightTurn;
  return { from, to, turns: { from: start + by, to: end + by } };
}

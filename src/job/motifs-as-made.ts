// The motifs that are cut apart as they were made: what the proof holds their files against.
import type { Band } from '../blank/flat-band.ts';
import { uprightTurn } from '../cut/motif-drawing.ts';
import { pointAt } from '../geometry/segment.ts';
import { shapesOf } from '../pattern/motif.ts';
import type { AskedMotif, Cleared } from '../prove/asked.ts';
import { coverOf } from '../prove/centre.ts';
import { toFlat, toWall } from '../unroll/flat-wall.ts';
import type { Draft } from './draft.ts';
import { type LaidApart, laidApart } from './laid-apart.ts';
import { planUnder } from './motif-parts.ts';
import { bandOnWall } from './on-sheet.ts';
import type { PlacedMotif } from './placed-motif.ts';

/** How a motif reaches: up the wall or the sheet, and around it, in turns that may be below 0 or past 1. */
export interface MotifReach extends Band {
  readonly turns: Band;
}

/** The motifs that are cut apart: their layers told from the place each is laid about; heights are mm on the sheet. */
export function motifsAsMade(drafts: readonly Draft[]): readonly AskedMotif[] {
  const motifs = (drafts[0]?.motifs ?? []).filter(({ isApart }) => isApart);
  return motifs.map((placed) => {
    const laid = laidApart(planUnder(drafts, placed), placed);
    const { along } = laid.at;
    const place = toFlat(laid.wall, { turn: uprightTurn, along });
    const layers = laid.layers.map(({ name, shapes }) => {
      const { area, middle } = coverOf(
        shapes.map(({ contours }) => contours),
        place,
      );
      return { layer: name, piece: 1, area, middle: { right: middle.x - place.x, up: place.y - middle.y } };
    });
    const { from, to } = reachOf(laid);
    return { name: placed.name, along, layers, reach: { from, to } };
  });
}

/** How a motif reaches over the sheet, cut apart or not. */
function reachOnSheet(laid: LaidApart): MotifReach {
  const { from, to, turns } = reachOf(laid);
  const by = laid.at.turn - uprightTurn;
  return { from, to, turns: { from: turns.from + by, to: turns.to + by } };
}

/** How a motif reaches over the bare wall, cut apart or not. */
export function reachOfMotif(drafts: readonly Draft[], placed: PlacedMotif): MotifReach {
  const laid = laidApart(planUnder(drafts, placed), placed);
  return bandOnWall(reachOnSheet(laid), laid.lengths);
}

/** Places looked at on each curve: what it reaches between two of them is under a hundredth of its bend. */
const places = Array.from({ length: 12 }, (_, i) => i / 12);

function reachOf({ wall, layers }: LaidApart): MotifReach {
  const on = shapesOf(layers).flatMap(({ contours }) =>
    contours.flatMap(({ segments }) =>
      segments.flatMap((s) => places.map((t) => toWall(wall, pointAt(s, t)))),
    ),
  );
  const bandOf = (values: readonly number[]): Band => ({
    from: least(values),
    to: -least(values.map((v) => -v)),
  });
  return { ...bandOf(on.map(({ along }) => along)), turns: bandOf(on.map(({ turn }) => turn)) };
}

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);

/** Where patterns are taken away around motifs that are cut with them, mm on the sheet. */
export const clearedAround = (drafts: readonly Draft[]): readonly Cleared[] =>
  (drafts[0]?.motifs ?? []).flatMap((placed) =>
    placed.isApart || placed.clear === undefined
      ? []
      : [{ ...reachOnSheet(laidApart(planUnder(drafts, placed), placed)), by: placed.clear }],
  );

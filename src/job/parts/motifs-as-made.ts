// The motifs that are cut apart as they were made: what the proof holds their files against.
import { uprightTurn } from '../../cut/drawings/motif-drawing.ts';
import type { AskedMotif, Cleared } from '../../prove/asked.ts';
import { coverOf } from '../../prove/written/centre.ts';
import { toFlat } from '../../unroll/flat-wall.ts';
import type { Draft } from '../draft.ts';
import { clearedBy } from '../motifs/cleared-around.ts';

/** The motifs that are cut apart: their layers told from the place each is laid about; heights are mm on the sheet. */
export function motifsAsMade(drafts: readonly Draft[]): readonly AskedMotif[] {
  const motifs = (drafts[0]?.laid ?? []).filter(({ placed }) => placed.isApart);
  return motifs.map(({ placed, wall, at: { along }, layers: laid, reach: { from, to } }) => {
    const place = toFlat(wall, { turn: uprightTurn, along });
    const layers = laid.map(({ name, shapes }) => {
      const { area, middle } = coverOf(
        shapes.map(({ contours }) => contours),
        place,
      );
      return { layer: name, piece: 1, area, middle: { right: middle.x - place.x, up: place.y - middle.y } };
    });
    return { name: placed.name, along, layers, reach: { from, to } };
  });
}

/** Where patterns are taken away around motifs that are cut with them, mm on the sheet. */
export const clearedAround = (drafts: readonly Draft[]): readonly Cleared[] =>
  (drafts[0]?.laid ?? []).flatMap(({ placed: { name, isApart, clear }, reach }) =>
    isApart || clear === undefined ? [] : [{ ...reach, by: clearedByDrafts(drafts, { name, clear }, reach) }],
  );

/** How far around a motif drafts have the pattern taken away, mm. */
export const clearedByDrafts = (
  drafts: readonly Draft[],
  motif: Parameters<typeof clearedBy>[0],
  reach: Parameters<typeof clearedBy>[1],
): number =>
  drafts.reduce(
    (most, { plan, leftOut }) => Math.max(most, clearedBy(motif, reach, plan.template.wall, leftOut)),
    motif.clear,
  );

// Of motifs laid one by one: what a straight cut at the finished edge would leave too small to hold, taken out of each.
import type { Box } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { offsetShapes } from '../../geometry/offset.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { outline, type Template } from '../../unroll/template.ts';
import { cutAt, type EdgeGround, type EdgeOptions, heightsOf, type LeftAt } from '../lay/band-edges.ts';
import { clearance, isTooSmall } from '../lay/edge-slivers.ts';
import { laidBox, type PlacedMotif } from '../lay/lay-motifs.ts';

export interface MotifSliver extends LeftAt {
  /** mm² */
  readonly area: number;
}

/** The finished band about a motif, as an area of the sheet: sides well clear of it. */
function bandAbout({ template, lay }: EdgeGround, { minX, maxX }: Box): Shape {
  const { band } = template;
  const room = maxX - minX;
  const about: Template = {
    ...template,
    piece: band,
    left: { turn: (minX - room) / lay.around, offset: 0 },
    right: { turn: (maxX + room) / lay.around, offset: 0 },
  };
  return { contours: [outline(about)] };
}

/** Motifs without the slivers that the ends of the band would leave of them. */
export function withoutMotifSlivers<M extends PlacedMotif>(
  placed: readonly M[],
  ground: EdgeGround,
  { ends, film }: EdgeOptions,
): { readonly motifs: readonly M[]; readonly slivers: readonly MotifSliver[] } {
  const slivers: MotifSliver[] = [];
  const heights = heightsOf(ground, ends);
  const motifs = placed.map((motif) => {
    const cut = cutAt(motif.box, heights);
    if (!cut || cut.isPast) return motif;
    const band = bandAbout(ground, motif.box);
    const layers = motif.layers.map((shapes) => {
      const small = clippedShapes(shapes, [band], 'intersection', chordTolerance).filter((piece) => {
        const box = laidBox(ground.lay, [[piece]]);
        const depth = ground.lay.toAlong(box.maxY) - ground.lay.toAlong(box.minY);
        const isCut = cutAt({ ...box, minY: box.minY - clearance, maxY: box.maxY + clearance }, heights);
        const isSliver = isCut !== undefined && isTooSmall(film, shapeArea(piece), depth);
        if (isSliver) slivers.push({ end: cut.end, box, area: shapeArea(piece) });
        return isSliver;
      });
      return small.length === 0
        ? shapes
        : clippedShapes(shapes, offsetShapes(small, clearance), 'difference', chordTolerance);
    });
    return { ...motif, layers };
  });
  return { motifs, slivers };
}

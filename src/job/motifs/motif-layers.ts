// Motifs that are cut with the wrap: layers of their own, and the pattern taken away around them where that is asked for.
import type { Shape } from '../../geometry/contour.ts';
import { offsetShapes } from '../../geometry/offset.ts';
import { filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import type { FilmLimits } from '../../pattern/lay/edge-slivers.ts';
import { reachesOnto } from '../../pattern/lay/on-piece.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { motifOnPiece, shapesOf } from '../../pattern/rigid/motif.ts';
import { type ClearedArea, type ClearSliver, withoutCleared } from '../../pattern/seam/clear-slivers.ts';
import type { Template } from '../../unroll/template.ts';
import { runOff } from '../plan/plan.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';

/** The layers of a piece, and what was left out of the pattern because clearing around motifs left too little of it. */
export interface ClearedLayers {
  readonly layers: readonly WrapLayer[];
  readonly leftOut: readonly ClearSliver[];
}

/**
 * All layers of a piece: the pattern's, cleared where motifs ask for it, then the motifs' in their order. What lies past the
 * piece whole is left out, and what clearing leaves smaller than `film` holds, if that is given.
 */
export function layersWith(
  pattern: readonly WrapLayer[],
  motifs: readonly PlacedMotif[],
  template: Template,
  film?: FilmLimits,
): ClearedLayers {
  const within = motifs.filter(({ isApart }) => !isApart);
  const cleared = within.flatMap((placed) => {
    const { clear, name, motif } = placed;
    if (clear === undefined) return [];
    const covered = unitedShapes(shapesOf(motifOnPiece(motif, template, placed, runOff + clear)));
    return offsetShapes(covered, clear).map((shape): ClearedArea => ({ name, shape }));
  });
  const parted = pattern.map((layer) => ({
    layer,
    ...withoutCleared(layer.shapes, cleared, template, film),
  }));
  const layers = [
    ...parted.map(({ layer, shapes }) => ({ ...layer, shapes })),
    ...within.flatMap((placed) => motifOnPiece(placed.motif, template, placed, runOff)),
  ];
  const reaches = reachesOnto(template);
  return {
    layers: layers.map((layer) => ({ ...layer, shapes: layer.shapes.filter(reaches) })),
    leftOut: parted.flatMap(({ leftOut }) => leftOut),
  };
}

const unitedShapes = (shapes: readonly Shape[]): readonly Shape[] =>
  filledShapes(
    shapes.flatMap(({ contours }) => contours),
    'nonzero',
    chordTolerance,
  );

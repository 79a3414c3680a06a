// Motifs that are cut with the wrap: layers of their own, and the pattern taken away around them where that is asked for.
import { boxesMeet, hullBox } from '../geometry/box.ts';
import type { Shape } from '../geometry/contour.ts';
import { offsetShapes } from '../geometry/offset.ts';
import { clippedShapes, filledShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { motifOnPiece, shapesOf } from '../pattern/motif.ts';
import { reachesOnto } from '../pattern/on-piece.ts';
import type { WrapLayer } from '../pattern/wrap.ts';
import type { Template } from '../unroll/template.ts';
import type { PlacedMotif } from './placed-motif.ts';
import { runOff } from './plan.ts';

/**
 * All layers of a piece: the pattern's, cleared where motifs ask for it, then the motifs' in their order. What lies past the
 * piece whole is left out.
 */
export function layersWith(
  pattern: readonly WrapLayer[],
  motifs: readonly PlacedMotif[],
  template: Template,
): readonly WrapLayer[] {
  const within = motifs.filter(({ isApart }) => !isApart);
  const cleared = within.flatMap(({ clear, ...placed }) =>
    clear === undefined
      ? []
      : offsetShapes(
          unitedShapes(shapesOf(motifOnPiece(placed.motif, template, placed, runOff + clear))),
          clear,
        ),
  );
  const layers = [
    ...pattern.map((layer) => ({ ...layer, shapes: without(layer.shapes, cleared) })),
    ...within.flatMap((placed) => motifOnPiece(placed.motif, template, placed, runOff)),
  ];
  const reaches = reachesOnto(template);
  return layers.map((layer) => ({ ...layer, shapes: layer.shapes.filter(reaches) }));
}

const unitedShapes = (shapes: readonly Shape[]): readonly Shape[] =>
  filledShapes(
    shapes.flatMap(({ contours }) => contours),
    'nonzero',
    chordTolerance,
  );

/** Shapes less others; those that none of the others comes near stay as they are. */
function without(shapes: readonly Shape[], taken: readonly Shape[]): readonly Shape[] {
  if (taken.length === 0) return shapes;
  const boxes = taken.map(({ contours }) => hullBox(contours));
  return shapes.flatMap((shape) => {
    const box = hullBox(shape.contours);
    const near = taken.filter((_, i) => boxesMeet(box, boxes[i] ?? box));
    return near.length === 0 ? [shape] : clippedShapes([shape], near, 'difference', chordTolerance);
  });
}

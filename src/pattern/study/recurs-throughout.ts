// Whether all of a tile that joins recurs by a finer step: one motif among many that differs is drawn, and would be lost by it.
import { type Box, movedBox } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import type { Shape } from '../../geometry/contour.ts';
import { signedArea, tightBox } from '../../geometry/measure.ts';
import { type Point, scale } from '../../geometry/point.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import { isInside, type Size } from '../tile/cut-shapes.ts';

/** Copies of one contour differ in area by this share at the most. */
const alikeArea = 0.02;

interface Drawn {
  readonly box: Box;
  readonly area: number;
}

/**
 * Whether every contour that stands whole in a tile stands there again a step of a finer lattice away, wherever the tile, which repeats
 * by `own`, would show it whole. What its borders cut is not looked at. The cost grows with n log n in the contours.
 */
export function recursThroughout(
  layers: readonly { readonly shapes: readonly Shape[] }[],
  tile: Size,
  { own, finer }: { readonly own: Lattice; readonly finer: Lattice },
  tolerance: number,
): boolean {
  const steps = [finer.a, finer.b].flatMap((step) => [step, scale(step, -1)]);
  return layers.every(({ shapes }) => {
    const whole = shapes
      .flatMap(({ contours }) => contours)
      .map((contour): Drawn => ({ box: tightBox([contour]), area: signedArea(contour) }))
      .filter(({ box }) => isInside(box, tile, tolerance));
    const index = new BoxIndex(whole.length, (add) => {
      for (const { box } of whole) add(box.minX, box.minY, box.maxX, box.maxY);
    });
    const isDrawnAt = ({ box, area }: Drawn, by: Point): boolean => {
      const { minX, minY, maxX, maxY } = movedBox(box, by);
      const near = index.meeting((minX + maxX) / 2, (minY + maxY) / 2, (minX + maxX) / 2, (minY + maxY) / 2);
      return near.some((i) => {
        const other = whole[i];
        return (
          other !== undefined &&
          Math.abs(other.area - area) <= alikeArea * Math.abs(area) &&
          Math.abs(other.box.minX - minX) <= tolerance &&
          Math.abs(other.box.minY - minY) <= tolerance &&
          Math.abs(other.box.maxX - maxX) <= tolerance &&
          Math.abs(other.box.maxY - maxY) <= tolerance
        );
      });
    };
    return whole.every((drawn) =>
      steps.every((step) =>
        placesIn(movedBox(drawn.box, step), tile, own, tolerance).every((by) =>
          isDrawnAt(drawn, { x: step.x + by.x, y: step.y + by.y }),
        ),
      ),
    );
  });
}

/** The steps of a tile's own that bring a box whole into it. */
const placesIn = (box: Box, { width, height }: Size, own: Lattice, edge: number): readonly Point[] =>
  stepsIn(own, {
    minX: 2 * edge - box.minX,
    minY: 2 * edge - box.minY,
    maxX: width - 2 * edge - box.maxX,
    maxY: height - 2 * edge - box.maxY,
  }).map(({ at }) => at);

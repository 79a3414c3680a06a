// Film within its outlines, parted along the edges of the art into the art and the ground around it.

import { hullBox, liesIn } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { withHolesBack } from '../../geometry/holes-apart.ts';
import { InsideFinder } from '../../geometry/inside.ts';
import { shapeArea, tightBox } from '../../geometry/measure.ts';
import { holdsAll, outlinesOf } from '../../geometry/near-outlines.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';

/** One is the negative of the other; each piece is a shape with its holes. */
export interface PartedFilm {
  readonly art: readonly Shape[];
  readonly ground: readonly Shape[];
}

/**
 * Film parted. `shapes`: areas that overlap nowhere, the outer contour of each first; they may reach past the outlines,
 * which lie apart from one another. Only what comes near an outline is clipped: other shapes and holes, most of a pattern,
 * are taken as they are.
 */
export function partedFilm(contours: readonly Contour[], shapes: readonly Shape[]): PartedFilm {
  const outlines = outlinesOf(contours);
  const { near, holes, inside } = outlines.beside(shapes);
  const art = clippedShapes(near, outlines.sheets, 'intersection', chordTolerance);
  const around = clippedShapes(outlines.sheets, near, 'difference', chordTolerance);
  const openings = [...holes, ...inside.flatMap((shape) => shape.contours.slice(1))];
  return { art: [...inside, ...withHolesBack(art, holes)], ground: withHoles(around, openings, inside) };
}

/** The ground with shapes taken out of it, none of which meets its edge; what the holes of shapes hold is ground too. */
function withHoles(
  around: readonly Shape[],
  openings: readonly Contour[],
  inside: readonly Shape[],
): Shape[] {
  const pieces = [...around, ...openings.map((hole): Shape => ({ contours: [hole] }))];
  // The smallest piece that holds a shape is the one it lies in.
  const order = pieces
    .map((piece, i) => ({ piece, i, area: shapeArea(piece), box: hullBox(piece.contours) }))
    .sort((a, b) => a.area - b.area);
  const index = new BoxIndex(order.length, (add) => {
    for (const { box } of order) add(box.minX, box.minY, box.maxX, box.maxY);
  });
  // Of thousands of shapes in one net each is asked about: its edge is gone through once for all of them.
  const insides = new Map<Shape, InsideFinder>();
  const isIn = (piece: Shape, { contours: [outer] }: Shape): boolean => {
    const inside = insides.get(piece) ?? new InsideFinder([piece]);
    insides.set(piece, inside);
    return holdsAll(inside, outer);
  };
  const holes = new Map<number, Contour[]>();
  for (const shape of inside) {
    const outer = shape.contours[0];
    // Its handles may stand out past the edge around it.
    const own = tightBox(shape.contours);
    const around = index
      .meeting(own.minX, own.minY, own.maxX, own.maxY)
      .slice()
      .sort((a, b) => a - b)
      .flatMap((i) => order[i] ?? [])
      .filter(({ box }) => liesIn(own, box));
    const holder = around.length === 1 ? around[0] : around.find(({ piece }) => isIn(piece, shape));
    if (!holder || !outer) continue;
    const known = holes.get(holder.i);
    if (known) known.push(outer);
    else holes.set(holder.i, [outer]);
  }
  return pieces.map(({ contours }, i) => ({ contours: [...contours, ...(holes.get(i) ?? [])] }));
}

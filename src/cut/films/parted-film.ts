// Film within its outlines, parted along the edges of the art into the art and the ground around it.

import { type Box, boxOfPoints, hullBox, liesIn } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { withHolesApart, withHolesBack } from '../../geometry/holes-apart.ts';
import { InsideFinder } from '../../geometry/inside.ts';
import { startOf } from '../../geometry/kept-contour.ts';
import { directed, shapeArea, tightBox } from '../../geometry/measure.ts';
import { distance } from '../../geometry/point.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordCount, pointAt } from '../../geometry/segment.ts';
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
export function partedFilm(outlines: readonly Contour[], shapes: readonly Shape[]): PartedFilm {
  const sheet = outlines.flatMap((contour) => directed({ contours: [contour] }));
  const sheets = sheet.map((contour): Shape => ({ contours: [contour] }));
  const isNear = nearOutline(sheet);
  const isClipped = new Set(shapes.filter(({ contours }) => isNear(hullBox(contours))));
  const onSheet = new InsideFinder(sheets);
  const isOnSheet = (contour: Contour) => holds(onSheet, contour);
  const inside = shapes.filter(
    (shape) => !isClipped.has(shape) && shape.contours.slice(0, 1).some(isOnSheet),
  );
  const near = withHolesApart([...isClipped], isNear);
  const apart = near.holes.filter(isOnSheet);
  const art = clippedShapes(near.shapes, sheets, 'intersection', chordTolerance);
  const around = clippedShapes(sheets, near.shapes, 'difference', chordTolerance);
  const holes = [...apart, ...inside.flatMap(({ contours }) => contours.slice(1))];
  return { art: [...inside, ...withHolesBack(art, apart)], ground: withHoles(around, holes, inside) };
}

/** An outline is boxed in stretches of so much, mm: the box of a long slanting side would come near half the sheet. */
const longest = 2;

/** Whether what lies in a box comes as near to an outline as the box does. */
function nearOutline(outlines: readonly Contour[]): (box: Box) => boolean {
  const boxes = outlines.flatMap(({ segments }) =>
    segments.flatMap((s) => {
      const count = Math.max(8, chordCount(s, chordTolerance), Math.ceil(distance(s.from, s.to) / longest));
      const at = (i: number) => pointAt(s, i / count);
      return Array.from({ length: count }, (_, i) => boxOfPoints([at(i), at(i + 1)]));
    }),
  );
  const index = new BoxIndex(boxes.length, (add) => {
    for (const { minX, minY, maxX, maxY } of boxes) add(minX, minY, maxX, maxY);
  });
  return ({ minX, minY, maxX, maxY }) =>
    index.meeting(minX - 0.1, minY - 0.1, maxX + 0.1, maxY + 0.1).length > 0;
}

/** Whether areas hold an outer contour that their own edge does not cross. */
const holds = (areas: InsideFinder, outer: Contour | undefined): boolean => {
  const node = outer && startOf(outer);
  return node !== undefined && areas.holds(node);
};

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
    return holds(inside, outer);
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

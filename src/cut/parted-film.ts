// Film within its outlines, parted along the edges of the art into the art and the ground around it.
import { type Box, boxOfPoints, hullBox } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import type { Contour, Shape } from '../geometry/contour.ts';
import { holdsPoint } from '../geometry/inside.ts';
import { directed, shapeArea } from '../geometry/measure.ts';
import { clippedShapes } from '../geometry/regions.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import { chordTolerance } from '../geometry/tolerance.ts';

/** One is the negative of the other; each piece is a shape with its holes. */
export interface PartedFilm {
  readonly art: readonly Shape[];
  readonly ground: readonly Shape[];
}

/**
 * Film parted. `shapes`: areas that overlap nowhere, the outer contour of each first; they may reach past the outlines,
 * which lie apart from one another. Only shapes that come near an outline are clipped: the others, most of a pattern,
 * are taken as they are.
 */
export function partedFilm(outlines: readonly Contour[], shapes: readonly Shape[]): PartedFilm {
  const sheet = outlines.flatMap((contour) => directed({ contours: [contour] }));
  const sheets = sheet.map((contour): Shape => ({ contours: [contour] }));
  const isNear = nearOutline(sheet);
  const near = shapes.filter(isNear).map((shape): Shape => ({ contours: directed(shape) }));
  const inside = shapes.filter((shape) => !isNear(shape) && sheets.some((one) => holds(one, shape)));
  const [art, around] = (['intersection', 'difference'] as const).map((operation) =>
    operation === 'intersection'
      ? clippedShapes(near, sheets, operation, chordTolerance)
      : clippedShapes(sheets, near, operation, chordTolerance),
  );
  return { art: [...inside, ...(art ?? [])], ground: withHoles(around ?? [], inside) };
}

/** Whether a shape comes as near to an outline as its box does. */
function nearOutline(outlines: readonly Contour[]): (shape: Shape) => boolean {
  const boxes = outlines.flatMap(({ segments }) =>
    segments.flatMap((s) => {
      const count = Math.max(8, chordCount(s, chordTolerance));
      const at = (i: number) => pointAt(s, i / count);
      return Array.from({ length: count }, (_, i) => boxOfPoints([at(i), at(i + 1)]));
    }),
  );
  const index = new BoxIndex(boxes.length, (add) => {
    for (const { minX, minY, maxX, maxY } of boxes) add(minX, minY, maxX, maxY);
  });
  return ({ contours }) => {
    const { minX, minY, maxX, maxY } = hullBox(contours);
    return index.meeting(minX - 0.1, minY - 0.1, maxX + 0.1, maxY + 0.1).length > 0;
  };
}

/** Whether an area holds a shape that its own edge does not cross. */
const holds = (area: Shape, { contours: [outer] }: Shape): boolean => {
  const node = outer?.segments[0]?.from;
  return node !== undefined && holdsPoint(area, node);
};

const liesIn = (inner: Box, outer: Box): boolean =>
  outer.minX <= inner.minX &&
  outer.minY <= inner.minY &&
  outer.maxX >= inner.maxX &&
  outer.maxY >= inner.maxY;

/** The ground with shapes taken out of it, none of which meets its edge: their holes are pieces of it. */
function withHoles(around: readonly Shape[], inside: readonly Shape[]): Shape[] {
  const pieces = [
    ...around,
    ...inside.flatMap(({ contours }) => contours.slice(1).map((hole): Shape => ({ contours: [hole] }))),
  ];
  // The smallest piece that holds a shape is the one it lies in.
  const order = pieces
    .map((piece, i) => ({ piece, i, area: shapeArea(piece), box: hullBox(piece.contours) }))
    .sort((a, b) => a.area - b.area);
  const holes = new Map<number, Contour[]>();
  for (const shape of inside) {
    const outer = shape.contours[0];
    const own = hullBox(shape.contours);
    const around = order.filter(({ box }) => liesIn(own, box));
    const holder = around.length === 1 ? around[0] : around.find(({ piece }) => holds(piece, shape));
    if (!holder || !outer) continue;
    const known = holes.get(holder.i);
    if (known) known.push(outer);
    else holes.set(holder.i, [outer]);
  }
  return pieces.map(({ contours }, i) => ({ contours: [...contours, ...(holes.get(i) ?? [])] }));
}

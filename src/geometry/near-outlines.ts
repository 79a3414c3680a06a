// What comes near an outline, and so is all that the engine has to cut there: most of a pattern lies away from it.
import { type Box, boxOfPoints, hullBox } from './box.ts';
import { BoxIndex } from './box-index.ts';
import type { Contour, Shape } from './contour.ts';
import { withHolesApart, withHolesBack } from './holes-apart.ts';
import { InsideFinder } from './inside.ts';
import { startOf } from './kept-contour.ts';
import { directed } from './measure.ts';
import { distance } from './point.ts';
import { clippedShapes } from './regions.ts';
import { chordCount, pointAt } from './segment.ts';
import { chordTolerance } from './tolerance.ts';

/** Shapes as they lie to outlines. What lies outside and comes near none is left out. */
export interface BesideOutlines {
  /** Shapes that come near an outline, without their holes that don't. */
  readonly near: readonly Shape[];
  /** Those of their other holes that lie within an outline. */
  readonly holes: readonly Contour[];
  /** Shapes within an outline that come near none. */
  readonly inside: readonly Shape[];
}

/** Outlines, which lie apart from one another, that shapes are held against, counter-clockwise. */
export interface Outlines {
  readonly sheets: readonly Shape[];
  readonly beside: (shapes: readonly Shape[]) => BesideOutlines;
}

/** Outlines made ready to hold shapes against: areas, the outer contour of each first. */
export function outlinesOf(contours: readonly Contour[]): Outlines {
  const sheet = contours.flatMap((contour) => directed({ contours: [contour] }));
  const sheets = sheet.map((contour): Shape => ({ contours: [contour] }));
  const isNear = nearOutline(sheet);
  const onSheet = new InsideFinder(sheets);
  const isOnSheet = (contour: Contour) => holdsAll(onSheet, contour);
  const beside = (shapes: readonly Shape[]): BesideOutlines => {
    const isClipped = new Set(shapes.filter((shape) => isNear(hullBox(shape.contours))));
    const inside = shapes.filter(
      (shape) => !isClipped.has(shape) && shape.contours.slice(0, 1).some(isOnSheet),
    );
    const apart = withHolesApart([...isClipped], isNear);
    return { near: apart.shapes, holes: apart.holes.filter(isOnSheet), inside };
  };
  return { sheets, beside };
}

/** What of shapes that overlap nowhere lies within outlines. */
export function shapesWithin({ sheets, beside }: Outlines, shapes: readonly Shape[]): Shape[] {
  const { near, holes, inside } = beside(shapes);
  const cut = clippedShapes(near, sheets, 'intersection', chordTolerance);
  return [...inside, ...withHolesBack(cut, holes)];
}

/** Whether areas hold an outer contour that their own edge does not cross. */
export const holdsAll = (areas: InsideFinder, outer: Contour | undefined): boolean => {
  const node = outer && startOf(outer);
  return node !== undefined && areas.holds(node);
};

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

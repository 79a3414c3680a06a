// Holes that what is done to an area does not come near: they need not go through the engine, and are most of a net's.
import { type Box, grow, hullBox, liesIn } from './box.ts';
import type { Contour, Shape } from './contour.ts';
import { holdsPoint } from './inside.ts';
import { directed, tightBox } from './measure.ts';
import { chordTolerance } from './tolerance.ts';

/** Shapes without the holes that are far from the work, and those holes. */
export interface HolesApart {
  readonly shapes: readonly Shape[];
  readonly holes: readonly Contour[];
}

/**
 * Each shape keeps its outer contour, and the holes whose boxes are `near`. Outer contours are made to run counter-clockwise and holes
 * clockwise: shapes come back from the engine so, and a hole put back that ran as its outer contour does would count as film.
 */
export function withHolesApart(shapes: readonly Shape[], isNear: (box: Box) => boolean): HolesApart {
  const holes: Contour[] = [];
  const kept = shapes.map((shape): Shape => {
    const [outer, ...own] = directed(shape);
    const near: Contour[] = [];
    for (const hole of own) (isNear(hullBox([hole])) ? near : holes).push(hole);
    return { contours: outer ? [outer, ...near] : [] };
  });
  return { shapes: kept, holes };
}

/** Holes put back, each into the shape that holds it. Needs holes that no edge of the shapes crosses and one of them holds. */
export function withHolesBack(shapes: readonly Shape[], holes: readonly Contour[]): Shape[] {
  const boxes = shapes.map(({ contours }) => grow(hullBox(contours.slice(0, 1)), chordTolerance));
  const added = shapes.map((): Contour[] => []);
  for (const hole of holes) {
    // Its handles may stand out past the edge around it.
    const own = tightBox([hole]);
    const around = [...boxes.keys()].filter((i) => liesIn(own, boxes[i] ?? nowhere));
    const node = hole.segments[0]?.from;
    const holder =
      around.length < 2 ? around[0] : around.find((i) => node && holdsPoint(shapes[i] ?? nothing, node));
    if (holder !== undefined) added[holder]?.push(hole);
  }
  return shapes.map((shape, i) => {
    const own = added[i] ?? [];
    return own.length === 0 ? shape : { contours: [...shape.contours, ...own] };
  });
}

const nothing: Shape = { contours: [] };
const nowhere = hullBox([]);

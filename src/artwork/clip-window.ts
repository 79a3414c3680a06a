// What a clip path or mask leaves, asked of many shapes.
import { hullBox } from '../geometry/box.ts';
import { type BoxIndex, segmentIndex } from '../geometry/box-index.ts';
import type { Shape } from '../geometry/contour.ts';
import { holdsPoint } from '../geometry/inside.ts';
import { norm, type Point } from '../geometry/point.ts';

/** mm: the reader rounds its numbers by so much at a metre and more; what reaches past a window by less is within it. */
const rounding = 1e-4;

/** How far inside a straight edge of a window a point lies, mm; below 0 beyond it. */
type Side = (point: Point) => number;

/** The area that a clip leaves. Most shapes of a drawing lie whole within its frame: only those at its edge need be cut. */
export class ClipWindow {
  readonly shapes: readonly Shape[];
  /** Where the window is a frame: an area that is all on one side of each of its straight edges. */
  readonly #sides: readonly Side[] | undefined;
  #edge: BoxIndex | undefined;

  constructor(shapes: readonly Shape[]) {
    this.shapes = shapes;
    this.#sides = sidesOf(shapes);
  }

  /** How much of a shape lies in the window: `part` where that is to be worked out. */
  leavesOf(shape: Shape): 'all' | 'part' | 'none' {
    const [one, ...others] = this.shapes;
    const start = shape.contours[0]?.segments[0]?.from;
    if (!one || !start) return 'none';
    if (this.#sides) return leftBy(this.#sides, shape);
    const { minX, minY, maxX, maxY } = hullBox(shape.contours);
    // Of areas that may lie over one another nothing is told by their edges.
    if (others.length > 0 || this.#edges().meeting(minX, minY, maxX, maxY).length > 0) return 'part';
    return holdsPoint(one, start) ? 'all' : 'none';
  }

  #edges(): BoxIndex {
    this.#edge ??= segmentIndex(
      this.shapes.flatMap(({ contours }) => contours.flatMap(({ segments }) => segments)),
    );
    return this.#edge;
  }
}

/** Most edges of a frame: a rectangle has four, and of more an index is quicker. */
const mostSides = 8;

/** The sides of a frame; undefined where the window is none, or has bent edges. */
function sidesOf(shapes: readonly Shape[]): readonly Side[] | undefined {
  const [one, ...others] = shapes.flatMap(({ contours }) => contours);
  if (!one || others.length > 0) return undefined;
  const { segments } = one;
  const corners = segments.map(({ from }) => from);
  if (segments.length > mostSides || segments.some(({ kind }) => kind !== 'line')) return undefined;
  const sides = segments.flatMap(({ from, to }): Side[] => {
    const [dx, dy] = [to.x - from.x, to.y - from.y];
    const length = norm(dx, dy);
    return length === 0 ? [] : [({ x, y }) => ((y - from.y) * dx - (x - from.x) * dy) / length];
  });
  for (const way of [1, -1]) {
    const inward = sides.map(
      (side): Side =>
        (point) =>
          way * side(point),
    );
    if (inward.every((side) => corners.every((corner) => side(corner) > -rounding))) return inward;
  }
  return undefined;
}

function leftBy(sides: readonly Side[], { contours }: Shape): 'all' | 'part' | 'none' {
  const points = contours.flatMap(({ segments }) =>
    segments.flatMap((s) => (s.kind === 'line' ? [s.from] : [s.from, s.c1, s.c2])),
  );
  if (sides.some((side) => points.every((point) => side(point) < rounding))) return 'none';
  return sides.every((side) => points.every((point) => side(point) > -rounding)) ? 'all' : 'part';
}

// What a clip path or mask leaves, asked of many shapes.
import { hullBox } from '../geometry/box.ts';
import { type BoxIndex, segmentIndex } from '../geometry/box-index.ts';
import type { Shape } from '../geometry/contour.ts';
import { holdsPoint } from '../geometry/inside.ts';

/** The area that a clip leaves. Most shapes of a drawing lie whole within its frame: only those at its edge need be cut. */
export class ClipWindow {
  readonly shapes: readonly Shape[];
  readonly #edge: BoxIndex;

  constructor(shapes: readonly Shape[]) {
    this.shapes = shapes;
    this.#edge = segmentIndex(shapes.flatMap(({ contours }) => contours.flatMap(({ segments }) => segments)));
  }

  /** How much of a shape lies in the window: `part` where that is to be worked out. */
  leavesOf({ contours }: Shape): 'all' | 'part' | 'none' {
    const [one, ...others] = this.shapes;
    const start = contours[0]?.segments[0]?.from;
    if (!one || !start) return 'none';
    const { minX, minY, maxX, maxY } = hullBox(contours);
    // Of areas that may lie over one another nothing is told by their edges.
    if (others.length > 0 || this.#edge.meeting(minX, minY, maxX, maxY).length > 0) return 'part';
    return holdsPoint(one, start) ? 'all' : 'none';
  }
}

// Adapter: flatbush (ISC), a static index of boxes.
import Flatbush from 'flatbush';
import { boxOfSegment } from './box.ts';
import type { Segment } from './contour.ts';

/** An index of boxes that answers which of them a box meets, and which are nearest to a point. Boxes are numbered in the order they were added. */
export class BoxIndex {
  readonly #tree: Flatbush | undefined;

  /** `each` is called once with `add`, to be called exactly `count` times. */
  constructor(
    count: number,
    each: (add: (minX: number, minY: number, maxX: number, maxY: number) => void) => void,
  ) {
    if (count === 0) return;
    const tree = new Flatbush(count);
    each((minX, minY, maxX, maxY) => {
      tree.add(minX, minY, maxX, maxY);
    });
    tree.finish();
    this.#tree = tree;
  }

  /** Those of the boxes met that are wanted, where that is asked. */
  meeting(
    minX: number,
    minY: number,
    maxX: number,
    maxY: number,
    isWanted?: (box: number) => boolean,
  ): readonly number[] {
    return this.#tree?.search(minX, minY, maxX, maxY, isWanted) ?? [];
  }

  /** The boxes nearest to a point, the nearest first; within a reach, and of those wanted, where that is asked. */
  nearest(
    x: number,
    y: number,
    count: number,
    reach?: number,
    isWanted?: (box: number) => boolean,
  ): readonly number[] {
    return this.#tree?.neighbors(x, y, count, reach, isWanted) ?? [];
  }
}

/** An index of the boxes of segments, numbered as they are given. */
export const segmentIndex = (segments: readonly Segment[]): BoxIndex =>
  new BoxIndex(segments.length, (add) => {
    for (const segment of segments) {
      const { minX, minY, maxX, maxY } = boxOfSegment(segment);
      add(minX, minY, maxX, maxY);
    }
  });

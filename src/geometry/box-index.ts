// Adapter: flatbush (ISC), a static index of boxes.
import Flatbush from 'flatbush';
import { boxOfSegment } from './box.ts';
import type { Segment } from './contour.ts';

/**
 * From so many boxes on they are handed to the tree out of order: its sort takes as long as their square where a hundred thousand stand
 * in a row and a few apart, as short steps along one side of a drawing do. Fewer are sorted in no time.
 */
const manyBoxes = 50_000;

/** An index of boxes that answers which of them a box meets, and which are nearest to a point. Boxes are numbered in the order they were added. */
export class BoxIndex {
  readonly #tree: Flatbush | undefined;
  /** The number of each box of the tree, where they are out of order. */
  readonly #numbers: Int32Array | undefined;

  /** `each` is called once with `add`, to be called exactly `count` times. */
  constructor(
    count: number,
    each: (add: (minX: number, minY: number, maxX: number, maxY: number) => void) => void,
  ) {
    if (count === 0) return;
    const tree = new Flatbush(count);
    if (count < manyBoxes)
      each((minX, minY, maxX, maxY) => {
        tree.add(minX, minY, maxX, maxY);
      });
    else this.#numbers = addedOutOfOrder(tree, count, each);
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
    return this.#numbered(this.#tree?.search(minX, minY, maxX, maxY, this.#asked(isWanted)) ?? []);
  }

  /** The boxes nearest to a point, the nearest first; within a reach, and of those wanted, where that is asked. */
  nearest(
    x: number,
    y: number,
    count: number,
    reach?: number,
    isWanted?: (box: number) => boolean,
  ): readonly number[] {
    return this.#numbered(this.#tree?.neighbors(x, y, count, reach, this.#asked(isWanted)) ?? []);
  }

  #numbered(found: number[]): readonly number[] {
    const numbers = this.#numbers;
    return numbers ? found.map((i) => numbers[i] ?? 0) : found;
  }

  #asked(isWanted?: (box: number) => boolean): ((box: number) => boolean) | undefined {
    const numbers = this.#numbers;
    return numbers && isWanted ? (i) => isWanted(numbers[i] ?? 0) : isWanted;
  }
}

/** Boxes added at steps of the golden section, each once; gives their numbers. */
function addedOutOfOrder(
  tree: Flatbush,
  count: number,
  each: (add: (minX: number, minY: number, maxX: number, maxY: number) => void) => void,
): Int32Array {
  const boxes = new Float64Array(4 * count);
  let end = 0;
  each((minX, minY, maxX, maxY) => {
    boxes[end++] = minX;
    boxes[end++] = minY;
    boxes[end++] = maxX;
    boxes[end++] = maxY;
  });
  const numbers = new Int32Array(count);
  const step = stepThrough(count);
  for (let i = 0; i < count; i++) {
    const number = (i * step) % count;
    const at = 4 * number;
    numbers[i] = number;
    tree.add(boxes[at] ?? 0, boxes[at + 1] ?? 0, boxes[at + 2] ?? 0, boxes[at + 3] ?? 0);
  }
  return numbers;
}

/** A step about the golden section of a count that comes to each number below it once: it has no divisor in common with it. */
function stepThrough(count: number): number {
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  let step = Math.round(count * ((Math.sqrt(5) - 1) / 2));
  while (divisor(count, step) > 1) step++;
  return step;
}

/** An index of the boxes of segments, numbered as they are given. */
export const segmentIndex = (segments: readonly Segment[]): BoxIndex =>
  new BoxIndex(segments.length, (add) => {
    for (const segment of segments) {
      const { minX, minY, maxX, maxY } = boxOfSegment(segment);
      add(minX, minY, maxX, maxY);
    }
  });

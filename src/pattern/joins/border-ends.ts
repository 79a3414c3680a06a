// Where film begins and ends along a border, in order, so that its like on the other side is found at once.
import type { Point } from '../../geometry/point.ts';
import type { Stretch } from '../film/film-along.ts';

export interface LikeEnd {
  readonly at: number;
  readonly direction: Point;
  /** Whether film begins here or ends. */
  readonly begins: boolean;
}

/** The ends of stretches that lie apart, in order along their line. */
export class EndsInRow {
  readonly all: readonly LikeEnd[];
  readonly #begins: readonly LikeEnd[];
  readonly #ends: readonly LikeEnd[];

  constructor(stretches: readonly Stretch[]) {
    this.#begins = stretches.map(({ from }) => ({ ...from, begins: true }));
    this.#ends = stretches.map(({ to }) => ({ ...to, begins: false }));
    this.all = this.#begins.flatMap((begin, i) => [begin, this.#ends[i] ?? begin]);
  }

  /** The nearest end of the same kind; of two as near the first. */
  nearest({ at, begins }: LikeEnd): LikeEnd | undefined {
    const among = begins ? this.#begins : this.#ends;
    const next = firstFrom(among, at);
    const [before, after] = [among[next - 1], among[next]];
    if (!before || !after) return before ?? after;
    return Math.abs(before.at - at) <= Math.abs(after.at - at) ? before : after;
  }

  /** All ends no further than so much from a place. */
  within(place: number, reach: number): readonly LikeEnd[] {
    const found: LikeEnd[] = [];
    for (let i = firstFrom(this.all, place - reach); i < this.all.length; i++) {
      const end = this.all[i];
      if (!end || end.at > place + reach) break;
      found.push(end);
    }
    return found;
  }

  /** The end right at a place, if one is there. */
  at(place: number): LikeEnd | undefined {
    return this.within(place, 0)[0];
  }
}

/** The number of the first end that lies at a place or past it. */
function firstFrom(ends: readonly LikeEnd[], place: number): number {
  let [low, high] = [0, ends.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ends[middle]?.at ?? Infinity) < place) low = middle + 1;
    else high = middle;
  }
  return low;
}

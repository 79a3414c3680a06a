// How often rings go around places. Of a ring with many sides those that count for a place are looked up: ten thousand holes in one
// outline of as many corners would otherwise be gone through a hundred million times.
import { BoxIndex } from './box-index.ts';
import type { GridPoint, GridRing } from './grid-ring.ts';

/** A ring of fewer sides is gone through. */
const leastIndexed = 64;

export class RingsAround {
  readonly #rings: readonly GridRing[];
  readonly #sides = new Map<number, BoxIndex>();

  constructor(rings: readonly GridRing[]) {
    this.#rings = rings;
  }

  /** How often a ring goes around a place that it does not pass through, counter-clockwise with y up. */
  turnsOf(number: number, { x, y }: GridPoint): number {
    const ring = this.#rings[number] ?? [];
    let count = 0;
    const take = (p: GridPoint, q: GridPoint) => {
      if (p.y <= y === q.y <= y) return;
      const beside = (q.x - p.x) * (y - p.y) - (x - p.x) * (q.y - p.y);
      if (q.y > p.y && beside > 0) count++;
      else if (q.y < p.y && beside < 0) count--;
    };
    if (ring.length < leastIndexed)
      ring.forEach((p, side) => {
        take(p, endOf(ring, side) ?? p);
      });
    else
      for (const side of this.#sidesOf(number, ring).meeting(x, y, Number.MAX_VALUE, y)) {
        const [p, q] = [ring[side], endOf(ring, side)];
        if (p && q) take(p, q);
      }
    return count;
  }

  #sidesOf(number: number, ring: GridRing): BoxIndex {
    const known = this.#sides.get(number);
    if (known) return known;
    const index = new BoxIndex(ring.length, (add) => {
      ring.forEach((p, side) => {
        const q = endOf(ring, side) ?? p;
        add(Math.min(p.x, q.x), Math.min(p.y, q.y), Math.max(p.x, q.x), Math.max(p.y, q.y));
      });
    });
    this.#sides.set(number, index);
    return index;
  }
}

const endOf = (ring: GridRing, side: number): GridPoint | undefined => ring[side + 1] ?? ring[0];

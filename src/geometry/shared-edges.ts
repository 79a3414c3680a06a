// Edges that two rings share, each on its own side of them.
import type { GridPoint, GridRing } from './grid-ring.ts';

/** Coordinates lie within this, either way, so that two of them make one whole number that a double tells exactly. */
const reach = 2 ** 25;

/** A number for a place on the grid. */
const placeOf = ({ x, y }: GridPoint): number => (y + reach) * 2 * reach + x + reach;

/** Whether two of the rings, or one and itself, go along an edge both ways, from end to end. */
export function shareAnEdge(rings: readonly GridRing[]): boolean {
  // Of edges that go upwards, where they end, by where they start; where several start, which is seldom, the others.
  const ends = new Map<number, number>();
  const others = new Map<number, Set<number>>();
  for (const ring of rings) {
    let p = ring.at(-1);
    for (const q of ring) {
      if (p && isUpwards(p, q)) {
        const from = placeOf(p);
        if (ends.has(from)) others.set(from, (others.get(from) ?? new Set()).add(placeOf(q)));
        else ends.set(from, placeOf(q));
      }
      p = q;
    }
  }
  const goesUp = (p: GridPoint, q: GridPoint): boolean => {
    const [from, to] = [placeOf(p), placeOf(q)];
    return ends.get(from) === to || others.get(from)?.has(to) === true;
  };
  return rings.some((ring) =>
    ring.some((q, i) => {
      const p = ring[i === 0 ? ring.length - 1 : i - 1];
      return p !== undefined && isUpwards(q, p) && goesUp(q, p);
    }),
  );
}

const isUpwards = (p: GridPoint, q: GridPoint): boolean => p.y < q.y || (p.y === q.y && p.x < q.x);

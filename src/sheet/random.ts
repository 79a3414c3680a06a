// Chance that is the same on every run: a search that tries at random must give the same files twice.

/** Numbers in [0, 1) from a seed. */
export type Random = () => number;

/** Source: Mulberry32 by Tommy Ettinger (public domain), from memory; good enough to try places, no more. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** The same items in a random order. */
export function shuffled<T>(items: readonly T[], random: Random): T[] {
  const order = [...items];
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    const [a, b] = [order[i] as T, order[j] as T];
    order[i] = b;
    order[j] = a;
  }
  return order;
}

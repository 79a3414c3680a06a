// Sets that can be joined, two things at a time.

/** Things by number, each at first a set of its own. Source: union-find (R. E. Tarjan, 1975; from memory). */
export class Joined {
  readonly #parent: number[];
  constructor(size: number) {
    this.#parent = Array.from({ length: size }, (_, i) => i);
  }
  root(of: number): number {
    let at = of;
    for (;;) {
      const up = this.#parent[at] ?? at;
      if (up === at) return at;
      const next = this.#parent[up] ?? up;
      this.#parent[at] = next;
      at = next;
    }
  }
  join(a: number, b: number): void {
    this.#parent[this.root(a)] = this.root(b);
  }
}

/** Numbers below `count` in sets, joined two by two; each set, and the sets by their least, in rising order. */
export function setsJoined(
  count: number,
  each: (join: (a: number, b: number) => void) => void,
): readonly (readonly number[])[] {
  const joined = new Joined(count);
  each((a, b) => joined.join(a, b));
  const sets = new Map<number, number[]>();
  for (let i = 0; i < count; i++) {
    const root = joined.root(i);
    const set = sets.get(root);
    if (set) set.push(i);
    else sets.set(root, [i]);
  }
  return [...sets.values()];
}

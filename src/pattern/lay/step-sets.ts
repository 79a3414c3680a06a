// Sets of things that repeat by a lattice: which hang together, and at which copy of one another.

/** Whole steps of a lattice. */
export interface Steps {
  readonly i: number;
  readonly j: number;
}

const none: Steps = { i: 0, j: 0 };
const sum = (a: Steps, b: Steps): Steps => ({ i: a.i + b.i, j: a.j + b.j });
const less = (a: Steps, b: Steps): Steps => ({ i: a.i - b.i, j: a.j - b.j });

/**
 * Sets that are joined two things at a time, each thing with the copy of it that belongs to its set. A set that is
 * joined to another copy of itself goes on for ever: it is a net.
 * Source: union-find with offsets to the root (R. E. Tarjan, 1975, with potentials; from memory).
 */
export class StepSets {
  readonly #parent: Int32Array;
  readonly #size: Int32Array;
  /** Of each thing, its copy as seen from its parent. */
  readonly #offset: Steps[];
  readonly #nets = new Set<number>();

  constructor(count: number) {
    this.#parent = Int32Array.from({ length: count }, (_, k) => k);
    this.#size = new Int32Array(count).fill(1);
    this.#offset = Array.from({ length: count }, () => none);
  }

  /** The root of a thing's set, and which copy of the thing stands with the root as it is. */
  find(thing: number): { readonly root: number; readonly at: Steps } {
    const path: number[] = [];
    let top = thing;
    for (let up = this.#parent[top] ?? top; up !== top; up = this.#parent[top] ?? top) {
      path.push(top);
      top = up;
    }
    let at = none;
    for (const k of path.reverse()) {
      at = sum(at, this.#offset[k] ?? none);
      this.#offset[k] = at;
      this.#parent[k] = top;
    }
    return { root: top, at };
  }

  /** Join a thing with the copy of another that is so many steps away. */
  join(thing: number, other: number, away: Steps): void {
    const [a, b] = [this.find(thing), this.find(other)];
    // Seen from the first root, the second thing stands at a.at + away, and its own root that less b.at.
    const apart = less(sum(a.at, away), b.at);
    if (a.root === b.root) {
      if (apart.i !== 0 || apart.j !== 0) this.#nets.add(a.root);
      return;
    }
    const isLarger = (this.#size[a.root] ?? 1) >= (this.#size[b.root] ?? 1);
    const [root, under] = isLarger ? [a.root, b.root] : [b.root, a.root];
    this.#parent[under] = root;
    this.#offset[under] = isLarger ? apart : less(none, apart);
    this.#size[root] = (this.#size[root] ?? 1) + (this.#size[under] ?? 1);
    if (this.#nets.delete(under)) this.#nets.add(root);
  }

  /** Whether the set of a root goes on for ever. */
  isNet(root: number): boolean {
    return this.#nets.has(root);
  }
}

// How much a drawing would hold with every copy in it drawn: found before any of them is.
import type { XmlElement } from '../drawing/xml.ts';

/** Copies within copies, at most. */
const deepest = 256;

/** Elements whose content is shown only where it is copied. */
const unshown: ReadonlySet<string> = new Set(['defs', 'symbol', 'clipPath', 'pattern', 'mask', 'marker']);

/** Counts what the elements of a drawing hold, and what their copies add to it. */
export class CopyCount {
  readonly #open: XmlElement[] = [];
  /** What the element of an id holds, copies apart, and the ids of those it copies. */
  readonly #own = new Map<string, number>();
  readonly #inside = new Map<string, string[]>();
  /** The ids of what the drawing copies where it is shown. */
  readonly #shown: string[] = [];

  open(element: XmlElement, points: number): void {
    this.#open.push(element);
    const { name, attributes } = element;
    const within = this.#open.flatMap(({ attributes: { id } }) => id ?? []);
    for (const id of within) this.#own.set(id, (this.#own.get(id) ?? 0) + points);
    const reference = attributes.href ?? attributes['xlink:href'];
    if (name !== 'use' || !reference?.startsWith('#')) return;
    const target = reference.slice(1);
    for (const id of within) {
      const copied = this.#inside.get(id) ?? [];
      copied.push(target);
      this.#inside.set(id, copied);
    }
    if (!this.#open.some((one) => unshown.has(one.name))) this.#shown.push(target);
  }

  close(): void {
    this.#open.pop();
  }

  /** Points that all the copies add, up to `most`: a copy of itself is counted once, copies too deep as too many. */
  added(most: number): number {
    const known = new Map<string, number>();
    const weight = (id: string, depth: number): number => {
      const found = known.get(id);
      if (found !== undefined) return found;
      if (depth > deepest) return most;
      known.set(id, 0);
      let sum = this.#own.get(id) ?? 0;
      for (const target of this.#inside.get(id) ?? []) sum = Math.min(most, sum + weight(target, depth + 1));
      known.set(id, sum);
      return sum;
    };
    return this.#shown.reduce((sum, target) => Math.min(most, sum + weight(target, 0)), 0);
  }
}

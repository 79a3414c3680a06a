// How much a drawing would hold with every copy in it drawn: found before any of them is.
import type { XmlElement } from '../../drawing/xml.ts';

/** Copies within copies, at most. */
const deepest = 256;

/** Elements whose content is shown only where it is copied. */
const unshown: ReadonlySet<string> = new Set(['defs', 'symbol', 'clipPath', 'pattern', 'mask', 'marker']);

/** Attributes that may name a clip path, a mask, a pattern or a marker. */
const naming = ['clip-path', 'mask', 'fill', 'stroke', 'marker-start', 'marker-mid', 'marker-end', 'style'];

/** Counts what the elements of a drawing hold, and what their copies add to it. */
export class CopyCount {
  readonly #open: XmlElement[] = [];
  /** What the element of an id holds, copies apart, and the ids of those it copies. */
  readonly #own = new Map<string, number>();
  readonly #inside = new Map<string, string[]>();
  /** What the clip paths, masks, patterns and markers of an id name in their turn. */
  readonly #named = new Map<string, string[]>();
  /** The ids of what the drawing copies where it is shown. */
  readonly #shown: string[] = [];

  open(element: XmlElement, points: number): void {
    this.#open.push(element);
    const { name, attributes } = element;
    const within = this.#open.flatMap(({ attributes: { id } }) => id ?? []);
    for (const id of within) this.#own.set(id, (this.#own.get(id) ?? 0) + points);
    if (this.#open.some((one) => unshown.has(one.name)))
      for (const id of within) for (const target of namedBy(attributes)) addTo(this.#named, id, target);
    const reference = attributes.href ?? attributes['xlink:href'];
    if (name !== 'use' || !reference?.startsWith('#')) return;
    const target = reference.slice(1);
    for (const id of within) addTo(this.#inside, id, target);
    if (!this.#open.some((one) => unshown.has(one.name))) this.#shown.push(target);
  }

  close(): void {
    this.#open.pop();
  }

  /** Points that all the copies add, up to `most`: a copy of itself is counted once, copies too deep as too many. */
  added(most: number): number {
    const weight = weigher((id) => this.#own.get(id) ?? 0, this.#inside, most);
    return this.#shown.reduce((sum, target) => Math.min(most, sum + weight(target)), 0);
  }

  /** Most clip paths, masks, patterns and markers that one of them needs, each as often as it is named, up to `most`. */
  nested(most: number): number {
    const weight = weigher(() => 1, this.#named, most);
    return [...this.#named.keys()].reduce((largest, id) => Math.max(largest, weight(id)), 0);
  }
}

const namedBy = (attributes: XmlElement['attributes']): readonly string[] =>
  naming.flatMap((key) =>
    [...(attributes[key]?.matchAll(/url\(\s*["']?#([^"')]+)/g) ?? [])].flatMap(([, id]) => id ?? []),
  );

function addTo(lists: Map<string, string[]>, id: string, target: string): void {
  const list = lists.get(id) ?? [];
  list.push(target);
  lists.set(id, list);
}

/** What an id weighs by itself and with all that it needs, each as often as it is needed, up to `most`. */
function weigher(
  own: (id: string) => number,
  needed: ReadonlyMap<string, readonly string[]>,
  most: number,
): (id: string) => number {
  const known = new Map<string, number>();
  const weight = (id: string, depth: number): number => {
    const found = known.get(id);
    if (found !== undefined) return found;
    if (depth > deepest) return most;
    known.set(id, 0);
    let sum = own(id);
    for (const target of needed.get(id) ?? []) sum = Math.min(most, sum + weight(target, depth + 1));
    known.set(id, sum);
    return sum;
  };
  return (id) => weight(id, 0);
}

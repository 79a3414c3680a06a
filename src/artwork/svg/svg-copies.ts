// How much a drawing would hold with every copy in it drawn: found before any of them is.
import type { XmlElement } from '../../drawing/xml.ts';

/** Copies within copies, at most. */
const deepest = 256;

/** Elements whose content is shown only where it is copied. */
const unshown: ReadonlySet<string> = new Set(['defs', 'symbol', 'clipPath', 'pattern', 'mask', 'marker']);

/** Attributes that may name a clip path, a mask, a pattern or a marker. */
const naming = ['clip-path', 'mask', 'fill', 'stroke', 'marker-start', 'marker-mid', 'marker-end', 'style'];

/** Properties that name a marker. */
const markers = ['marker', 'marker-start', 'marker-mid', 'marker-end'];

/** A marker as it is named: drawn at each point of a line, or at one of its ends. */
interface Marker {
  readonly id: string;
  readonly isAtEach: boolean;
}

/** Elements that bear markers. */
const marked: ReadonlySet<string> = new Set(['path', 'line', 'polyline', 'polygon']);

interface Needed {
  readonly id: string;
  readonly times: number;
}

/** Counts what the elements of a drawing hold, and what their copies add to it. */
export class CopyCount {
  readonly #open: XmlElement[] = [];
  /** What the element of an id holds, copies apart, and the ids of those it copies. */
  readonly #own = new Map<string, number>();
  readonly #inside = new Map<string, Needed[]>();
  /** What the clip paths, masks, patterns and markers of an id name in their turn. */
  readonly #named = new Map<string, Needed[]>();
  /** The ids of what the drawing copies where it is shown. */
  readonly #shown: Needed[] = [];
  /** The markers that open elements name, which those in them bear too. */
  readonly #markers: (readonly Marker[])[] = [];
  /** Points of all lines that may bear markers. */
  #points = 0;

  /** `points`: of its own path or line. */
  open(element: XmlElement, points: number): void {
    this.#open.push(element);
    const { name, attributes } = element;
    // Those around it too where it names others in their place: no fewer than are drawn.
    const borne = [...(this.#markers.at(-1) ?? []), ...markersIn(attributes)];
    this.#markers.push(borne);
    const within = this.#open.flatMap(({ attributes: { id } }) => id ?? []);
    for (const id of within) this.#own.set(id, (this.#own.get(id) ?? 0) + 1 + points);
    if (this.#open.some((one) => unshown.has(one.name)))
      for (const id of within)
        for (const target of namedBy(attributes)) addTo(this.#named, id, { id: target, times: 1 });
    const reference = attributes.href ?? attributes['xlink:href'];
    const copied = name === 'use' && reference?.startsWith('#') ? [{ id: reference.slice(1), times: 1 }] : [];
    const isMarked = marked.has(name);
    if (isMarked) this.#points += points;
    const drawn = isMarked ? borne.map(({ id, isAtEach }) => ({ id, times: isAtEach ? points : 1 })) : [];
    const needed = [...copied, ...drawn];
    for (const one of needed) for (const id of within) addTo(this.#inside, id, one);
    if (!this.#open.some((one) => unshown.has(one.name))) this.#shown.push(...needed);
  }

  close(): void {
    this.#open.pop();
    this.#markers.pop();
  }

  /**
   * Points that all the copies add, up to `most`: a copy of itself is counted once, copies too deep as too many.
   * `css`: what style sheets say; any line may bear the markers that they name.
   */
  added(most: number, css: string): number {
    const weight = weigher((id) => this.#own.get(id) ?? 0, this.#inside, most);
    const copied = this.#shown.reduce((sum, { id, times }) => Math.min(most, sum + times * weight(id)), 0);
    return markersOf(css).reduce(
      (sum, { id, isAtEach }) =>
        Math.min(most, sum + (isAtEach ? this.#points + copied : this.#own.size) * weight(id)),
      copied,
    );
  }

  /** Most clip paths, masks, patterns and markers that one of them needs, each as often as it is named, up to `most`. */
  nested(most: number): number {
    const weight = weigher(() => 1, this.#named, most);
    return [...this.#named.keys()].reduce((largest, id) => Math.max(largest, weight(id)), 0);
  }
}

/** The markers that an element names itself. */
const markersIn = (attributes: XmlElement['attributes']): readonly Marker[] => [
  ...markers.flatMap((key) => markersNamed(key, attributes[key])),
  ...markersOf(attributes.style ?? ''),
];

/** The markers that declarations name. */
const markersOf = (css: string): readonly Marker[] =>
  [...css.matchAll(/(?<![\w-])(marker(?:-start|-mid|-end)?)\s*:([^:;{}]*)/g)].flatMap(([, key = '', value]) =>
    markersNamed(key, value),
  );

const markersNamed = (key: string, value: string | undefined): readonly Marker[] =>
  idsIn(value).map((id) => ({ id, isAtEach: key === 'marker' || key === 'marker-mid' }));

/** The ids that `url(#id)` names. */
const idsIn = (text: string | undefined): readonly string[] =>
  [...(text?.matchAll(/url\(\s*["']?#([^"')]+)/g) ?? [])].flatMap(([, id]) => id ?? []);

const namedBy = (attributes: XmlElement['attributes']): readonly string[] =>
  naming.flatMap((key) => idsIn(attributes[key]));

function addTo(lists: Map<string, Needed[]>, id: string, target: Needed): void {
  const list = lists.get(id) ?? [];
  list.push(target);
  lists.set(id, list);
}

/** What an id weighs by itself and with all that it needs, each as often as it is needed, up to `most`. */
function weigher(
  own: (id: string) => number,
  needed: ReadonlyMap<string, readonly Needed[]>,
  most: number,
): (id: string) => number {
  const known = new Map<string, number>();
  const weight = (id: string, depth: number): number => {
    const found = known.get(id);
    if (found !== undefined) return found;
    if (depth > deepest) return most;
    known.set(id, 0);
    let sum = own(id);
    for (const { id: target, times } of needed.get(id) ?? [])
      sum = Math.min(most, sum + times * weight(target, depth + 1));
    known.set(id, sum);
    return sum;
  };
  return (id) => weight(id, 0);
}

// Landmarks of a drawing: places that look the same wherever the pattern repeats, told apart by what is around them.

import { BoxIndex } from '../../geometry/box-index.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { norm } from '../../geometry/point.ts';
import { directionAt } from '../../geometry/segment.ts';

/** A place with a kind. Landmarks of one kind look alike; `reach` is how far around the place that was looked at, mm. */
export interface Landmark extends Point {
  readonly kind: number;
  /** Which contour of the drawing it belongs to. */
  readonly contour: number;
  readonly reach: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
}

/** Landmarks in columns: a large drawing has hundreds of thousands. */
export class Landmarks {
  /** Eight a landmark: its place, kind and contour, then its reach. */
  readonly #numbers: number[] = [];

  get length(): number {
    return this.#numbers.length / 8;
  }

  add({ x, y, kind, contour, reach: { minX, minY, maxX, maxY } }: Landmark): void {
    this.#numbers.push(x, y, kind, contour, minX, minY, maxX, maxY);
  }

  at(i: number): Landmark {
    const number = (k: number): number => this.#numbers[8 * i + k] ?? 0;
    return {
      x: number(0),
      y: number(1),
      kind: number(2),
      contour: number(3),
      reach: { minX: number(4), minY: number(5), maxX: number(6), maxY: number(7) },
    };
  }
}

interface Layer {
  readonly shapes: readonly Shape[];
}

/** Landmarks stand for the same thing where each figure of their description differs by less than this, mm. */
const alike = 0.05;

/** Figures fall into boxes this wide: many times what may differ, so that few stand near a border. */
const boxWidth = 8 * alike;

/** Figures of a description that may stand near a border before some of its boxes are no longer looked into. */
const mostDoubtful = 5;

/** Gives one number to descriptions that are alike. The same descriptions in the same order get the same numbers. */
class Kinds {
  /** Of each kind its name, where its figures begin, and the next kind of the same hash: in columns, for there are as many as curves. */
  readonly #name: string[] = [];
  readonly #begins: number[] = [];
  readonly #after: number[] = [];
  readonly #figures: number[] = [];
  /** The first kind by the hash of the box that its description falls into: what differs after all is told by its name and figures. */
  readonly #chain = new Map<number, number>();
  readonly #names = new Map<string, number>();
  readonly #first: number;

  /** `first`: the number that the first description gets. */
  constructor(first: number) {
    this.#first = first;
  }

  get next(): number {
    return this.#first + this.#name.length;
  }

  kindOf(name: string, figures: readonly number[]): number {
    const { start, boxes } = this.#boxesOf(name, figures);
    const home = boxes.reduce(mixed, start);
    const found = this.#found(home, name, figures) ?? this.#foundBeside(start, boxes, name, figures);
    return this.#first + (found ?? this.#added(home, name, figures));
  }

  #added(home: number, name: string, figures: readonly number[]): number {
    const own = this.#name.length;
    this.#name.push(name);
    this.#begins.push(this.#figures.length);
    this.#figures.push(...figures);
    this.#after.push(none);
    const begin = this.#chain.get(home);
    if (begin === undefined) this.#chain.set(home, own);
    else {
      let end = begin;
      for (let next = this.#after[end] ?? none; next !== none; next = this.#after[end] ?? none) end = next;
      this.#after[end] = own;
    }
    return own;
  }

  /** The box that a description falls into, and the hash of its name. */
  #boxesOf(name: string, figures: readonly number[]): { readonly start: number; readonly boxes: number[] } {
    let start = this.#names.get(name);
    if (start === undefined) {
      start = hashOf(name);
      this.#names.set(name, start);
    }
    return { start, boxes: figures.map((figure) => Math.round(figure / boxWidth)) };
  }

  #found(key: number, name: string, figures: readonly number[]): number | undefined {
    for (let kind = this.#chain.get(key) ?? none; kind !== none; kind = this.#after[kind] ?? none)
      if (this.#name[kind] === name && this.#isAlike(kind, figures)) return kind;
    return undefined;
  }

  #isAlike(kind: number, figures: readonly number[]): boolean {
    const begins = this.#begins[kind] ?? 0;
    for (let i = 0; i < figures.length; i++)
      if (!(Math.abs((figures[i] ?? 0) - (this.#figures[begins + i] ?? 0)) <= alike)) return false;
    return true;
  }

  /** The same in the boxes beside its own that one alike may have fallen into. */
  #foundBeside(start: number, boxes: number[], name: string, figures: readonly number[]): number | undefined {
    // Asked of every curve of a drawing: which figures are doubtful is a bit of each, and no list is made.
    let doubtful = 0;
    let count = 0;
    for (let i = 0; i < figures.length && count < mostDoubtful; i++) {
      if (Math.abs(beyondBox(figures, boxes, i)) * boxWidth <= boxWidth / 2 - alike) continue;
      doubtful |= 1 << i;
      count += 1;
    }
    for (let mask = 1; mask < 1 << count; mask++) {
      let key = start;
      let bit = 1;
      for (let i = 0; i < boxes.length; i++) {
        let box = boxes[i] ?? 0;
        if (doubtful & (1 << i)) {
          if (mask & bit) box += Math.sign(beyondBox(figures, boxes, i));
          bit <<= 1;
        }
        key = mixed(key, box);
      }
      const found = this.#found(key, name, figures);
      if (found !== undefined) return found;
    }
    return undefined;
  }
}

/** How far a figure lies from the middle of its box, in boxes. */
const beyondBox = (figures: readonly number[], boxes: readonly number[], i: number): number =>
  (figures[i] ?? 0) / boxWidth - (boxes[i] ?? 0);

/** Where a chain of kinds ends. */
const none = -1;

/** Mixes one more whole number into a hash. Source: FNV-1a, public domain, from memory. */
const mixed = (hash: number, value: number): number => Math.imul(hash ^ (value | 0), 0x01000193);

function hashOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = mixed(hash, name.charCodeAt(i));
  return hash;
}

/** What tells a drawing's places apart where copies are drawn alike: its curves, its nodes, and how contours are grouped. */
export function drawnLandmarks(layers: readonly Layer[]): Landmarks {
  const found = new Landmarks();
  let first = 0;
  for (const addLandmarks of [curveLandmarks, nodeLandmarks, groupLandmarks]) {
    const kinds = new Kinds(first);
    addLandmarks(layers, kinds, found);
    first = kinds.next;
  }
  return found;
}

/** The lines and curves of a drawing's contours, each by where it starts, told apart by how it runs on. */
function curveLandmarks(layers: readonly Layer[], kinds: Kinds, found: Landmarks): void {
  for (const { layer, contour, index } of contoursOf(layers))
    for (const s of contour.segments) {
      const { x, y } = s.from;
      const [toX, toY] = [s.to.x - x, s.to.y - y];
      const figures =
        s.kind === 'line' ? [toX, toY] : [s.c1.x - x, s.c1.y - y, s.c2.x - x, s.c2.y - y, toX, toY];
      const kind = kinds.kindOf(`${layer}${s.kind}`, figures);
      found.add({ x, y, kind, contour: index, reach: reachOf(figures) });
    }
}

/** The box around a place and around those whose x and y, from it, stand in turn. */
function reachOf(figures: readonly number[]): Landmark['reach'] {
  let [minX, minY, maxX, maxY] = [0, 0, 0, 0];
  for (let i = 0; i < figures.length; i += 2) {
    const [x, y] = [figures[i] ?? 0, figures[i + 1] ?? 0];
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** A node shows its two directions however little of its curves shows, mm; and what a whole difference of them counts, mm. */
const nodeReach = 0.06;
const directionWeight = 0.6;

/** The nodes of a drawing, told apart by the directions that meet there: they show even where the rest is cut away. */
function nodeLandmarks(layers: readonly Layer[], kinds: Kinds, found: Landmarks): void {
  const reach = { minX: -nodeReach, minY: -nodeReach, maxX: nodeReach, maxY: nodeReach };
  for (const { layer, contour, index } of contoursOf(layers)) {
    let before = contour.segments.at(-1);
    for (const next of contour.segments) {
      if (!before) break;
      const [into, on] = [directionAt(before, 1), directionAt(next, 0)];
      const [one, other] = [into, on].map(({ x, y }) => directionWeight / (norm(x, y) || 1));
      const figures = [into.x * (one ?? 0), into.y * (one ?? 0), on.x * (other ?? 0), on.y * (other ?? 0)];
      const kind = kinds.kindOf(`${layer}${before.kind}${next.kind}`, figures);
      found.add({ x: next.from.x, y: next.from.y, kind, contour: index, reach });
      before = next;
    }
  }
}

/** How many neighbours tell a contour's place from that of others like it. */
const neighbours = 2;

/**
 * The middles of a drawing's contours, told apart by their size and by where their nearest neighbours stand: what there is
 * to go by where one motif is strewn over the period again and again.
 */
function groupLandmarks(layers: readonly Layer[], kinds: Kinds, found: Landmarks): void {
  const middles = contoursOf(layers).map(({ layer, contour, index }) => {
    const { minX, minY, maxX, maxY } = tightBox([contour]);
    const size = { x: maxX - minX, y: maxY - minY };
    return { x: (minX + maxX) / 2, y: (minY + maxY) / 2, size, layer, index };
  });
  const tree = new BoxIndex(middles.length, (add) => {
    for (const { x, y } of middles) add(x, y, x, y);
  });
  middles.forEach(({ x, y, size, layer, index }, own) => {
    const near = tree
      .nearest(x, y, neighbours + 1)
      .filter((other) => other !== own)
      .flatMap((other) => middles[other] ?? [])
      .slice(0, neighbours);
    if (near.length < neighbours) return;
    const away = near.map((other) => ({ x: other.x - x, y: other.y - y, size: other.size }));
    // Two as far away may come in either order.
    away.sort((p, q) => p.x - q.x || p.y - q.y);
    const figures = [size, ...away, ...away.map((other) => other.size)].flatMap((p) => [p.x, p.y]);
    const reach = Math.max(...away.map((p) => norm(p.x, p.y) + Math.max(p.size.x, p.size.y)));
    const kind = kinds.kindOf(`${layer}`, figures);
    found.add({
      x,
      y,
      kind,
      contour: index,
      reach: { minX: -reach, minY: -reach, maxX: reach, maxY: reach },
    });
  });
}

interface NumberedContour {
  readonly layer: number;
  readonly contour: Contour;
  readonly index: number;
}

function contoursOf(layers: readonly Layer[]): readonly NumberedContour[] {
  // As lines across the drawing have them.
  let index = 1;
  return layers.flatMap(({ shapes }, layer) =>
    shapes.flatMap(({ contours }) => contours.map((contour) => ({ layer, contour, index: index++ }))),
  );
}

// Landmarks of a drawing: places that look the same wherever the pattern repeats, told apart by what is around them.
import { boxOfPoints } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import type { Contour, Segment, Shape } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { directionAt } from '../geometry/segment.ts';

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

interface Layer {
  readonly shapes: readonly Shape[];
}

/** Landmarks stand for the same thing where each figure of their description differs by less than this, mm. */
const alike = 0.05;

/** Figures fall into boxes this wide: many times what may differ, so that few stand near a border. */
const boxWidth = 8 * alike;

/** Figures of a description that may stand near a border before some of its boxes are no longer looked into. */
const mostDoubtful = 5;

interface Known {
  readonly name: string;
  readonly kind: number;
  readonly figures: readonly number[];
}

/** Gives one number to descriptions that are alike. The same descriptions in the same order get the same numbers. */
class Kinds {
  /** By the hash of the box that a description falls into: what differs after all is told by its name and figures. */
  readonly #known = new Map<number, Known[]>();
  #next: number;

  /** `first`: the number that the first description gets. */
  constructor(first: number) {
    this.#next = first;
  }

  get next(): number {
    return this.#next;
  }

  kindOf(name: string, figures: readonly number[]): number {
    const keys = keysOf(name, figures);
    for (const key of keys) {
      const found = this.#known.get(key)?.find((known) => known.name === name && isAlike(known, figures));
      if (found) return found.kind;
    }
    const kind = this.#next++;
    const [home = 0] = keys;
    const known = { name, kind, figures };
    const beside = this.#known.get(home);
    if (beside) beside.push(known);
    else this.#known.set(home, [known]);
    return kind;
  }
}

const isAlike = ({ figures: others }: Known, figures: readonly number[]): boolean =>
  figures.every((figure, i) => Math.abs(figure - (others[i] ?? 0)) <= alike);

/** Mixes one more whole number into a hash. Source: FNV-1a, public domain, from memory. */
const mixed = (hash: number, value: number): number => Math.imul(hash ^ (value | 0), 0x01000193);

/** The box of a description, then the boxes beside it that one alike may have fallen into, each as a hash. */
function keysOf(name: string, figures: readonly number[]): number[] {
  let start = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) start = mixed(start, name.charCodeAt(i));
  const boxes = figures.map((figure) => Math.round(figure / boxWidth));
  const doubtful: { readonly i: number; readonly step: number }[] = [];
  for (let i = 0; i < figures.length && doubtful.length < mostDoubtful; i++) {
    const beyond = (figures[i] ?? 0) / boxWidth - (boxes[i] ?? 0);
    if (Math.abs(beyond) * boxWidth > boxWidth / 2 - alike) doubtful.push({ i, step: Math.sign(beyond) });
  }
  const keys: number[] = [];
  for (let mask = 0; mask < 1 << doubtful.length; mask++) {
    const moved = [...boxes];
    doubtful.forEach(({ i, step }, bit) => {
      if (mask & (1 << bit)) moved[i] = (moved[i] ?? 0) + step;
    });
    keys.push(moved.reduce(mixed, start));
  }
  return keys;
}

function figuresOf(points: readonly Point[]): number[] {
  const figures: number[] = [];
  for (const { x, y } of points) figures.push(x, y);
  return figures;
}

const handles = (s: Segment): readonly Point[] => (s.kind === 'line' ? [] : [s.c1, s.c2]);

/** What tells a drawing's places apart where copies are drawn alike: its curves, its nodes, and how contours are grouped. */
export function drawnLandmarks(layers: readonly Layer[]): readonly Landmark[] {
  let first = 0;
  return [curveLandmarks, nodeLandmarks, groupLandmarks].flatMap((landmarksOf) => {
    const kinds = new Kinds(first);
    const own = landmarksOf(layers, kinds);
    first = kinds.next;
    return own;
  });
}

/** The lines and curves of a drawing's contours, each by where it starts, told apart by how it runs on. */
function curveLandmarks(layers: readonly Layer[], kinds: Kinds): readonly Landmark[] {
  return contoursOf(layers).flatMap(({ layer, contour, index }) =>
    contour.segments.map((segment) => {
      const at = segment.from;
      const around = [...handles(segment), segment.to].map(({ x, y }) => ({ x: x - at.x, y: y - at.y }));
      const figures = figuresOf(around);
      const kind = kinds.kindOf(`${layer}${segment.kind}`, figures);
      return { ...at, kind, contour: index, reach: boxOfPoints([...around, { x: 0, y: 0 }]) };
    }),
  );
}

/** A node shows its two directions however little of its curves shows, mm; and what a whole difference of them counts, mm. */
const nodeReach = 0.06;
const directionWeight = 0.6;

/** The nodes of a drawing, told apart by the directions that meet there: they show even where the rest is cut away. */
function nodeLandmarks(layers: readonly Layer[], kinds: Kinds): readonly Landmark[] {
  const reach = { minX: -nodeReach, minY: -nodeReach, maxX: nodeReach, maxY: nodeReach };
  return contoursOf(layers).flatMap(({ layer, contour, index }) =>
    contour.segments.map((next, i) => {
      const before = contour.segments[(i + contour.segments.length - 1) % contour.segments.length] ?? next;
      const figures = [directionAt(before, 1), directionAt(next, 0)].flatMap(({ x, y }) => {
        const length = Math.hypot(x, y) || 1;
        return [(x / length) * directionWeight, (y / length) * directionWeight];
      });
      const kind = kinds.kindOf(`${layer}${before.kind}${next.kind}`, figures);
      return { ...next.from, kind, contour: index, reach };
    }),
  );
}

/** How many neighbours tell a contour's place from that of others like it. */
const neighbours = 2;

/**
 * The middles of a drawing's contours, told apart by their size and by where their nearest neighbours stand: what there is
 * to go by where one motif is strewn over the period again and again.
 */
function groupLandmarks(layers: readonly Layer[], kinds: Kinds): readonly Landmark[] {
  const middles = contoursOf(layers).map(({ layer, contour, index }) => {
    const { minX, minY, maxX, maxY } = tightBox([contour]);
    const size = { x: maxX - minX, y: maxY - minY };
    return { x: (minX + maxX) / 2, y: (minY + maxY) / 2, size, layer, index };
  });
  const tree = new BoxIndex(middles.length, (add) => {
    for (const { x, y } of middles) add(x, y, x, y);
  });
  return middles.flatMap(({ x, y, size, layer, index }, own) => {
    const near = tree
      .nearest(x, y, neighbours + 1)
      .filter((other) => other !== own)
      .flatMap((other) => middles[other] ?? [])
      .slice(0, neighbours);
    if (near.length < neighbours) return [];
    const away = near.map((other) => ({ x: other.x - x, y: other.y - y, size: other.size }));
    // Two as far away may come in either order.
    away.sort((p, q) => p.x - q.x || p.y - q.y);
    const figures = [size, ...away, ...away.map((other) => other.size)].flatMap((p) => [p.x, p.y]);
    const reach = Math.max(...away.map((p) => Math.hypot(p.x, p.y) + Math.max(p.size.x, p.size.y)));
    const kind = kinds.kindOf(`${layer}`, figures);
    return [{ x, y, kind, contour: index, reach: { minX: -reach, minY: -reach, maxX: reach, maxY: reach } }];
  });
}

interface NumberedContour {
  readonly layer: number;
  readonly contour: Contour;
  readonly index: number;
}

function contoursOf(layers: readonly Layer[]): readonly NumberedContour[] {
  let index = 0;
  return layers.flatMap(({ shapes }, layer) =>
    shapes.flatMap(({ contours }) => contours.map((contour) => ({ layer, contour, index: index++ }))),
  );
}

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

/** Gives one number to descriptions that are alike. The same descriptions in the same order get the same numbers. */
class Kinds {
  readonly #known = new Map<string, { readonly kind: number; readonly figures: readonly number[] }[]>();
  #count = 0;

  kindOf(name: string, figures: readonly number[]): number {
    const keys = keysOf(name, figures);
    for (const key of keys)
      for (const { kind, figures: others } of this.#known.get(key) ?? [])
        if (figures.every((figure, i) => Math.abs(figure - (others[i] ?? 0)) <= alike)) return kind;
    const kind = this.#count++;
    const [home = name] = keys;
    this.#known.set(home, [...(this.#known.get(home) ?? []), { kind, figures }]);
    return kind;
  }
}

/** The box of a description, then the boxes beside it that one alike may have fallen into. */
function keysOf(name: string, figures: readonly number[]): string[] {
  const boxes = figures.map((figure) => Math.round(figure / boxWidth));
  const doubtful = figures
    .flatMap((figure, i) => {
      const beyond = figure / boxWidth - (boxes[i] ?? 0);
      return Math.abs(beyond) * boxWidth > boxWidth / 2 - alike ? [{ i, step: Math.sign(beyond) }] : [];
    })
    .slice(0, mostDoubtful);
  const keys: string[] = [];
  for (let mask = 0; mask < 1 << doubtful.length; mask++) {
    const moved = [...boxes];
    doubtful.forEach(({ i, step }, bit) => {
      if (mask & (1 << bit)) moved[i] = (moved[i] ?? 0) + step;
    });
    keys.push(`${name} ${moved.join(' ')}`);
  }
  return keys;
}

const handles = (s: Segment): readonly Point[] => (s.kind === 'line' ? [] : [s.c1, s.c2]);

/** What tells a drawing's places apart where copies are drawn alike: its curves, its nodes, and how contours are grouped. */
export function drawnLandmarks(layers: readonly Layer[]): readonly Landmark[] {
  let kinds = 0;
  return [curveLandmarks, nodeLandmarks, groupLandmarks].flatMap((landmarksOf) => {
    const own = landmarksOf(layers).map((landmark) => ({ ...landmark, kind: landmark.kind + kinds }));
    kinds = own.reduce((most, { kind }) => Math.max(most, kind + 1), kinds);
    return own;
  });
}

/** The lines and curves of a drawing's contours, each by where it starts, told apart by how it runs on. */
function curveLandmarks(layers: readonly Layer[]): readonly Landmark[] {
  const kinds = new Kinds();
  return contoursOf(layers).flatMap(({ layer, contour, index }) =>
    contour.segments.map((segment) => {
      const at = segment.from;
      const around = [...handles(segment), segment.to].map(({ x, y }) => ({ x: x - at.x, y: y - at.y }));
      const figures = around.flatMap(({ x, y }) => [x, y]);
      const kind = kinds.kindOf(`${layer}${segment.kind}`, figures);
      return { ...at, kind, contour: index, reach: boxOfPoints([...around, { x: 0, y: 0 }]) };
    }),
  );
}

/** A node shows its two directions however little of its curves shows, mm; and what a whole difference of them counts, mm. */
const nodeReach = 0.06;
const directionWeight = 0.6;

/** The nodes of a drawing, told apart by the directions that meet there: they show even where the rest is cut away. */
function nodeLandmarks(layers: readonly Layer[]): readonly Landmark[] {
  const kinds = new Kinds();
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
function groupLandmarks(layers: readonly Layer[]): readonly Landmark[] {
  const kinds = new Kinds();
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

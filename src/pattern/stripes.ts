// The repeat of stripes: all their edges run straight one way, so that any step along them is one, and only the step across is to be found.
import type { Segment, Shape } from '../geometry/contour.ts';
import { cross, type Point } from '../geometry/point.ts';
import type { Size } from './cut-shapes.ts';
import { boxedShapes, filmAlong } from './film-along.ts';
import type { Lattice } from './lattice.ts';

export interface StripesRepeat extends Lattice {
  /** 0 to 1: every edge that shows again halves the doubt. */
  readonly confidence: number;
  /** The way that the stripes run, of length 1. */
  readonly along: Point;
}

interface Layers {
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
}

/** More edges across a crop than this are not looked at: the time grows with the cube of their number. */
const mostEdges = 300;

/** Fewer edges than this that show again a step across are chance. */
const leastAgain = 3;

/**
 * The repeat of a crop of stripes: the smallest step across by which all edges show again, and one along, as long as the other is where it may
 * be any. Undefined where anything but stripes is drawn, or where they show no step twice. `slack`: edges stray by so much, mm.
 */
export function stripesRepeat(art: Layers & Size, slack: number): StripesRepeat | undefined {
  const along = wayOf(art, slack);
  if (!along) return undefined;
  const isSteep = Math.abs(along.y) > Math.abs(along.x);
  const [length, through, direction] = isSteep
    ? [art.width, { x: 0, y: art.height / 2 }, { x: 1, y: 0 }]
    : [art.height, { x: art.width / 2, y: 0 }, { x: 0, y: 1 }];
  const edges = art.layers.flatMap(({ shapes }, layer) =>
    filmAlong(boxedShapes(shapes), through, direction).flatMap(({ from, to }) => [
      { kind: 2 * layer, at: from.at },
      { kind: 2 * layer + 1, at: to.at },
    ]),
  );
  // What the crop's own border cuts is no edge of a stripe.
  const inside = edges.filter(({ at }) => at > slack && at < length - slack);
  const found = stepAcross(inside, length, slack / Math.max(Math.abs(along.x), Math.abs(along.y)));
  if (!found) return undefined;
  const { step, again } = found;
  const confidence = 1 - 2 ** -again;
  // The same step across, walked straight around and straight up, as far as the stripes slant.
  const slope = isSteep ? along.x / along.y : along.y / along.x;
  const other = Math.abs(slope) < leastSlope ? step : Math.abs(step / slope);
  const lattice = isSteep
    ? { a: { x: step, y: 0 }, b: { x: 0, y: Math.min(other, art.height / 2) } }
    : { a: { x: Math.min(other, art.width / 2), y: 0 }, b: { x: 0, y: step } };
  // A slant whose step does not fit the crop goes along itself instead.
  const isCut = Math.abs(slope) >= leastSlope && other > (isSteep ? art.height : art.width) / 2;
  if (!isCut) return { ...lattice, confidence, along };
  const half = isSteep
    ? { ...lattice, b: { x: (slope * art.height) / 2, y: art.height / 2 } }
    : { ...lattice, a: { x: art.width / 2, y: (slope * art.width) / 2 } };
  return { ...half, confidence, along };
}

/** Slopes under this are none. */
const leastSlope = 1e-4;

/** The way that all edges run which do not lie on the crop's border; undefined where they run several ways, or bend. */
function wayOf({ layers, width, height }: Layers & Size, slack: number): Point | undefined {
  const isOn = (p: number, q: number, border: number): boolean =>
    Math.abs(p - border) <= slack && Math.abs(q - border) <= slack;
  const isBorder = (p: Point, q: Point): boolean =>
    isOn(p.x, q.x, 0) || isOn(p.x, q.x, width) || isOn(p.y, q.y, 0) || isOn(p.y, q.y, height);
  const isPast = ({ from, to }: Segment): boolean =>
    Math.max(from.x, to.x) <= slack ||
    Math.min(from.x, to.x) >= width - slack ||
    Math.max(from.y, to.y) <= slack ||
    Math.min(from.y, to.y) >= height - slack;
  const drawn = layers
    .flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours.flatMap(({ segments }) => segments)))
    .filter((s) => !isBorder(s.from, s.to) && !isPast(s));
  const lengthOf = ({ from, to }: Segment) => Math.hypot(to.x - from.x, to.y - from.y);
  const longest = drawn.reduce<Segment | undefined>(
    (best, s) => (best && lengthOf(best) >= lengthOf(s) ? best : s),
    undefined,
  );
  if (!longest || lengthOf(longest) < Math.min(width, height) / 4) return undefined;
  const size = lengthOf(longest);
  const along = { x: (longest.to.x - longest.from.x) / size, y: (longest.to.y - longest.from.y) / size };
  const runsAlong = (s: Segment): boolean => {
    const off = (p: Point) => Math.abs(cross(along, { x: p.x - s.from.x, y: p.y - s.from.y }));
    return (s.kind === 'line' ? [s.to] : [s.c1, s.c2, s.to]).every((p) => off(p) <= 2 * slack);
  };
  return drawn.every(runsAlong) ? along : undefined;
}

interface Edge {
  readonly kind: number;
  readonly at: number;
}

/** The smallest step by which all edges of a line show again within its length, settled on all that do. */
function stepAcross(edges: readonly Edge[], length: number, slack: number) {
  const [first] = edges;
  if (!first || edges.length > mostEdges) return undefined;
  const steps = edges
    .filter(({ kind, at }) => kind === first.kind && at > first.at + 2 * slack)
    .map(({ at }) => at - first.at)
    .sort((p, q) => p - q);
  for (const step of steps) {
    const pairs = edges.flatMap((edge) => {
      const place = edge.at + step;
      if (place > length - 2 * slack) return [];
      return [edges.find(({ kind, at }) => kind === edge.kind && Math.abs(at - place) <= 2 * slack)];
    });
    if (pairs.length < leastAgain || pairs.includes(undefined)) continue;
    return { step: settled(edges, step, slack), again: pairs.length };
  }
  return undefined;
}

/** A step as all edges have it: the mean over the longest runs of whole steps. */
function settled(edges: readonly Edge[], step: number, slack: number): number {
  let best = step;
  for (let times = 2; ; times++) {
    const pairs = edges.flatMap((edge) => {
      const place = edge.at + times * best;
      const other = edges.find(
        ({ kind, at }) => kind === edge.kind && Math.abs(at - place) <= 2 * slack + best / 8,
      );
      return other ? [(other.at - edge.at) / times] : [];
    });
    if (pairs.length === 0) return best;
    best = pairs.reduce((sum, one) => sum + one, 0) / pairs.length;
  }
}

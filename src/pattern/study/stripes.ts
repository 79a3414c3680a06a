// The repeat of stripes: all their edges run straight one way, so that any step along them is one, and only the step across is to be found.
import type { Segment, Shape } from '../../geometry/contour.ts';
import { least, most } from '../../geometry/extremes.ts';
import { cross, type Point } from '../../geometry/point.ts';
import { boxedShapes, filmAlong } from '../film/film-along.ts';
import type { Lattice } from '../lattice/lattice.ts';
import type { Size } from '../tile/cut-shapes.ts';

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

/** Edges this near to the crop's border, in slacks, are its own, or what a tracer made of a corner there. */
const ownSlacks = 3;

/** The way that all edges run which do not lie on the crop's border; undefined where they run several ways, or bend. */
function wayOf({ layers, ...size }: Layers & Size, slack: number): Point | undefined {
  const runs = layers.flatMap(({ shapes }) =>
    shapes.flatMap(({ contours }) =>
      contours.flatMap(({ segments }) => runsInside(segments, size, ownSlacks * slack)),
    ),
  );
  const along = commonWay(runs, Math.min(size.width, size.height) / 4);
  if (!along) return undefined;
  // What is traced of a slanting edge is many short pieces: all of a run stand on one line, or it bends.
  const isStraight = (run: readonly Segment[]): boolean => {
    const places = run.flatMap((s) => (s.kind === 'line' ? [s.from, s.to] : [s.from, s.c1, s.c2, s.to]));
    const off = places.map((p) => cross(along, p));
    return most(off, -Infinity) - least(off, Infinity) <= 2 * slack;
  };
  return runs.every(isStraight) ? along : undefined;
}

/** What of a contour lies inside a crop, run by run. */
function runsInside(segments: readonly Segment[], { width, height }: Size, near: number): Segment[][] {
  const isOwn = ({ from, to }: Segment): boolean =>
    Math.max(from.x, to.x) <= near ||
    Math.min(from.x, to.x) >= width - near ||
    Math.max(from.y, to.y) <= near ||
    Math.min(from.y, to.y) >= height - near;
  const start = segments.findIndex(isOwn);
  const runs: Segment[][] = [[]];
  for (const s of [...segments.slice(start + 1), ...segments.slice(0, start + 1)])
    if (isOwn(s)) runs.push([]);
    else runs.at(-1)?.push(s);
  return runs.filter((run) => run.length > 0);
}

/** The way that runs go on the whole, each from its one end to its other; undefined where none is as long as asked. */
function commonWay(runs: readonly (readonly Segment[])[], leastLength: number): Point | undefined {
  let [xx, xy, yy, longest] = [0, 0, 0, 0];
  for (const run of runs) {
    const [from, to] = [run[0]?.from, run.at(-1)?.to];
    if (!from || !to) continue;
    const [x, y] = [to.x - from.x, to.y - from.y];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    longest = Math.max(longest, Math.hypot(x, y));
  }
  if (longest < leastLength) return undefined;
  const turn = Math.atan2(2 * xy, xx - yy) / 2;
  return { x: Math.cos(turn), y: Math.sin(turn) };
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

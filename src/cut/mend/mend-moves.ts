// What mending came to, measured on the film before and after all of it: rounds that went on with one place are one mend of it.

import { BoxIndex } from '../../geometry/box-index.ts';
import type { Segment, Shape } from '../../geometry/contour.ts';
import { InsideFinder } from '../../geometry/inside.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { pointAt } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';

export type MendKind = 'thickened' | 'gap-closed' | 'point-rounded' | 'speck-dropped';

export interface Mend {
  readonly kind: MendKind;
  readonly at: Point;
  /** How far the edge moved, mm; of a gap half its least width; of a speck its area, mm². */
  readonly size: number;
  /** How far an edge moved at most, mm; 0 of a speck. */
  readonly moved: number;
}

/** A mend as a round made it. */
export interface PlacedMend extends Omit<Mend, 'moved'> {
  /** Places along what was mended. */
  readonly along: readonly Point[];
}

export interface MoveOptions {
  /** A later mend no farther than this from an earlier one of its kind goes on with it, mm. */
  readonly near: number;
  /** No edge was moved farther than this, mm. */
  readonly most: number;
}

/** Edges are measured at places this far apart, mm. */
const apart = 0.1;

/** Mends round by round, as one list; how far each moved an edge is measured from `drawn` to `mended`. */
export function measuredMends(
  rounds: readonly (readonly PlacedMend[])[],
  drawn: readonly Shape[],
  mended: readonly Shape[],
  { near, most }: MoveOptions,
): Mend[] {
  let mends: readonly PlacedMend[] = [];
  for (const round of rounds) mends = [...mends, ...newIn(round, mends, near)];
  const moved = mends.map(() => 0);
  const places = new MendPlaces(mends);
  for (const { at, far } of movesOf(drawn, mended, most)) {
    const nearest = places.nearest(at);
    moved[nearest] = Math.max(moved[nearest] ?? 0, far);
  }
  return mends.map(({ kind, at, size }, i): Mend => {
    const own = kind === 'speck-dropped' ? 0 : (moved[i] ?? 0);
    return {
      kind,
      at,
      size: kind === 'thickened' || kind === 'point-rounded' ? own : size,
      moved: own,
    };
  });
}

function newIn(round: readonly PlacedMend[], known: readonly PlacedMend[], near: number): PlacedMend[] {
  const places = new MendPlaces(known);
  return round.filter(
    ({ kind, at }) =>
      kind === 'speck-dropped' || !places.within(at, near).some((i) => known[i]?.kind === kind),
  );
}

/** The places along mends, indexed: of fine art there are thousands of mends with hundreds of places each. */
class MendPlaces {
  readonly #places: readonly { readonly mend: number; readonly at: Point }[];
  readonly #index: BoxIndex;

  constructor(mends: readonly PlacedMend[]) {
    const places = mends.flatMap(({ at, along }, mend) =>
      [at, ...along].map(({ x, y }) => ({ mend, at: { x, y } })),
    );
    this.#places = places;
    this.#index = new BoxIndex(places.length, (add) => {
      for (const { at } of places) add(at.x, at.y, at.x, at.y);
    });
  }

  /** The mends with a place no farther from `p`, by their numbers. */
  within(p: Point, near: number): number[] {
    return this.#index.meeting(p.x - near, p.y - near, p.x + near, p.y + near).flatMap((i) => {
      const place = this.#places[i];
      return place && distance(place.at, p) <= near ? [place.mend] : [];
    });
  }

  /** The number of the mend nearest to `p`, 0 if there is none. */
  nearest(p: Point): number {
    const [i] = this.#index.nearest(p.x, p.y, 1);
    return i === undefined ? 0 : (this.#places[i]?.mend ?? 0);
  }
}

/** Places of edges that are new, with how far the old one is; and of edges that are gone and bare, with how far film is. */
function movesOf(drawn: readonly Shape[], mended: readonly Shape[], most: number) {
  const [old, now] = [segmentsOf(drawn), segmentsOf(mended)];
  const far = (edge: NearestFinder, at: Point) => ({ at, far: distanceTo(edge, at, most) });
  const [oldEdge, nowEdge] = [finderOf(drawn), finderOf(mended)];
  const film = new InsideFinder(mended);
  return [
    ...placesNotIn(now, old).map((p) => far(oldEdge, p)),
    ...placesNotIn(old, now)
      .filter((p) => !film.holds(p))
      .map((p) => far(nowEdge, p)),
  ].filter((move) => move.far > precision / 10);
}

/** Most edges move little: near places are asked first, each asking costs what lies within it. */
function distanceTo(edge: NearestFinder, p: Point, most: number): number {
  for (let reach = most / 64; reach < most; reach *= 4) {
    const found = edge.find(p, reach);
    if (found) return found.distance;
  }
  return edge.find(p, most)?.distance ?? most;
}

const finderOf = (shapes: readonly Shape[]) => new NearestFinder(shapes.flatMap(({ contours }) => contours));

const segmentsOf = (shapes: readonly Shape[]): ReadonlyMap<string, Segment> =>
  new Map(
    shapes.flatMap(({ contours }) =>
      contours.flatMap(({ segments }) => segments.map((s) => [JSON.stringify(s), s] as const)),
    ),
  );

function placesNotIn(segments: ReadonlyMap<string, Segment>, others: ReadonlyMap<string, Segment>): Point[] {
  return [...segments].flatMap(([key, s]) => {
    if (others.has(key)) return [];
    const count = Math.max(2, Math.ceil(distance(s.from, s.to) / apart));
    return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
  });
}

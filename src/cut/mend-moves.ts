// What mending came to, measured on the film before and after all of it: rounds that went on with one place are one mend of it.
import type { Segment, Shape } from '../geometry/contour.ts';
import { holdsPoint } from '../geometry/inside.ts';
import { NearestFinder } from '../geometry/nearest.ts';
import { distance, type Point } from '../geometry/point.ts';
import { pointAt } from '../geometry/segment.ts';
import { precision } from '../geometry/tolerance.ts';

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
  const mends: PlacedMend[] = [];
  for (const round of rounds) mends.push(...newIn(round, mends, near));
  const moved = mends.map(() => 0);
  for (const { at, far } of movesOf(drawn, mended, most)) {
    const nearest = nearestOf(mends, at);
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

const newIn = (round: readonly PlacedMend[], known: readonly PlacedMend[], near: number): PlacedMend[] =>
  round.filter(
    (mend) =>
      mend.kind === 'speck-dropped' ||
      !known.some((one) => one.kind === mend.kind && distanceFrom(one, mend.at) <= near),
  );

const distanceFrom = ({ at, along }: PlacedMend, p: Point): number =>
  along.reduce((least, q) => Math.min(least, distance(p, q)), distance(p, at));

function nearestOf(mends: readonly PlacedMend[], p: Point): number {
  let [best, least] = [0, Infinity];
  for (const [i, mend] of mends.entries()) {
    const far = distanceFrom(mend, p);
    if (far < least) [best, least] = [i, far];
  }
  return best;
}

/** Places of edges that are new, with how far the old one is; and of edges that are gone and bare, with how far film is. */
function movesOf(drawn: readonly Shape[], mended: readonly Shape[], most: number) {
  const [old, now] = [segmentsOf(drawn), segmentsOf(mended)];
  const far = (edge: NearestFinder, at: Point) => ({ at, far: edge.find(at, most)?.distance ?? most });
  const [oldEdge, nowEdge] = [finderOf(drawn), finderOf(mended)];
  return [
    ...placesNotIn(now, old).map((p) => far(oldEdge, p)),
    ...placesNotIn(old, now)
      .filter((p) => !mended.some((shape) => holdsPoint(shape, p)))
      .map((p) => far(nowEdge, p)),
  ].filter((move) => move.far > precision / 10);
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

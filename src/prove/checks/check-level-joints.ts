// Does the art of each piece go on in the piece above it, where the two are joined along a level line of the wall?

import type { Contour, Segment } from '../../geometry/contour.ts';
import { least, most } from '../../geometry/extremes.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { distance, dot, norm } from '../../geometry/point.ts';
import { directionAt, pointAt } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';
import { radians } from '../../lengths/angle.ts';
import { atMost, type Check, largest } from '../check.ts';
import { cornerDeg } from '../seams/seam-gap.ts';
import { acrossFrom, girthOf, type RolledCone, rollUp } from '../written/rolled-cone.ts';
import type { ProvedRow, RowLayer } from '../written/row.ts';

/** Pieces may end at their joint: the art of each is looked at this far inside its own, mm, and carried on to it. */
const inside = 0.005;

/** Lines that lean more than this from upright, as mm around for each mm up, graze the joint: no one place is theirs. */
const grazing = 10;

/** Each segment is looked through in so many parts; one that crosses a level twice within a part is missed. */
const parts = 8;

/** How far around its like is looked for, mm; none within it counts as this far. */
const reach = 25;

/** Where a line of the art comes to a joint: mm around from turn 0, and mm around for each mm up. */
interface Arrival {
  readonly around: number;
  readonly lean: number;
}

/** One side of a joint. */
interface Side {
  readonly layer: RowLayer;
  /** Up the wall from the joint, mm: negative on the piece below. */
  readonly away: number;
  /** Of the joint, mm. */
  readonly girth: number;
}

/** Where a segment crosses a height, as shares of it. */
function crossingsOf(segment: Segment, cone: RolledCone, along: number): readonly number[] {
  const above = (t: number) => rollUp(cone, pointAt(segment, t)).along - along;
  return Array.from({ length: parts }, (_, i) => [i / parts, (i + 1) / parts] as const).flatMap(
    ([first, last]) => {
      if (above(first) > 0 === above(last) > 0) return [];
      let [low, high] = [first, last];
      const isRising = above(last) > 0;
      // Halved until it tells less than the last digit that is written.
      for (let i = 0; i < 40; i++) {
        const middle = (low + high) / 2;
        if (above(middle) > 0 === isRising) high = middle;
        else low = middle;
      }
      return [(low + high) / 2];
    },
  );
}

/**
 * Where this segment's line comes to the joint, by its place and direction a little inside. Told by its turn on the girth that both pieces
 * have there once they are laid: on a wall that bends either is stretched to it by a share of its own.
 */
function arrivalAt(segment: Segment, t: number, cone: RolledCone, { away, girth }: Side): Arrival {
  const step = 1e-4;
  const [before, at, after] = [t - step, t, t + step].map((share) => rollUp(cone, pointAt(segment, share)));
  if (!before || !at || !after) throw new Error('three places were asked for');
  const lean = ((after.turn - before.turn) * girth) / (after.along - before.along);
  return { around: at.turn * girth - lean * away, lean };
}

/** How far a segment may reach from its ends, mm: a curve stays within its handles; a line bends on the wall by less than its length. */
function reachOf(s: Segment): number {
  const handles = s.kind === 'line' ? 0 : distance(s.from, s.c1) + distance(s.to, s.c2);
  return handles + distance(s.from, s.to);
}

/** Whether a segment may come to a height: only of such are crossings looked for. */
function mayReach(segment: Segment, cone: RolledCone, along: number): boolean {
  const away = [segment.from, segment.to].map((p) => Math.abs(rollUp(cone, p).along - along));
  return least(away) <= reachOf(segment);
}

/** The lines of some art that come to a joint on one side, but for those that graze it. */
function arrivalsOf(contours: readonly Contour[], joint: number, side: Side): readonly Arrival[] {
  const { cone } = side.layer.row;
  const along = joint + side.away;
  return contours
    .flatMap(({ segments }) => segments)
    .filter((segment) => mayReach(segment, cone, along))
    .flatMap((segment) => crossingsOf(segment, cone, along).map((t) => arrivalAt(segment, t, cone, side)))
    .filter(({ lean }) => Math.abs(lean) <= grazing)
    .sort((a, b) => a.around - b.around);
}

/** Without what ends in a point at the joint itself: its two lines lie on one another there. */
const withoutPoints = (arrivals: readonly Arrival[]): readonly Arrival[] => {
  const kept: Arrival[] = [];
  for (const arrival of arrivals) {
    const last = kept.at(-1);
    const width = 2 * inside * (Math.abs(arrival.lean) + Math.abs(last?.lean ?? 0)) + precision;
    if (last && arrival.lean !== last.lean && arrival.around - last.around < width) kept.pop();
    else kept.push(arrival);
  }
  return kept;
};

/** Cosine of the angle from which two segments make a corner. */
const corner = Math.cos(radians(cornerDeg));

/** A corner of the art at a joint: mm around from turn 0, and up the wall from the joint, mm. */
interface Corner {
  readonly around: number;
  readonly up: number;
}

/** The corners that the art of one side has at the joint: a line that ends in one of both sides need not go on past it. */
function cornersAt(joint: number, { layer, girth }: Side): readonly Corner[] {
  const { cone } = layer.row;
  return layer.contours.flatMap(({ segments }) =>
    segments.flatMap((segment, i) => {
      const { turn, along } = rollUp(cone, segment.to);
      if (Math.abs(along - joint) > inside) return [];
      const next = segments[(i + 1) % segments.length] ?? segment;
      const [came, goes] = [directionAt(segment, 1), directionAt(next, 0)];
      const isCorner = dot(came, goes) < corner * norm(came.x, came.y) * norm(goes.x, goes.y);
      return isCorner ? [{ around: turn * girth, up: along - joint }] : [];
    }),
  );
}

/** One side of a joint as its art comes to it. */
interface Comes {
  /** Of each panel between its turns. */
  readonly arrivals: readonly Arrival[];
  /** Of all panels, with what laps over the next: that ends where the film does. */
  readonly lapped: readonly Arrival[];
  readonly corners: readonly Corner[];
}

/** What two places of a joint are apart, mm around: the wall closes after one girth. */
function apartAround(one: number, other: number, girth: number): number {
  const off = Math.abs(other - one) % girth;
  return Math.min(off, girth - off);
}

/** The art of a row as it comes to a joint: what a panel laps over the next is that one's too, and need not go on. */
function comesTo(joint: number, side: Side): Comes {
  const panels = side.layer.arts.map(({ panel: { turns }, contours }) => ({
    from: turns.from * side.girth + precision,
    to: turns.to * side.girth - precision,
    all: arrivalsOf(contours, joint, side),
  }));
  return {
    arrivals: panels.flatMap(({ from, to, all }) => all.filter(({ around }) => around > from && around < to)),
    lapped: panels.flatMap(({ all }) => all),
    corners: cornersAt(joint, side),
  };
}

/** What a line misses its like on the other side by, mm square to it; or the corner that it ends in, the same corner there. */
function missOf({ around, lean }: Arrival, own: Comes, other: Comes, girth: number): number {
  const lines = other.lapped.map(
    (arrival) => apartAround(around, arrival.around, girth) / Math.sqrt(1 + lean * lean),
  );
  // A line that leans comes to the joint beside a corner that lies a hair off it: at the corner's own height it is in it.
  const beside = (at: Corner) =>
    apartAround(at.around - lean * at.up, around, girth) / Math.sqrt(1 + lean * lean);
  const ends = own.corners.some((at) => beside(at) <= precision) ? other.corners.map(beside) : [];
  return least([...lines, ...ends], reach);
}

/** How far from turn 0 a row's film begins and how far from turn 1 it ends at a height, mm around: beside a handle art goes on past that in the waste. */
function sidesAt({ cone, panels }: RowLayer['row'], along: number): readonly [number, number] {
  const around = (across: number) =>
    rollUp(cone, acrossFrom(cone, 0, across, along)).turn * girthOf(cone, along);
  return [around(panels[0]?.beside.start ?? 0), around(panels.at(-1)?.beside.finish ?? 0)];
}

/** What the art of one layer misses by at the joint of two rows, line by line; those of the overlap at a seam count once. */
function missesAt(below: RowLayer, above: RowLayer): readonly number[] {
  const joint = above.row.band.from;
  const girth = girthOf(below.row.cone, joint);
  const sides: readonly Side[] = [
    { layer: below, away: -inside, girth },
    { layer: above, away: inside, girth },
  ];
  const [lower, upper] = sides.map((side) => comesTo(joint, side));
  if (!lower || !upper) throw new Error('a joint has two sides');
  const both = [below, above].map(({ row }) => sidesAt(row, joint));
  const from = precision + most(both.map(([start]) => start));
  const to = girth - precision - most(both.map(([, finish]) => finish));
  const against = (own: Comes, other: Comes) =>
    withoutPoints(own.arrivals)
      .filter(({ around }) => around > from && around < to)
      .map((arrival) => missOf(arrival, own, other, girth));
  return [...against(lower, upper), ...against(upper, lower)];
}

/** A layer that a row has nothing of: at a joint it ends all the same. */
const nothingOf = (row: ProvedRow, name: string): RowLayer => ({
  row,
  name,
  arts: row.panels.map((panel) => ({ panel, contours: [] })),
  contours: [],
  finder: new NearestFinder([]),
});

/** Nothing where no art comes to a level joint. */
export function levelJointChecks(rows: readonly ProvedRow[], layers: readonly RowLayer[]): Check[] {
  const names = [...new Set(layers.map(({ name }) => name))];
  const layerOf = (own: ProvedRow, name: string): RowLayer =>
    layers.find((layer) => layer.row === own && layer.name === name) ?? nothingOf(own, name);
  const misses = rows.flatMap((above) =>
    rows
      .filter(({ band }) => Math.abs(band.to - above.band.from) <= precision)
      .flatMap((below) => names.flatMap((name) => missesAt(layerOf(below, name), layerOf(above, name)))),
  );
  if (misses.length === 0) return [];
  return [
    atMost({
      rule: 'level-joint-position',
      value: largest(misses),
      limit: precision,
      unit: 'mm',
      says: `what the art of two pieces misses each other by at their level joint, over ${misses.length} lines that come to it`,
    }),
  ];
}

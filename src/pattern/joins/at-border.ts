// What crosses one border of a tile, held against what the copies show there.

import { most } from '../../geometry/extremes.ts';
import { cross, dot, type Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { filmAlong, type Stretch, uncovered, within } from '../film/film-along.ts';
import { hair } from '../tile/flush.ts';
import { EndsInRow, type LikeEnd } from './border-ends.ts';
import { type BorderLine, beside, filmBeyond, type Held } from './border-lines.ts';
import { alike, angleTo, type Border, type BorderEdge, cornerAt } from './border-sides.ts';

/** Film that ends at the border of its tile, where the copy beside it shows none. Drawn mm, y down. */
export interface OpenStretch {
  readonly layer: string;
  readonly border: Border;
  /** The middle of the open stretch. */
  readonly at: Point;
  readonly length: number;
  /** How far its outline is from where the copy's goes on; the open stretch's whole length where none is near, mm. */
  readonly miss: number;
  /**
   * Whether it is all of the film there, or a line along the border, drawn up to it and no further: a side there, or a cut. Or so short that
   * it may be how far an outline goes on within one pixel that it was traced from.
   */
  readonly ends: boolean;
  /** The colour that the copy shows there instead, if it shows one. */
  readonly instead?: string;
}

/** An outline that goes on across the border in another direction. */
export interface Kink {
  readonly layer: string;
  readonly border: Border;
  readonly at: Point;
  /** Radians, above 0. */
  readonly angle: number;
}

/** An outline that bends by less than this where two copies meet is seen as one line, radians: half a degree. */
const kinkSeen = Math.PI / 360;

/** A round up to this large that touches a border from inside is taken as touching it: its radius, mm. */
const roundTouching = 200;

/** What such a round shows of itself where lines are held beside the border, mm: its chord there. */
const touchLength = Math.sqrt(8 * roundTouching * beside);

export interface AtBorder {
  readonly border: Border;
  readonly open: readonly (OpenStretch & BorderEdge & { readonly from: number; readonly to: number })[];
  /** The film that the copies show there. */
  readonly beyond: readonly Stretch[];
  readonly kinks: readonly Kink[];
  readonly crossings: number;
  /** Outlines that meet one of the other side though they do not run straight across. */
  readonly slants: number;
  /** Those that meet and stand elsewhere a little way in: what runs straight across meets wherever it is cut. */
  readonly telling: number;
  /** The most that outlines which meet are apart, mm. */
  readonly rounding: number;
}

/** How much of a stretch film covers, mm. */
export const coveredIn = (film: readonly Stretch[], from: number, to: number): number =>
  within(film, from, to).reduce((sum, one) => sum + one.to.at - one.from.at, 0);

/** The film that a tile shows along a border of its own, a little past it, and that of its copies there. */
export function filmAt(held: Held, line: BorderLine) {
  const { through, direction, outward, length } = line;
  const ownAt = (out: number) => {
    const at = { x: through.x + outward.x * out, y: through.y + outward.y * out };
    return within(filmAlong(held.drawn, at, direction), 0, length);
  };
  const [own, wellPast, beyond] = [ownAt(-beside), ownAt(3 * hair), filmBeyond(held, line)];
  const open = uncovered(own, beyond)
    .map(({ from, to }) => ({ from: from.at, to: to.at }))
    .filter(({ from, to }) => to - from > joinTolerance && !onlyTouches({ from, to }, wellPast));
  return { own, ownAt, wellPast, beyond, open };
}

/** `grain`: of what was traced, how large a pixel is, mm. */
export function atBorder(layer: string, held: Held, line: BorderLine, grain: number): AtBorder {
  const { border, through, direction, length } = line;
  const { own, ownAt, wellPast, beyond, open: ofFilm } = filmAt(held, line);
  const [ownEnds, beyondEnds] = [new EndsInRow(own), new EndsInRow(beyond)];
  const place = (at: number): Point => ({ x: through.x + direction.x * at, y: through.y + direction.y * at });
  const open = ofFilm.map(({ from, to }) => ({
    from,
    to,
    layer,
    border,
    isFar: line.outward.x + line.outward.y > 0,
    at: place((from + to) / 2),
    length: to - from,
    ends:
      isEnd({ from, to }, own, wellPast) ||
      isLine({ from, to }, ownAt, wellPast) ||
      to - from <= mostGrains * grain,
    goesPast: wellPast.some((film) => film.to.at > from + joinTolerance && film.from.at < to - joinTolerance),
    corners: [cornerAt(from, own, beyond, line), cornerAt(to, own, beyond, line)] as const,
    miss: Math.max(...[from, to].map((end) => missAt(end, to - from, ownEnds, beyondEnds))) || to - from,
  }));
  const ends = ownEnds.all.filter(({ at }) => at > joinTolerance && at < length - joinTolerance);
  const met = ends.flatMap((end) => {
    const other = beyondEnds.nearest(end);
    const apart = other && Math.abs(other.at - end.at);
    return other && apart !== undefined && apart <= joinTolerance ? [{ end, other, apart }] : [];
  });
  const depth = depthOf(ends, length);
  const tells = goesOnAside(new EndsInRow(ownAt(-depth)), depth, direction, grain);
  const isSlant = (end: LikeEnd): boolean => angleTo(end.direction, direction) < Math.PI / 2 - alike / 4;
  return {
    border,
    open,
    beyond,
    slants: ends.filter((end) =>
      beyondEnds.within(end.at, joinTolerance).some((other) => isSlant(end) || isSlant(other)),
    ).length,
    telling: met.filter(({ end }) => tells(end)).length,
    kinks: met
      .map(({ end, other }) => ({
        layer,
        border,
        at: place(end.at),
        angle: bend(end.direction, other.direction),
      }))
      .filter(({ angle }) => angle > kinkSeen),
    crossings: ends.length,
    rounding: most(
      met.map(({ apart }) => apart),
      0,
    ),
  };
}

/** Tells whether an outline goes on inward, and stands elsewhere there: what has ended tells nothing. */
function goesOnAside(inward: EndsInRow, depth: number, direction: Point, grain: number) {
  // What is traced stands within half a pixel of where it was drawn.
  const stray = Math.max(joinTolerance, grain / 2);
  return (end: LikeEnd): boolean => {
    const aside = Math.abs((inward.nearest(end)?.at ?? Infinity) - end.at);
    return aside > stray && aside <= depth * (1 + mostBent / Math.tan(angleTo(end.direction, direction)));
  };
}

/** Traced outlines end square on a border, up to a pixel from where they cross it aslant: so much aside, in pixels. */
const mostGrains = 3;

/**
 * So far in from a border its outlines are looked at, mm: by half of how far apart most of them stand, for farther in another may stand in
 * the place of one; and by no more than this share of the border's length.
 */
function depthOf(ends: readonly LikeEnd[], length: number): number {
  const gaps = ends.slice(1).map(({ at }, i) => at - (ends[i]?.at ?? at));
  const middle = gaps.sort((p, q) => p - q)[gaps.length >> 1] ?? Infinity;
  return Math.min(middle / 2, length * deepest);
}
const deepest = 0.1;

/** An outline may bend so many times as far aside on its way in as it sets out. */
const mostBent = 2;

/** Whether film that ends at a border was drawn up to it and no further, all of it, as a side on the border is. */
const isEnd = (
  { from, to }: { readonly from: number; readonly to: number },
  own: readonly Stretch[],
  past: readonly Stretch[],
): boolean =>
  own.some((film) => film.from.at === from && film.to.at === to) &&
  past.every((film) => film.to.at <= from || film.from.at >= to);

/** Film this share of its length deep, or less, is a line drawn along the border. */
const lineDepth = 0.25;

/** Whether film that ends at a border is a line along it: little of it is left a little way in, and none goes past. */
const isLine = (
  { from, to }: { readonly from: number; readonly to: number },
  ownAt: (out: number) => readonly Stretch[],
  past: readonly Stretch[],
): boolean =>
  past.every((film) => film.to.at <= from || film.from.at >= to) &&
  2 * coveredIn(ownAt(-lineDepth * (to - from)), from, to) < to - from;

/** Whether film that ends at a border was only drawn up to it, as a round that touches it is: none of it goes past. */
const onlyTouches = (
  { from, to }: { readonly from: number; readonly to: number },
  past: readonly Stretch[],
): boolean => to - from <= touchLength && past.every((film) => film.to.at <= from || film.from.at >= to);

/** Farther than this, or than twice the open stretch, an outline on the other side is no going on of this one, mm. */
const farthest = 5;

/** How far the outline at an end of an open stretch is from the nearest like one on the other side; 0 where none is near. */
function missAt(at: number, length: number, own: EndsInRow, beyond: EndsInRow): number {
  const end = own.at(at);
  const here = end ? undefined : beyond.at(at);
  const other = end ? beyond.nearest(end) : here && own.nearest(here);
  const miss = other ? Math.abs(other.at - at) : 0;
  return miss <= Math.max(farthest, 2 * length) ? miss : 0;
}

/** The angle between two outlines, whichever way each is walked. */
const bend = (a: Point, b: Point): number => Math.atan2(Math.abs(cross(a, b)), Math.abs(dot(a, b)));

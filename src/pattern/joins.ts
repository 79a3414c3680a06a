// Whether a tile joins its own copies: what film crosses its borders, held against what the copies beside it show there.

import type { Tile } from '../artwork/tile.ts';
import { most } from '../geometry/extremes.ts';
import { cross, dot, type Point } from '../geometry/point.ts';
import { joinTolerance } from '../geometry/tolerance.ts';
import { EndsInRow, type LikeEnd } from './border-ends.ts';
import { type BorderLine, beside, bordersOf, filmBeyond, type Held } from './border-lines.ts';
import {
  alike,
  angleTo,
  type Border,
  type BorderEdge,
  cornerAt,
  drawnSides,
  enoughMet,
  placedBorder,
  type SlantsMet,
} from './border-sides.ts';
import type { Size } from './cut-shapes.ts';
import { boxedShapes, filmAlong, type Stretch, uncovered, within } from './film-along.ts';
import { flushShape, hair } from './flush.ts';
import type { Lattice } from './lattice.ts';
import { frameOf } from './period.ts';

/** Film that ends at the border of its tile, where the copy beside it shows none. Drawn mm, y down. */
export interface OpenStretch {
  readonly layer: string;
  readonly border: Border;
  /** The middle of the open stretch. */
  readonly at: Point;
  readonly length: number;
  /** How far its outline is from where the copy's goes on; the open stretch's whole length where none is near, mm. */
  readonly miss: number;
  /** Whether it is all of the film there, or a line along the border, drawn up to it and no further: a side there, or a cut. */
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

export interface Joins {
  readonly joins: boolean;
  /** The farthest that outlines miss each other by, mm; of a tile that joins, what rounding left. */
  readonly mismatch: number;
  /** Places that do not join, the worst first. */
  readonly open: readonly OpenStretch[];
  /** Sides of the art that were drawn on the borders, the longest first: film ends there, and is to. */
  readonly sides: readonly OpenStretch[];
  /** Of the places that join, those where an outline bends, the sharpest first. */
  readonly kinks: readonly Kink[];
  /** Outlines that cross the borders, each border counted. */
  readonly crossings: number;
  /** Whether anything at the borders tells that copies stand where they were drawn to: what runs straight across meets wherever it is cut. */
  readonly isPlaced: boolean;
}

/** An outline that bends by less than this where two copies meet is seen as one line, radians: half a degree. */
const kinkSeen = Math.PI / 360;

/** A round up to this large that touches a border from inside is taken as touching it: its radius, mm. */
const roundTouching = 200;

/** What such a round shows of itself where lines are held beside the border, mm: its chord there. */
const touchLength = Math.sqrt(8 * roundTouching * beside);

/** The layers of a tile as they are held against its borders, straight sides along them a hair past. */
const heldLayers = (tile: Tile, frame: Size): Held['drawn'][] =>
  tile.layers.map(({ shapes }) => boxedShapes(shapes.map((shape) => flushShape(shape, frame))));

/** The first of several lattices by which no film at all ends at a tile's borders. */
export function goesOnBy(tile: Tile, lattices: readonly Lattice[]): Lattice | undefined {
  const frames = new Map<string, { readonly frame: Size; readonly layers: Held['drawn'][] }>();
  return lattices.find((lattice) => {
    const own = frameOf(tile, lattice);
    const key = `${own.width} ${own.height}`;
    const { frame, layers } = frames.get(key) ?? { frame: own, layers: heldLayers(tile, own) };
    frames.set(key, { frame, layers });
    return bordersOf(frame).every((line) =>
      layers.every((drawn) => filmAt({ drawn, frame, lattice }, line).open.length === 0),
    );
  });
}

/** How a tile joins its copies, one for each step of the lattice. */
export function joinsOf(tile: Tile, lattice: Lattice): Joins {
  const frame = frameOf(tile, lattice);
  const layers = heldLayers(tile, frame);
  const found = tile.layers.map(({ name }, i) =>
    bordersOf(frame).map((line) => atBorder(name, { drawn: layers[i] ?? [], frame, lattice }, line)),
  );
  const all = found.flat();
  const [met, edges] = [slantsMet(all), all.flatMap((border) => border.open)];
  const isSide = isSeenWhole(tile, lattice) ? () => true : drawnSides(tile, frame, met, edges);
  const isPlaced = placedBorder(tile, frame, met, edges);
  const ends = found
    .flatMap((borders) => borders.flatMap((border, line) => border.open.map((one) => ({ ...one, line }))))
    .map((edge) => {
      const { line, from, to, corners: _, goesPast: __, ...one } = edge;
      const instead = tile.layers.find(
        ({ name }, i) => name !== one.layer && covers(found[i]?.[line]?.beyond ?? [], from, to),
      );
      return { stretch: instead ? { ...one, instead: instead.name } : one, isSide: isSide(edge) };
    });
  const stretches = (side: boolean): OpenStretch[] =>
    ends.filter((end) => end.isSide === side).map(({ stretch }) => stretch);
  const open = stretches(false).sort((a, b) => b.miss - a.miss);
  const kinks = all.flatMap((border) => border.kinks).sort((a, b) => b.angle - a.angle);
  return {
    joins: open.length === 0,
    mismatch: open[0]?.miss ?? Math.max(0, ...all.map(({ rounding }) => rounding)),
    open,
    sides: stretches(true).sort((a, b) => b.length - a.length),
    kinks,
    crossings: all.reduce((sum, border) => sum + border.crossings, 0),
    isPlaced: (['side', 'level'] as const).every(
      (border) => telling(all, border) >= enoughMet || isPlaced(border),
    ),
  };
}

/** Whether a tile is a picture whose pixels go on by these very steps: they tell more of its borders than what was traced of them. */
const isSeenWhole = ({ goesOn, width, height }: Tile, { a, b }: Lattice): boolean =>
  goesOn === true &&
  Math.hypot(a.x - width, a.y) <= joinTolerance &&
  Math.hypot(b.x, Math.abs(b.y) - height) <= joinTolerance;

/** How many outlines meet across a border that would not if it stood elsewhere. */
const telling = (borders: readonly AtBorder[], of: Border): number =>
  borders.reduce((sum, { border, telling }) => sum + (border === of ? telling : 0), 0);

const slantsMet = (borders: readonly AtBorder[]): SlantsMet => {
  const met = { side: 0, level: 0 };
  for (const { border, slants } of borders) met[border] += slants;
  return met;
};

/** How much of a stretch film covers, mm. */
const coveredIn = (film: readonly Stretch[], from: number, to: number): number =>
  within(film, from, to).reduce((sum, one) => sum + one.to.at - one.from.at, 0);

/** Whether film covers most of a stretch. */
const covers = (film: readonly Stretch[], from: number, to: number): boolean =>
  coveredIn(film, from, to) > mostly * (to - from);

const mostly = 0.8;

interface AtBorder {
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

/** The film that a tile shows along a border of its own, a little past it, and that of its copies there. */
function filmAt(held: Held, line: BorderLine) {
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

function atBorder(layer: string, held: Held, line: BorderLine): AtBorder {
  const { border, through, direction, length } = line;
  const { own, ownAt, wellPast, beyond, open: ofFilm } = filmAt(held, line);
  const [ownEnds, beyondEnds] = [new EndsInRow(own), new EndsInRow(beyond)];
  const place = (at: number): Point => ({ x: through.x + direction.x * at, y: through.y + direction.y * at });
  const open = ofFilm.map(({ from, to }) => ({
    from,
    to,
    layer,
    border,
    at: place((from + to) / 2),
    length: to - from,
    ends: isEnd({ from, to }, own, wellPast) || isLine({ from, to }, ownAt, wellPast),
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
  const inward = ownAt(-Math.min(tellingDepth, length / 10)).flatMap(({ from, to }) => [from.at, to.at]);
  const isStraight = ({ at }: LikeEnd): boolean =>
    inward.some((other) => Math.abs(other - at) <= joinTolerance);
  const isSlant = (end: LikeEnd): boolean => angleTo(end.direction, direction) < Math.PI / 2 - alike / 4;
  return {
    border,
    open,
    beyond,
    slants: ends.filter((end) =>
      beyondEnds.within(end.at, joinTolerance).some((other) => isSlant(end) || isSlant(other)),
    ).length,
    telling: met.filter(({ end }) => !isStraight(end)).length,
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

/** So far in from a border an outline is looked at, mm. */
const tellingDepth = 1;

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

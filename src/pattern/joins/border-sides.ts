// Film that ends on a tile's border: a side that was drawn there, or a cut. What the rest of the drawing shows decides.

import type { Tile } from '../../artwork/tile.ts';
import { least } from '../../geometry/extremes.ts';
import { dot, type Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { boxedShapes, filmAlong, type Stretch, uncovered } from '../film/film-along.ts';
import type { Size } from '../tile/cut-shapes.ts';
import { hair } from '../tile/flush.ts';

/** The borders of a tile: `side` stands beside the next repeat around, `level` below the next row up. */
export type Border = 'side' | 'level';

/** Where an edge that lies on a line ends: what outline arrives there. */
export interface SideCorner {
  /** Whose outline: of the film that ends on the line, of film beyond it, or none, where the line itself ends. */
  readonly of: 'own' | 'beyond' | 'border';
  /** The outline's angle to the line, radians, 0 to a quarter turn. */
  readonly angle: number;
  /** Whether an outline of the other side arrives at the same place. */
  readonly isMet: boolean;
}

/** An edge that lies on a border, film on its one side alone. */
export interface BorderEdge {
  readonly border: Border;
  /** Whether it is the border's farther line, the right or the lower. */
  readonly isFar: boolean;
  /** Whether the film was drawn on past the border: then the border cuts it. */
  readonly goesPast: boolean;
  readonly corners: readonly [SideCorner, SideCorner];
}

/** Outlines that meet their like across each border at a slant: what happens by chance at one place in hundreds. */
export type SlantsMet = Readonly<Record<Border, number>>;

/** An outline within this of running along a line runs into it, as a round does; within this of square it is square: 2 degrees. */
export const alike = Math.PI / 90;

/** So many slanting outlines that meet tell that copies stand where they were drawn to. */
export const enoughMet = 2;

/**
 * Tells for each edge on a border whether it is a side drawn there. It is one where nothing was drawn past it; where the border is
 * known to be where it was drawn (slanting outlines meet there, rounds end on it, diagonals run into the tile's corners, or all
 * straight edges stand on one grid with it); and where outlines arrive at both its ends as at some edge inside the drawing.
 */
export function drawnSides(tile: Tile, frame: Size, met: SlantsMet, edges: readonly BorderEdge[]) {
  if (edges.length === 0) return () => false;
  const isPlaced = placedBorder(tile, frame, met, edges);
  const placed = { side: isPlaced('side'), level: isPlaced('level') };
  let known: ReadonlySet<string> | undefined;
  const isKnown = (corner: SideCorner, border: Border): boolean => {
    if (corner.of === 'border' || corner.isMet || runsInto(corner) || isSquare(corner)) return true;
    // What lies along the border may hide where film from beyond ends.
    if (corner.of === 'beyond' && met[border] >= enoughMet) return true;
    known ??= cornersInside(tile, frame);
    const seen = known;
    return nearKeys(corner).some((key) => seen.has(key));
  };
  return ({ border, goesPast, corners }: BorderEdge): boolean =>
    !goesPast && placed[border] && corners.every((corner) => isKnown(corner, border));
}

/**
 * Whether anything tells that a border is where it was drawn: copies that stand elsewhere would meet there as well where nothing does. A
 * round that ends on one of its two lines tells of that line alone: to be sure takes one on each.
 */
export function placedBorder(tile: Tile, frame: Size, met: SlantsMet, edges: readonly BorderEdge[]) {
  let corners: Readonly<Record<Border, boolean>> | undefined;
  return (border: Border, isToBeSure = false): boolean => {
    if (met[border] >= enoughMet) return true;
    corners ??= diagonalsIntoCorners(tile, frame);
    const lines = edges.filter((edge) => edge.border === border).flatMap(linesRunInto);
    return corners[border] || new Set(lines).size > (isToBeSure ? 1 : 0) || standsOnGrid(tile, frame, border);
  };
}

/** The lines of a border that outlines at an edge run into: its own, or, of film beyond it, the one that meets it. */
const linesRunInto = ({ isFar, corners }: BorderEdge): readonly ('near' | 'far')[] =>
  corners.filter(runsInto).map(({ of }) => (isFar === (of === 'own') ? 'far' : 'near'));

const runsInto = ({ of, angle }: SideCorner): boolean => of !== 'border' && angle < alike;

const isSquare = ({ angle }: SideCorner): boolean => angle > Math.PI / 2 - alike;

/** The corner of an edge at a place of its line, `length` long. */
export function cornerAt(
  at: number,
  own: readonly Stretch[],
  beyond: readonly Stretch[],
  line: { readonly direction: Point; readonly length: number },
): SideCorner {
  if (at <= joinTolerance || at >= line.length - joinTolerance)
    return { of: 'border', angle: 0, isMet: true };
  const [ours, theirs] = [own, beyond].map((film) => film.flatMap(({ from, to }) => [from, to]));
  const mine = ours?.find((end) => end.at === at);
  const arrives = mine ?? theirs?.find((end) => end.at === at);
  const others = (mine ? theirs : ours) ?? [];
  return {
    of: mine ? 'own' : 'beyond',
    angle: arrives ? angleTo(arrives.direction, line.direction) : 0,
    isMet: others.some((end) => Math.abs(end.at - at) <= joinTolerance),
  };
}

/** The angle between an outline and a line, radians, whichever way each is walked. */
export const angleTo = (direction: Point, along: Point): number =>
  Math.acos(Math.min(1, Math.abs(dot(direction, along))));

/** Drawn edges stand on a place within this, mm: files are rounded. */
const onPlace = 0.002;

/** The borders that diagonals from corner to corner of the tile tell the place of: both of a kind have to be met. */
function diagonalsIntoCorners(tile: Tile, { width, height }: Size): Readonly<Record<Border, boolean>> {
  const isOn = (at: number, place: number): boolean => Math.abs(at - place) <= onPlace;
  const met = { left: false, right: false, top: false, bottom: false };
  for (const s of segmentsOf(tile)) {
    if (s.kind !== 'line') continue;
    const slant = Math.atan2(Math.abs(s.to.y - s.from.y), Math.abs(s.to.x - s.from.x));
    if (slant < alike || slant > Math.PI / 2 - alike) continue;
    for (const { x, y } of [s.from, s.to]) {
      const [left, right, top, bottom] = [isOn(x, 0), isOn(x, width), isOn(y, 0), isOn(y, height)];
      if (!(left || right) || !(top || bottom)) continue;
      met.left ||= left;
      met.right ||= right;
      met.top ||= top;
      met.bottom ||= bottom;
    }
  }
  return { side: met.left && met.right, level: met.top && met.bottom };
}

const segmentsOf = ({ layers }: Tile) =>
  layers.flatMap(({ shapes }) =>
    shapes.flatMap(({ contours }) => contours.flatMap(({ segments }) => segments)),
  );

/** A grid finer than this, mm, or than so many parts of what stands nearest together, is one by chance. */
const leastGrid = 0.05;
const mostParts = 4;

/** Whether straight edges inside stand on one even grid with both borders, as what is drawn square by square does and a crop does not. */
function standsOnGrid(tile: Tile, frame: Size, border: Border): boolean {
  const size = border === 'side' ? frame.width : frame.height;
  const places = distinctPlaces([...straightEdges(tile, frame, border).keys()]);
  if (places.length === 0) return false;
  const apart = places.slice(1).map((at, i) => at - (places[i] ?? 0));
  const finest = Math.max(leastGrid, least(apart, size) / mostParts);
  for (let parts = 2; size / parts >= finest - onPlace; parts++) {
    const grid = size / parts;
    if (places.every((at) => Math.abs(at - grid * Math.round(at / grid)) <= onPlace)) return true;
  }
  return false;
}

function distinctPlaces(places: readonly number[]): readonly number[] {
  const found: number[] = [];
  for (const at of [...places].sort((a, b) => a - b))
    if (at - (found.at(-1) ?? -1) > joinTolerance) found.push(at);
  return found;
}

/** Straight edges inside that run along a border: where they stand across it, and how long they are in all there, mm. */
function straightEdges(tile: Tile, frame: Size, border: Border): ReadonlyMap<number, number> {
  const size = border === 'side' ? frame.width : frame.height;
  const found = new Map<number, number>();
  for (const s of segmentsOf(tile)) {
    if (s.kind !== 'line') continue;
    const [from, to] = border === 'side' ? [s.from.x, s.to.x] : [s.from.y, s.to.y];
    if (Math.abs(from - to) > 2 * hair || from < joinTolerance || from > size - joinTolerance) continue;
    const at = Math.round(from / onPlace) * onPlace;
    found.set(at, (found.get(at) ?? 0) + Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y));
  }
  return found;
}

/** Of the straight edges inside, so many are looked at, the longest first. */
const mostEdges = 40;

/** Lines are held this far beside an edge, mm; what is open for less than the second tells nothing of corners. */
const besideEdge = 0.001;
const leastOpen = 0.05;

/** How outlines arrive at straight edges inside the drawing, level or upright. */
function cornersInside(tile: Tile, frame: Size): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const border of ['side', 'level'] as const) {
    const edges = [...straightEdges(tile, frame, border)].sort((p, q) => q[1] - p[1]).slice(0, mostEdges);
    const direction = border === 'side' ? { x: 0, y: 1 } : { x: 1, y: 0 };
    const line = { direction, length: border === 'side' ? frame.height : frame.width };
    for (const { shapes } of tile.layers) {
      const drawn = boxedShapes(shapes);
      for (const [at] of edges) {
        const beside = (held: number) =>
          filmAlong(drawn, border === 'side' ? { x: held, y: 0 } : { x: 0, y: held }, direction);
        const [one, other] = [beside(at - besideEdge), beside(at + besideEdge)];
        for (const corner of [...openCorners(one, other, line), ...openCorners(other, one, line)])
          keys.add(keyOf(corner));
      }
    }
  }
  return keys;
}

/** How outlines arrive at the ends of what one side of a line has and the other has not. */
const openCorners = (
  own: readonly Stretch[],
  beyond: readonly Stretch[],
  line: { readonly direction: Point; readonly length: number },
): readonly SideCorner[] =>
  uncovered(own, beyond)
    .filter(({ from, to }) => to.at - from.at >= leastOpen)
    .flatMap((open) => [open.from, open.to])
    .map((end) => cornerAt(end.at, own, beyond, line));

const degree = Math.PI / 180;

const keyOf = ({ of, angle }: SideCorner): string => `${of} ${Math.round(angle / degree)}`;

const nearKeys = (corner: SideCorner): readonly string[] =>
  [-1, 0, 1].map((by) => keyOf({ ...corner, angle: corner.angle + by * degree }));

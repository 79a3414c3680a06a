// Gores joined in a comb: one piece, its gores left together along a strip at the foot or at the lip.
import { type Affine, compose, moveContour, moveSegment, rotation, translation } from '../geometry/affine.ts';
import { type Contour, line, reverseContour, reverseSegment, type Segment } from '../geometry/contour.ts';
import { cross, type Point, subtract } from '../geometry/point.ts';
import {
  closedUp,
  type GoreOptions,
  type GoreWall,
  goreEdge,
  type HalfLevel,
  halfLevel,
  halfWidth,
  levelArc,
  mirrored,
} from './gores.ts';
import { sinc } from './sinc.ts';

export interface CombOptions extends GoreOptions {
  /** The end at which the gores stay together. */
  readonly joined: 'foot' | 'lip';
  /** Width of the strip left uncut there, mm along the wall; less than the band. At 0 the gores only touch. */
  readonly strip: number;
}

export interface GoreComb {
  /** Flat, mm, y down, closed. The first gore stands upright, its middle at x 0, the ends of the cuts beside it at y 0. */
  readonly outline: Contour;
  /** Strain of the strip around the wall at the joined edge, where it is largest; stretched is positive. */
  readonly stripStrain: number;
}

/** An edge of a gore may lie over the line between it and its neighbour by no more than this, mm. */
const touching = 1e-6;

/**
 * All gores as one outline. They begin where the strip ends, side by side on one level line as long as the girth there,
 * and have their share of the girth from there on; the strip goes on with the cone (arcs) or the cylinder (straight)
 * that the wall has on that line.
 *
 * Undefined where neighbours would overlap: the wall widens away from that line more than the line spreads them. Then
 * join the comb at its other end, or cut the gores loose. Undefined too where the strip takes the whole
 * band, or its cone closes before its edge.
 */
export function goreComb(wall: GoreWall, options: CombOptions): GoreComb | undefined {
  const { count, band, spacing, strip, levels, joined } = options;
  const cuts = joined === 'foot' ? band.from + strip : band.to - strip;
  const away = outward(wall, cuts, joined);
  const length = band.to - band.from - strip;
  if (length <= 0) return undefined;
  const edge = goreEdge(away, { count, spacing, levels, band: { from: 0, to: length } });
  const root = halfLevel(away, 0, count, levels);
  const ownRadius = away.at(0).radius - strip * (levels === 'arcs' ? away.at(0).slope : 0);
  if (ownRadius <= 0 || overlaps(edge, root)) return undefined;
  const tooth = toothOf(edge, halfLevel(away, length, count, levels).turn);
  const pitch = halfWidth(away.at(0).radius, count) * 2;
  const places = Array.from({ length: count }, (_, k) => placeOf(k, pitch, root.turn));
  const base = baseOf(root, strip);
  const outline = closedUp([
    ...places.map((place) => moveSegment(place, base)),
    ...sideOf(places.at(-1), base.to, { x: root.aside, y: root.fall }),
    ...places.toReversed().flatMap((place) => tooth.map((s) => moveSegment(place, s))),
    ...sideOf(places[0], { x: -root.aside, y: root.fall }, base.from),
  ]);
  const stripStrain = away.at(-strip).radius / ownRadius - 1;
  return { outline: joined === 'foot' ? outline : upsideDown(outline), stripStrain };
}

/** The wall by its distance from the line where the cuts end, away from the joined end. */
function outward(wall: GoreWall, cuts: number, joined: 'foot' | 'lip'): GoreWall {
  const way = joined === 'foot' ? 1 : -1;
  return {
    at: (out) => {
      const { radius, slope } = wall.at(cuts + way * out);
      return { radius, slope: way * slope };
    },
  };
}

/** Neighbours mirror each other in the line that parts them: neither may cross it. */
function overlaps(edge: readonly Segment[], { aside, fall, turn }: HalfLevel): boolean {
  const corner = { x: aside, y: fall };
  const parting = { x: Math.sin(turn), y: -Math.cos(turn) };
  return edge.some(({ to }) => cross(parting, subtract(to, corner)) > touching);
}

/** One gore from its right root over its tip to its left root. */
const toothOf = (edge: readonly Segment[], tipTurn: number): Segment[] => {
  const tip = edge.at(-1)?.to;
  return [
    ...edge,
    ...(tip ? [levelArc(tip, tipTurn)] : []),
    ...edge.map((s) => reverseSegment(mirrored(s))).reverse(),
  ];
};

/** Where the gore with this number stands: on the level line, turned with it. */
function placeOf(index: number, pitch: number, turn: number): Affine {
  const [way, angle] = [pitch * index, 2 * turn * index];
  const bow = sinc(angle / 2);
  const middle = { x: way * sinc(angle), y: (way * angle * bow * bow) / 2 };
  return compose(rotation(angle), translation(middle.x, middle.y));
}

/** The joined edge under one gore, from left to right. */
function baseOf({ aside, fall, turn }: HalfLevel, strip: number): Segment {
  return levelArc({ x: strip * Math.sin(turn) - aside, y: fall + strip * Math.cos(turn) }, turn);
}

const sideOf = (place: Affine | undefined, from: Point, to: Point): Segment[] =>
  place ? [moveSegment(place, line(from, to))] : [];

const upsideDown = (contour: Contour): Contour =>
  reverseContour(moveContour({ a: 1, b: 0, c: 0, d: -1, e: 0, f: 0 }, contour));

// Gores joined in a comb: one piece, its gores left together along a strip at the foot or at the lip.
import { type Affine, compose, moveContour, moveSegment, rotation, translation } from '../geometry/affine.ts';
import { type Contour, line, reverseContour, reverseSegment, type Segment } from '../geometry/contour.ts';
import { cross, type Point, subtract } from '../geometry/point.ts';
import { sinc } from '../geometry/sinc.ts';
import {
  arcBetween,
  closedUp,
  type GoreOptions,
  type GoreWall,
  goreEdge,
  goreLevel,
  type HalfLevel,
  halfLevel,
  halfWidth,
  leftEdge,
} from './gores.ts';

export interface CombOptions extends GoreOptions {
  /** The end at which the gores stay together. */
  readonly joined: 'foot' | 'lip';
  /** Width of the strip left uncut there, mm along the wall; less than the band. At 0 the gores only touch. */
  readonly strip: number;
}

export interface GoreComb {
  /** Flat, mm, y down, closed. The first gore stands upright, its middle at x 0, the ends of the cuts beside it at y 0. */
  readonly outline: Contour;
  /** For each gore, where the drawing of its own outline (`goreOutline`) stands in the comb. */
  readonly places: readonly Affine[];
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
 * band, its cone closes before its edge, or the fan with its overlap comes all the way around.
 */
export function goreComb(wall: GoreWall, options: CombOptions): GoreComb | undefined {
  const { count, band, strip, levels, joined, overlap = 0 } = options;
  const cuts = cutsAt(options);
  const away = outward(wall, cuts, joined);
  const length = band.to - band.from - strip;
  if (length <= 0) return undefined;
  const own: GoreOptions = {
    ...options,
    band: { from: 0, to: length },
    corners: (options.corners ?? []).map((along) => Math.abs(along - cuts)),
  };
  const root = halfLevel(away, 0, own);
  const ownRadius = away.at(0).radius - strip * (levels === 'arcs' ? away.at(0).slope : 0);
  if (ownRadius <= 0 || overlaps(goreEdge(away, own), root) || closesOn(away, own, root)) return undefined;
  const pitch = halfWidth(away.at(0).radius, count) * 2;
  const places = Array.from({ length: count }, (_, k) => placeOf(k, pitch, root.turn));
  const right = halfLevel(away, 0, own, overlap);
  const isLast = (place: Affine) => place === places.at(-1);
  const [base, lastBase] = [root, right].map((end) => baseOf(root, end, strip));
  const [tooth, lastTooth] = [0, overlap].map((extra) => toothOf(away, { ...own, overlap: extra }));
  if (!base || !lastBase || !tooth || !lastTooth) throw new Error('a comb has a strip and teeth');
  const outline = closedUp([
    ...places.map((place) => moveSegment(place, isLast(place) ? lastBase : base)),
    ...sideOf(places.at(-1), lastBase.to, { x: right.aside, y: right.fall }),
    ...places
      .toReversed()
      .flatMap((place) => (isLast(place) ? lastTooth : tooth).map((s) => moveSegment(place, s))),
    ...sideOf(places[0], { x: -root.aside, y: root.fall }, base.from),
  ]);
  const stripStrain = away.at(-strip).radius / ownRadius - 1;
  const toCuts = translation(0, cuts - band.from);
  return joined === 'foot'
    ? { outline, stripStrain, places: places.map((place) => compose(toCuts, place)) }
    : {
        outline: reverseContour(moveContour(flip, outline)),
        stripStrain,
        places: places.map((place) => compose(compose(toCuts, flip), compose(place, flip))),
      };
}

/** Where the strip ends and the cuts between gores begin, mm along. */
export const cutsAt = ({ joined, band, strip }: CombOptions): number =>
  joined === 'foot' ? band.from + strip : band.to - strip;

/** The wall that a comb's film follows: from its cuts to its joined edge the cone or cylinder it has on that line. */
export function combWall(wall: GoreWall, options: CombOptions): GoreWall {
  const cuts = cutsAt(options);
  const { radius, slope } = wall.at(cuts);
  const kept = options.levels === 'arcs' ? slope : 0;
  const isStrip = (along: number) => (options.joined === 'foot' ? along < cuts : along > cuts);
  return {
    at: (along) =>
      isStrip(along) ? { radius: radius + kept * (along - cuts), slope: kept } : wall.at(along),
  };
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

/** Whether the last gore, with its overlap, comes around to the first. */
function closesOn(away: GoreWall, { count, overlap = 0, levels }: GoreOptions, root: HalfLevel): boolean {
  if (levels === 'straight') return false;
  const { radius, slope } = away.at(0);
  return 2 * Math.abs(root.turn) * count + (overlap * Math.abs(slope)) / radius > 2 * Math.PI;
}

/** One gore from its right root over its tip to its left root. */
const toothOf = (away: GoreWall, options: GoreOptions): Segment[] => [
  ...goreEdge(away, options, options.overlap),
  reverseSegment(goreLevel(away, options, options.band.to)),
  ...leftEdge(away, options),
];

/** Where the gore with this number stands: on the level line, turned with it. */
function placeOf(index: number, pitch: number, turn: number): Affine {
  const [way, angle] = [pitch * index, 2 * turn * index];
  const bow = sinc(angle / 2);
  const middle = { x: way * sinc(angle), y: (way * angle * bow * bow) / 2 };
  return compose(rotation(angle), translation(middle.x, middle.y));
}

/** The joined edge under one gore, from left to right. */
function baseOf(left: HalfLevel, right: HalfLevel, strip: number): Segment {
  const under = ({ aside, fall, turn }: HalfLevel, sign: number): Point => ({
    x: sign * (aside - strip * Math.sin(turn)),
    y: fall + strip * Math.cos(turn),
  });
  return arcBetween(under(left, -1), under(right, 1), -left.turn, right.turn);
}

const sideOf = (place: Affine | undefined, from: Point, to: Point): Segment[] =>
  place ? [moveSegment(place, line(from, to))] : [];

/** Upside down: a comb joined at the lip is worked out hanging from it. */
const flip: Affine = { a: 1, b: 0, c: 0, d: -1, e: 0, f: 0 };

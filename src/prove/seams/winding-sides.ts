// The two winding sides of a delivered piece, found in its outline: the proof knows no line but the one that is cut.
import { moveContour } from '../../geometry/affine.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import type { Point } from '../../geometry/point.ts';
import { type ProvedPiece, pieceBand } from '../written/piece.ts';
import { onward, type RolledPoint, rollUp } from '../written/rolled-cone.ts';
import { samplesOn } from '../written/samples.ts';

export interface WindingSides {
  readonly left: Contour;
  readonly right: Contour;
  /** How far the right side is past the left one turn on, in turns. */
  readonly lap: number;
  /** The turn of the left side at a height. */
  readonly turnAt: (along: number) => number;
}

/** An end of a segment this near to the foot or lip of the piece is on it, mm. */
const onEnd = 0.02;

type Outlined = Pick<ProvedPiece, 'cone' | 'outline' | 'band' | 'trim'>;

/** The level segments of an outline, and those of its sides in their order, each run apart. */
function partsOf({ cone, outline, ...piece }: Outlined) {
  const { from, to } = pieceBand(piece);
  const segments = outline[0]?.segments ?? [];
  const isOn = (p: Point, along: number) => Math.abs(rollUp(cone, p).along - along) < onEnd;
  const isLevel = (s: Segment) => [from, to].some((along) => isOn(s.from, along) && isOn(s.to, along));
  // Beginning after a level run, so that no side is parted by the contour's own start.
  const first = segments.findIndex((s, i) => !isLevel(s) && isLevel(segments.at(i - 1) ?? s));
  const ordered = first < 0 ? [] : [...segments.slice(first), ...segments.slice(0, first)];
  const sides: Segment[][] = [];
  ordered.forEach((s, i) => {
    if (isLevel(s)) return;
    const before = ordered[i - 1];
    if (before && !isLevel(before)) sides.at(-1)?.push(s);
    else sides.push([s]);
  });
  return { level: ordered.filter(isLevel), sides };
}

/** The winding sides of a piece; undefined where its outline has not two. */
export function windingSidesOf(piece: Outlined): WindingSides | undefined {
  const { cone } = piece;
  const { sides } = partsOf(piece);
  const [one, other] = sides
    .map((segments) => {
      const contour: Contour = { closed: false, segments };
      const points = samplesOn([contour])
        .map((p) => rollUp(cone, p))
        .sort((a, b) => a.along - b.along);
      return { contour, points, mean: points.reduce((sum, { turn }) => sum + turn, 0) / points.length };
    })
    .sort((a, b) => a.mean - b.mean);
  if (!one || !other || sides.length !== 2) return undefined;
  const [start, finish] = [one.points[0], other.points[0]];
  if (!start || !finish) return undefined;
  return {
    left: one.contour,
    right: other.contour,
    lap: finish.turn - start.turn - 1,
    turnAt: (along) => turnAt(one.points, along),
  };
}

/** Between the two places next to a height. */
function turnAt(points: readonly RolledPoint[], along: number): number {
  let [low, high] = [0, points.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((points[middle]?.along ?? 0) <= along) low = middle;
    else high = middle;
  }
  const [p, q] = [points[low], points[high]];
  if (!p || !q) return Number.NaN;
  const share = q.along > p.along ? (along - p.along) / (q.along - p.along) : 0;
  return p.turn + (q.turn - p.turn) * Math.max(0, Math.min(1, share));
}

/** How far the ends of a winding piece are off their levels, and its two sides off one another, mm. */
export function windingOff(piece: ProvedPiece): readonly number[] {
  const { cone } = piece;
  const { from, to } = pieceBand(piece);
  const sides = windingSidesOf(piece);
  if (!sides) return [Number.NaN];
  const off = (p: Point) => {
    const { along } = rollUp(cone, p);
    return Math.min(Math.abs(along - from), Math.abs(along - to));
  };
  const { level } = partsOf(piece);
  const ends = [sides.left, sides.right].flatMap(({ segments }) => [segments[0]?.from, segments.at(-1)?.to]);
  const back = onward(cone, -1 - sides.lap);
  const finder = new NearestFinder([sides.left]);
  const apart = samplesOn([moveContour(back, sides.right)]).map((p) => finder.find(p, 1)?.distance ?? 1);
  return [
    ...samplesOn([{ closed: false, segments: level }]).map(off),
    ...ends.map((p) => (p ? off(p) : Number.NaN)),
    ...apart,
  ];
}

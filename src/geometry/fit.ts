// Carrying a curve through a smooth map and fitting the image with as few cubics as the tolerance allows.
import { type CubicSegment, cubic, type LineSegment, line, type Segment } from './contour.ts';
import { add, distance, dot, norm, type Point, scale, subtract } from './point.ts';
import { derivativeAt, partOf, pointAt, xAt, yAt } from './segment.ts';
import { straightTolerance } from './tolerance.ts';

/** A smooth map of the plane with its derivative. */
export interface SmoothMap {
  readonly point: (p: Point) => Point;
  /** The image of a small displacement `by` at `at`. */
  readonly displacement: (at: Point, by: Point) => Point;
  /** Parameters of a segment, rising, at which the map has a corner: it is smooth between them. None where left out. */
  readonly corners?: (source: Segment) => readonly number[];
}

export interface Fitted {
  /** The cubics and lines, in order; `until` is the source's parameter where each ends. */
  readonly segments: readonly Segment[];
  readonly until: readonly number[];
  /** Largest distance measured between the image and the fit, mm. */
  readonly error: number;
}

/** Where the fit is measured: eighths, offset so that neither ends nor middle (where errors vanish) are all there is. */
const probes = [0.0625, 0.1875, 0.3125, 0.4375, 0.5625, 0.6875, 0.8125, 0.9375];

/** A fit is never halved more often than this: 2^12 pieces of one segment would mean the map is not smooth. */
const deepest = 12;

/** A smooth curve by a parameter from 0 to 1, with its derivative by it. */
export interface SmoothCurve {
  readonly point: (t: number) => Point;
  readonly derivative: (t: number) => Point;
  /** Whether it may be a straight line, whose own parameter means nothing. */
  readonly mayBeStraight: boolean;
  /** Parameters at which it has a corner, rising; none where left out. */
  readonly corners?: readonly number[];
}

/**
 * The image of a segment under a map, as cubics that stay within the tolerance of it. Ends and end directions are
 * exact; a line whose image bends by less than `straightTolerance` stays a line.
 * The fit is the cubic Hermite interpolant in the source's own parameter, so the distance measured at equal
 * parameters is never less than the true one. Source: standard Hermite interpolation (G. Farin, from memory).
 */
export const mapSegment = (map: SmoothMap, source: Segment, tolerance: number): Fitted =>
  fitCurve(
    {
      point: (t) => map.point(pointAt(source, t)),
      derivative: (t) => map.displacement(pointAt(source, t), derivativeAt(source, t)),
      mayBeStraight: source.kind === 'line',
      ...(map.corners ? { corners: map.corners(source) } : {}),
    },
    tolerance,
  );

/** Any smooth curve as cubics that stay within the tolerance of it, as `mapSegment` makes them of an image. */
export function fitCurve(curve: SmoothCurve, tolerance: number): Fitted {
  const segments: Segment[] = [];
  const until: number[] = [];
  let error = 0;
  const ends = [...(curve.corners ?? []), 1];
  ends.forEach((end, i) => {
    const span = fitSpan(curve, ends[i - 1] ?? 0, end, tolerance, deepest, (segment, t1) => {
      segments.push(segment);
      until.push(t1);
    });
    error = Math.max(error, span);
  });
  return { segments, until, error };
}

/**
 * The part of a fit from one parameter of its source to another, t0 < t1; `image` gives the exact image at a parameter.
 * It lies exactly on the fit of the whole, so that a curve cut short by a window is the same curve as its uncut copy:
 * a cubic of a fit has its source's own parameter; on a line, whose parameter means nothing, the nearest place is taken.
 */
export function fittedPart(
  { segments, until }: Fitted,
  image: (t: number) => Point,
  t0: number,
  t1: number,
): Segment[] {
  return segments.flatMap((segment, i) => {
    const begin = until[i - 1] ?? 0;
    const end = until[i] ?? 1;
    const [from, to] = [Math.max(begin, t0), Math.min(end, t1)];
    if (!(to > from)) return [];
    const share = (t: number): number => {
      if (t === begin) return 0;
      if (t === end) return 1;
      return segment.kind === 'line' ? shareOf(segment, image(t)) : (t - begin) / (end - begin);
    };
    return [partOf(segment, share(from), share(to))];
  });
}

/** How far along a line the foot of a point lies, 0 to 1. */
function shareOf({ from, to }: LineSegment, p: Point): number {
  const by = subtract(to, from);
  const length = dot(by, by);
  return length === 0 ? 0 : Math.max(0, Math.min(1, dot(subtract(p, from), by) / length));
}

function fitSpan(
  curve: SmoothCurve,
  t0: number,
  t1: number,
  tolerance: number,
  depth: number,
  emit: (segment: Segment, t1: number) => void,
): number {
  const { point } = curve;
  const fitted = hermite(curve, t0, t1);
  const straight = curve.mayBeStraight && isStraight(point, fitted, t0, t1);
  const candidate = straight ? line(fitted.from, fitted.to) : fitted;
  const error = straight ? straightness(point, candidate, t0, t1) : measure(point, candidate, t0, t1);
  if (error <= tolerance || depth === 0) {
    emit(candidate, t1);
    return error;
  }
  const middle = (t0 + t1) / 2;
  return Math.max(
    fitSpan(curve, t0, middle, tolerance, depth - 1, emit),
    fitSpan(curve, middle, t1, tolerance, depth - 1, emit),
  );
}

/** At a corner a direction is taken on the span's own side: so far from its end, as a share of it. */
const inside = 1e-6;

function hermite({ point, derivative, corners }: SmoothCurve, t0: number, t1: number): CubicSegment {
  const third = (t1 - t0) / 3;
  const aside = corners ? inside * (t1 - t0) : 0;
  const [from, to] = [point(t0), point(t1)];
  const [leaving, arriving] = [derivative(t0 + aside), derivative(t1 - aside)];
  return cubic(from, add(from, scale(leaving, third)), add(to, scale(arriving, -third)), to);
}

function measure(image: (t: number) => Point, candidate: Segment, t0: number, t1: number): number {
  let most = 0;
  for (const u of probes) {
    const { x, y } = image(t0 + u * (t1 - t0));
    most = Math.max(most, norm(x - xAt(candidate, u), y - yAt(candidate, u)));
  }
  return most;
}

/** How far the image strays from its chord: measured across it, since a line's parameter means nothing. */
function straightness(image: (t: number) => Point, chord: Segment, t0: number, t1: number): number {
  const length = distance(chord.from, chord.to);
  if (length === 0) return 0;
  const across = (p: Point) =>
    Math.abs(
      (p.x - chord.from.x) * (chord.to.y - chord.from.y) - (p.y - chord.from.y) * (chord.to.x - chord.from.x),
    ) / length;
  let most = 0;
  for (const u of probes) most = Math.max(most, across(image(t0 + u * (t1 - t0))));
  return most;
}

const isStraight = (image: (t: number) => Point, fitted: CubicSegment, t0: number, t1: number): boolean =>
  straightness(image, line(fitted.from, fitted.to), t0, t1) <= straightTolerance;

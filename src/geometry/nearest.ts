// The nearest place on a set of curves.
import { boxOfSegment } from './box.ts';
import { type BoxIndex, segmentIndex } from './box-index.ts';
import type { Contour, CubicSegment, Segment } from './contour.ts';
import { distance, dot, type Point, subtract } from './point.ts';
import { derivativeAt, pointAt, secondDerivativeAt } from './segment.ts';

export interface NearestPlace {
  readonly segment: Segment;
  readonly t: number;
  readonly distance: number;
}

/** Steps into a stretch: were all of them halvings, to what a double tells apart. */
const halvings = 50;

/** Halvings until two turns that lie so close are taken for one: to 1e-9 of the curve. */
const deepest = 30;

/**
 * Coefficients, in Bernstein form of degree 5, of how the curve leaves p: its place from p times its derivative, which
 * is nothing where the distance is least or greatest.
 */
function leaving({ from, c1, c2, to }: CubicSegment, p: Point): readonly number[] {
  const [b0, b1, b2, b3] = [subtract(from, p), subtract(c1, p), subtract(c2, p), subtract(to, p)];
  const [d0, d1, d2] = [subtract(c1, from), subtract(c2, c1), subtract(to, c2)];
  return [
    dot(b0, d0),
    (2 * dot(b0, d1) + 3 * dot(b1, d0)) / 5,
    (dot(b0, d2) + 6 * dot(b1, d1) + 3 * dot(b2, d0)) / 10,
    (3 * dot(b1, d2) + 6 * dot(b2, d1) + dot(b3, d0)) / 10,
    (3 * dot(b2, d2) + 2 * dot(b3, d1)) / 5,
    dot(b3, d2),
  ];
}

const changes = (coefficients: readonly number[]): number =>
  coefficients.reduce(
    (sum, value, i) => (i > 0 && value < 0 !== (coefficients[i - 1] ?? 0) < 0 ? sum + 1 : sum),
    0,
  );

/** A polynomial in Bernstein form parted in the middle. */
function halves(coefficients: readonly number[]): [number[], number[]] {
  const [left, right]: [number[], number[]] = [[], []];
  let row = [...coefficients];
  while (row.length > 0) {
    left.push(row[0] ?? 0);
    right.unshift(row.at(-1) ?? 0);
    row = row.slice(1).map((value, i) => ((row[i] ?? 0) + value) / 2);
  }
  return [left, right];
}

/** A stretch of a curve's parameter. */
type Stretch = readonly [number, number];

/**
 * Stretches in which a polynomial in Bernstein form goes from below 0 to above it, once each. It has no more roots than
 * its coefficients change sign (Descartes' rule in that form; G. Farin, Curves and Surfaces for CAGD, from memory), so it
 * is halved until they change once.
 */
function rises(coefficients: readonly number[], [from, to]: Stretch, depth: number): readonly Stretch[] {
  const count = changes(coefficients);
  if (count <= 1 || depth === 0) return count > 0 && (coefficients[0] ?? 0) < 0 ? [[from, to]] : [];
  const middle = (from + to) / 2;
  const [left, right] = halves(coefficients);
  return [...rises(left, [from, middle], depth - 1), ...rises(right, [middle, to], depth - 1)];
}

/** Where in a stretch the curve turns from nearing p to leaving it: Newton's steps, halving where one would leave the stretch. */
function turnIn(segment: CubicSegment, p: Point, [from, to]: Stretch): number {
  let [low, high] = [from, to];
  let t = (low + high) / 2;
  for (let i = 0; i < halvings && high - low > 1e-14; i++) {
    const off = subtract(pointAt(segment, t), p);
    const by = derivativeAt(segment, t);
    const rate = dot(off, by);
    if (rate > 0) high = t;
    else low = t;
    const step = rate / (dot(by, by) + dot(off, secondDerivativeAt(segment, t)));
    if (Math.abs(step) < 1e-14) return t;
    const next = t - step;
    // A step that is no number leaves the stretch too.
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}

/** The nearest place of one segment, wherever it turns. */
function nearestOn(segment: Segment, p: Point): NearestPlace {
  if (segment.kind === 'line') {
    const by = subtract(segment.to, segment.from);
    const length = dot(by, by);
    const t = length === 0 ? 0 : Math.max(0, Math.min(1, dot(subtract(p, segment.from), by) / length));
    return { segment, t, distance: distance(pointAt(segment, t), p) };
  }
  const stretches = rises(leaving(segment, p), [0, 1], deepest);
  const places = [0, 1, ...stretches.map((stretch) => turnIn(segment, p, stretch))];
  let best = { segment, t: 0, distance: Number.POSITIVE_INFINITY };
  for (const t of places) {
    const away = distance(pointAt(segment, t), p);
    if (away < best.distance) best = { segment, t, distance: away };
  }
  return best;
}

/** Room for rounding, as a share of a square. */
const rounding = 1e-9;

/** Whether a straight line goes by a place farther away than a reach, told without its nearest place: the box of a slanting one holds much besides. */
function staysAway({ kind, from, to }: Segment, p: Point, reach: number): boolean {
  if (kind !== 'line') return false;
  const [x, y] = [to.x - from.x, to.y - from.y];
  const beside = x * (p.y - from.y) - y * (p.x - from.x);
  return beside * beside > reach * reach * (x * x + y * y) * (1 + rounding);
}

/** Finds the nearest place on many curves, by an index of their boxes. */
export class NearestFinder {
  /** The curves it looks at. Of contours that are kept as numbers each asking makes others: one of these is the same object always. */
  readonly segments: readonly Segment[];
  readonly #index: BoxIndex;

  constructor(contours: readonly Contour[]) {
    this.segments = contours.flatMap(({ segments }) => segments);
    this.#index = segmentIndex(this.segments);
  }

  /** The nearest place on every curve but `except`, one of `segments`, that comes within a reach of p, mm. */
  within(p: Point, reach: number, except?: Segment): NearestPlace[] {
    return this.#index.meeting(p.x - reach, p.y - reach, p.x + reach, p.y + reach).flatMap((i) => {
      const segment = this.segments[i];
      if (!segment || segment === except || staysAway(segment, p, reach)) return [];
      const place = nearestOn(segment, p);
      return place.distance <= reach ? [place] : [];
    });
  }

  /** Whether a curve but `except`, one of `segments`, comes within a reach of p, mm, at a nearest place that is wanted: no more are looked at than tell. */
  comesBy(p: Point, reach: number, isWanted: (place: NearestPlace) => boolean, except?: Segment): boolean {
    const found = this.#index.nearest(p.x, p.y, 1, reach, (i) => {
      const segment = this.segments[i];
      if (!segment || segment === except || staysAway(segment, p, reach)) return false;
      const place = nearestOn(segment, p);
      return place.distance <= reach && isWanted(place);
    });
    return found.length > 0;
  }

  /** The nearest place within a reach, mm; undefined where there is none. */
  find(p: Point, reach: number): NearestPlace | undefined {
    let best: NearestPlace | undefined;
    // By how near their boxes are: past the first box that is farther than a place found, nothing is nearer.
    const byBox = this.#index
      .meeting(p.x - reach, p.y - reach, p.x + reach, p.y + reach)
      .map((i) => ({ i, least: distanceTo(this.segments[i], p) }))
      .sort((a, b) => a.least - b.least || a.i - b.i);
    for (const { i, least } of byBox) {
      const segment = this.segments[i];
      const within = best?.distance ?? reach;
      if (least > within || !segment) break;
      if (staysAway(segment, p, within)) continue;
      const place = nearestOn(segment, p);
      if (place.distance <= reach && place.distance < (best?.distance ?? Number.POSITIVE_INFINITY))
        best = place;
    }
    return best;
  }
}

/** Distance of a place from the box of a segment. */
function distanceTo(segment: Segment | undefined, p: Point): number {
  if (!segment) return Number.POSITIVE_INFINITY;
  const box = boxOfSegment(segment);
  return Math.hypot(Math.max(box.minX - p.x, 0, p.x - box.maxX), Math.max(box.minY - p.y, 0, p.y - box.maxY));
}

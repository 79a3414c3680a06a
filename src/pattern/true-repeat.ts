// The true repeat: the lattice that a crop of a pattern really has, found from what it shows more than once.
// Steps between landmarks of one kind are candidates; a step is held to be a repeat when nearly every landmark that the
// crop should show again a step away is there. The two shortest such steps make up the lattice.
import { cross, distance, dot, type Point, scale, subtract } from '../geometry/point.ts';
import { LandmarkMap, type Recurring } from './landmark-map.ts';
import type { Landmark } from './landmarks.ts';
import { cellArea, coordinates, type Lattice } from './lattice.ts';

export interface Crop {
  readonly width: number;
  readonly height: number;
}

/** A lattice found, and how sure it is: the share of what should recur that does, 0 to 1. */
export interface FoundRepeat extends Lattice {
  readonly confidence: number;
}

/** Copies stand where they should within this, mm. */
export const repeatTolerance = 0.05;

/** A step is a repeat when this share of what should recur does: art may be covered in part, or touched up. */
const leastShare = 0.6;

/** Fewer landmarks than this that should recur prove nothing. */
const leastExpected = 3;

/** The least share of the crop that must show again a step away. */
const leastOverlap = 0.06;

/** Steps that lattices are made of: the shortest that hold. */
const mostSteps = 24;

/** A step held against the drawing. */
interface CheckedStep {
  readonly step: Point;
  readonly recurring: Recurring;
}

/**
 * The lattices a drawing may repeat by, the likeliest first; none where nothing repeats both ways. Lengths in mm, y down.
 * The cost grows with n log n in the landmarks.
 */
export function trueRepeat(
  landmarks: readonly Landmark[],
  crop: Crop,
  tolerance: number = repeatTolerance,
): readonly FoundRepeat[] {
  const map = new LandmarkMap(landmarks, crop, tolerance);
  const steps = map
    .candidateSteps()
    .map((step) => checked(map, step, crop))
    .filter((step) => step !== undefined);
  const found: Proven[] = [];
  for (const lattice of latticesOf(steps)) {
    const repeat = proven(map, settledLattice(map, lattice), crop);
    // The smallest period comes first: where it explains all there is, larger ones are only its multiples.
    if (!repeat) continue;
    if (repeat.share >= explainingShare && repeat.expected >= (found[0]?.expected ?? 0) * explainingPart)
      return [repeat, ...distinct(found, tolerance)].map(asFound);
    found.push(repeat);
  }
  return distinct(found, tolerance).map(asFound);
}

interface Proven extends FoundRepeat {
  /** Landmarks that should recur, and the share of them that does. */
  readonly expected: number;
  readonly share: number;
}

const asFound = ({ a, b, confidence }: Proven): FoundRepeat => ({ a, b, confidence });

/** The share that a lattice must explain to be taken before a smaller one that explains less. */
const explainingShare = 0.97;
/** And the least part of what the smallest one expects that it must have been held to: a far step meets little art. */
const explainingPart = 0.3;

/** The share of what should recur that does; a step is a repeat where enough does. */
const shareOf = ({ expected, found }: Recurring): number => (expected === 0 ? 0 : found / expected);

/** A step moved to the mean of what it finds; undefined where it is no repeat. */
function checked(map: LandmarkMap, step: Point, crop: Crop): CheckedStep | undefined {
  if (overlapOf(step, crop) < leastOverlap) return undefined;
  const first = map.recurring(step);
  if (first.expected < leastExpected || shareOf(first) < leastShare) return undefined;
  const at = { x: step.x + first.meanMiss.x, y: step.y + first.meanMiss.y };
  return { step: at, recurring: map.recurring(at) };
}

/** The share of the crop that shows again a step away. */
const overlapOf = (step: Point, { width, height }: Crop): number =>
  Math.max(0, 1 - Math.abs(step.x) / width) * Math.max(0, 1 - Math.abs(step.y) / height);

const lengthOf = (p: Point): number => Math.hypot(p.x, p.y);

/** The lattices of every two of the shortest steps that do not point the same way, the smallest period first. */
function latticesOf(steps: readonly CheckedStep[]): readonly Lattice[] {
  const short = steps
    .map(({ step }) => step)
    .sort((p, q) => lengthOf(p) - lengthOf(q))
    .slice(0, mostSteps);
  const lattices = short.flatMap((a, i) =>
    short
      .slice(i + 1)
      .filter((b) => Math.abs(cross(a, b)) > 0.02 * lengthOf(a) * lengthOf(b))
      .map((b) => reduced({ a, b })),
  );
  return distinct(lattices, 0.5).sort((p, q) => cellArea(p) - cellArea(q));
}

/** Lattices of which none is another's: the first of those that are the same is kept. */
function distinct<L extends Lattice>(lattices: readonly L[], tolerance: number): L[] {
  const kept: L[] = [];
  for (const lattice of lattices)
    if (!kept.some((other) => isSameLattice(other, lattice, tolerance))) kept.push(lattice);
  return kept;
}

/** A lattice with how sure it is, from all that recurs by its four shortest steps; undefined where it is none. */
function proven(map: LandmarkMap, lattice: Lattice, crop: Crop): Proven | undefined {
  const { a, b } = reduced(lattice);
  const around = [a, b, { x: a.x + b.x, y: a.y + b.y }, { x: a.x - b.x, y: a.y - b.y }]
    .filter((step) => overlapOf(step, crop) > 0)
    .map((step) => map.recurring(step))
    .filter(({ expected }) => expected > 0);
  if (around.some((recurring) => recurring.expected >= leastExpected && shareOf(recurring) < leastShare))
    return undefined;
  const expected = around.reduce((sum, recurring) => sum + recurring.expected, 0);
  const share = around.reduce((sum, { found }) => sum + found, 0) / expected;
  const contours = around.reduce((sum, recurring) => sum + recurring.contours, 0);
  const isNet = map.contours <= 3 && expected >= leastOfNet;
  if (!(share >= leastShare) || (contours < leastContours && !isNet)) return undefined;
  // Every contour more that recurs halves the doubt; of a net every few corners do.
  const doubt = 2 ** -(isNet ? expected / 4 : contours - 1);
  return { ...tidied(lattice), confidence: share * (1 - doubt), expected, share };
}

/** One contour a step may be chance: the step was taken from it. */
const leastContours = 3;

/** A net is one contour: so many of its corners have to recur. */
const leastOfNet = 12;

/** The same lattice by its shortest steps. Source: Gauss's reduction of binary forms, from memory. */
export function reduced({ a, b }: Lattice): Lattice {
  let [short, long] = lengthOf(a) <= lengthOf(b) ? [a, b] : [b, a];
  for (;;) {
    const times = Math.round(dot(short, long) / dot(short, short));
    const rest = subtract(long, scale(short, times));
    if (lengthOf(rest) >= lengthOf(short) * (1 - 1e-9)) return { a: short, b: rest };
    [short, long] = [rest, short];
  }
}

/** The lattice that all copies in the crop agree on best: least squares over every pair, near and far. */
function settledLattice(map: LandmarkMap, lattice: Lattice): Lattice {
  let settled = lattice;
  // Far copies are only found once the near ones have made the steps exact.
  for (const reach of [1, 3, 10, 30]) {
    const pairs = map.pairs(settled, reach);
    settled = fitted(pairs) ?? settled;
  }
  return settled;
}

export interface Pair {
  readonly i: number;
  readonly j: number;
  readonly by: Point;
}

/** Least squares of by = i a + j b. */
function fitted(pairs: readonly Pair[]): Lattice | undefined {
  let [ii, ij, jj] = [0, 0, 0];
  const [ix, jx, iy, jy] = pairs.reduce(
    ([ax, bx, ay, by], { i, j, by: step }) => {
      ii += i * i;
      ij += i * j;
      jj += j * j;
      return [ax + i * step.x, bx + j * step.x, ay + i * step.y, by + j * step.y];
    },
    [0, 0, 0, 0],
  );
  const determinant = ii * jj - ij * ij;
  if (determinant <= 1e-9 * ii * jj || ix === undefined || jx === undefined) return undefined;
  const solve = (p: number, q: number): readonly [number, number] => [
    (p * jj - q * ij) / determinant,
    (q * ii - p * ij) / determinant,
  ];
  const [ax, bx] = solve(ix, jx);
  const [ay, by] = solve(iy ?? 0, jy ?? 0);
  return { a: { x: ax, y: ay }, b: { x: bx, y: by } };
}

/** `a` the step that goes more around, to the right; `b` the other, downwards. */
function tidied({ a, b }: Lattice): Lattice {
  const slope = (p: Point) => Math.abs(p.y) / lengthOf(p);
  const [around, up] = slope(a) <= slope(b) ? [a, b] : [b, a];
  const turned = (p: Point, isTurned: boolean) => (isTurned ? { x: 0 - p.x, y: 0 - p.y } : p);
  return { a: turned(around, around.x < 0), b: turned(up, up.y < 0 || (up.y === 0 && up.x < 0)) };
}

/** Whether two lattices are the same set of places: every step of one is a whole step of the other. */
export function isSameLattice(one: Lattice, other: Lattice, tolerance: number): boolean {
  const within = (of: Lattice, p: Point) => {
    const { i, j } = coordinates(of, p);
    const [n, m] = [Math.round(i), Math.round(j)];
    return distance(p, { x: n * of.a.x + m * of.b.x, y: n * of.a.y + m * of.b.y }) <= tolerance;
  };
  return within(one, other.a) && within(one, other.b) && within(other, one.a) && within(other, one.b);
}

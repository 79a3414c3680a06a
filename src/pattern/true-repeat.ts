// The true repeat: the lattice that a crop of a pattern really has, found from what it shows more than once.
// Steps between landmarks of one kind are candidates. A step is held to be a repeat when nearly all film that the crop
// should show again a step away is there, along lines across it. The shortest such steps make up the lattice.
import type { Shape } from '../geometry/contour.ts';
import { add, cross, distance, type Point, scale, subtract } from '../geometry/point.ts';
import type { Size } from './cut-shapes.ts';
import { type Agreement, FilmScan, type Missing } from './film-scan.ts';
import { LandmarkMap } from './landmark-map.ts';
import { drawnLandmarks } from './landmarks.ts';
import { cellArea, type Lattice } from './lattice.ts';
import { distinct, isMultiple, offLattice, reduced, tidied } from './same-lattice.ts';

/** A lattice found, and how sure it is: the share of what should recur that does, 0 to 1, less what may be chance. */
export interface FoundRepeat extends Lattice {
  readonly confidence: number;
  /** Of drawn art: the share of what should recur that does, whatever chance may have to do with it. */
  readonly share?: number;
  /** Whether all recurs as well by steps that are none of this lattice. */
  readonly isOneOfSeveral?: boolean;
}

export interface RepeatOptions {
  /** Copies stand where they should within this, mm. */
  readonly tolerance?: number;
}

/** Copies stand where they should within this, mm: drawn art is exact but for its rounding. */
export const repeatTolerance = 0.05;

/** A step is a repeat when this share of what should recur does: art may be covered in part, or touched up. */
const leastShare = 0.6;

/** The least share of the crop that must show again a step away. */
const leastOverlap = 0.06;

/** Steps that lattices are made of: the shortest that hold; and how many are held against the film to find them. */
const mostSteps = 24;
const mostScanned = 160;

/** Lattices held against the film, the smallest periods first: of steps that explain all, and of any. */
const mostLattices = { full: 12, any: 28 } as const;

/**
 * The lattices that layers of art may repeat by, the likeliest first; none where nothing repeats both ways. Lengths in
 * mm, y down. The cost grows with n log n in the shapes.
 */
export function trueRepeat(
  layers: readonly { readonly shapes: readonly Shape[] }[],
  crop: Size,
  { tolerance = repeatTolerance }: RepeatOptions = {},
): readonly FoundRepeat[] {
  const map = new LandmarkMap(drawnLandmarks(layers), crop, tolerance);
  const scan = new FilmScan(layers, crop, tolerance);
  const found: Proven[] = [];
  const held = heldSteps(map, scan, crop);
  for (const lattice of candidateLattices(held)) {
    const repeat = proven(scan, settledLattice(map, lattice), crop);
    if (repeat) found.push(repeat);
    // The smallest period comes first: where it explains all there is, larger ones are only its multiples.
    if (repeat && repeat.share >= explained && repeat.confidence >= 0.99) break;
  }
  return ranked(distinct(found, tolerance), scan, crop).map(({ a, b, confidence, share }) => ({
    a,
    b,
    confidence,
    share,
    isOneOfSeveral: isOneOfSeveral({ a, b }, held, scan),
  }));
}

interface Proven extends FoundRepeat {
  readonly share: number;
  readonly area: number;
  readonly missing: readonly Missing[];
}

/** Whether all recurs as well by a step that is none of a lattice: dashes and bars alone tell no one step along themselves. */
const isOneOfSeveral = (lattice: Lattice, held: readonly HeldStep[], scan: FilmScan): boolean =>
  held.some(
    ({ step, share }) =>
      share >= explained &&
      offLattice(step, lattice) > latticeSlack &&
      evidenceOf([scan.agreement(step)]) >= leastEvidence,
  );

/** A lattice that explains so much needs no other beside it. */
const explained = 0.998;

/** A larger period has to explain so much more to stand before a smaller one. */
const moreExplained = 0.004;

/** So many missing places have to be missing by rule, for each that is not. */
const byRule = { least: 3, times: 4 } as const;

/**
 * The likeliest lattice first: the smallest, unless what it leaves unexplained recurs by a larger one. Then it is the
 * larger period's own; else that place is covered, or touched up. Its multiples say nothing more and are left out.
 */
function ranked(found: readonly Proven[], scan: FilmScan, crop: Size): readonly Proven[] {
  const [smallest, ...larger] = [...found].sort((p, q) => p.area - q.area);
  if (!smallest) return [];
  const first = larger.reduce(
    (best, p) => (p.share > best.share + moreExplained && explainsMissing(p, best, scan, crop) ? p : best),
    smallest,
  );
  const others = found.filter((p) => p !== first && !isMultiple(p, first, repeatTolerance * 4));
  return [first, ...others.sort((p, q) => q.confidence - p.confidence)];
}

/**
 * Whether what one lattice misses is missing again a step of another away. What lies on a pattern shows once: hardly anything of it
 * can be missing again, and a lattice so large that little shows twice would explain it as it would anything.
 */
function explainsMissing(lattice: Lattice, { missing }: Proven, scan: FilmScan, crop: Size): boolean {
  const tallies = [lattice.a, lattice.b].flatMap(({ x, y }) => [
    scan.missingAgain(missing, { x, y }),
    scan.missingAgain(missing, { x: -x, y: -y }),
  ]);
  const sum = (of: 'again' | 'not' | 'seen') => tallies.reduce((total, tally) => total + tally[of], 0);
  const tells = sum('seen') > 0 || shownTwice(lattice, crop) >= leastShownTwice;
  return tells && sum('again') >= byRule.least && sum('again') >= byRule.times * sum('not');
}

/** The least share of a crop that a lattice has to show twice where nothing that a smaller one misses shows again by it. */
const leastShownTwice = 0.8;

/** A lattice by which less than this of a crop shows twice is never sure: 1.3 periods each way show 0.7 twice. */
const leastSure = 0.6;
const unsure = 0.85;

/** Places a side of a crop that are looked at. */
const placesAside = 24;

/** The share of a crop that shows again a step of a lattice away. */
function shownTwice({ a, b }: Lattice, { width, height }: Size): number {
  const steps = [a, b, add(a, b), subtract(a, b)].flatMap((p) => [p, scale(p, -1)]);
  const isIn = (x: number, y: number) => x >= 0 && y >= 0 && x <= width && y <= height;
  const places = Array.from({ length: placesAside ** 2 }, (_, i) => ({
    x: (((i % placesAside) + 0.5) * width) / placesAside,
    y: ((Math.floor(i / placesAside) + 0.5) * height) / placesAside,
  }));
  return places.filter((at) => steps.some((by) => isIn(at.x + by.x, at.y + by.y))).length / places.length;
}

/** Steps that nearly all film recurs by: the shortest of those that explain all, and of the others. */
function heldSteps(map: LandmarkMap, scan: FilmScan, crop: Size): readonly HeldStep[] {
  const held: HeldStep[] = [];
  const straight = scan.straightSteps().filter((step) => isLarge(step, crop));
  for (const step of [...candidateSteps(map, crop), ...straight]) {
    if (held.some((other) => distance(step, other.step) < sameStep)) continue;
    const share = shareOf(scan.agreement(step, fewLines));
    if (share >= leastShare) held.push({ step, share });
  }
  const byLength = held.sort((p, q) => lengthOf(p.step) - lengthOf(q.step));
  const full = byLength.filter(({ share }) => share >= explained).slice(0, mostSteps);
  const rest = byLength.filter(({ share }) => share < explained).slice(0, mostSteps - full.length);
  return [...full, ...rest];
}

interface HeldStep {
  readonly step: Point;
  /** Of the film that should recur, what does. */
  readonly share: number;
}

function candidateLattices(held: readonly HeldStep[]): readonly Lattice[] {
  const full = held.filter(({ share }) => share >= explained);
  const lattices = [full, held].map((steps) => latticesOf(steps.map(({ step }) => step)));
  const [ofFull = [], ofAny = []] = lattices;
  const all = [...ofFull.slice(0, mostLattices.full), ...ofAny.slice(0, mostLattices.any)];
  return distinct(all, latticeSlack).sort((p, q) => cellArea(p) - cellArea(q));
}

/** Steps that landmarks recur by: those that most of them do, and the shortest. */
function candidateSteps(map: LandmarkMap, crop: Size): readonly Point[] {
  const steps = map.candidateSteps().flatMap((step) => checked(map, step, crop) ?? []);
  const byLength = [...steps].sort((p, q) => lengthOf(p.step) - lengthOf(q.step));
  const byShare = [...byLength].sort((p, q) => q.share - p.share);
  const some = new Set([...byShare.slice(0, mostScanned / 2), ...byLength.slice(0, mostScanned / 2)]);
  return [...some].map(({ step }) => step);
}

/** The part of all lines that a first look takes. */
const fewLines = 0.4;

/** Steps nearer than this are one, found twice, mm. */
const sameStep = 0.02;

/** The share of what should recur that does. */
const shareOf = ({ expected, found }: { readonly expected: number; readonly found: number }): number =>
  expected === 0 ? 0 : found / expected;

/** A step moved to the mean of what it finds; undefined where most landmarks say that it is no repeat. */
function checked(map: LandmarkMap, step: Point, crop: Size) {
  if (!isLarge(step, crop)) return undefined;
  const { expected, found, meanMiss } = map.recurring(step);
  const share = shareOf({ expected, found });
  return share < leastShare ? undefined : { step: add(step, meanMiss), share };
}

/** Whether a step is no node drawn twice, and leaves enough of the crop that shows again. */
const isLarge = (step: Point, crop: Size): boolean =>
  overlapOf(step, crop) >= leastOverlap && lengthOf(step) >= leastStep;

/** A shorter step is two nodes drawn side by side, mm. */
const leastStep = 0.4;

/** The share of the crop that shows again a step away. */
const overlapOf = (step: Point, { width, height }: Size): number =>
  Math.max(0, 1 - Math.abs(step.x) / width) * Math.max(0, 1 - Math.abs(step.y) / height);

const lengthOf = (p: Point): number => Math.hypot(p.x, p.y);

/** The lattices of every two steps that do not point the same way, the smallest period first. */
function latticesOf(steps: readonly Point[]): readonly Lattice[] {
  const lattices = steps.flatMap((a, i) =>
    steps
      .slice(i + 1)
      .filter((b) => Math.abs(cross(a, b)) > leastSine * lengthOf(a) * lengthOf(b))
      .map((b) => reduced({ a, b })),
  );
  return distinct(lattices, latticeSlack).sort((p, q) => cellArea(p) - cellArea(q));
}

/** Candidates nearer than this are one lattice, mm. */
const latticeSlack = 0.5;

/** Steps at a smaller angle than this point the same way, as a sine. */
const leastSine = 0.02;

/** A lattice with how sure it is, from all that recurs by its four shortest steps; undefined where it is none. */
function proven(scan: FilmScan, lattice: Lattice, crop: Size): Proven | undefined {
  const { a, b } = reduced(lattice);
  const around = [a, b, { x: a.x + b.x, y: a.y + b.y }, { x: a.x - b.x, y: a.y - b.y }]
    .filter((step) => overlapOf(step, crop) > 0)
    .map((step) => scan.agreement(step))
    .filter(({ expected }) => expected > 0);
  if (around.length === 0 || around.some((one) => one.expected >= leastExpected && shareOf(one) < leastShare))
    return undefined;
  const share = shareOf({
    expected: around.reduce((sum, { expected }) => sum + expected, 0),
    found: around.reduce((sum, { found }) => sum + found, 0),
  });
  const evidence = evidenceOf(around);
  if (share < leastShare || evidence < leastEvidence) return undefined;
  // Every contour more that recurs halves the doubt; of a net every few of its curves do.
  const told = share * (1 - 2 ** -(evidence - 1));
  // Where most of the crop shows once, most of it is nowhere held against anything.
  const confidence = shownTwice({ a, b }, crop) < leastSure ? Math.min(told, unsure) : told;
  return {
    ...tidied({ a, b }),
    confidence,
    share,
    area: cellArea({ a, b }),
    missing: around.flatMap((one) => one.missing),
  };
}

/** Fewer places than this that should recur prove nothing. */
const leastExpected = 6;

/** One contour a step may be chance: the step was taken from it. */
const leastEvidence = 2.5;

/** Curves of one contour that count as much as another contour: a net is one contour. */
const curvesPerContour = 4;

/** How many things recur, each counted once: contours, or as many curves as make up one. */
function evidenceOf(around: readonly Agreement[]): number {
  const contours = new Set(around.flatMap((one) => [...one.contours]));
  const segments = new Set(around.flatMap((one) => [...one.segments]));
  return Math.max(contours.size, segments.size / curvesPerContour);
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

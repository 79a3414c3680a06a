// The true repeat: the lattice that a crop of a pattern really has, found from what it shows more than once.
// Steps between landmarks of one kind are candidates. A step is held to be a repeat when nearly all film that the crop
// should show again a step away is there, along lines across it. The shortest such steps make up the lattice.
import type { Box } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { cross, type Point } from '../../geometry/point.ts';
import { FilmScan, type Missing } from '../film/film-scan.ts';
import { cellArea, type Lattice } from '../lattice/lattice.ts';
import { distinct, isMultiple, offLattice, reduced, tidied } from '../lattice/same-lattice.ts';
import type { Size } from '../tile/cut-shapes.ts';
import { coversOf, hiddenShare, mostHidden, patchOf } from './covers.ts';
import { Evidence } from './evidence.ts';
import { finestShown, leastExpected } from './finest-shown.ts';
import {
  explained,
  type HeldStep,
  heldSteps,
  leastShare,
  lengthOf,
  overlapOf,
  shareOf,
} from './held-steps.ts';
import { LandmarkMap } from './landmark-map.ts';
import { drawnLandmarks } from './landmarks.ts';
import { settledLattice } from './settled-lattice.ts';
import { leastTold, shownTwice } from './shown-twice.ts';

/** A lattice found, and how sure it is: the share of what should recur that does, 0 to 1, less what may be chance. */
export interface FoundRepeat extends Lattice {
  readonly confidence: number;
  /** Of drawn art: the share of what should recur that does, whatever chance may have to do with it. */
  readonly share?: number;
  /** Whether all recurs as well by steps that are none of this lattice. */
  readonly isOneOfSeveral?: boolean;
  /** Of stripes: the way they run, of length 1; any step that way is a repeat. */
  readonly along?: Point;
}

export interface RepeatOptions {
  /** Copies stand where they should within this, mm. */
  readonly tolerance?: number;
}

/** Copies stand where they should within this, mm: drawn art is exact but for its rounding. */
export const repeatTolerance = 0.05;

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
  const drawing = {
    layers,
    map,
    crop,
    tolerance,
    evidence: new Evidence(layers, () => map.copiedTogether()),
  };
  const held = heldSteps(map, scan, crop);
  const by = repeatsBy(drawing, scan, held);
  const finest = finestWithin(drawing, scan, by[0]);
  const found = finest ? [finest, ...by] : by;
  const repeats = ranked(found, scan, crop);
  const under = underCover(drawing, { scan, held, found, first: repeats[0] });
  return [...under, ...repeats].map(({ a, b, confidence, share }) => ({
    a,
    b,
    confidence,
    share,
    isOneOfSeveral: isOneOfSeveral({ a, b }, held, scan, drawing),
  }));
}

/** A drawing, and what tells of it. */
interface Drawing {
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
  readonly map: LandmarkMap;
  readonly crop: Size;
  /** mm */
  readonly tolerance: number;
  readonly evidence: Evidence;
}

/** What was found of all that shows. */
interface Shown {
  readonly scan: FilmScan;
  readonly held: readonly HeldStep[];
  readonly found: readonly Proven[];
  readonly first: Proven | undefined;
}

/** What is hidden is taken to be more, from what is then missing, so many times. */
const mostRounds = 3;

/**
 * A finer repeat that explains all but what lies over the pattern, and what that hides; never sure, for a motif on a ground that
 * recurs by itself looks the same.
 */
function underCover(drawing: Drawing, { scan, held, found, first }: Shown): readonly Proven[] {
  const { layers, map, crop, tolerance } = drawing;
  if (first && first === found[0] && first.share >= explained) return [];
  const isFiner = (p: Proven): boolean =>
    !first || (p.area < mostOfArea * first.area && isMultiple(first, p, repeatTolerance * 4));
  const covers = coversOf(
    layers,
    held.map(({ step }) => scan.agreement(step)),
    crop,
  );
  const shownBut = (hidden: readonly Box[]): readonly Proven[] => {
    const rest = new FilmScan(layers, crop, tolerance, hidden);
    return repeatsBy(drawing, rest, heldSteps(map, rest, crop)).filter(isFiner);
  };
  for (const cover of covers) {
    let hidden = cover;
    for (let round = 0; round < mostRounds && hiddenShare(hidden, crop) <= mostHidden; round++) {
      const finer = shownBut(hidden);
      const under = finer.find(({ share }) => share >= explained);
      if (under) return [{ ...under, confidence: Math.min(under.confidence, unsure) }];
      const patch = finer[0] && patchOf(finer[0].missing, crop);
      if (!patch) break;
      hidden = [...hidden, patch];
    }
  }
  return [];
}

/** A period this much smaller is another one. */
const mostOfArea = 0.9;

/** The lattices that hold, the smallest period first. */
function repeatsBy(drawing: Drawing, scan: FilmScan, held: readonly HeldStep[]): readonly Proven[] {
  const found: Proven[] = [];
  for (const lattice of candidateLattices(held)) {
    const repeat = proven(scan, settledLattice(drawing.map, lattice), drawing);
    if (repeat) found.push(repeat);
    // The smallest period comes first: where it explains all there is, larger ones are only its multiples.
    if (repeat && repeat.share >= explained && repeat.confidence >= 0.99) break;
  }
  return distinct(found, drawing.tolerance).sort((p, q) => p.area - q.area);
}

/** A finer lattice of one that explains all; undefined where there is none that explains as much. */
function finestWithin(drawing: Drawing, scan: FilmScan, within: Proven | undefined): Proven | undefined {
  const { layers, crop } = drawing;
  const isWhole = within !== undefined && within.share >= explained;
  const finest = isWhole ? finestShown({ layers, ...crop }, scan, within) : undefined;
  const repeat = finest && proven(scan, finest, drawing);
  return repeat && repeat.share >= explained ? repeat : undefined;
}

interface Proven extends FoundRepeat {
  readonly share: number;
  readonly area: number;
  readonly missing: readonly Missing[];
}

/** Whether all recurs as well by a step that is none of a lattice: dashes and bars alone tell no one step along themselves. */
const isOneOfSeveral = (
  lattice: Lattice,
  held: readonly HeldStep[],
  scan: FilmScan,
  { evidence }: Drawing,
): boolean =>
  held.some(
    ({ step, share }) =>
      share >= explained &&
      offLattice(step, lattice) > latticeSlack &&
      evidence.of([scan.agreement(step)]) >= leastEvidence,
  );

/** A larger period has to explain so much more to stand before a smaller one. */
const moreExplained = 0.004;

/** So many missing places have to be missing by rule, for each that is not. */
const byRule = { least: 3, times: 4 } as const;

/**
 * The likeliest lattice first: the smallest, unless what it leaves unexplained recurs by a larger one. Then it is the
 * larger period's own; else that place is covered, or touched up. Its multiples say nothing more and are left out.
 */
function ranked(found: readonly Proven[], scan: FilmScan, crop: Size): readonly Proven[] {
  const [smallest, ...larger] = found;
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

function candidateLattices(held: readonly HeldStep[]): readonly Lattice[] {
  const full = held.filter(({ share }) => share >= explained);
  const lattices = [full, held].map((steps) => latticesOf(steps.map(({ step }) => step)));
  const [ofFull = [], ofAny = []] = lattices;
  const all = [...ofFull.slice(0, mostLattices.full), ...ofAny.slice(0, mostLattices.any)];
  return distinct(all, latticeSlack).sort((p, q) => cellArea(p) - cellArea(q));
}

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
function proven(scan: FilmScan, lattice: Lattice, { crop, evidence: told }: Drawing): Proven | undefined {
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
  const shown = shownTwice({ a, b }, crop);
  const evidence = told.of(around);
  if (share < leastShare || evidence < leastEvidence) return undefined;
  const isSlight = shown < leastTold && told.thingsOf({ a, b }, around) < leastThings;
  const places = around.reduce((sum, { expected }) => sum + expected, 0);
  if (isSlight && (share < slight.share || places < slight.places)) return undefined;
  // Every contour more that recurs halves the doubt; of a net every few of its curves do.
  const sure = share * (1 - 2 ** -(evidence - 1));
  // Where most of the crop shows once, most of it is nowhere held against anything.
  const highest = isSlight ? slight.confidence : shown < leastSure ? unsure : 1;
  return {
    ...tidied({ a, b }),
    confidence: Math.min(sure, highest),
    share,
    area: cellArea({ a, b }),
    missing: around.flatMap((one) => one.missing),
  };
}

/** One contour a step may be chance: the step was taken from it; and so may be the things that two steps were taken from. */
const leastEvidence = 2.5;
const leastThings = 4.5;

/**
 * Of fewer things, where little shows twice, a lattice is offered where all of so many places along lines agree, and never as likely: of a
 * hundred patterns that a hand strewed none comes to that.
 */
const slight = { share: 0.999, places: 400, confidence: 0.3 } as const;

// The true repeat of a picture made of pixels: the lattice by which it shows the same again.
// Steps by which it is most like itself are candidates; each is held against the picture block by block, and the shortest that
// hold make up the lattice. What a hand drew, almost regular, is like itself too, but its blocks stand off by this much and that.
import { add, cross, type Point, scale } from '../../geometry/point.ts';
import { cellArea, type Lattice, step } from '../lattice/lattice.ts';
import { distinct, offLattice, reduced, tidied } from '../lattice/same-lattice.ts';
import { leastTold, shownTwice } from '../repeat/shown-twice.ts';
import type { FoundRepeat } from '../repeat/true-repeat.ts';
import { seenTogether } from './hidden-places.ts';
import { leftBy, overlapOf, stepsShown } from './lattice-left.ts';
import { type Likeness, likenessOf } from './likeness.ts';
import { likenessPeaks } from './likeness-peaks.ts';
import { type Planes, smaller, tellingPlanes } from './planes.ts';
import { type Looked, lookedAt, type StepSeen, stepSeen } from './step-blocks.ts';
import { type Things, thingsIn, thingsSeen } from './things.ts';

/** Lattices are looked for on no more pixels, and then settled on the whole picture. */
const mostPixels = 512 ** 2;

/** The share of blocks that must show again for a step to be tried, part of the picture being covered. */
const leastTried = 0.25;

/** The share that must show again by a lattice, beside places where nothing does; and how much of the picture those may be. */
const leastShare = 0.75;
const mostHidden = 0.4;

/** Fewer blocks than this prove nothing. */
const leastBlocks = 6;

/** Blocks that halve the doubt when they show again. */
const blocksPerDoubt = 3;

/** Steps that lattices are made of, and lattices held against the picture: of all, and of those it is most like itself by, the smallest. */
const mostSteps = { likest: 6, shortest: 20 } as const;
const mostLattices = { likest: 15, shortest: 24 } as const;

/** Things that must show again beyond those that make the steps; and what each leaves of the doubt. */
const leastBeyond = 2;
const doubtLeft = 1 / 4;

/** What is less sure than this is no answer. */
const leastSure = 0.5;

/** Nearer than this two steps, or lattices, are one that was found twice, px. */
const sameStep = 1.5;
const sameLattice = 3;

/** Where so much of the picture shows again by a step of a lattice, it is at least so like itself there. */
const leastJudged = 0.1;
const leastLike = 0.15;

/** A larger period stands before a smaller that leaves more than this share of the picture unexplained, if it leaves so much less. */
const mostLeft = 0.01;
const lessLeft = 0.3;
const nothingLeft = 0.03;

/** The lattices that a picture may repeat by, the likeliest first; none where nothing repeats both ways. Lengths in px, y down. */
export function pictureRepeat(picture: Planes): readonly FoundRepeat[] {
  const telling = tellingPlanes(picture);
  const times = Math.max(1, Math.ceil(Math.sqrt((picture.width * picture.height) / mostPixels)));
  if (times === 1) return repeatsOf(telling);
  const looked = lookedAt(telling);
  return repeatsOf(smaller(telling, times)).map(({ a, b, confidence }) => {
    const lattice = { a: scale(a, times), b: scale(b, times) };
    return { ...tidied(settled(looked, lattice) ?? lattice), confidence };
  });
}

function repeatsOf(picture: Planes): readonly FoundRepeat[] {
  const looked = lookedAt(picture);
  const likeness = likenessOf(picture);
  const held: StepSeen[] = [];
  for (const peak of likenessPeaks(likeness)) {
    if (held.some((other) => apart(other.step, peak) < sameStep)) continue;
    const seen = stepSeen(looked, peak);
    if (seen.again >= leastBlocks / 2 && shareOf(seen) >= leastTried) held.push(seen);
  }
  const lattices = latticesOf(
    held.map((seen) => seen.step),
    likeness,
  );
  const things = thingsIn(looked);
  const found = lattices.flatMap((lattice) => proven(looked, things, lattice) ?? []);
  return ranked(looked, found).map(({ doubt, ...one }) => ({
    ...one,
    confidence: one.confidence * (1 - doubt),
  }));
}

const shortestOf = (lattice: Lattice): number => lengthOf(reduced(lattice).a);

const lengthOf = ({ x, y }: Point): number => Math.hypot(x, y);
const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);
const shareOf = ({ shown, again }: { readonly shown: number; readonly again: number }): number =>
  shown === 0 ? 0 : again / shown;

/** Lattices made of the shortest steps, and of those by which the picture is most like itself: these come first. */
function latticesOf(steps: readonly Point[], likeness: Likeness): readonly Lattice[] {
  const short = [...steps].sort((p, q) => lengthOf(p) - lengthOf(q)).slice(0, mostSteps.shortest);
  const made = (of: readonly Point[], most: number) =>
    distinct(
      of.flatMap((a, i) =>
        of
          .slice(i + 1)
          .filter((b) => Math.abs(cross(a, b)) > leastSine * lengthOf(a) * lengthOf(b))
          .map((b) => reduced({ a, b })),
      ),
      sameLattice,
    )
      .filter((lattice) => isLike(lattice, likeness))
      .sort((p, q) => cellArea(p) - cellArea(q))
      .slice(0, most);
  const likest = made(steps.slice(0, mostSteps.likest), mostLattices.likest);
  return distinct([...likest, ...made(short, mostLattices.shortest)], sameLattice);
}

/** Whether a picture is like itself by all steps of a lattice, as far as enough shows. */
const isLike = ({ a, b }: Lattice, likeness: Likeness): boolean =>
  [a, b, step({ a, b }, 1, 1), step({ a, b }, 1, -1)].every(
    (by) => overlapOf(by, likeness) < leastJudged || mostLikeNear(likeness, by) >= leastLike,
  );

function mostLikeNear({ at }: Likeness, { x, y }: Point): number {
  let most = -1;
  for (let v = -1; v <= 1; v++)
    for (let u = -1; u <= 1; u++) most = Math.max(most, at(Math.round(x) + u, Math.round(y) + v));
  return most;
}

/** Steps at a smaller angle than this point the same way, as a sine. */
const leastSine = 0.02;

/**
 * The smallest period first, unless larger ones explain what it does not: then the smallest of those that do so best. None where
 * one a step of the smallest further on does as well: of a line on a grid that shows once nobody can tell where the next would be.
 */
function ranked(looked: Looked, found: readonly Proven[]): readonly Proven[] {
  const [smallest, ...larger] = [...found].sort((p, q) => cellArea(p) - cellArea(q));
  if (!smallest) return [];
  const explaining = larger
    .filter(({ confidence }) => confidence > smallest.confidence)
    .map((one) => ({ one, left: leftBeside(looked, one, smallest) }))
    .filter(({ left }) => left < lessLeft);
  const least = Math.min(...explaining.map(({ left }) => left));
  const asGood = Math.max(nothingLeft, 2 * least);
  const first = explaining.find(({ left }) => left <= asGood)?.one ?? smallest;
  const further = first === smallest ? [] : beside(first, smallest);
  if (
    further.some((one) => isRival(looked, one, first) && leftBeside(looked, one, smallest) <= asGood) ||
    found.some((one) => isRival(looked, one, first) && isAsGood(looked, one, first))
  )
    return [];
  const others = found.filter((one) => one !== first).sort((p, q) => q.confidence - p.confidence);
  return [first, ...others];
}

/** A lattice is no better than another that leaves more by no more than this share of the picture. */
const hardlyLess = 0.002;

/** Whether a lattice leaves as little of what it shows again as another does there. */
const isAsGood = (looked: Looked, one: Lattice, than: Lattice): boolean =>
  (leftBy(looked, one, one) ?? 1) <= 2 * (leftBy(looked, than, one) ?? 0) + hardlyLess;

/**
 * A step by which less of the picture shows again than this is none that a crop of 1.3 periods would have to tell: what is as good by it
 * has no say.
 */
const leastRival = 0.2;

/** Whether a lattice is none of another's, by steps that show again far enough for it to stand against the other. */
const isRival = (looked: Looked, one: Lattice, than: Lattice): boolean =>
  [one.a, one.b].some((p) => offLattice(p, than) > sameLattice) &&
  [one.a, one.b].every(
    (p) => offLattice(p, than) <= sameLattice || overlapOf(p, looked.picture) >= leastRival,
  );

/** Lattices that have one of the steps of one a step of another lattice further on. */
const beside = ({ a, b }: Lattice, by: Lattice): readonly Lattice[] =>
  [by.a, by.b, scale(by.a, -1), scale(by.b, -1)].flatMap((p) => [
    { a: add(a, p), b },
    { a: add(b, p), b: a },
  ]);

/** What a lattice leaves of all that another leaves of the same part, 0 to 1; 1 where that is hardly anything. */
function leftBeside(looked: Looked, one: Lattice, than: Lattice): number {
  const left = leftBy(looked, than, one) ?? 0;
  return left > mostLeft ? (leftBy(looked, one, one) ?? left) / left : 1;
}

/** A lattice by which blocks show again so surely, and how far that may be chance all the same: few things were put down so. */
interface Proven extends FoundRepeat {
  readonly doubt: number;
}

/** A lattice settled on all its steps, with how sure it is; undefined where it is none. */
function proven(looked: Looked, things: Things, lattice: Lattice): Proven | undefined {
  const exact = settled(looked, lattice);
  if (!exact || shownTwice(exact, looked.picture) < leastTold) return undefined;
  const steps = stepsShown(exact, looked.picture).map(({ by }) => {
    const seen = stepSeen(looked, by);
    if (apart(seen.step, by) <= mostAstray) return seen;
    return { ...seen, step: by, blocks: seen.blocks.map((block) => ({ ...block, isAgain: false })) };
  });
  const together = seenTogether(looked.picture, steps);
  const share = shareOf(together);
  if (together.again < leastBlocks || share < leastShare || together.hidden > mostHidden) return undefined;
  const confidence =
    share * (1 - together.hidden) * Math.max(0, 1 - 2 ** (1 - together.again / blocksPerDoubt));
  if (confidence < leastSure) return undefined;
  const { beyond, alone } = thingsSeen(things, looked.picture, steps, shortestOf(exact));
  if (beyond < leastBeyond || alone > beyond) return undefined;
  return { ...tidied(exact), confidence, doubt: doubtLeft ** beyond };
}

/** Blocks that agree on a place farther than this from where the lattice has it speak against it, px. */
const mostAstray = 0.75;

/** Farther off than this what is found is no copy by this lattice, px. */
const mostFar = 2.5;

/** A lattice as its steps and then their multiples have it: far copies are only found once the near ones have made it exact. */
function settled(looked: Looked, lattice: Lattice): Lattice | undefined {
  let exact = settledOn(looked, lattice, [1]);
  for (const times of [
    [1, 2, 3],
    [1, 2, 3, 9],
  ])
    exact = exact && (settledOn(looked, exact, times) ?? exact);
  return exact;
}

/** The lattice that all its steps agree on best: least squares, each step counted by its blocks. */
function settledOn(looked: Looked, lattice: Lattice, times: readonly number[]): Lattice | undefined {
  let [ii, ij, jj, ix, jx, iy, jy] = [0, 0, 0, 0, 0, 0, 0];
  for (const { i, j, by } of stepsShown(lattice, looked.picture, times)) {
    const { step: there, again, shown } = stepSeen(looked, by);
    if (again < leastBlocks / 2 || again < leastTried * shown || apart(there, by) > mostFar) continue;
    ii += again * i * i;
    ij += again * i * j;
    jj += again * j * j;
    ix += again * i * there.x;
    jx += again * j * there.x;
    iy += again * i * there.y;
    jy += again * j * there.y;
  }
  const determinant = ii * jj - ij * ij;
  if (!(determinant > 1e-9 * ii * jj)) return undefined;
  return {
    a: { x: (ix * jj - jx * ij) / determinant, y: (iy * jj - jy * ij) / determinant },
    b: { x: (jx * ii - ix * ij) / determinant, y: (jy * ii - iy * ij) / determinant },
  };
}

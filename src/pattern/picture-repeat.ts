// The true repeat of a picture made of pixels: the lattice by which it shows the same again.
// Steps by which it is most like itself are candidates; each is held against the picture block by block, and the shortest that
// hold make up the lattice. What a hand drew, almost regular, is like itself too, but its blocks stand off by this much and that.
import { cross, type Point } from '../geometry/point.ts';
import { cellArea, type Lattice, step } from './lattice.ts';
import type { Planes } from './likeness.ts';
import { likenessPeaks } from './likeness-peaks.ts';
import { distinct, reduced, tidied } from './same-lattice.ts';
import { type Looked, lookedAt, recurs, type StepSeen, stepSeen } from './step-blocks.ts';
import type { FoundRepeat } from './true-repeat.ts';

/** The share of blocks that must show again for a step to be tried, part of the picture being covered; and all in all. */
const leastTried = 0.4;
const leastShare = 0.6;

/** Fewer blocks than this prove nothing. */
const leastBlocks = 6;

/** Blocks that halve the doubt when they show again. */
const blocksPerDoubt = 3;

/** Steps that lattices are made of, and lattices held against the picture: the shortest, and the smallest periods. */
const mostSteps = 24;
const mostLattices = 30;

/** Nearer than this two steps, or lattices, are one that was found twice, px. */
const sameStep = 1.5;
const sameLattice = 3;

/** A larger period stands before the smallest where it explains so much more, and what it explains is missing by rule. */
const moreExplained = 0.06;

/** So many missing blocks have to be missing by rule, for each that is not. */
const byRule = { least: 3, times: 2 } as const;

/** The lattices that a picture may repeat by, the likeliest first; none where nothing repeats both ways. Lengths in px, y down. */
export function pictureRepeat(picture: Planes): readonly FoundRepeat[] {
  const looked = lookedAt(picture);
  const held: StepSeen[] = [];
  for (const peak of likenessPeaks(picture)) {
    if (held.some((other) => apart(other.step, peak) < sameStep)) continue;
    const seen = stepSeen(looked, peak);
    if (seen.again >= leastBlocks / 2 && shareOf(seen) >= leastTried) held.push(seen);
  }
  const found = latticesOf(held.map((seen) => seen.step)).flatMap((lattice) => proven(looked, lattice) ?? []);
  return ranked(looked, found).map(({ a, b, confidence }) => ({ a, b, confidence }));
}

const lengthOf = ({ x, y }: Point): number => Math.hypot(x, y);
const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);
const shareOf = ({ shown, again }: Pick<StepSeen, 'shown' | 'again'>): number =>
  shown === 0 ? 0 : again / shown;

function latticesOf(steps: readonly Point[]): readonly Lattice[] {
  const short = [...steps].sort((p, q) => lengthOf(p) - lengthOf(q)).slice(0, mostSteps);
  const pairs = short.flatMap((a, i) =>
    short
      .slice(i + 1)
      .filter((b) => Math.abs(cross(a, b)) > leastSine * lengthOf(a) * lengthOf(b))
      .map((b) => reduced({ a, b })),
  );
  return distinct(pairs, sameLattice)
    .sort((p, q) => cellArea(p) - cellArea(q))
    .slice(0, mostLattices);
}

/** Steps at a smaller angle than this point the same way, as a sine. */
const leastSine = 0.02;

interface Proven extends FoundRepeat {
  readonly share: number;
  /** Blocks that do not show again, and by which step they should. */
  readonly missing: readonly { readonly at: Point; readonly by: Point; readonly side: number }[];
}

/** The smallest period first, unless a larger one explains what it does not. */
function ranked(looked: Looked, found: readonly Proven[]): readonly Proven[] {
  const [smallest, ...larger] = found;
  if (!smallest) return [];
  const first = larger.reduce(
    (best, one) => (one.share > best.share + moreExplained && explains(looked, one, best) ? one : best),
    smallest,
  );
  const others = found.filter((one) => one !== first).sort((p, q) => q.confidence - p.confidence);
  return [first, ...others];
}

/**
 * Whether what one lattice misses is the larger one's own: both the block and what stands where it should be again recur
 * by the larger. Where something lies on the picture, it recurs by none.
 */
function explains(looked: Looked, { a, b }: Lattice, { missing }: Proven): boolean {
  const steps = [a, b].flatMap((by) => [by, { x: -by.x, y: -by.y }]);
  const rule = missing.filter(
    ({ at, by, side }) =>
      recurs(looked, at, side, steps) && recurs(looked, { x: at.x + by.x, y: at.y + by.y }, side, steps),
  ).length;
  return rule >= byRule.least && rule >= byRule.times * (missing.length - rule);
}

/** The least share of the picture that must show again a step of a lattice away. */
const leastOverlap = 0.03;

const overlapOf = ({ x, y }: Point, { width, height }: Planes): number =>
  Math.max(0, 1 - Math.abs(x) / width) * Math.max(0, 1 - Math.abs(y) / height);

/** A lattice settled on all its steps, with how sure it is; undefined where it is none. */
function proven(looked: Looked, lattice: Lattice): Proven | undefined {
  let settled = settledOn(looked, lattice, 1);
  // Far copies are only found once the near ones have made the steps exact.
  for (const reach of [3, 9]) settled = settled && (settledOn(looked, settled, reach) ?? settled);
  if (!settled) return undefined;
  const around = neighbours(1)
    .map(([i, j]) => step(settled, i, j))
    .filter((by) => overlapOf(by, looked.picture) >= leastOverlap)
    .map((by) => {
      const seen = stepSeen(looked, by);
      return apart(seen.step, by) <= mostAstray ? { ...seen, by } : { ...seen, by, again: 0 };
    });
  const [shown, again] = [
    around.reduce((sum, seen) => sum + seen.shown, 0),
    around.reduce((sum, seen) => sum + seen.again, 0),
  ];
  const share = shareOf({ shown, again });
  if (shown < leastBlocks || share < leastShare) return undefined;
  if (around.some((seen) => seen.shown >= leastBlocks && shareOf(seen) < leastTried)) return undefined;
  const confidence = share * Math.max(0, 1 - 2 ** (1 - again / blocksPerDoubt));
  const missing = around.flatMap((seen) => seen.missing.map((at) => ({ at, by: seen.by, side: seen.side })));
  return { ...tidied(settled), confidence, share, missing };
}

/** Blocks that agree on a place farther than this from where the lattice has it speak against it, px. */
const mostAstray = 0.75;

/** The four shortest steps of a lattice, and so many times them. */
const neighbours = (reach: number): readonly (readonly [number, number])[] =>
  (
    [
      [1, 0],
      [0, 1],
      [1, 1],
      [1, -1],
    ] as const
  ).flatMap(([i, j]) =>
    [1, 2, 3, 9].filter((times) => times <= reach).map((times) => [i * times, j * times] as const),
  );

/** Farther off than this what is found is no copy by this lattice, px. */
const mostFar = 2.5;

/** The lattice that all its steps agree on best: least squares, each step counted by its blocks. */
function settledOn(looked: Looked, lattice: Lattice, reach: number): Lattice | undefined {
  let [ii, ij, jj, ix, jx, iy, jy] = [0, 0, 0, 0, 0, 0, 0];
  for (const [i, j] of neighbours(reach)) {
    const by = step(lattice, i, j);
    if (overlapOf(by, looked.picture) < leastOverlap) continue;
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

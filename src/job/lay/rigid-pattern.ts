// A pattern of whole motifs in a job: where it can't be laid, and what the maker should know of it.
import { type Finding, look, note, Refused, stop } from '../../finding.ts';
import type { Point } from '../../geometry/point.ts';
import { inMm } from '../../lengths/length.ts';
import { inPercent } from '../../lengths/percent.ts';
import { artPlace } from '../../pattern/lay/art-place.ts';
import type { Wrap, WrapOptions } from '../../pattern/lay/wrap.ts';
import type { Collision } from '../../pattern/rigid/motif-collisions.ts';
import { rigidWrap, type Unlayable, unlayable } from '../../pattern/rigid/rigid.ts';
import { type Spacing, spacingOf } from '../../pattern/ways/distortion.ts';
import type { Drawn } from '../artwork/drawn.ts';
import { togetherWords } from '../closing/edge-findings.ts';
import type { Artwork } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

/** Lay a pattern motif by motif. @throws Refused where it can't be. */
export function wholeMotifs(
  drawn: Pick<Drawn, 'artwork' | 'jobFile' | 'ground' | 'plan'>,
  options: WrapOptions,
): { readonly wrap: Wrap; readonly findings: readonly Finding[] } {
  const { jobFile, ground, plan, artwork } = drawn;
  const wrap = rigidWrap(options);
  if (typeof wrap === 'string') throw new Refused([unlayableFinding(wrap, jobFile)]);
  const spacing = spacingOf(plan.closing, ground);
  const counts = `${wrap.motifs === 1 ? 'one motif' : `${wrap.motifs} motifs`} a repeat, each moved whole`;
  const says = `${counts}; ${spacingInWords(spacing)}; ${togetherWords(wrap.together)}`;
  return {
    wrap,
    findings: [
      note('spacing', typedAt(jobFile, 'artwork.lay'), says),
      ...collisionFindings(wrap.collisions, options, artwork.file),
    ],
  };
}

/** How far apart motifs stand on the wall, against how they were drawn. */
const spacingInWords = ({ foot, lip, up }: Spacing): string => {
  const around =
    Math.abs(foot - lip) < 5e-4
      ? `${inPercent(foot)} around`
      : `${inPercent(foot)} around at the foot edge and ${inPercent(lip)} at the lip edge`;
  return `they stand ${around}, and ${inPercent(up)} up, of how far apart they were drawn`;
};

const unlayableWords: Readonly<Record<Unlayable, string>> = {
  'hangs-together':
    '"rigid" moves motifs whole, but this pattern, or a part of it, hangs together all around and has none; use "even" or "conformal", or artwork whose motifs stand apart (a smaller "together" may part them)',
  heaped:
    '"rigid" moves motifs whole at their drawn size, and here each would lie over a heap of others; lay fewer around, draw them smaller, or use "even", which makes them smaller',
};

const unlayableFinding = (why: Unlayable, file: TypedIn): Finding =>
  stop(why === 'heaped' ? 'motifs-heaped' : 'no-motifs', typedAt(file, 'artwork.lay'), unlayableWords[why]);

/** Whole motifs can't go on from one piece to the next: each lies on a cone of its own. */
export const rigidOnPieces = (file: TypedIn): Finding =>
  stop(
    'rigid-on-pieces',
    typedAt(file, 'artwork.lay'),
    '"rigid" lays motifs whole on one piece, and this wall is covered by several that a motif would have to cross; use "even" or "conformal", or a "band" that lies flat in one piece',
  );

/** Why `make` refuses to lay a pattern motif by motif, on one whole piece or several; undefined where it does not. */
export function rigidRefusal(
  pattern: Parameters<typeof unlayable>[0],
  { lay, together }: Pick<Artwork, 'lay' | 'together'>,
  isWhole: boolean,
  file: TypedIn,
): Finding | undefined {
  if (lay !== 'rigid') return undefined;
  if (!isWhole) return rigidOnPieces(file);
  const why = unlayable(pattern, together);
  return why && unlayableFinding(why, file);
}

/** Pairs told one by one; more only add to a count. */
const mostPairs = 20;

interface Pair {
  readonly first: Collision;
  times: number;
}

/** Each two drawn motifs that collide, in the order they are first met. */
function pairsOf(collisions: readonly Collision[]): readonly Pair[] {
  const pairs = new Map<string, Pair>();
  for (const first of collisions) {
    const key = first.drawn.join();
    const known = pairs.get(key);
    if (known) known.times += first.times;
    else pairs.set(key, { first, times: first.times });
  }
  return [...pairs.values()];
}

/** Findings `motifs-collide`: each two motifs that would lie on one another, once for all rows and repeats. */
function collisionFindings(
  collisions: readonly Collision[],
  options: WrapOptions,
  art: string,
): readonly Finding[] {
  const pairs = pairsOf(collisions);
  const more = pairs.length - mostPairs;
  return pairs.slice(0, mostPairs).map(({ first: { one, other }, times }, i) => {
    const [p, q] = [artPlace(options, one), artPlace(options, other)];
    const others = i === 0 && more > 0 ? `; ${more} more pairs are not told` : '';
    const says = `the motif drawn at ${placeInWords(p)} would lie on the one drawn at ${placeInWords(q)}, ${times === 1 ? 'once' : `${times} times`} around; lay fewer around, draw them smaller, or use "even", which squeezes them${others}`;
    const where = { file: art, turn: one.turn - Math.floor(one.turn), along: one.along };
    return { ...look('motifs-collide', where, says), times };
  });
}

const placeInWords = ({ x, y }: Point): string =>
  `${inMm(Number(x.toFixed(1)))} across and ${inMm(Number(y.toFixed(1)))} down`;

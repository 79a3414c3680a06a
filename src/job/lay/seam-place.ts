// Where along the wall a job's pattern begins: where the job says, or where a straight seam cuts the least of it.
import { type Finding, note, Refused, stop } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import type { Lay } from '../../pattern/lay/lay.ts';
import type { SeamPiece } from '../../pattern/seam/film-up.ts';
import { leastCutPlace, type SeamEdges, type SeamPlace } from '../../pattern/seam/seam-place.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import { type Drawn, wayAsDrawn } from '../artwork/drawn.ts';
import { layOn, type PatternPlan } from '../closing/pattern-plan.ts';
import type { MakeInput } from '../make-input.ts';
import type { PatternGround } from '../plan/pattern-ground.ts';
import type { Plan } from '../plan/plan.ts';
import type { Artwork, Seam } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';

/** The drawing with its pattern begun so that turn 0 stands at the place of it that the seam is to be at. */
export function begunAtSeam(
  { jobFile }: Pick<MakeInput, 'jobFile'>,
  drawn: Drawn,
  ground: SeamGround | undefined,
): Drawn {
  const { plan, artwork } = drawn;
  const { seamAt } = artwork;
  if (seamAt !== undefined && plan.covers) throw new Refused([seamAtUnderStrips(jobFile)]);
  if (typeof seamAt === 'number') return { ...drawn, plan: begun(plan, seamAt) };
  const place = ground && seamPlace(plan, ground);
  if (!place) return drawn;
  const isMoved = mayMove(artwork, plan);
  if (!isMoved && !isUnlucky(place)) return drawn;
  return {
    ...drawn,
    plan: isMoved ? { ...begun(plan, place.at), seamAt: place } : plan,
    findings: [...drawn.findings, (isMoved ? movedNote : edgeNote)(place, ground.edges, jobFile)],
  };
}

/** Whether the seam is set to its best place: unasked only of a crop, whose edge nobody drew. */
export const mayMove = ({ seamAt }: Pick<Artwork, 'seamAt'>, { tile }: Pick<PatternPlan, 'tile'>): boolean =>
  seamAt === 'gaps' || tile.window !== undefined;

/** Whether the drawing's own edge is so much worse than the best place that a maker has to know: another cuts half of it or less. */
export const isUnlucky = ({ cuts, cutsAtEdge }: SeamPlace): boolean =>
  cutsAtEdge >= leastTold && cuts <= cutsAtEdge / 2;

/** What would be told as 0 mm is cut of rounding, mm. */
const leastTold = 0.05;

const seamAtUnderStrips = (file: TypedIn): Finding =>
  stop(
    'seam-under-strips',
    typedAt(file, 'artwork.seamAt'),
    'can not be where cover strips lie on the borders of the drawing, and one of them on the seam; leave it out, or give another "way"',
  );

/** What seams go up through: the pieces with the pattern on them, and where the edges stand. */
export interface SeamGround {
  readonly pieces: readonly SeamPiece[];
  readonly edges: SeamEdges;
}

/** The ground of the one seam of wraps; undefined where it winds, or a handle is at it. */
export function groundOfSeam(
  seam: Seam,
  starts: readonly { readonly template: Template; readonly lay: Lay }[],
): SeamGround | undefined {
  const edges = edgesOf(seam);
  if (!edges || starts.some(({ template }) => template.seam.start.offset !== 0)) return undefined;
  const pieces = starts.map(({ lay, template: { wall, band } }): SeamPiece => {
    const beside = (offset: number, along: number) => turnOfEdge(wall, { turn: 0, offset }, along);
    return { lay, band, beside };
  });
  return { pieces, edges };
}

/** How a pattern lies on the pieces of a band, from the foot up: it goes on from each to the next. */
export function startsOn(
  plans: readonly Pick<Plan, 'template'>[],
  artwork: Artwork,
  { girth }: Pick<PatternGround, 'girth'>,
): readonly { readonly template: Template; readonly lay: Lay }[] {
  let y = 0;
  return plans.map(({ template }) => {
    const lay = layOn(artwork, template, { around: girth, y });
    y = lay.fromAlong(template.band.to);
    return { template, lay };
  });
}

const begun = (plan: PatternPlan, start: number): PatternPlan =>
  start === 0 ? plan : { ...plan, closing: { ...plan.closing, start } };

/**
 * Where straight seams cut the least of a pattern; undefined where the drawing's own borders stay open, or lie under strips, one of
 * them on the seam.
 */
export const seamPlace = (
  plan: Pick<PatternPlan, 'tile' | 'lattice' | 'closing' | 'covers' | 'way'>,
  { pieces, edges }: SeamGround,
): SeamPlace | undefined =>
  plan.covers || plan.way === wayAsDrawn ? undefined : leastCutPlace(plan, pieces, edges);

/** The edges of a straight seam. */
function edgesOf({ style, overlap, top = 'finish' }: Seam): SeamEdges | undefined {
  if (style === 'winding') return undefined;
  if (style !== 'overlap' || overlap === 0) return { shows: 0 };
  return top === 'finish' ? { shows: overlap, hidden: 0 } : { shows: 0, hidden: overlap };
}

const told = (mm: number): string => inMm(Number(mm.toFixed(1)));

/** What a seam cuts there, in words; of gores all of their borders. */
export const seamAtInWords = (
  { at, cuts, cutsAtEdge }: SeamPlace,
  { seams = 1 }: Partial<SeamEdges> = {},
): string => {
  const [what, it] =
    seams > 1 ? [`the ${seams} borders of the gores cut`, 'they'] : ['a straight seam cuts', 'it'];
  return `${told(at)} along the drawing from its left edge, where ${what} ${told(cuts)} of film; at the edge ${it} would cut ${told(cutsAtEdge)}`;
};

const movedNote = (place: SeamPlace, edges: SeamEdges, file: TypedIn): Finding =>
  note('seam-place', typedAt(file, 'artwork.seamAt'), `the pattern begins ${seamAtInWords(place, edges)}`);

const edgeNote = (place: SeamPlace, edges: SeamEdges, file: TypedIn): Finding =>
  note(
    'seam-place',
    typedAt(file, 'artwork.seamAt'),
    `${edgeInWords(place, edges)}; "seamAt": "gaps" takes ${(edges.seams ?? 1) > 1 ? 'the first' : 'it'} there`,
  );

/** What the seam cuts at the edge of a drawing where it is left, in words. */
export const edgeInWords = (
  { at, cuts, cutsAtEdge }: SeamPlace,
  { seams = 1 }: Partial<SeamEdges> = {},
): string =>
  seams > 1
    ? `the first of the ${seams} borders of the gores is at the left edge of the drawing, and they cut ${told(cutsAtEdge)} of film; ${told(at)} along it, they would cut ${told(cuts)}`
    : `the seam is at the left edge of the drawing, where it cuts ${told(cutsAtEdge)} of film; ${told(at)} along it, it would cut ${told(cuts)}`;

// How a job's pattern lies on its pieces, as plain values: what it takes to find every point of it again on another wall.
import type { Affine } from '../../geometry/affine.ts';
import { type Extent, motifExtents } from '../../pattern/lattice/bare-rows.ts';
import { type Closing, closingOf, layOut } from '../../pattern/lattice/closing.ts';
import type { Lattice } from '../../pattern/lattice/lattice.ts';
import type { Lay } from '../../pattern/lay/lay.ts';
import type { Template } from '../../unroll/template.ts';
import { layOn } from '../closing/pattern-plan.ts';
import type { Draft } from '../draft.ts';
import { groundOf, patternHeightOf } from '../plan/pattern-ground.ts';
import type { Plan } from '../plan/plan.ts';
import type { Artwork, Job } from '../typed/resolved-job.ts';

/** A pattern's own frame: where the drawing's bottom is, mm drawn, and the steps it repeats by. */
export interface PatternFrame {
  readonly artwork: Artwork;
  readonly lattice: Lattice;
  readonly bottom: number;
  /** Of whole rows: where motifs stand. */
  readonly extents?: readonly Extent[];
  /** The sum of steps that goes once around. */
  readonly sum: Pick<Closing, 'n' | 'm'>;
  /** How far along the drawing turn 0 is, drawn mm; left out, at its left edge. */
  readonly start?: number;
}

/** The way of a pattern onto one piece. */
export interface ArtOnPiece {
  readonly template: Template;
  readonly toFile: Affine;
  /** From the drawing to the laid pattern. */
  readonly out: Affine;
  /** Of the lay: once around, and the pattern's height at the piece's foot end, mm. */
  readonly start: { readonly around: number; readonly y: number };
}

export interface ArtLaid {
  readonly frame: PatternFrame;
  readonly pieces: readonly ArtOnPiece[];
}

/** How the pattern of a job lies: undefined where it can't be carried point by point, or where more than it is drawn. */
export function artLaid(job: Job, drafts: readonly Draft[]): ArtLaid | undefined {
  const { artwork, items = [], lettering = [], relief, seam } = job;
  const plan = drafts[0]?.pattern?.plan;
  if (
    !artwork ||
    !plan ||
    plan.lay === 'rigid' ||
    plan.way !== undefined ||
    drafts.some(({ panel }) => panel)
  )
    return undefined;
  if (items.length > 0 || lettering.length > 0 || relief || seam.style === 'winding') return undefined;
  const { lattice, closing, tile } = plan;
  const frame = {
    artwork,
    lattice,
    bottom: tile.height,
    ...(job.edges === 'whole-rows' ? { extents: motifExtents(tile) } : {}),
    sum: { n: closing.n, m: closing.m },
    ...(closing.start === undefined ? {} : { start: closing.start }),
  };
  return { frame, pieces: onPieces(frame, closing, drafts) };
}

/** The same pattern on other pieces; undefined where it would go around another number of times. */
export function laidOnOthers(
  frame: PatternFrame,
  edges: Job['edges'],
  drafts: readonly Pick<Draft, 'plan' | 'toFile'>[],
): ArtLaid | undefined {
  const ground = groundOf(drafts.map(({ plan }) => plan));
  const { artwork } = frame;
  const closing = closingOf(frame.lattice, {
    girth: ground.girth,
    patternHeight: patternHeightOf(artwork.lay, ground),
    scale: artwork.scale,
    wholeRows: edges === 'whole-rows',
    ...(frame.extents ? { extents: frame.extents } : {}),
    ...(artwork.around === undefined ? {} : { around: artwork.around }),
  });
  if (closing?.n !== frame.sum.n || closing.m !== frame.sum.m) return undefined;
  const begun = frame.start === undefined ? closing : { ...closing, start: frame.start };
  return { frame, pieces: onPieces(frame, begun, drafts) };
}

/** The lay of a pattern on a piece. */
export const layOfPiece = ({ artwork }: PatternFrame, { template, start }: ArtOnPiece): Lay =>
  layOn(artwork, template, start);

function onPieces(
  { artwork, bottom }: PatternFrame,
  closing: Closing,
  drafts: readonly { readonly plan: Plan; readonly toFile: Affine }[],
): readonly ArtOnPiece[] {
  const { girth } = groundOf(drafts.map(({ plan }) => plan));
  const out = layOut(closing, bottom);
  let y = 0;
  return drafts.map(({ plan: { template }, toFile }) => {
    const start = { around: girth, y };
    y = layOn(artwork, template, start).fromAlong(template.band.to);
    return { template, toFile, out, start };
  });
}

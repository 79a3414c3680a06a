// Cover strips over borders of a tile that do not meet: where they lie on the wall.
import { rowHeight } from '../../pattern/lattice/closing.ts';
import type { Lay } from '../../pattern/lay/lay.ts';
import type { MakeInput } from '../make-input.ts';
import type { Plan } from '../plan/plan.ts';
import { type Job, standardStrip } from '../typed/resolved-job.ts';
import type { Strips } from '../typed/strips.ts';
import type { PatternPlan } from './pattern-plan.ts';

/** A piece of the band, and how the pattern is spread over it. */
export interface LaidBand {
  readonly plan: Pick<Plan, 'band' | 'lengths'>;
  readonly lay: Lay | undefined;
}

/** A level border nearer than this to an end of the band is the band's own edge, mm. */
const atEdge = 0.5;

/**
 * The strips that a pattern asks for, if its way has any: one up the wall at each border around, and a level one at each
 * border between rows where those do not meet. `pieces`: from the foot up.
 */
export function borderStrips(
  { seam, artwork }: Job,
  plan: PatternPlan,
  pieces: readonly LaidBand[],
): Strips | undefined {
  if (plan.covers === undefined) return undefined;
  const { around } = plan;
  const width = artwork?.strips?.width ?? seam.strip ?? standardStrip;
  const turns = Array.from({ length: around }, (_, i) => i / around);
  const rows = plan.covers === 'both' ? rowBorders(plan) : [];
  return { width, turns, along: rows.flatMap((y) => alongOf(y, pieces)) };
}

/** Heights of the laid pattern at which a row of repeats ends, from the first up, mm. */
export function rowBorders({
  closing,
  lattice,
  up,
}: Pick<PatternPlan, 'closing' | 'lattice' | 'up'>): readonly number[] {
  const row = rowHeight(lattice, closing) * closing.scaleUp;
  return Array.from({ length: Math.ceil(up) }, (_, i) => (i + 1) * row);
}

/** Turns of strips up the wall that are not there already: a strip over the seam is one, and a handle leaves turn 0 bare. */
export const uprightTurns = (
  turns: readonly number[],
  { job, blank }: Pick<MakeInput, 'job' | 'blank'>,
): readonly number[] =>
  turns.filter((turn) => turn > 0 || (job.seam.strip === undefined && blank.handle === undefined));

/** Where on the wall a height of the laid pattern comes to lie; nowhere where that is an edge of the band, or past it. */
function alongOf(y: number, pieces: readonly LaidBand[]): number[] {
  const [from, to] = [pieces[0]?.plan.band.from ?? 0, pieces.at(-1)?.plan.band.to ?? 0];
  const alongs = pieces.flatMap(({ plan, lay }) => (lay ? [plan.lengths.toBare(lay.toAlong(y))] : []));
  const along = alongs.find((at, i) => at <= (pieces[i]?.plan.band.to ?? 0));
  return along === undefined || along < from + atEdge || along > to - atEdge ? [] : [along];
}

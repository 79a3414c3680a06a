// The pieces a band is cut in: one, or stacked sectors where the wall bends more than the film gives.
import type { Band } from '../../blank/flat-band.ts';
import { roundLimits, wallOf } from '../../blank/wall.ts';
import { Refused, stop } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import { sheetRadii } from '../../unroll/sheet-wall.ts';
import { stackedSectors } from '../../unroll/stack.ts';
import type { Job } from '../typed/resolved-job.ts';
import { typedAt } from '../typed/typed-at.ts';
import { type Plan, type PlanInput, planWrap } from './plan.ts';
import { filmGives } from './plan-findings.ts';

export interface PiecesInput extends PlanInput {
  readonly job: PlanInput['job'] & Pick<Job, 'pieces'>;
}

/** Plans of the pieces, from the foot up; the first is that of the whole band where it is one piece. @throws Refused */
export function planPieces(given: PiecesInput): readonly Plan[] {
  const input = given.job.pieces === 'one' ? given : overTheWall(given);
  const whole = planWrap(input);
  if (input.job.pieces === 'one' || whole.strain.length === 0) return [whole];
  const bands = stackedBands(input, whole);
  return bands.length === 1 ? [whole] : plansOfBands(input, bands);
}

/** Pieces are stacked to cover a wall that bends: without a band all of it between its rounds, not the longest that is flat. */
function overTheWall(input: PiecesInput): PiecesInput {
  if (input.job.band) return input;
  const { wall } = wallOf(input.blank);
  return wall.kind === 'straight'
    ? input
    : { ...input, job: { ...input.job, band: roundLimits(wall, input.blank) } };
}

/**
 * Plans of pieces that cover these bands, from the foot up. They meet edge to edge, or each goes on past its lip edge by
 * `lap`, mm, under the next. @throws Refused
 */
export function plansOfBands(input: PiecesInput, bands: readonly Band[], lap = 0): readonly Plan[] {
  const { trim } = input.job;
  const whole = { from: bands[0]?.from ?? 0, to: bands.at(-1)?.to ?? 0 };
  return bands.map((band, i) =>
    planWrap({
      ...input,
      whole,
      job: {
        ...input.job,
        band,
        // Only the outer two are trimmed.
        trim: { foot: i === 0 ? trim.foot : 0, lip: i === bands.length - 1 ? trim.lip : lap },
      },
    }),
  );
}

function stackedBands({ job, jobFile }: PiecesInput, { wall, build, band, lengths }: Plan): readonly Band[] {
  const stretch = filmGives(job.film);
  const sectors = stackedSectors(sheetRadii(wall, build, band), {
    stretch,
    gather: job.film.gather,
  });
  const { from, to } = band;
  const bare = (on: number) => Math.min(to, Math.max(from, lengths.toBare(on)));
  if (sectors) return sectors.map((sector) => ({ from: bare(sector.from), to: bare(sector.to) }));
  const says = `from ${inMm(from)} to ${inMm(to)} would take more than two dozen stacked pieces; give a shorter band, or a film that stretches more`;
  throw new Refused([stop('too-many-pieces', typedAt(jobFile, 'pieces'), says)]);
}

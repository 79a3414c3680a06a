// The pattern of a job whose artwork is to be mended: mended before it is laid, for where it is laid smallest.
import type { CutLimits } from '../../cut/checks/limits.ts';
import type { Finding } from '../../finding.ts';
import type { PatternPlan } from '../closing/pattern-plan.ts';
import type { PatternGround } from '../plan/pattern-ground.ts';
import type { Job } from '../typed/resolved-job.ts';
import { limitsOf } from './cut-limits.ts';
import { type MendedTile, mendTile } from './mend-tile.ts';

export interface MendedPlan {
  readonly plan: PatternPlan;
  readonly findings: readonly Finding[];
  readonly mended?: MendedTile;
}

/** Least size on the wall over the drawn size, anywhere in the band. */
function smallestScale({ closing }: PatternPlan, { girth, ends }: PatternGround): number {
  const { scaleAcross, scaleUp } = closing;
  return (Math.min(scaleAcross, scaleUp) * Math.min(girth, ends.foot, ends.lip)) / girth;
}

/** Limits of film on the wall as they are in a drawing that is laid `scale` times as large. */
const drawnLimits = (limits: CutLimits, scale: number): CutLimits => ({
  minWidth: limits.minWidth / scale,
  minGap: limits.minGap / scale,
  minPiece: limits.minPiece / (scale * scale),
  minAngle: limits.minAngle,
  step: limits.step / scale,
});

/** What film and cutter can do, as it is in the drawing where that is laid smallest. */
export const limitsInArt = (
  { film, cutter }: Pick<Job, 'film' | 'cutter'>,
  plan: PatternPlan,
  ground: PatternGround,
): CutLimits => drawnLimits(limitsOf(film, cutter), smallestScale(plan, ground));

export function mendedPlan(
  { artwork, film, cutter }: Job,
  plan: PatternPlan,
  ground: PatternGround,
): MendedPlan {
  if (!artwork?.mend) return { plan, findings: [] };
  const limits = limitsInArt({ film, cutter }, plan, ground);
  const mended = mendTile(plan.tile, plan.lattice, limits, film.use, artwork.file);
  if ('rule' in mended) return { plan, findings: [mended] };
  return {
    plan: { ...plan, tile: mended.tile },
    findings: mended.notes.map(({ finding }) => finding),
    mended,
  };
}

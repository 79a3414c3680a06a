// What a job's film and cutter can do, as the checks before the blade need it.
import type { CutLimits } from '../../cut/checks/limits.ts';
import type { Cutter, Film } from '../typed/material.ts';

/** Film and gaps can be no narrower than the film holds, nor than the cutter cuts clean. */
export const limitsOf = (
  { minWidth, minGap, minPiece, minAngle }: Film,
  { step, smallest }: Cutter,
): CutLimits => ({
  minWidth: Math.max(minWidth, smallest),
  minGap: Math.max(minGap, smallest),
  minPiece,
  minAngle,
  step,
});

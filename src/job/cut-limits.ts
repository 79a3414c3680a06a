// What a job's film and cutter can do, as the checks before the blade need it.
import type { CutLimits } from '../cut/limits.ts';
import type { Cutter, Film } from './resolved-job.ts';

export const limitsOf = ({ minWidth, minGap, minPiece, minAngle }: Film, { step }: Cutter): CutLimits => ({
  minWidth,
  minGap,
  minPiece,
  minAngle,
  step,
});

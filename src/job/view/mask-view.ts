// The mask of a job as a screen shows it on the vessel: its film, and the spray around it.
import { moveContour } from '../../geometry/affine.ts';
import type { Draft } from '../draft.ts';
import { maskStem } from '../parts/masks.ts';
import type { Part } from '../parts/part.ts';
import type { Job } from '../typed/resolved-job.ts';
import { screenPath, type VesselView } from './vessel-view.ts';

/** Undefined where the job has no mask. `parts`: all parts of the job, for its mask is one of them. */
export function maskViewOf(
  { mask }: Pick<Job, 'mask'>,
  [draft]: readonly Draft[],
  parts: readonly Part[],
): VesselView['mask'] {
  const [border] = parts.find(({ stem }) => stem === maskStem)?.sheet?.outlines ?? [];
  if (!mask || !draft || !border) return undefined;
  const { film, sprayed } = mask;
  return { film, sprayed, pieces: [screenPath([moveContour(draft.toFile, border)])] };
}

// The mask of a job as a screen shows it on the vessel: its film, and the spray around it.
import { moveContour } from '../geometry/affine.ts';
import type { Draft } from './draft.ts';
import type { MakeInput } from './make-input.ts';
import { laidMask } from './masks.ts';
import { screenPath, type VesselView } from './vessel-view.ts';

/** Undefined where the job has no mask. @throws Refused where it can't be one piece around the wall. */
export function maskViewOf(input: MakeInput, drafts: readonly Draft[]): VesselView['mask'] {
  const laid = laidMask(input, drafts);
  const [draft] = drafts;
  if (!laid || !draft) return undefined;
  const { film, sprayed } = laid.mask;
  return { film, sprayed, pieces: [screenPath([moveContour(draft.toFile, laid.border)])] };
}

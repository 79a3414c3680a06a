// A step of the work on the job sheet, and what all steps are told from.
import type { Band } from '../../blank/flat-band.ts';
import type { Coat } from '../typed/material.ts';
import type { Job } from '../typed/resolved-job.ts';

export interface WorkStep {
  readonly does: string;
  /** What to look at before going on. */
  readonly check: string;
  /** Hours to wait after it; undefined where the product's own sheet has to say. */
  readonly wait?: number;
  /** Whether something is wet after it: where no wait is given the product's own sheet has it. */
  readonly dries: boolean;
}

/** What the work is told from; all of it is in the job and its pieces. */
export interface Work {
  readonly job: Pick<Job, 'seam' | 'trim' | 'collars'> & {
    readonly film: Pick<Job['film'], 'use'>;
    readonly mask?: Pick<NonNullable<Job['mask']>, 'window'>;
  };
  readonly coats: readonly Coat[];
  /** The finished band of all pieces together, mm along. */
  readonly band: Band;
  /** Whether the wrap is laid on the vessel; false where it is only a template for motifs that are cut apart. */
  readonly isWrapLaid: boolean;
  /** How many motifs are cut and laid by themselves; 0 where it is left out. */
  readonly apart?: number;
  /** Whether anything is picked out of the film. */
  readonly isWeeded: boolean;
  /** The films that the wrap is cut from, from the lowest up, where there are several. */
  readonly films?: readonly string[];
  /** How many cover strips lie on borders of the pattern; 0 where it is left out. */
  readonly covers?: number;
  readonly hasHandle: boolean;
  readonly pieces: number;
  /** Between stacked pieces; 0 where it is left out. */
  readonly joints?: number;
  /** Whether these are gores, laid side by side around the wall, and not stacked up it. */
  readonly isGores?: boolean;
}

export const plainStep = (does: string, check: string): WorkStep => ({ does, check, dries: false });

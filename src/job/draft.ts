// A piece of a job between planning and writing.
import type { Finding } from '../finding.ts';
import type { Wrap } from '../pattern/wrap.ts';
import type { ItemReport } from './items.ts';
import type { PatternPlan } from './pattern-plan.ts';
import type { Plan } from './plan.ts';
import type { Artwork, Job } from './resolved-job.ts';

/** A job worked out, before anything is written. */
export interface Draft {
  readonly cut: string;
  readonly guide: string;
  /** The job with everything that was worked out put in its place. */
  readonly job: Job;
  readonly plan: Plan;
  readonly pattern: LaidPattern | undefined;
  readonly items: readonly ItemReport[];
  readonly findings: readonly Finding[];
}

/** A pattern laid over a piece. */
export interface LaidPattern {
  readonly artwork: Artwork;
  readonly plan: PatternPlan;
  readonly wrap: Wrap;
  readonly findings: readonly Finding[];
}

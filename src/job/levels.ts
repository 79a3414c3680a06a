// A band that is too tall for the sheet in whatever panels: cut in levels, one above the other, that meet edge to edge.
import { type Finding, note } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import { fitsInPanels } from './panels.ts';
import { type PiecesInput, plansOfBands } from './pieces.ts';
import type { Plan } from './plan.ts';
import type { Job } from './resolved-job.ts';
import { typedAt } from './typed-at.ts';

/** More levels than this are a sheet typed far too small. */
const mostLevels = 12;

export interface LevelsInput extends PiecesInput {
  readonly job: PiecesInput['job'] & Pick<Job, 'sheet' | 'panels' | 'artwork'>;
}

/** Plans of the levels from the foot up, and what is said of them; the plans as they were where none are needed, or none help. */
export function inLevels(
  input: LevelsInput,
  plans: readonly Plan[],
): { readonly plans: readonly Plan[]; readonly findings: readonly Finding[] } {
  const as = { plans, findings: [] };
  const [whole] = plans;
  const { job, jobFile } = input;
  // Joints that the maker gave are theirs; and a motif moved whole goes across no level.
  const isOurs = job.panels === undefined || typeof job.panels.joints === 'string';
  if (!whole || plans.length > 1 || !isOurs || job.artwork?.lay === 'rigid') return as;
  if (fitsInPanels(whole.template, job)) return as;
  const { from, to } = whole.band;
  for (let count = 2; count <= mostLevels; count++) {
    const height = (to - from) / count;
    const bands = Array.from({ length: count }, (_, i) => ({
      from: from + i * height,
      to: i === count - 1 ? to : from + (i + 1) * height,
    }));
    const levels = plansOfBands(input, bands);
    if (!levels.every(({ template }) => fitsInPanels(template, job))) continue;
    const says = `is too small for a band of ${inMm(to - from)} in panels of any width, so it is cut in ${count} levels of ${inMm(height)}, which meet edge to edge`;
    return { plans: levels, findings: [note('levels', typedAt(jobFile, 'sheet'), says)] };
  }
  return as;
}

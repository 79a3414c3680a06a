// What a pattern is fitted to: the girth and the length of the whole band, however many pieces it is cut in.
import type { Band } from '../blank/flat-band.ts';
import { girthAt } from '../unroll/flat-wall.ts';
import type { Plan } from './plan.ts';

export interface PatternGround {
  /** The sheet's girth at the middle of the whole band, mm; there the pattern has its size. */
  readonly girth: number;
  /** And at the band's two ends. */
  readonly ends: { readonly foot: number; readonly lip: number };
  /** The whole band, mm along, and its length. */
  readonly band: Band;
  readonly bandLength: number;
}

/** The band that pieces cover together, from the foot up. */
export const wholeBand = (plans: readonly Pick<Plan, 'template'>[]): Band => ({
  from: plans[0]?.template.band.from ?? 0,
  to: plans.at(-1)?.template.band.to ?? 0,
});

/** The ground of a band in one piece or several. */
export function groundOf(plans: readonly Pick<Plan, 'template'>[]): PatternGround {
  const { from, to } = wholeBand(plans);
  const girth = (along: number): number => {
    const at = plans.find(({ template }) => template.band.to >= along) ?? plans.at(-1);
    return at ? girthAt(at.template.wall, along) : 0;
  };
  return {
    girth: girth((from + to) / 2),
    ends: { foot: girth(from), lip: girth(to) },
    band: { from, to },
    bandLength: to - from,
  };
}

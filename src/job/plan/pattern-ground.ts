// What a pattern is fitted to: the girth and the length of the whole band, however many pieces it is cut in.
import type { Band } from '../../blank/flat-band.ts';
import { conformalLay } from '../../pattern/lay/lay.ts';
import type { MotifLay } from '../../pattern/rigid/motif.ts';
import { girthAt } from '../../unroll/flat-wall.ts';
import type { Plan } from './plan.ts';

export interface PatternGround {
  /** The sheet's girth at the middle of the whole band, mm; there the pattern has its size. */
  readonly girth: number;
  /** And at the band's two ends. */
  readonly ends: { readonly foot: number; readonly lip: number };
  /** The whole band, mm on the sheet, and its length there. */
  readonly band: Band;
  readonly bandLength: number;
  /** How high a pattern is that fills it by a conformal lay, whose rows grow with the girth, mm at the middle of the band. */
  readonly conformalHeight: number;
}

/** How high the laid pattern is that fills the band, mm: an even lay, and a rigid one, keeps heights. */
export const patternHeightOf = (lay: MotifLay, { bandLength, conformalHeight }: PatternGround): number =>
  lay === 'conformal' ? conformalHeight : bandLength;

/** The band that pieces cover together, mm along, from the foot up. */
export const wholeBand = (plans: readonly Pick<Plan, 'band'>[]): Band =>
  around(plans.map(({ band }) => band));

const around = (bands: readonly Band[]): Band => ({ from: bands[0]?.from ?? 0, to: bands.at(-1)?.to ?? 0 });

/** The ground of a band in one piece or several. */
export function groundOf(plans: readonly Pick<Plan, 'template'>[]): PatternGround {
  const { from, to } = around(plans.map(({ template }) => template.band));
  const girth = (on: number): number => {
    const at = plans.find(({ template }) => template.band.to >= on) ?? plans.at(-1);
    return at ? girthAt(at.template.wall, on) : 0;
  };
  const middle = girth((from + to) / 2);
  return {
    girth: middle,
    ends: { foot: girth(from), lip: girth(to) },
    band: { from, to },
    bandLength: to - from,
    conformalHeight: plans.reduce(
      (sum, { template: { wall, band } }) =>
        sum + conformalLay(wall, band.from, { around: middle }).fromAlong(band.to),
      0,
    ),
  };
}

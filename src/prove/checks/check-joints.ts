// Does the art of each panel go on as that of the next, where they are joined?
import { NearestFinder } from '../../geometry/nearest.ts';
import { precision } from '../../geometry/tolerance.ts';
import { atMost, type Check } from '../check.ts';
import { jointGap, type SeamGap, tangentLimitDeg, worseGap } from '../seams/seam-gap.ts';
import type { RowLayer } from '../written/row.ts';

/** What the two sides of each joint of a layer miss each other by. */
function jointGaps({ row, arts }: RowLayer): readonly SeamGap[] {
  const sides = arts.map(({ contours }) => ({ contours, finder: new NearestFinder(contours) }));
  return sides.slice(1).flatMap((right, i) => {
    const left = sides[i];
    return left ? jointGap(row, row.panels[i]?.turns.to ?? Number.NaN, [left, right]) : [];
  });
}

/** Nothing where there is no art. */
export function jointChecks(layers: readonly RowLayer[]): Check[] {
  const gaps = layers.flatMap(jointGaps);
  if (gaps.length === 0) return [];
  const { position, tangentDeg, crossings } = gaps.reduce(worseGap);
  return [
    atMost({
      rule: 'joint-position',
      value: position,
      limit: precision,
      unit: 'mm',
      says: `what the art of two panels misses each other by at their joint, over ${crossings} crossings`,
    }),
    atMost({
      rule: 'joint-direction',
      value: tangentDeg,
      limit: tangentLimitDeg,
      unit: 'degrees',
      says: 'angle between the two sides of a line at a joint of panels',
    }),
  ];
}

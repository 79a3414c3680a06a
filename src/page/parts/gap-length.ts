// A gap between two ends in the maker's unit: as finely as it is measured, which is finer than anything else is told.
import type { Units } from '../../lengths/length.ts';

export function gapLength(mm: number, units: Units): string {
  const [value, digits] = units === 'in' ? [mm / 25.4, 5] : [mm, 4];
  const least = 10 ** -digits;
  return value < least ? `less than ${least.toFixed(digits)} ${units}` : `${value.toFixed(digits)} ${units}`;
}

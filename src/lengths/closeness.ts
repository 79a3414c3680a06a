// A gap between two ends in the maker's unit: as finely as it is measured, which is finer than anything else is told.
import type { Units } from './length.ts';

export const gapLength = (mm: number, units: Units): string =>
  units === 'in' ? closeness(mm / 25.4, 5, ' in') : closeness(mm, 4, ' mm');

/** How far two directions are apart. */
export const gapAngle = (degrees: number): string => closeness(degrees, 4, '°');

/** How close two things are, as it goes on from "they meet"; what is under the last digit is told as that. */
function closeness(value: number, digits: number, unit: string): string {
  const least = 10 ** -digits;
  return value < least
    ? `closer than ${least.toFixed(digits)}${unit}`
    : `to within ${value.toFixed(digits)}${unit}`;
}

// The lip zone of a vessel that is drunk from: the top of its outside, which lips touch.
import { type Finding, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank } from './blank.ts';

/**
 * Height of the lip zone where the blank names none, mm down from the lip corner, measured on the wall. "Lip and rim
 * area of drinkware (rim and top 20 mm. of drinking vessel)": Society of Glass and Ceramic Decorators, note on
 * Proposition 65, July 2004 (seen); the 2 cm wide outer drinking rim of DIN 51032, as told by LGL Bayern, which adds that
 * it is no legal norm (seen). Both are about tests of fired ware: nobody's law draws this line for film or resin.
 */
const standardLipZone = 20;

/** Where the lip zone of a wall so long begins, mm along; undefined where there is none. */
export function lipZoneStart(
  { use = 'drinking', lipZone = standardLipZone }: Pick<Blank, 'use' | 'lipZone'>,
  length: number,
): number | undefined {
  return use === 'other' || lipZone === 0 ? undefined : Math.max(0, length - lipZone);
}

/** What is wrong with a typed lip zone on a wall so long, mm (rule `lip-zone-too-wide`). */
export function lipZoneProblems({ lipZone = 0 }: Pick<Blank, 'lipZone'>, length: number): readonly Finding[] {
  if (lipZone < length) return [];
  const says = `${inMm(lipZone)} is all of the wall, which is ${inMm(length)} along; give less, or 0 for none`;
  return [stop('lip-zone-too-wide', { key: 'lipZone' }, says)];
}

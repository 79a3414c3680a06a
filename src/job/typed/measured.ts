// What a machine makes of a length, as its test piece was measured both ways, and the correction that follows from it.

import { inMm } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { type Place, type Reader, readKeys, report, required, standard, within } from './schema.ts';
import { length } from './schema-values.ts';

/** What was drawn so long, and came out so long across the machine and along its feed; mm. */
export interface Measured {
  readonly drawn: number;
  readonly across: number;
  readonly up: number;
}

/** What every length of a file is multiplied by, both ways, so that it comes out true. */
export interface Correction {
  readonly across: number;
  readonly up: number;
}

/** A machine further off than this was told another unit, or another size: that is no fault to correct. Common practice, no source. */
const mostOff = 0.03;

/** Less than this is nothing anyone can measure, as a share. */
const leastOff = 1e-6;

/** Length of the scales of the test piece, mm. */
export const scaleLength = 150;

export const measuredKeys = {
  drawn: standard('Length as drawn', length(), scaleLength),
  across: required('Measured across', length()),
  up: required('Measured up, along the feed', length()),
};

export const readMeasured: Reader<Measured> = (value, place) => {
  const read = readKeys(value, measuredKeys, place);
  if (read?.across === undefined || read.up === undefined) return undefined;
  const { drawn, across, up } = read;
  const isSound = [isNear(across, drawn, within(place, 'across')), isNear(up, drawn, within(place, 'up'))];
  return isSound.every(Boolean) ? { drawn, across, up } : undefined;
};

function isNear(mm: number, drawn: number, place: Place): boolean {
  if (Math.abs(mm / drawn - 1) <= mostOff) return true;
  report(
    place,
    'measured-far-off',
    `${shown(mm)} for ${inMm(drawn)} drawn is more than ${100 * mostOff} % off, which no machine is that works; measure from the first line of the scale to its last, and see that the file was cut or printed at 100 %`,
  );
  return false;
}

/** Undefined where there is nothing to correct. */
export function correctionOf(measured: Measured | undefined): Correction | undefined {
  if (!measured) return undefined;
  const { drawn, across, up } = measured;
  const correction = { across: drawn / across, up: drawn / up };
  const isTrue = Object.values(correction).every((factor) => Math.abs(factor - 1) < leastOff);
  return isTrue ? undefined : correction;
}

const percent = (factor: number): string =>
  `${factor < 1 ? '-' : '+'}${Math.abs(100 * (factor - 1)).toFixed(2)} %`;

export const correctionInWords = ({ across, up }: Correction): string =>
  `${percent(across)} across, ${percent(up)} up`;

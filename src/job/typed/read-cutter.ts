// The cutter of a job: what the machine can hold and reach, and what its knife does.
import { inMm } from '../../lengths/length.ts';
import { type Cutter, standardCutter, standardSpacing } from './material.ts';
import { measuredKeys, readMeasured } from './measured.ts';
import { keysOf, type NamedFiles, ownFile } from './read-material.ts';
import type { Job } from './resolved-job.ts';
import {
  holding,
  optional,
  type Place,
  type Reader,
  readKeys,
  report,
  required,
  standard,
  within,
} from './schema.ts';
import { choice, given, length, lengthOrZero, number, yesOrNo } from './schema-values.ts';

const bedKeys = {
  across: required('Bed across', length()),
  up: optional('Bed up', length()),
};

const readBed: Reader<NonNullable<Cutter['bed']>> = (value, place) => {
  const read = readKeys(value, bedKeys, place);
  return read?.across === undefined ? undefined : { across: read.across, ...given({ up: read.up }) };
};

/** A knife that trails further is no drag knife, mm. Common practice, no source. */
const mostOffset = 2;

/** Longer ends would be cuts of their own, mm. */
const mostRunOn = 20;

export const cutterKeys = {
  step: standard('Step', lengthOrZero, standardCutter.step),
  speed: standard('Speed, a second', length(), standardCutter.speed),
  lift: standard('Lift, seconds', number({ least: 0, most: 60 }), standardCutter.lift),
  passes: standard('Passes', number({ least: 1, most: 20, whole: true }), standardCutter.passes),
  bed: holding(optional('Bed, or roll', readBed), bedKeys),
  margin: standard('Margin out of reach', lengthOrZero, standardCutter.margin),
  smallest: standard('Smallest feature', lengthOrZero, standardCutter.smallest),
  knifeOffset: standard(
    'Knife offset',
    length({ sign: 'zero-too', most: mostOffset }),
    standardCutter.knifeOffset,
  ),
  compensate: standard('Files hold the axis of the knife', yesOrNo, standardCutter.compensate),
  runOn: standard(
    'Run-on of closed lines',
    length({ sign: 'zero-too', most: mostRunOn }),
    standardCutter.runOn,
  ),
  corner: standard('At corners', choice<Cutter['corner']>(['swivel', 'lift']), standardCutter.corner),
  pastCorner: standard(
    'Run-on past corners',
    length({ sign: 'zero-too', most: mostRunOn }),
    standardCutter.pastCorner,
  ),
  measured: holding(optional('What its test piece measured', readMeasured), measuredKeys),
  marks: standard(
    'Marks it looks for',
    choice<Cutter['marks']>(['none', 'crosses', 'corners']),
    standardCutter.marks,
  ),
};

export const cutterReader =
  (named: NamedFiles): Reader<Cutter> =>
  (value, place) => {
    const read = keysOf(value, place, cutterKeys, named);
    if (!read) return undefined;
    // What its file says of itself is left behind.
    const { step, speed, lift, passes, bed, margin, smallest, marks, measured } = read.values;
    const { knifeOffset, compensate, runOn, corner, pastCorner } = read.values;
    const knife = { knifeOffset, compensate, runOn, corner, pastCorner };
    const cutter = {
      step,
      speed,
      lift,
      passes,
      margin,
      smallest,
      marks,
      ...knife,
      ...given({ bed, measured }),
    };
    return isWhole(cutter, read.at) ? cutter : undefined;
  };

function isWhole({ compensate, knifeOffset, bed, margin }: Cutter, at: Place): boolean {
  if (compensate && knifeOffset === 0) {
    const says =
      'asks for the way of the knife\'s axis, and there is no "knifeOffset" above 0; give how far the tip trails behind the axis, or leave "compensate" out';
    report(within(at, 'compensate'), 'no-knife-offset', says);
    return false;
  }
  if (bed && 2 * margin >= Math.min(bed.across, bed.up ?? bed.across)) {
    const says = `${inMm(margin)} on either side leaves nothing of the bed; give a smaller margin`;
    report(within(at, 'margin'), 'margin-too-wide', says);
    return false;
  }
  return true;
}

export const readCutter = (content: unknown, file: string): Cutter => ownFile(cutterReader, content, file);

/**
 * The sheet of a job as its cutter takes it: without one of its own the cutter's bed; with no less margin than the
 * cutter needs. Reports a sheet that is larger than the bed, either way round.
 */
export function sheetOn({ bed, margin }: Cutter, sheet: Job['sheet'], place: Place): Job['sheet'] {
  if (!sheet) return bed && { ...bed, margin, spacing: standardSpacing, mirror: false };
  if (bed && !fitsBed(sheet, bed)) {
    const size = (of: { readonly across: number; readonly up?: number }) =>
      of.up === undefined ? `a roll ${inMm(of.across)} wide` : `${inMm(of.across)} by ${inMm(of.up)}`;
    return report(
      within(place, 'sheet'),
      'sheet-past-bed',
      `is ${size(sheet)}, and the cutter takes ${size(bed)}; give the size that film is cut down to for it`,
    );
  }
  return { ...sheet, margin: Math.max(sheet.margin, margin) };
}

function fitsBed(sheet: NonNullable<Job['sheet']>, bed: NonNullable<Cutter['bed']>): boolean {
  const endless = Number.POSITIVE_INFINITY;
  const [up, length] = [sheet.up ?? endless, bed.up ?? endless];
  return (sheet.across <= bed.across && up <= length) || (up <= bed.across && sheet.across <= length);
}

// The paper fits of a blank file.
import { standardReading } from '../../blank/blank.ts';
import { standardPaper, type TypedFit } from '../../blank/paper-fit.ts';
import { readAlong } from './read-spans.ts';
import { optional, type Reader, readKeys, required, standard } from './schema.ts';
import { displacement, given, lengthOrZero } from './schema-values.ts';

export const fitKeys = {
  foot: required('Missed at the foot end', displacement),
  lip: required('Missed at the lip end', displacement),
  climb: optional('Climbed', displacement),
  band: optional('Band of the paper', readAlong),
  paper: standard('Paper thickness', lengthOrZero, standardPaper),
  reading: standard('Reading', lengthOrZero, standardReading),
};

export const readFit: Reader<TypedFit> = (value, place) => {
  const keys = readKeys(value, fitKeys, place);
  if (keys?.foot === undefined || keys.lip === undefined) return undefined;
  const { foot, lip, climb, band, paper, reading } = keys;
  return { foot, lip, paper, reading, ...given({ climb, band }) };
};

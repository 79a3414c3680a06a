// The mask of a job, as typed: what its edge follows, and what it covers.
import { colour } from './read-lettering.ts';
import type { Mask } from './resolved-mask.ts';
import { holding, optional, type Reader, readKeys, required, standard } from './schema.ts';
import { choice, displacement, given, length, lengthOrZero, list, text } from './schema-values.ts';

const windowKeys = { grow: standard('Past what lies over it', displacement, -0.5) };

const readWindow: Reader<NonNullable<Mask['window']>> = (value, place) => {
  const keys = readKeys(value, windowKeys, place);
  return keys && { grow: keys.grow };
};

/** Colours of the picture alone: a spray, and a film as many masks have it. */
const standardColours = { sprayed: '#7d9aa5', film: '#e8d9a0' };

export const maskKeys = {
  covers: required('Covers the rest to the', choice<Mask['covers']>(['foot', 'lip'])),
  follows: optional('Follows', list(text)),
  standOff: required('Stays away', length()),
  smooth: standard('Rounded to', lengthOrZero, 0),
  window: holding(optional('Window', readWindow), windowKeys),
  sprayed: standard('Colour sprayed', colour, standardColours.sprayed),
  film: standard('Colour of the film', colour, standardColours.film),
};

export const readMask: Reader<Mask> = (value, place) => {
  const keys = readKeys(value, maskKeys, place);
  if (keys?.covers === undefined || keys.standOff === undefined) return undefined;
  const { covers, follows, standOff, smooth, window, sprayed, film } = keys;
  return { covers, standOff, smooth, sprayed, film, ...given({ follows, window }) };
};

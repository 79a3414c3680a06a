// The paper fits and the keep-outs of a blank file.
import { standardReading } from '../blank/blank.ts';
import { type KeepOut, type KeepOutKind, keepOutKinds } from '../blank/keep-out.ts';
import { standardPaper, type TypedFit } from '../blank/paper-fit.ts';
import { formatLength } from '../lengths/length.ts';
import { optional, type Reader, readKeys, report, required, standard } from './schema.ts';
import { choice, displacement, length, lengthOrZero, number } from './schema-values.ts';

export interface Span {
  readonly from: number;
  readonly to: number;
}

export const alongKeys = { from: required('From', lengthOrZero), to: required('To', length()) };

export const readAlong: Reader<Span> = (value, place) => {
  const keys = readKeys(value, alongKeys, place);
  if (keys?.from === undefined || keys.to === undefined) return undefined;
  const { from, to } = keys;
  if (from < to) return { from, to };
  const says = `runs from ${formatLength(from, 'mm')} to ${formatLength(to, 'mm')}; give a "to" above its "from"`;
  return report(place, 'upside-down', says);
};

const share = number({ least: 0, most: 1 });

export const turnKeys = { from: required('From turn', share), to: required('To turn', share) };

const readTurn: Reader<Span> = (value, place) => {
  const keys = readKeys(value, turnKeys, place);
  if (keys?.from === undefined || keys.to === undefined) return undefined;
  const { from, to } = keys;
  if (from !== to) return { from, to };
  return report(place, 'no-width', `starts and ends at turn ${from}; leave "turn" out for all around`);
};

export const keepOutKeys = {
  what: required('What to keep clear of', choice<KeepOutKind>(keepOutKinds)),
  turn: optional('Around', readTurn),
  along: optional('Along the wall', readAlong),
};

export const readKeepOut: Reader<KeepOut> = (value, place) => {
  const keys = readKeys(value, keepOutKeys, place);
  if (keys?.what === undefined) return undefined;
  const { what, turn, along } = keys;
  const isGiven = (name: string) => Object.hasOwn(Object(value), name);
  if (!isGiven('turn') && !isGiven('along')) {
    const says = `says where its ${what} is neither around ("turn") nor up the wall ("along"), which would keep all of it bare; give one of them, or both`;
    return report(place, 'keep-out-everywhere', says);
  }
  return { what, ...(turn ? { turn } : {}), ...(along ? { along } : {}) };
};

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
  return {
    foot,
    lip,
    paper,
    reading,
    ...(climb === undefined ? {} : { climb }),
    ...(band === undefined ? {} : { band }),
  };
};

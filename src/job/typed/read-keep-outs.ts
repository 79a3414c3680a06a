// The keep-outs of a blank file.
import { type KeepOut, type KeepOutKind, keepOutKinds } from '../../blank/keep-out.ts';
import { readAlong, readTurn } from './read-spans.ts';
import { isTyped, optional, type Reader, readKeys, report, required } from './schema.ts';
import { choice, given } from './schema-values.ts';

export const keepOutKeys = {
  what: required('What to keep clear of', choice<KeepOutKind>(keepOutKinds)),
  turn: optional('Around', readTurn),
  along: optional('Along the wall', readAlong),
};

export const readKeepOut: Reader<KeepOut> = (value, place) => {
  const keys = readKeys(value, keepOutKeys, place);
  if (keys?.what === undefined) return undefined;
  const { what, turn, along } = keys;
  if (!isTyped(value, 'turn') && !isTyped(value, 'along')) {
    const says = `says where its ${what} is neither around ("turn") nor up the wall ("along"), which would keep all of it bare; give one of them, or both`;
    return report(place, 'keep-out-everywhere', says);
  }
  return { what, ...given({ turn, along }) };
};

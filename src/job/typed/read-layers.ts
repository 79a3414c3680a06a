// The layers of a job, as typed: their order, how films go under one another, what goes under them all.

import { parseLength } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { backingKeys, colour, readBacking } from './read-lettering.ts';
import type { Layers } from './resolved-job.ts';
import {
  holding,
  isObject,
  optional,
  type Reader,
  readKeys,
  report,
  required,
  standard,
  within,
} from './schema.ts';
import { choice, given, lengthOrZero, list } from './schema-values.ts';

/** Films go under one another by tenths of a mm, or a few: more is a slip of the unit. Common practice, no source. */
const mostSpread = 10;

/** A length up to `mostSpread` either way. */
const readSpread: Reader<number> = (value, place) => {
  const parsed = parseLength(value, { sign: 'any', units: place.units, bare: 'number' });
  if (!parsed.ok) return report(place, 'not-a-length', parsed.says);
  if (Math.abs(parsed.mm) <= mostSpread) return parsed.mm;
  const says = `${shown(value)} is more than films are spread or choked by; give up to ${mostSpread} mm either way`;
  return report(place, 'not-a-length', says);
};

const orderKeys = {
  colour: required('Colour', colour),
  spread: optional('Spread', readSpread),
};

const readOrdered: Reader<NonNullable<Layers['order']>[number]> = (value, place) => {
  if (!isObject(value)) {
    const found = colour(value, place);
    return found === undefined ? undefined : { colour: found };
  }
  const keys = readKeys(value, orderKeys, place);
  return keys?.colour === undefined ? undefined : { colour: keys.colour, ...given({ spread: keys.spread }) };
};

const readOrder: Reader<NonNullable<Layers['order']>> = (value, place) => {
  const order = list(readOrdered)(value, place);
  const twice = order?.findIndex(({ colour: one }, i) =>
    order.some((other, k) => k < i && other.colour === one),
  );
  if (order === undefined || twice === undefined || twice < 0) return order;
  return report(
    within(place, twice),
    'twice',
    `${shown(order[twice]?.colour)} is there before; a colour is one layer`,
  );
};

const underlayKeys = {
  choke: required('Back from the edge', lengthOrZero),
  colour: standard('Colour', colour, '#ffffff'),
};

const readUnderlay: Reader<NonNullable<Layers['underlay']>> = (value, place) => {
  const keys = readKeys(value, underlayKeys, place);
  return keys?.choke === undefined ? undefined : { choke: keys.choke, colour: keys.colour };
};

export const layersKeys = {
  order: optional('Order from the lowest up', readOrder),
  style: standard('Style', choice<Layers['style']>(['stacked', 'knocked-out']), 'stacked'),
  spread: standard('Spread', readSpread, 0),
  underlay: holding(optional('Underlay', readUnderlay), underlayKeys),
  backing: holding(optional('Backing', readBacking), backingKeys),
  files: standard('Cut files', choice<Layers['files']>(['one', 'each']), 'one'),
};

export const readLayers: Reader<Layers> = (value, place) => {
  const keys = readKeys(value, layersKeys, place);
  if (keys === undefined) return undefined;
  const { order, style, spread, underlay, backing, files } = keys;
  return { style, spread, files, ...given({ order, underlay, backing }) };
};

// The coats of a job file: by thickness, or by what is poured.
import { shown } from '../../lengths/shown.ts';
import type { JobCoat } from './material.ts';
import { readAlong } from './read-spans.ts';
import { isTyped, optional, type Reader, readKeys, report, standard, within } from './schema.ts';
import { given, lengthOrZero, number, share, text, yesOrNo } from './schema-values.ts';

/** Most that is taken as meant for one vessel, ml. */
const mostVolume = 100_000;

/** A coat of which more is lost than this is a spill. */
const mostLoss = 0.95;

const unitsOfVolume: Readonly<Record<string, number>> = { ml: 1, cl: 10, l: 1000 };

/** A volume in ml: a bare number, or a text with ml, cl or l. */
export const readVolume: Reader<number> = (value, place) => {
  const match = typeof value === 'string' ? /^([\d.]+)\s*(ml|cl|l)$/i.exec(value.trim()) : undefined;
  const typed = match ? Number(match[1]) * (unitsOfVolume[(match[2] ?? '').toLowerCase()] ?? 1) : value;
  if (typeof typed === 'number' && typed > 0 && typed <= mostVolume) return typed;
  return report(
    place,
    'not-a-volume',
    `${shown(value)} is no volume of a coat; give ml, such as 12 or "12ml"`,
  );
};

export const coatKeys = {
  name: standard('Coat', text, 'coat'),
  thickness: optional('Coat thickness', lengthOrZero),
  volume: optional('Coat volume, ml', readVolume),
  loss: standard('Share of a coat that is lost', share(mostLoss), 0),
  covers: optional('What a coat covers', readAlong),
  over: standard('Over the film', yesOrNo, false),
  wait: optional('Hours until the next step', number({ least: 0, most: 2000 })),
  leastBatch: optional('Least batch that can be mixed, ml', readVolume),
  price: optional('Price of a litre', number({ least: 0, most: 1e6 })),
};

export const readCoat: Reader<JobCoat> = (value, place) => {
  const keys = readKeys(value, coatKeys, place);
  if (keys === undefined) return undefined;
  const { name, over, thickness, volume, loss, covers, wait, leastBatch, price } = keys;
  if (isTyped(value, 'thickness') && isTyped(value, 'volume'))
    return report(within(place, 'volume'), 'one-of-two', 'is given beside "thickness"; keep one of the two');
  if (!isTyped(value, 'thickness') && !isTyped(value, 'volume'))
    return report(
      within(place, 'thickness'),
      'missing-key',
      'is missing; add "thickness", or "volume" in ml',
    );
  const poured = {
    ...(isTyped(value, 'loss') ? { loss } : {}),
    ...given({ covers, wait, leastBatch, price }),
  };
  if (thickness !== undefined) return { name, thickness, over, ...poured };
  return volume === undefined ? undefined : { name, volume, over, ...poured };
};

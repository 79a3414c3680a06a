// Lettering of a job: texts, each in a font and at a place of its own.
import { shown } from '../../lengths/shown.ts';
import { layKeys, placeKeys, readLay, readPlace } from './read-items.ts';
import type { Lettering } from './resolved-job.ts';
import { holding, isTyped, optional, type Reader, readKeys, report, required, standard } from './schema.ts';
import { choice, displacement, given, length, list, text, yesOrNo } from './schema-values.ts';

/** Longest text, and most lines of it, that are lettered on a vessel. */
const mostText = 500;
const mostLines = 20;

/** A text of one line or several, line breaks of any kind made one. */
const textLines: Reader<string> = (value, place) => {
  const lines = typeof value === 'string' ? value.replace(/\r\n?/g, '\n') : '';
  const isPlain = !/[^\P{Cc}\n]/u.test(lines);
  if (lines.trim() !== '' && lines.length <= mostText && isPlain && lines.split('\n').length <= mostLines)
    return lines;
  const says = `${shown(value)} will not do here; give a text of up to ${mostText} letters in up to ${mostLines} lines`;
  return report(place, 'not-text', says);
};

/** A text that may be empty; whether it may be left out is asked later. */
export const maybeLines: Reader<string> = (value, place) =>
  typeof value === 'string' && value.trim() === '' ? '' : textLines(value, place);

/** A colour as artwork names it. */
export const colour: Reader<string> = (value, place) =>
  typeof value === 'string' && /^#[0-9a-f]{6}$/i.test(value)
    ? value.toLowerCase()
    : report(place, 'not-a-colour', `${shown(value)} will not do here; give a colour such as "#17566b"`);

/** Letters dark, what goes under them light: on a picture both are seen. */
const standardColours = { letters: '#1c1c1c', backing: '#d8cfb8' };

/** A backing reaches no farther past what lies on it: it would meet its own copies many times around, mm. */
const mostBacking = 100;

export const backingKeys = {
  grow: required('Past what lies on it', length({ most: mostBacking })),
  smooth: optional('Corners rounded to', length({ sign: 'zero-too', most: mostBacking })),
  colour: standard('Colour', colour, standardColours.backing),
};

export const readBacking: Reader<NonNullable<Lettering['backing']>> = (value, place) => {
  const keys = readKeys(value, backingKeys, place);
  if (keys?.grow === undefined) return undefined;
  const { grow, smooth = grow, colour: paint } = keys;
  return { grow, smooth, colour: paint };
};

export const letteringKeys = {
  text: required('Text', maybeLines),
  optional: optional('Left out where it is empty', yesOrNo),
  font: optional('Font', text),
  capHeight: optional('Height of capitals', length()),
  fit: optional('Width to fit', length()),
  at: holding(required('Middle', readPlace), placeKeys),
  spacing: standard('Between letters', displacement, 0),
  lay: standard('Lay', readLay, 'even'),
  align: standard('Lines stand', choice<Lettering['align']>(['middle', 'left', 'right']), 'middle'),
  lineStep: optional('From line to line', length()),
  direction: standard('Direction', choice<Lettering['direction']>(['auto', 'ltr', 'rtl']), 'auto'),
  colour: standard('Colour', colour, standardColours.letters),
  backing: holding(optional('Backing', readBacking), backingKeys),
  ...layKeys,
};

export const readLettering: Reader<Lettering> = (value, place) => {
  const keys = readKeys(value, letteringKeys, place);
  if (keys?.text === undefined || keys.at === undefined) return undefined;
  const {
    capHeight,
    fit,
    font,
    lineStep,
    backing,
    apart,
    clear,
    optional: may,
    text: words,
    at,
    ...rest
  } = keys;
  if (words === '' && may !== true)
    return report(
      { ...place, key: `${place.key}.text` },
      'not-text',
      `${shown(words)} will not do here; give a text of up to ${mostText} letters in up to ${mostLines} lines, or "optional": true to leave it out where it is empty`,
    );
  if (capHeight === undefined && fit === undefined) {
    // One that was typed wrong was told already.
    if (isTyped(value, 'capHeight') || isTyped(value, 'fit')) return undefined;
    return report(
      place,
      'no-size',
      'has no size; give "capHeight", the height of its capitals, or "fit", the width it is to fill',
    );
  }
  return {
    ...rest,
    text: words,
    at,
    ...given({ capHeight, fit, font, lineStep, backing, apart, clear, optional: may }),
  };
};

/** More letters than this on one vessel are a book: each is drawn, merged and cut. */
export const mostLetters = 10_000;

/** All letterings of a job. */
export const readLetterings: Reader<readonly Lettering[]> = (value, place) => {
  const all = list(readLettering)(value, place);
  const letters = all?.reduce((sum, { text }) => sum + text.length, 0) ?? 0;
  if (letters <= mostLetters) return all;
  const says = `come to ${letters} letters; up to ${mostLetters} are laid on one vessel`;
  return report(place, 'too-many', says);
};

// How panels are typed: `{ "overlap": 6, "joints": "repeats" }`, or the turns themselves; and heights of level cuts.
import { inMm } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { type Panels, standardPanels } from './resolved-job.ts';
import { optional, type Reader, readKeys, report, standard, within } from './schema.ts';
import { given, length, lengthOrZero, list, number } from './schema-values.ts';

/** Files are named by a letter a panel. */
const mostPanels = 26;

const readJoints: Reader<Panels['joints']> = (value, place) => {
  if (value === 'least-art' || value === 'repeats') return value;
  if (!Array.isArray(value))
    return report(
      place,
      'not-a-choice',
      `${shown(value)} will not do here; give "least-art", "repeats", or a list of turns such as [0.33, 0.67]`,
    );
  const turns = list(number({ least: 0, most: 1 }))(value, place) ?? [];
  if (turns.length >= mostPanels)
    return report(place, 'too-many-panels', `makes ${turns.length + 1} panels; up to ${mostPanels} are made`);
  const wrong = turns.findIndex((turn, i) => turn <= (turns[i - 1] ?? 0) || turn >= 1);
  return wrong < 0
    ? turns
    : report(
        within(place, wrong),
        'not-rising',
        `${turns[wrong]} will not do here; joints are turns between 0 and 1, each larger than the one before`,
      );
};

/** Sheets so small that a band takes more levels than this are typed wrong. */
export const mostLevels = 12;

const readLevels: Reader<readonly number[]> = (value, place) => {
  const levels = list(length())(value, place);
  if (levels === undefined) return undefined;
  if (levels.length >= mostLevels)
    return report(
      place,
      'too-many-levels',
      `makes ${levels.length + 1} levels; up to ${mostLevels} are made`,
    );
  const wrong = levels.findIndex((level, i) => level <= (levels[i - 1] ?? 0));
  return wrong < 0
    ? levels
    : report(
        within(place, wrong),
        'not-rising',
        `${inMm(levels[wrong] ?? 0)} will not do here; level cuts are heights along the wall, each larger than the one before`,
      );
};

export const panelKeys = {
  overlap: standard('Overlap of panels', lengthOrZero, standardPanels.overlap),
  joints: standard('Joints of panels', readJoints, standardPanels.joints),
  levels: optional('Level cuts', readLevels),
};

export const readPanels: Reader<Panels> = (value, place) => {
  const keys = readKeys(value, panelKeys, place);
  if (keys === undefined) return undefined;
  const { levels, ...rest } = keys;
  return { ...rest, ...given({ levels }) };
};

// The picture of a blank's profile: its section at true scale, what was measured, where film lies flat, and the strain.
import type { Units } from '../../lengths/length.ts';
import { ink, type PutWords } from '../profile-ink.ts';
import { profileOf } from '../rolled/rolled-profile.ts';
import { millimetres } from '../rolled-path.ts';
import { bandPart, flatPart, keepOutPart } from './profile-bands.ts';
import { alongScale, heightScale } from './profile-scales.ts';
import { bodyPart, handlePart, lipZonePart, stationsPart } from './profile-section.ts';
import type { Sheet } from './profile-sheet.ts';
import { strainPart } from './profile-strain.ts';
import type { ProfileSubject } from './profile-subject.ts';

/** Letters by the size of the blank, so that a picture of any of them reads alike. */
const letters = (height: number, across: number): number => Math.max(0.8, 0.013 * (height + across));

/** The room around all on paper and on a screen, in letters. */
const margins = { paper: 4, screen: 0.7 } as const;
/** What the section is given at the least on its right, above its lip and below its foot, in letters. */
const room = {
  wide: { right: 12, lip: 3, foot: 2, bottom: 3.5, name: 1.5 },
  narrow: { right: 5.5, lip: 2.6, foot: 0.8, bottom: 0.8, name: 0 },
} as const;

/** A picture, and how large it and its letters are, mm. */
export interface DrawnProfile {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
  readonly em: number;
}

export const profilePicture = (subject: ProfileSubject, units: Units, words: PutWords): string =>
  drawnProfile(subject, units, words).svg;

/**
 * The text of `profile.svg`: the section of a blank at true scale, one user unit is 1 mm. Scales are in `units`. Paths
 * and dots only, and words as `put` writes them: outlines in a file. Same input, same bytes.
 */
export function drawnProfile(subject: ProfileSubject, units: Units, words: PutWords): DrawnProfile {
  const put = subject.standsOnLip ? turnedWords(words) : words;
  const { rings } = subject;
  const lip = rings.at(-1);
  const across = 2 * Math.max(...rings.map(({ radius }) => radius));
  const [height, length] = [lip?.height ?? 0, lip?.along ?? 0];
  const { letters: larger = 1, isNarrow = false } = subject.onScreen ?? {};
  const em = letters(height, across) * larger;
  const sheet: Sheet = { put, em, units, isTurned: subject.standsOnLip === true, isNarrow };
  const least = isNarrow ? room.narrow : room.wide;
  const profile = profileOf({
    profile: rings,
    footRound: subject.footRound,
    lipRound: subject.lipRound,
  });
  const handle = handlePart(subject, profile, sheet);
  const barred = (0.6 + 0.9 * subject.keepOuts.length) * em;
  const stations = stationsPart(subject, sheet, handle.reach + barred);
  const heights = heightScale(subject, sheet, stations.reach);
  const flat = flatPart(subject, sheet);
  const strain =
    subject.strain &&
    strainPart(subject.strain, { height, length }, sheet, Math.max(flat.reach, across / 2 + 8 * em));
  const margin = (subject.onScreen ? margins.screen : margins.paper) * em;
  const left = heights.reach;
  // What the section takes above the lip and below the foot, as it is drawn; turned over, the one is the other.
  const beyond = {
    lip: (strain ? 6 : least.lip) * em,
    foot: Math.max(least.foot * em, strain ? length - height + 2.5 * em : 0),
  };
  const [above, below] = subject.standsOnLip ? [beyond.foot, beyond.lip] : [beyond.lip, beyond.foot];
  const named = least.name * em;
  const top = height + above + named;
  const say = (text: string, y: number, size: number) =>
    words(text, { x: -left, y }, { size, fill: ink.words, anchor: 'left' });
  const title = say(subject.name, -top, 1.5 * em);
  const firstNote = Math.max(5 * em, below + 2 * em);
  const notes = subject.notes.map((line, i) => say(line, firstNote + 1.5 * i * em, em));
  const right = Math.max(
    flat.reach,
    across / 2 + least.right * em,
    strain?.reach ?? 0,
    ...[title, ...notes].map(({ box }) => box.maxX),
  );
  const bottom = Math.max(least.bottom * em, below, ...notes.map(({ box }) => box.maxY));
  const box = {
    width: millimetres(left + right + 2 * margin),
    height: millimetres(top + named + bottom + 2 * margin),
  };
  const origin = `translate(${millimetres(left + margin)} ${millimetres(top + named + margin)})`;
  const parts = [
    group('handle', handle.text),
    group('wall', bodyPart(subject, profile, sheet)),
    group('lip-zone', lipZonePart(subject, sheet)),
    group('station', stations.text),
    group('keep-out', keepOutPart(subject, sheet)),
    group('height-scale', heights.text),
    group('flat-band', flat.text),
    group('band', bandPart(subject, sheet)),
    group('along-scale', alongScale(subject, sheet)),
    group('strain', strain?.text ?? ''),
  ].join('');
  const stood = subject.standsOnLip
    ? `<g transform="translate(0 ${millimetres(-height)}) scale(1 -1)">\n${parts}</g>\n`
    : parts;
  const said = group('note', [title, ...notes].map(({ text }) => text).join(''));
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${box.width}mm" height="${box.height}mm" viewBox="0 0 ${box.width} ${box.height}">\n` +
    `<title>The profile of the blank, at true scale</title>\n` +
    `<rect width="${box.width}" height="${box.height}" fill="${ink.ground}"/>\n<g transform="${origin}">\n${stood}${said}</g>\n</svg>\n`;
  return { svg, width: Number(box.width), height: Number(box.height), em };
}

/** Things of one kind; none where there is nothing of it. */
const group = (role: string, text: string): string =>
  text === '' ? '' : `<g data-role="${role}">\n${text}</g>\n`;

/** Words within a drawing that is turned over: each turned back about its own middle, so that it reads and stays where it is. */
const turnedWords =
  (put: PutWords): PutWords =>
  (text, at, style) => {
    const placed = put(text, at, style);
    if (placed.text === '') return placed;
    const { minY, maxY } = placed.box;
    return {
      ...placed,
      text: `<g transform="matrix(1 0 0 -1 0 ${millimetres(minY + maxY)})">${placed.text.trimEnd()}</g>\n`,
    };
  };

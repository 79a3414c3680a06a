// The picture of a blank's profile, from the blank as it was measured.

import type { Blank, Station } from '../../blank/blank.ts';
import type { Band } from '../../blank/flat-band.ts';
import type { KeepOut } from '../../blank/keep-out.ts';
import { lipZoneStart } from '../../blank/lip-zone.ts';
import { flatBandsOfWall, reconciled, type Wall, wallLength, wallOf } from '../../blank/wall.ts';
import type { DrawWords } from '../../drawing/words.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import { drawnProfile, profilePicture } from '../../picture/profile/profile-picture.ts';
import type { ProfileSubject } from '../../picture/profile/profile-subject.ts';
import { figure, type PutWords, wordsWith } from '../../picture/profile-ink.ts';
import { wallRings } from '../../picture/rolled/rolled-rings.ts';
import { textWith } from '../../picture/words-as-text.ts';
import type { Draft } from '../draft.ts';
import { filmGives } from '../plan/plan-findings.ts';
import type { GoresDraft } from '../proof/gores.ts';

interface ShownBlank {
  readonly blank: Blank;
  readonly wall: Wall;
  readonly flatBands: readonly Band[];
}

/** What a job adds to the picture: its band, and what that asks of its film on a wall that bends. */
interface ShownJob {
  readonly band: Band;
  readonly strain: NonNullable<ProfileSubject['strain']>;
  readonly standsOnLip: boolean;
}

/** The text of profile.svg for a blank, and for a job on it. */
const profileOfBlank = (shown: ShownBlank, units: Units, put: PutWords, job?: ShownJob): string =>
  profilePicture(subjectOf(shown, units, job), units, put);

function subjectOf({ blank, wall, flatBands }: ShownBlank, units: Units, job?: ShownJob): ProfileSubject {
  const { residuals } = reconciled(wall);
  const length = wallLength(wall);
  const from = lipZoneStart(blank, length);
  const says = new Map<number, string>();
  for (const { station, along } of residuals) {
    const read = blank.stations[station];
    if (read) says.set(along, [says.get(along), stationInWords(read, units)].filter(Boolean).join('; '));
  }
  return {
    name: blank.name,
    rings: wallRings(wall, 0),
    footRound: blank.footRound,
    lipRound: blank.lipRound,
    stations: [...says].map(([along, text]) => ({ along, says: text })),
    flatBands,
    ...(from === undefined ? {} : { lipZone: { from, says: lipZoneInWords(length - from, units) } }),
    hasHandle: blank.handle !== undefined,
    keepOuts: (blank.keepOuts ?? []).map(({ along }, i) => ({
      ...(along ? { along } : {}),
      letter: letterOf(i),
    })),
    notes: [
      ...(job?.standsOnLip ? ['shown upside down, standing on its lip; heights are from the foot'] : []),
      ...notesOf(blank, units),
    ],
    ...(job?.standsOnLip ? { standsOnLip: true } : {}),
    ...(job ? { band: { ...job.band, says: bandInWords(job.band, units) } } : {}),
    ...(job && job.strain.places.length > 0 ? { strain: job.strain } : {}),
  };
}

/** The text of profile.svg for a blank alone. @throws Refused where its readings are no wall. */
export const profileOfBlankAlone = (blank: Blank, units: Units, words: DrawWords): string =>
  profileOfBlank(measured(blank), units, wordsWith(words));

/** The profile on a screen: there name and notes stand beside the picture, which leaves its letters more room. */
export interface ShownProfile {
  readonly svg: string;
  readonly notes: readonly string[];
}

/** A window that a picture is seen in, px. */
export interface PictureWindow {
  readonly width: number;
  readonly height: number;
}

/** How many times as large letters are on a screen, which shows half as much as a sheet of paper. */
const largerOnScreen = 1.9;
/** How large letters are shown at the least, px; the smallest of the picture are 0.86 of it. */
const leastLetters = 13.4;
/** Letters that grow take room from the section: so often they are made larger, and so large at the most. */
const fitting = { times: 6, most: 9 } as const;

/**
 * The same for a screen that has the font: its words as text, a tenth of the work. `words` tells how wide they come out. In a narrow
 * `window` letters are as large as are read there, and less stands beside the section.
 */
export function shownProfile(
  blank: Blank,
  units: Units,
  words: DrawWords,
  window?: PictureWindow,
): ShownProfile {
  const subject = subjectOf(measured(blank), units);
  const draw = (letters: number) => {
    const onScreen = { letters, isNarrow: window !== undefined };
    return drawnProfile({ ...subject, name: '', notes: [], onScreen }, units, textWith(words));
  };
  let letters = largerOnScreen;
  let drawn = draw(letters);
  for (let i = 0; window && i < fitting.times; i++) {
    const shown = drawn.em * Math.min(window.width / drawn.width, window.height / drawn.height);
    if (shown >= leastLetters) break;
    letters = Math.min(fitting.most, (letters * leastLetters) / shown);
    drawn = draw(letters);
  }
  return {
    svg: drawn.svg,
    notes: window ? [...flatInWords(subject, units), ...subject.notes] : subject.notes,
  };
}

/** What stands beside the bars where there is room. */
const flatInWords = ({ flatBands }: ProfileSubject, units: Units): readonly string[] =>
  flatBands.length === 0
    ? []
    : [
        `flat along the green bar: ${flatBands.map(({ from, to }) => `${measuredLength(from, units)} to ${measuredLength(to, units)}`).join(', ')}`,
      ];

function measured(blank: Blank): ShownBlank {
  const { wall } = wallOf(blank);
  return { blank, wall, flatBands: flatBandsOfWall(wall, blank) };
}

/** The text of profile.svg beside a job: with the band of all its pieces, and what that asks of its film. */
export const profileOfDraft = ({ plan, job }: Draft, blank: Blank, words: DrawWords): string =>
  profileOfBlank({ blank, wall: plan.wall, flatBands: plan.flatBands }, job.units, wordsWith(words), {
    band: job.band ?? plan.band,
    strain: { places: plan.strain, stretch: filmGives(job.film), gather: job.film.gather },
    standsOnLip: job.shown === 'upside-down',
  });

/** The text of profile.svg beside a job in gores; what a gore asks of its film is the same for all its width. */
export const profileOfGores = ({ plan, job }: GoresDraft, blank: Blank, words: DrawWords): string =>
  profileOfBlank({ blank, wall: plan.wall, flatBands: plan.flatBands }, job.units, wordsWith(words), {
    band: plan.band,
    strain: { places: plan.strains, stretch: filmGives(job.film), gather: job.film.gather },
    standsOnLip: job.shown === 'upside-down',
  });

/** A band's ends: what was typed as it was typed, what was worked out to the 0.01 that is cut to. */
const bandInWords = ({ from, to }: Band, units: Units): string =>
  [from, to].map((mm) => typed(Math.round(mm * 100) / 100, units)).join(' to ');

/** A length as it was typed, in the units of the picture. */
const typed = (mm: number, units: Units): string => `${figure(mm, units)} ${units}`;

/** The zone is named by the mm it is commonly given in. */
const lipZoneInWords = (deep: number, units: Units): string =>
  `top ${typed(deep, 'mm')}${units === 'in' ? ` (${typed(deep, 'in')})` : ''}`;

function stationInWords({ position, reading }: Station, units: Units): string {
  const place = `${typed(position.mm, units)} ${position.kind === 'height' ? 'high' : 'along'}`;
  return `${place}: ${reading.kind} ${typed(reading.mm, units)}`;
}

const letterOf = (index: number): string => String.fromCharCode('a'.charCodeAt(0) + (index % 26));

function notesOf({ footRound, lipRound, handle, keepOuts = [] }: Blank, units: Units): string[] {
  const length = (mm: number) => typed(mm, units);
  const rounds = [
    ...(footRound > 0 ? [`foot rounded ${length(footRound)}`] : []),
    ...(lipRound > 0 ? [`lip rounded ${length(lipRound)}`] : []),
  ];
  return [
    ...(rounds.length > 0
      ? [`${rounds.join(', ')}; thin lines show the sharp corners that all is measured from`]
      : []),
    ...(handle
      ? [`handle: takes ${length(handle.spans)} of girth, ${length(handle.keepOff)} kept off on either side`]
      : []),
    ...keepOuts.map((keepOut, i) => `${letterOf(i)}: ${keepOutInWords(keepOut, length)}`),
  ];
}

function keepOutInWords({ what, turn, along }: KeepOut, length: (mm: number) => string): string {
  const around = turn ? `turn ${turn.from} to ${turn.to}` : 'all around';
  const up = along ? `${length(along.from)} to ${length(along.to)} along` : 'from foot to lip';
  return `${what}, ${around}, ${up}`;
}

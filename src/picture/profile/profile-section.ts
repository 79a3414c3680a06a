// The section of a blank through its axis, at true scale: its wall and what was measured on it.
import { grow } from '../../geometry/box.ts';
import type { Point } from '../../geometry/point.ts';
import { areaText, dotText, ink, lineText, type PlacedWords, plateText, spread } from '../profile-ink.ts';
import { handleLoop } from '../rolled/rolled-handle.ts';
import type { RoundedProfile } from '../rolled/rolled-profile.ts';
import { ringAlong } from '../rolled/rolled-rings.ts';
import type { Ring } from '../rolled/rolled-vessel.ts';
import {
  besideWall,
  mirrored,
  offWall,
  onLeft,
  onRight,
  type Part,
  type Sheet,
  twoLines,
} from './profile-sheet.ts';
import type { ProfileSubject } from './profile-subject.ts';

/** The body: filled, its rounded wall drawn, its sharp corners and its axis as thin lines. */
export function bodyPart(subject: ProfileSubject, profile: RoundedProfile, { em }: Sheet): string {
  const { rings } = subject;
  const wall = [...profile.foot, ...profile.wall, ...profile.lip];
  const [right, left] = [wall.map(onRight), wall.map(onLeft)];
  const [foot, lip] = [rings[0], rings.at(-1)];
  if (!foot || !lip) return '';
  const [low, high] = [profile.wall[0], profile.wall.at(-1)];
  const thin = { colour: ink.quiet, width: em * 0.06 };
  const corner = (round: number, end: Ring, touch: Ring | undefined, flat: Ring | undefined) =>
    round === 0 || !touch || !flat
      ? ''
      : [onRight, onLeft].map((side) => lineText([touch, end, flat].map(side), thin)).join('');
  const rise = lip.height;
  return (
    areaText([...right, ...left.toReversed()], ink.body) +
    corner(subject.footRound, foot, low, profile.foot[0]) +
    corner(subject.lipRound, lip, high, profile.lip.at(-1)) +
    lineText(
      [right.at(-1), left.at(-1)].filter((p) => p !== undefined),
      thin,
    ) +
    lineText(
      [
        { x: 0, y: -rise - 2 * em },
        { x: 0, y: 2 * em },
      ],
      { ...thin, dashes: [2.4 * em, 0.5 * em, 0.5 * em, 0.5 * em] },
    ) +
    lineText([...left.toReversed(), ...right], { colour: ink.wall, width: em * 0.2 })
  );
}

/** A handle as a loop beside the left wall: only its width was measured. */
export function handlePart(subject: ProfileSubject, profile: RoundedProfile, { em }: Sheet): Part {
  const widest = Math.max(...subject.rings.map(({ radius }) => radius));
  if (!subject.hasHandle) return { text: '', reach: widest };
  const depth = 0.5 * Math.max(subject.rings[0]?.radius ?? 0, subject.rings.at(-1)?.radius ?? 0);
  const pen = { colour: ink.quiet, width: em * 0.12, dashes: [0.7 * em, 0.4 * em] };
  const loops = [handleLoop(profile, depth, 0), handleLoop(profile, depth * 0.78, depth * 0.22)];
  const outer = loops[0] ?? [];
  return {
    text: loops.map((loop) => lineText(loop.map(onLeft), pen)).join(''),
    reach: Math.max(widest, ...outer.map(({ radius }) => radius)),
  };
}

/** The lip and rim zone, hatched inside both walls, and its name. */
export function lipZonePart(subject: ProfileSubject, sheet: Sheet): string {
  const { put, em } = sheet;
  const { rings, lipZone } = subject;
  if (lipZone === undefined) return '';
  const length = rings.at(-1)?.along ?? 0;
  const { from } = lipZone;
  const thick = 1.3 * em;
  const pen = { colour: ink.lipZone, width: em * 0.07 };
  const count = Math.max(2, Math.round((length - from) / (0.75 * em)));
  const hatches = Array.from({ length: count }, (_, i) => {
    const [a, b] = [i, i + 1].map((step) => from + ((length - from) * step) / count);
    const line = [offWall(subject, a ?? from, -thick), offWall(subject, b ?? length, 0)];
    return lineText(line, pen) + lineText(mirrored(line), pen);
  });
  const edge = [
    offWall(subject, from, 0),
    ...besideWall(subject, from, length, -thick),
    offWall(subject, length, 0),
  ];
  const middle = -ringAlong(rings, (from + length) / 2).height;
  const style = { size: 0.86 * em, fill: ink.lipZone, anchor: 'middle' } as const;
  const [name, figures] = twoLines(sheet, middle, middle + 1.25 * em);
  const words = [
    put(sheet.isNarrow ? 'lip zone:' : 'common lip-and-rim zone:', { x: 0, y: name }, style),
    put(lipZone.says, { x: 0, y: figures }, style),
  ];
  const plates = words.map(({ box }) => plateText(grow(box, 0.3 * em), ink.body));
  return (
    hatches.join('') +
    lineText(edge, pen) +
    lineText(mirrored(edge), pen) +
    plates.join('') +
    words.map(({ text }) => text).join('')
  );
}

/** Readings: a dot on either wall, a thin line across, and what was read on the left. */
export function stationsPart(subject: ProfileSubject, sheet: Sheet, clear: number): Part {
  const { em, isNarrow } = sheet;
  const stations = [...subject.stations].sort((a, b) => b.along - a.along);
  const rings = stations.map(({ along }) => ringAlong(subject.rings, along));
  const rows = spread(
    rings.map(({ height }) => -height),
    (isNarrow ? 2.8 : 1.5) * em,
  );
  const [bend, begin] = isNarrow ? [0.5, 1.2] : [1, 2.5];
  const x = -clear - (begin + 0.5) * em;
  let reach = -x;
  const text = stations.map(({ says }, i) => {
    const [ring, row] = [rings[i], rows[i]];
    if (!ring || row === undefined) return '';
    const words = stationWords(says, { x, y: row }, sheet);
    reach = Math.max(reach, ...words.map(({ box }) => -box.minX));
    const [left, right] = [onLeft(ring), onRight(ring)];
    const thin = { colour: ink.station, width: em * 0.06 };
    return (
      lineText([left, right], { ...thin, dashes: [0.35 * em, 0.35 * em] }) +
      lineText([left, { x: -clear - bend * em, y: left.y }, { x: -clear - begin * em, y: row }], thin) +
      dotText(left, em * 0.28, ink.station) +
      dotText(right, em * 0.28, ink.station) +
      words.map((line) => line.text).join('')
    );
  });
  return { text: text.join(''), reach };
}

/** What was read, in a line; where there is little room, its place in one and the reading in the next. */
function stationWords(says: string, { x, y }: Point, sheet: Sheet): readonly PlacedWords[] {
  const { put, em } = sheet;
  const style = { size: em, fill: ink.station, anchor: 'right' } as const;
  const [place, ...read] = says.split(': ');
  if (!sheet.isNarrow || place === undefined || read.length === 0)
    return [put(says, { x, y: y + 0.33 * em }, style)];
  const [first, second] = twoLines(sheet, y - 0.25 * em, y + 0.95 * em);
  return [put(place, { x, y: first }, style), put(read.join(': '), { x, y: second }, style)];
}

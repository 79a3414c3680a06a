// What laying a band asks of the film, plotted along the wall: stretch to the right, gathering to the left.
import type { Point } from '../../geometry/point.ts';
import { measuredLength } from '../../lengths/length.ts';
import { areaText, figure, ink, lineText, marksTo, stepOf } from '../profile-ink.ts';
import { millimetres } from '../rolled-path.ts';
import type { Part, Sheet } from './profile-sheet.ts';
import type { ShownStrain } from './profile-subject.ts';

/** Steps of the scale of strain, shares. */
const steps = [0.0005, 0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5];

/** Width of the plot, in letters. */
const wide = 20;

const percent = (share: number): string => `${Math.round(share * 1e4) / 100} %`;

/** Where the plot lies, and how a share of strain becomes a place on it. */
interface StrainScale {
  readonly left: number;
  readonly right: number;
  /** Where strain is nothing. */
  readonly zero: number;
  /** mm to a share of one. */
  readonly scale: number;
  readonly x: (share: number) => number;
  readonly at: (share: number, along: number) => Point;
}

function strainScale({ places, stretch, gather }: ShownStrain, em: number, clear: number): StrainScale {
  const most = Math.max(stretch, 0.0005, ...places.map(({ strain }) => strain)) * 1.12;
  const least = Math.max(gather, 0.0005, ...places.map(({ strain }) => -strain)) * 1.12;
  const left = clear + 7 * em;
  // Gathering is next to nothing on most walls: it gets room for its words all the same.
  const scale = Math.min((wide * 0.72 * em) / most, (wide * 0.5 * em) / least);
  const zero = left + Math.max(wide * 0.28 * em, least * scale);
  const x = (share: number) => zero + share * scale;
  const right = Math.max(x(most), zero + wide * 0.4 * em);
  return { left, right, zero, scale, x, at: (share, along) => ({ x: x(share), y: -along }) };
}

/** What lies within the limits of the film, and what lies beyond them. */
function strainAreas({ places, stretch, gather }: ShownStrain, { at }: StrainScale): string {
  const within = (low: number, high: number): Point[] => [
    ...places.map(({ strain, along }) => at(Math.min(high, Math.max(low, strain)), along)),
    ...places.map(({ along }) => at(Math.min(high, Math.max(low, 0)), along)).reverse(),
  ];
  const beyond = (limit: number, worse: (a: number, b: number) => number): Point[] => [
    ...places.map(({ strain, along }) => at(worse(limit, strain), along)),
    ...places.map(({ along }) => at(limit, along)).reverse(),
  ];
  return [
    areaText(within(0, stretch), ink.stretch, 0.55),
    areaText(beyond(stretch, Math.max), ink.over, 0.6),
    areaText(within(-gather, 0), ink.gather, 0.55),
    areaText(beyond(-gather, Math.min), ink.over, 0.6),
  ].join('');
}

/** The ends of the band, no strain, the film's limits, and the line of what is asked. */
function strainLines(
  { places, stretch, gather }: ShownStrain,
  { left, right, at }: StrainScale,
  length: number,
  em: number,
): string {
  const upright = (share: number, pen: Parameters<typeof lineText>[1]) =>
    lineText([at(share, 0), at(share, length)], pen);
  const limit = { colour: ink.over, width: em * 0.12, dashes: [0.9 * em, 0.5 * em] };
  const end = { colour: ink.quiet, width: em * 0.06, dashes: [0.35 * em, 0.35 * em] };
  const level = (along: number): Point[] => [left, right].map((x) => ({ x, y: -along }));
  const asked = places.map(({ strain, along }) => at(strain, along));
  return [
    ...[places[0]?.along ?? 0, places.at(-1)?.along ?? length].map((along) => lineText(level(along), end)),
    upright(0, { colour: ink.wall, width: em * 0.12 }),
    ...[stretch, ...(gather > 0 ? [-gather] : [])].map((share) => upright(share, limit)),
    lineText(asked, { colour: ink.wall, width: em * 0.14 }),
  ].join('');
}

/** The headings over the plot, and the most that is asked, beside its place. */
function strainWords(
  { places, stretch, gather }: ShownStrain,
  { left, zero, x }: StrainScale,
  length: number,
  { put, em, units }: Sheet,
): readonly ReturnType<Sheet['put']>[] {
  const small = { size: 0.86 * em, fill: ink.words } as const;
  const over = (lines: number) => -length - lines * em;
  const peak = places.reduce((a, b) => (b.strain > a.strain ? b : a), { along: 0, strain: 0 });
  return [
    put('what the band asks of the film', { x: left, y: over(4.6) }, { ...small, size: em, anchor: 'left' }),
    put('gathered', { x: zero - 0.6 * em, y: over(1.6) }, { ...small, fill: ink.gather, anchor: 'right' }),
    put('stretched', { x: zero + 0.6 * em, y: over(1.6) }, { ...small, fill: ink.stretch, anchor: 'left' }),
    put(
      `dashed: this film stretches by up to ${percent(stretch)} and gathers by up to ${percent(gather)}`,
      { x: left, y: over(3.2) },
      { ...small, anchor: 'left' },
    ),
    put(
      `${(peak.strain * 100).toFixed(2)} % at ${measuredLength(peak.along, units)}`,
      { x: Math.max(x(peak.strain), x(stretch)) + 0.8 * em, y: -peak.along + 0.33 * em },
      { size: em, fill: peak.strain > stretch + 1e-6 ? ink.over : ink.stretch, anchor: 'left' },
    ),
  ];
}

/** The plot, beside the section: distances along the wall at the same scale, from the foot up. */
export function strainPart(
  strain: ShownStrain,
  { height, length }: { readonly height: number; readonly length: number },
  sheet: Sheet,
  clear: number,
): Part {
  const scale = strainScale(strain, sheet.em, clear);
  const { left, right, zero, x } = scale;
  const words = strainWords(strain, scale, length, sheet);
  const text = [
    alongAxis(length, left, sheet),
    shareAxis([-(zero - left) / scale.scale, (right - zero) / scale.scale], x, sheet),
    strainAreas(strain, scale),
    strainLines(strain, scale, length, sheet.em),
    ...words.map((word) => word.text),
  ].join('');
  // Its upper end is as high as the section's; the wall is longer than it is high.
  const down = `<g transform="translate(0 ${millimetres(length - height)})">\n${text}</g>\n`;
  return { text: down, reach: Math.max(right, ...words.map(({ box }) => box.maxX)) };
}

/** Distances along the wall, left of the plot. */
function alongAxis(length: number, left: number, { put, em, units }: Sheet): string {
  const pen = { colour: ink.words, width: em * 0.07 };
  const marks = marksTo(length, stepOf(units, 2.6 * em)).map((mm) => {
    const line = [
      { x: left, y: -mm },
      { x: left - 0.6 * em, y: -mm },
    ];
    const style = { size: 0.86 * em, fill: ink.words, anchor: 'right' } as const;
    return lineText(line, pen) + put(figure(mm, units), { x: left - em, y: -mm + 0.3 * em }, style).text;
  });
  const line = [
    { x: left, y: 0 },
    { x: left, y: -length },
  ];
  return lineText(line, pen) + marks.join('');
}

/** Shares of strain, under the plot. */
function shareAxis(
  [low, high]: readonly [number, number],
  x: (share: number) => number,
  { put, em }: Sheet,
): string {
  const pen = { colour: ink.words, width: em * 0.07 };
  const step = steps.find((s) => x(s) - x(0) >= 3.6 * em) ?? 1;
  const first = Math.ceil(low / step);
  const marks = Array.from({ length: Math.max(0, Math.floor(high / step) - first + 1) }, (_, i) => {
    const share = (first + i) * step;
    const line = [
      { x: x(share), y: 0 },
      { x: x(share), y: 0.6 * em },
    ];
    const style = { size: 0.86 * em, fill: ink.words, anchor: 'middle' } as const;
    return lineText(line, pen) + put(percent(share), { x: x(share), y: 1.8 * em }, style).text;
  });
  const line = [
    { x: x(low), y: 0 },
    { x: x(high), y: 0 },
  ];
  return lineText(line, pen) + marks.join('');
}

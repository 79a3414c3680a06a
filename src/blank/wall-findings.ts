// What the maker should know about a fitted wall: readings that don't suit it, and where it was not read.
import { type Finding, look, note } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank } from './blank.ts';
import { atFoot } from './profile.ts';
import { fitFindings, placeFindings } from './reading-findings.ts';
import { mostOff, readingOff, suspectKeys, timesOff } from './reading-off.ts';
import { positionKey, readingKey } from './stations.ts';
import { girthUncertaintyAt, type Residual, type StraightWall } from './straight-wall.ts';

/**
 * Findings on a wall fitted to this blank: `reading-off` or `wall-unsuited` (look), `out-of-round`, `odd-size`,
 * `fit-unlikely` (look), `reading-replaced` and `foot-unread` (note).
 */
export const wallFindings = (blank: Blank, wall: StraightWall): readonly Finding[] => [
  ...unsuited(blank, wall),
  ...placeFindings(blank),
  ...fitFindings(blank, wall),
  ...footUnread(blank, wall),
];

function unsuited(blank: Blank, wall: StraightWall): readonly Finding[] {
  const named = namedReading(blank, wall);
  if (named.length > 0) return named;
  const worst = worstOf(wall.residuals.filter(({ isReplaced }) => !isReplaced));
  const station = worst && blank.stations[worst.station];
  if (worst === undefined || station === undefined || timesOff(worst) <= mostOff)
    return placeUnsuited(blank, wall);
  const off = `${inMm(Math.abs(worst.residual))} ${worst.residual > 0 ? 'more' : 'less'}`;
  const key = readingKey(station, worst.station);
  const others = suspectKeys(blank, wall).filter((other) => other !== key);
  const blame = others.length > 0 ? ` (or ${others.join(' or ')}: these readings cannot tell which)` : '';
  const says =
    `is ${off} girth than one straight wall through all stations has there, over ${mostOff} times the ` +
    `${inMm(worst.uncertainty)} that the readings leave open; read it again${blame}, and if it stands, ${betterWall(wall)}`;
  return [look('wall-unsuited', { key, along: worst.along }, says)];
}

/** The one reading that the others speak against. */
function namedReading(blank: Blank, wall: StraightWall): readonly Finding[] {
  const off = readingOff(blank, wall);
  const residual = off && wall.residuals[off.index];
  if (!off || !residual) return [];
  const [read, shouldBe, give] = [off.read, off.shouldBe, 2 * off.uncertainty].map((mm) =>
    inMm(Math.round(mm * 100) / 100),
  );
  const what = { girth: 'girth', across: 'diameter', along: 'length along the wall', height: 'height' }[
    off.kind
  ];
  const says =
    `a ${what} of ${read} cannot be right beside the other readings, which agree without it: it should have been ` +
    `${shouldBe}, give or take ${give}; read it again, and if it stands, ${betterWall(wall)}`;
  return [look('reading-off', { key: off.key, along: residual.along }, says)];
}

/** A place read both ways that speaks against the sizes, with no telling which of them it is. */
function placeUnsuited(blank: Blank, wall: StraightWall): readonly Finding[] {
  return wall.rows.flatMap((row) => {
    const station = blank.stations[row.name.index];
    if (row.name.of !== 'pair' || station === undefined || timesOff(row) <= mostOff) return [];
    const says = `and the length along the wall there differ by ${inMm(Math.abs(row.residual))} from what the sizes of this wall ask for; read both, and the sizes, again`;
    return [look('wall-unsuited', { key: positionKey(station, row.name.index) }, says)];
  });
}

/** The residual most times off; of several (three stations always tie) the largest, which is the one to read again. */
function worstOf(residuals: readonly Residual[]): Residual | undefined {
  if (residuals.length === 0) return undefined;
  const most = Math.max(...residuals.map(timesOff));
  const tied = residuals.filter((residual) => timesOff(residual) >= most * (1 - 1e-6));
  return tied.reduce((a, b) => (Math.abs(b.residual) > Math.abs(a.residual) ? b : a));
}

function footUnread(blank: Blank, wall: StraightWall): readonly Finding[] {
  const lowest = wall.residuals.reduce((a, b) => (b.along < a.along ? b : a));
  const station = blank.stations[lowest.station];
  if (station === undefined || lowest.along <= atFoot) return [];
  const says =
    `the lowest reading is ${inMm(lowest.along)} up the wall; the straight wall is taken down to the ` +
    `foot, where the standard uncertainty of its girth is ${inMm(girthUncertaintyAt(wall, 0))}`;
  return [note('foot-unread', { key: positionKey(station, lowest.station), along: lowest.along }, says)];
}

/** Which other wall the readings look like: bent at a few stations and straight between, or bent everywhere. */
function betterWall({ residuals }: StraightWall): string {
  const bends = bendsOf(residuals);
  if (bends.length < 2)
    return 'a "stepped" wall would suit if there is an edge there, a "smooth" one if it bulges; another station would tell';
  const most = Math.max(...bends);
  const isBentAtFew = bends.filter((bend) => bend > most / 3).length <= bends.length / 2;
  return isBentAtFew ? 'a "stepped" wall would suit' : 'a "smooth" wall would suit';
}

/** Change of slope at each station between two others, as a size; stations at one height count as their mean. */
function bendsOf(residuals: readonly Residual[]): readonly number[] {
  const heights = [...new Set(residuals.map(level))].sort((a, b) => a - b);
  const girths = heights.map((along) =>
    mean(residuals.filter((r) => level(r) === along).map((r) => r.measured)),
  );
  const slopes = heights
    .slice(1)
    .map((along, i) => ((girths[i + 1] ?? 0) - (girths[i] ?? 0)) / (along - (heights[i] ?? 0)));
  return slopes.slice(1).map((slope, i) => Math.abs(slope - (slopes[i] ?? slope)));
}

/** To 0.001 mm: a height and an along of one place differ by rounding. */
const level = ({ along }: Residual): number => Math.round(along * 1000) / 1000;

const mean = (values: readonly number[]): number => values.reduce((total, v) => total + v, 0) / values.length;

// What the maker should know about a fitted wall: readings that don't suit it, and where it was not read.
import { type Finding, look, note } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Blank } from './blank.ts';
import { positionKey, readingKey } from './stations.ts';
import { girthUncertaintyAt, type Residual, type StraightWall } from './straight-wall.ts';

/** How many standard uncertainties a reading may be off: 3 leave more than 99 % of good ones alone (NIST TN 1297, 6.2). */
const mostOff = 3;

/** A lowest station nearer to the foot than this is at the foot, mm. */
const atFoot = 1e-6;

/** Findings on a wall fitted to this blank: `wall-unsuited` (look) and `foot-unread` (note). */
export const wallFindings = (blank: Blank, wall: StraightWall): readonly Finding[] => [
  ...unsuited(blank, wall),
  ...footUnread(blank, wall),
];

const timesOff = ({ residual, uncertainty }: Residual): number =>
  uncertainty > 0 ? Math.abs(residual) / uncertainty : 0;

function unsuited(blank: Blank, wall: StraightWall): readonly Finding[] {
  const worst = worstOf(wall.residuals);
  const station = blank.stations[worst.station];
  if (station === undefined || timesOff(worst) <= mostOff) return [];
  const off = `${formatLength(Math.abs(worst.residual), 'mm')} ${worst.residual > 0 ? 'more' : 'less'}`;
  const says =
    `is ${off} girth than one straight wall through all stations has there, over ${mostOff} times the ` +
    `${formatLength(worst.uncertainty, 'mm')} that the readings leave open; read it again, and if it stands, ${betterWall(wall)}`;
  const where = { key: readingKey(station, worst.station), along: worst.along };
  return [look('wall-unsuited', where, says)];
}

/** The residual most times off; of several (three stations always tie) the largest, which is the one to read again. */
function worstOf(residuals: readonly Residual[]): Residual {
  const most = Math.max(...residuals.map(timesOff));
  const tied = residuals.filter((residual) => timesOff(residual) >= most * (1 - 1e-6));
  return tied.reduce((a, b) => (Math.abs(b.residual) > Math.abs(a.residual) ? b : a));
}

function footUnread(blank: Blank, wall: StraightWall): readonly Finding[] {
  const lowest = wall.residuals.reduce((a, b) => (b.along < a.along ? b : a));
  const station = blank.stations[lowest.station];
  if (station === undefined || lowest.along <= atFoot) return [];
  const says =
    `the lowest reading is ${formatLength(lowest.along, 'mm')} up the wall; the straight wall is taken down to the ` +
    `foot, where the standard uncertainty of its girth is ${formatLength(girthUncertaintyAt(wall, 0), 'mm')}`;
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

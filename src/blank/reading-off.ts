// The one reading that cannot be right, and what it should have been.
import { Refused } from '../finding.ts';
import type { Blank, Station } from './blank.ts';
import { readingKey } from './stations.ts';
import {
  bareRadiusAt,
  fittedVariance,
  type RowResidual,
  type StraightWall,
  solveWall,
} from './straight-wall.ts';
import { alongOf, girthRow, type RowName } from './wall-rows.ts';

/** How many standard uncertainties a reading may be off: 3 leave more than 99 % of good ones alone (NIST TN 1297, 6.2). */
export const mostOff = 3;

/**
 * How much better the readings must agree without this one than without any other to name it, as a difference of
 * squared standard uncertainties: 2 is odds of e to 1 for readings that scatter normally.
 */
const clearlyBetter = 2;

export interface ReadingOff {
  readonly name: RowName;
  /** As the maker typed it, such as `stations[2].girth`. */
  readonly key: string;
  readonly kind: 'girth' | 'across' | 'along';
  /** As typed, mm. */
  readonly read: number;
  /** What the other readings say it should have been, in the same terms, and how sure that is, mm. */
  readonly shouldBe: number;
  readonly uncertainty: number;
}

/** A residual in its own standard uncertainties; 0 where nothing checks the reading. */
export const timesOff = ({ residual, uncertainty }: Pick<RowResidual, 'residual' | 'uncertainty'>): number =>
  uncertainty > 0 ? Math.abs(residual) / uncertainty : 0;

/**
 * The reading that is beyond three standard uncertainties of its residual and without which all others agree to
 * within three of theirs; none when every reading agrees, when no single one is to blame, or when two are equally so
 * (three stations never tell which).
 */
export function readingOff(blank: Blank, wall: StraightWall): ReadingOff | undefined {
  const suspects = suspectsOf(blank, wall);
  const [worst, next] = suspects;
  if (worst === undefined) return undefined;
  if (next !== undefined && worst.off ** 2 - next.off ** 2 < clearlyBetter) return undefined;
  const station = blank.stations[worst.name.index];
  return station && toldBy(blank, station, worst.name, worst.others);
}

/** Keys of the readings any one of which may be to blame, the likeliest first. */
export const suspectKeys = (blank: Blank, wall: StraightWall): readonly string[] =>
  suspectsOf(blank, wall).flatMap(({ name }) => {
    const station = blank.stations[name.index];
    return station ? [keyOf(station, name)] : [];
  });

function suspectsOf(blank: Blank, wall: StraightWall) {
  return wall.rows
    .filter(({ name }) => name.of === 'station' || name.of === 'pair')
    .filter((row) => timesOff(row) > mostOff)
    .flatMap((row) => {
      const others = solvedWithout(blank, row.name);
      if (others?.rows.every((rest) => timesOff(rest) <= mostOff) !== true) return [];
      return [{ name: row.name, off: timesOff(row), others }];
    })
    .sort((a, b) => b.off - a.off);
}

/** The wall of all other readings; none where they leave it open. */
function solvedWithout(blank: Blank, name: RowName): StraightWall | undefined {
  try {
    const wall = solveWall(blank, name);
    return Number.isFinite(wall.covariance.halfAngle) && bareRadiusAt(wall, 0) > 0 ? wall : undefined;
  } catch (error) {
    if (error instanceof Refused) return undefined;
    throw error;
  }
}

const keyOf = (station: Station, { of, index }: RowName): string =>
  of === 'pair' ? `stations[${station.typed?.station ?? index}].along` : readingKey(station, index);

function toldBy(blank: Blank, station: Station, name: RowName, others: StraightWall): ReadingOff {
  const key = keyOf(station, name);
  const { mm, along = mm } = station.position;
  const { radius: intercept, halfAngle: slope, both } = others.covariance;
  if (name.of === 'pair') {
    const shouldBe = mm / Math.cos(others.halfAngle);
    const uncertainty = shouldBe * Math.abs(Math.tan(others.halfAngle)) * Math.sqrt(slope);
    return { name, key, kind: 'along', read: along, shouldBe, uncertainty };
  }
  const cone = { radius: others.radius, halfAngle: others.halfAngle };
  const row = girthRow(station, name.index, blank, cone);
  const radius = bareRadiusAt(others, alongOf(station, others.halfAngle));
  const uncertainty = Math.sqrt(fittedVariance(row, { intercept, slope, both }));
  const { kind, mm: read } = station.reading;
  return kind === 'across'
    ? { name, key, kind, read, shouldBe: 2 * radius, uncertainty: 2 * uncertainty }
    : {
        name,
        key,
        kind,
        read,
        shouldBe: 2 * Math.PI * (radius + blank.tape / 2),
        uncertainty: 2 * Math.PI * uncertainty,
      };
}

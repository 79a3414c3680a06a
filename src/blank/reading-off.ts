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
import { alongOf, girthRow } from './wall-rows.ts';

/** How many standard uncertainties a reading may be off: 3 leave more than 99 % of good ones alone (NIST TN 1297, 6.2). */
export const mostOff = 3;

/**
 * How much better the readings must agree without this one than without any other to name it, as a difference of
 * squared standard uncertainties: 2 is odds of e to 1 for readings that scatter normally.
 */
export const clearlyBetter = 2;

export interface ReadingOff {
  /** Index of the station it is a reading of. */
  readonly index: number;
  /** As the maker typed it, such as `stations[2].girth`. */
  readonly key: string;
  readonly kind: 'girth' | 'across' | 'along' | 'height';
  /** As typed, mm. */
  readonly read: number;
  /** What the other readings say it should have been, in the same terms, and how sure that is, mm. */
  readonly shouldBe: number;
  readonly uncertainty: number;
}

/** A reading that may be to blame, and the wall of all others. */
interface Suspect {
  readonly index: number;
  readonly station: Station;
  readonly what: 'size' | 'along' | 'height';
  readonly others: StraightWall;
  /** Sum of squares of what is left, in standard uncertainties of the readings. */
  readonly left: number;
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
  const [worst, next] = suspectsOf(blank, wall);
  if (worst === undefined || (next !== undefined && next.left - worst.left < clearlyBetter)) return undefined;
  return worst.what === 'size' ? sizeOff(blank, worst) : placeOff(worst);
}

/** Keys of the readings any one of which may be to blame, the likeliest first. */
export const suspectKeys = (blank: Blank, wall: StraightWall): readonly string[] =>
  suspectsOf(blank, wall).map(keyOf);

const keyOf = ({ station, index, what }: Suspect): string =>
  what === 'size' ? readingKey(station, index) : `stations[${station.typed?.station ?? index}].${what}`;

function suspectsOf(blank: Blank, wall: StraightWall): readonly Suspect[] {
  if (wall.rows.every((row) => timesOff(row) <= mostOff)) return [];
  const all = squaresOf(wall);
  return hypotheses(blank, wall)
    .filter(
      ({ others, left }) => all - left > mostOff ** 2 && others.rows.every((row) => timesOff(row) <= mostOff),
    )
    .sort((a, b) => a.left - b.left);
}

const squaresOf = ({ rows }: StraightWall): number => rows.reduce((sum, row) => sum + row.inReadings ** 2, 0);

/** The wall without each size that is off, and without each half of a place that was read both ways. */
function hypotheses(blank: Blank, wall: StraightWall): readonly Suspect[] {
  return wall.rows.flatMap((row): Suspect[] => {
    const { of, index } = row.name;
    const station = blank.stations[index];
    if (station === undefined) return [];
    const without = (what: Suspect['what'], solve: () => StraightWall): Suspect[] => {
      const others = solved(solve);
      return others ? [{ index, station, what, others, left: squaresOf(others) }] : [];
    };
    if (of === 'station' && timesOff(row) > mostOff) return without('size', () => solveWall(blank, row.name));
    if (of !== 'pair') return [];
    return (['along', 'height'] as const).flatMap((what) =>
      without(what, () => solveWall(withoutHalf(blank, station, what))),
    );
  });
}

/** The blank with a place known only by the other of its two readings. */
function withoutHalf(blank: Blank, { position }: Station, what: 'along' | 'height'): Blank {
  const { mm, along = mm } = position;
  const left: Station['position'] = what === 'along' ? { kind: 'height', mm } : { kind: 'along', mm: along };
  const stations = blank.stations.map((other) =>
    other.position.mm === mm && other.position.along === along ? { ...other, position: left } : other,
  );
  return { ...blank, stations };
}

/** The wall of all other readings; none where they leave it open. */
function solved(solve: () => StraightWall): StraightWall | undefined {
  try {
    const wall = solve();
    return Number.isFinite(wall.covariance.halfAngle) && bareRadiusAt(wall, 0) > 0 ? wall : undefined;
  } catch (error) {
    if (error instanceof Refused) return undefined;
    throw error;
  }
}

/** One of a height and an along by the other. */
function placeOff(suspect: Suspect): ReadingOff {
  const { station, index, what, others } = suspect;
  const { mm, along = mm } = station.position;
  const [cos, tan] = [Math.cos(others.halfAngle), Math.abs(Math.tan(others.halfAngle))];
  const shouldBe = what === 'along' ? mm / cos : along * cos;
  const uncertainty = shouldBe * tan * Math.sqrt(others.covariance.halfAngle);
  const kind = what === 'along' ? 'along' : 'height';
  return { index, key: keyOf(suspect), kind, read: what === 'along' ? along : mm, shouldBe, uncertainty };
}

function sizeOff(blank: Blank, suspect: Suspect): ReadingOff {
  const { station, index, others } = suspect;
  const { radius: intercept, halfAngle: slope, both } = others.covariance;
  const row = girthRow(station, index, blank, { radius: others.radius, halfAngle: others.halfAngle });
  const radius = bareRadiusAt(others, alongOf(station, others.halfAngle));
  const doubt = Math.sqrt(fittedVariance(row, { intercept, slope, both }));
  const { kind, mm: read } = station.reading;
  const [shouldBe, uncertainty] =
    kind === 'across'
      ? [2 * radius, 2 * doubt]
      : [2 * Math.PI * (radius + blank.tape / 2), 2 * Math.PI * doubt];
  return { index, key: keyOf(suspect), kind, read, shouldBe, uncertainty };
}

// One straight wall, cylinder or cone, fitted to all readings of a blank, and how sure it is.
import { type Finding, Refused, refuseIfAny, stop } from '../finding.ts';
import { type Line, type LineCovariance, regress } from '../geometry/regression.ts';
import { formatLength } from '../lengths/length.ts';
import type { Blank, Station } from './blank.ts';
import type { Cone } from './paper-miss.ts';
import { girthReading, measuredGirth, placeReading, stationProblems, upsideDown } from './stations.ts';
import {
  alongOf,
  firstFit,
  girthRow,
  isSameRow,
  leastReading,
  type Row,
  type RowName,
  radiusOf,
  radiusVariance,
  rowsOf,
  widening,
} from './wall-rows.ts';

/** Steepest half angle taken for a wall, radians: at 85 degrees it lies nearly flat and is a plate. */
const steepest = (85 * Math.PI) / 180;

/** A girth that changes by less than this from foot to lip is a cylinder's, mm: no blade can follow it. */
const cylinderGirth = 1e-6;

/** Rounds of fitting allowed; ten do for anything that settles. */
const mostRounds = 200;

/** How one station sits on the fitted wall. All mm of girth but `along`. */
export interface Residual {
  /** Index of the station. */
  readonly station: number;
  /** Where it is up the fitted wall, mm. */
  readonly along: number;
  readonly measured: number;
  /** Measured less fitted. */
  readonly residual: number;
  /** Standard uncertainty of the residual; 0 where the fit has no choice but to pass through the station. */
  readonly uncertainty: number;
  /** Whether a paper fit stands in its place, so that it has no part in the wall. */
  readonly isReplaced: boolean;
}

/** How one reading of any kind sits on the fitted wall, mm of that reading. */
export interface RowResidual {
  readonly name: RowName;
  readonly residual: number;
  /** Standard uncertainty of the residual; 0 where the fit has no choice. */
  readonly uncertainty: number;
  /** The residual in standard uncertainties of its own reading. */
  readonly inReadings: number;
}

/** What a fitted wall leaves of its readings. */
export interface Reconciled {
  readonly residuals: readonly Residual[];
  /** All readings that count beside others, of whatever kind; a station's girth as a radius. */
  readonly rows: readonly RowResidual[];
}

/** The bare wall: its radius is `radius` + along * sin `halfAngle`. Along is mm up the wall from the foot corner. */
export interface StraightWall extends Reconciled {
  /** At the foot corner, mm. */
  readonly radius: number;
  /** Lean of the wall from upright, radians; positive when wider at the lip. */
  readonly halfAngle: number;
  /** From the foot corner to the last station, mm along; after paper fits, to where its reading suits the wall best. */
  readonly length: number;
  /** `height` when every station was read by height: then it is heights that stay put where the lean is in doubt. */
  readonly readBy: 'height' | 'along';
  /** Variances of radius (mm²) and half angle (rad²) and their covariance. */
  readonly covariance: { readonly radius: number; readonly halfAngle: number; readonly both: number };
}

/** Radius of the bare wall, mm. */
export const bareRadiusAt = (wall: StraightWall, along: number): number =>
  wall.radius + along * Math.sin(wall.halfAngle);

/** Girth of the bare wall, mm. */
export const bareGirthAt = (wall: StraightWall, along: number): number =>
  2 * Math.PI * bareRadiusAt(wall, along);

/** Height above the foot of a place up the wall, mm. */
export const heightAt = (wall: StraightWall, along: number): number => along * Math.cos(wall.halfAngle);

/**
 * Standard uncertainty of the girth at a place up the wall, mm. The place is held as the stations were read: at its
 * height, or at its distance along; so at a station of two it is that of the station's own reading.
 * Source: law of propagation, JCGM 100:2008, 5.2.2.
 */
export function girthUncertaintyAt(wall: StraightWall, along: number): number {
  const { radius, halfAngle, both } = wall.covariance;
  const cos = Math.cos(wall.halfAngle);
  const lever = wall.readBy === 'height' ? along / cos : along * cos;
  return 2 * Math.PI * Math.sqrt(Math.max(0, radius + 2 * lever * both + lever * lever * halfAngle));
}

/** Whether the wall is as wide at the lip as at the foot. */
export const isCylinder = (wall: StraightWall): boolean =>
  Math.abs(bareGirthAt(wall, wall.length) - bareGirthAt(wall, 0)) < cylinderGirth;

/**
 * The straight wall of least weighted squares through all readings; with two stations it passes through both.
 *
 * Gauss-Newton on radius and half angle, each step a weighted regression over one row a reading: stations by height or
 * along, places read both ways, paper fits. A mix that leaves the lean open is refused. Weights come from `reading` (an
 * across counts pi times), from how far a place is out of round, and from `heightReading` by the wall's lean.
 * The half angle is fitted itself, not as a difference of large radii: a nearly upright wall loses no precision.
 * The uncertainty is that of the readings alone, to first order; it does not grow when they disagree.
 *
 * @throws Refused, rules `few-stations`, `one-height`, `upside-down`, `not-a-length`, `tape-too-thick`, `too-steep`,
 * `unsettled`, `meets-axis`, `height-over-along`, `not-one-vessel`; keys as typed in the blank.
 */
export function fitStraightWall(blank: Blank): StraightWall {
  refuseIfAny(stationProblems(blank));
  const wall = solveWall(blank);
  const places = blank.stations.map((station) => alongOf(station, wall.halfAngle));
  refuseIfAny([...mixedOrderProblems(blank.stations, places), ...axisProblems(wall)]);
  return wall;
}

/**
 * The fit alone, without one of its readings where one is named: for readings that `fitStraightWall` has taken.
 * @throws Refused, rules `too-steep` and `unsettled`.
 */
export function solveWall(blank: Blank, without?: RowName): StraightWall {
  const { halfAngle, line } = settle(blank, without);
  const { intercept: radius, covariance } = line;
  const cone = { radius, halfAngle };
  return {
    radius,
    halfAngle,
    length: lengthOf(blank, cone),
    readBy: blank.stations.every(({ position }) => position.kind === 'height') ? 'height' : 'along',
    residuals: blank.stations.map((station, index) => residualOf(station, index, blank, cone, covariance)),
    rows: rowsWithout(blank, cone, without).map((row) => rowResidual(row, covariance)),
    covariance: { radius: covariance.intercept, halfAngle: covariance.slope, both: covariance.both },
  };
}

const rowsWithout = (blank: Blank, cone: Cone, without: RowName | undefined): readonly Row[] =>
  rowsOf(blank, cone).filter(({ name }) => without === undefined || !isSameRow(name, without));

/**
 * The wall ends at its highest station. Once paper fits have corrected the wall, that station's own reading may no
 * longer suit its height: the misfit is shared between the two by their variances (least squares of both).
 */
function lengthOf(blank: Blank, { radius, halfAngle }: Cone): number {
  const places = blank.stations.map((station) => alongOf(station, halfAngle));
  const length = Math.max(...places);
  const top = blank.stations[places.lastIndexOf(length)];
  if (top === undefined || (blank.fits ?? []).length === 0) return length;
  const wider = Math.sin(halfAngle);
  const own = (wider * placeReading(blank)) ** 2;
  const read = (girthReading(top, Math.max(blank.reading, leastReading)) / (2 * Math.PI)) ** 2;
  const misfit = radiusOf(top, blank.tape) - radius - length * wider;
  return wider === 0 ? length : length + (misfit / wider) * (own / (own + read));
}

/** Half angle and the last regression, its intercept made the radius itself. */
interface Settled {
  readonly halfAngle: number;
  readonly line: Line;
}

function settle(blank: Blank, without?: RowName): Settled {
  const start = regress(
    blank.stations.map((station) => ({
      at: station.position.mm,
      value: radiusOf(station, blank.tape),
      weight: 1 / radiusVariance(station, blank, 0),
    })),
  );
  let cone: Cone = { radius: start.intercept, halfAngle: clampLean(Math.atan(start.slope)) };
  for (let round = 0; round < mostRounds; round++) {
    const step = regress(rowsWithout(blank, cone, without));
    // Mixed stations that hardly tell the two unknowns apart ask for wild steps: half a radian at most.
    const halfAngle = clampLean(cone.halfAngle + Math.min(0.5, Math.max(-0.5, step.slope)));
    const moved = mostMoved(blank, cone.halfAngle, step.intercept, halfAngle - cone.halfAngle);
    cone = { radius: cone.radius + step.intercept, halfAngle };
    // 1e-10 mm: far under any use, over the rounding of a radius of metres; the step that reaches it goes well past it.
    if (moved <= 1e-10) return settled(blank, cone, without);
  }
  throw new Refused([unsettled()]);
}

function settled(blank: Blank, cone: Cone, without: RowName | undefined): Settled {
  const { radius, halfAngle } = cone;
  if (Math.abs(halfAngle) >= steepest) throw new Refused([tooSteep()]);
  const line = { ...regress(rowsWithout(blank, cone, without)), intercept: radius, slope: halfAngle };
  return { halfAngle, line };
}

const clampLean = (halfAngle: number): number => Math.min(steepest, Math.max(-steepest, halfAngle));

/** Most that a step moves the wall at any station, mm of radius: at the foot rounding may be far larger. */
const mostMoved = ({ stations }: Blank, halfAngle: number, radiusStep: number, leanStep: number): number =>
  Math.max(...stations.map((s) => Math.abs(radiusStep + widening(s, halfAngle).perRadian * leanStep)));

function residualOf(
  station: Station,
  index: number,
  blank: Blank,
  cone: Cone,
  covariance: LineCovariance,
): Residual {
  const isReplaced = firstFit(blank) !== undefined;
  const row = girthRow(station, index, blank, cone);
  const apart = isReplaced ? Math.sqrt(1 / row.weight + fittedVariance(row, covariance)) : undefined;
  return {
    station: index,
    along: alongOf(station, cone.halfAngle),
    measured: measuredGirth(station, blank.tape),
    residual: 2 * Math.PI * row.value,
    uncertainty: 2 * Math.PI * (apart ?? rowResidual(row, covariance).uncertainty),
    isReplaced,
  };
}

/** Variance of what the wall says a row's reading should be. */
export const fittedVariance = ({ share, at }: Row, { intercept, slope, both }: LineCovariance): number =>
  share * share * intercept + 2 * share * at * both + at * at * slope;

/** How a row's reading sits on the fit that it had its part in. */
export function rowResidual(row: Row, covariance: LineCovariance): RowResidual {
  const own = 1 / row.weight;
  const fitted = fittedVariance(row, covariance);
  // Where the fit must pass through the reading the two are equal but for rounding.
  const left = own - fitted > 1e-9 * own ? own - fitted : 0;
  const inReadings = row.value / Math.sqrt(own);
  return { name: row.name, residual: row.value, uncertainty: Math.sqrt(left), inReadings };
}

/** Heights and alongs in one list can be put in order only once the lean is known. */
function mixedOrderProblems(stations: readonly Station[], places: readonly number[]): readonly Finding[] {
  return stations.flatMap((station, index) => {
    const highest = Math.max(0, ...places.slice(0, index));
    // The margin is for a height and an along of one and the same place.
    return (places[index] ?? 0) < highest - 1e-6 ? [upsideDown(station, index, highest)] : [];
  });
}

function axisProblems(wall: StraightWall): readonly Finding[] {
  const ends = [
    { name: 'foot', along: 0 },
    { name: 'lip', along: wall.length },
  ];
  return ends
    .filter(({ along }) => !(bareRadiusAt(wall, along) > 0))
    .map(({ name, along }) => {
      const radius = formatLength(bareRadiusAt(wall, along), 'mm');
      const says = `taper so steeply that the wall comes to a point before the ${name} (its radius there would be ${radius}); read again nearer the ${name}`;
      return stop('meets-axis', { key: 'stations' }, says);
    });
}

const tooSteep = (): Finding =>
  stop(
    'too-steep',
    { key: 'stations' },
    'lean more than 85 degrees, as a plate does; check that heights (or lengths along the wall) and sizes are not mixed up',
  );

const unsettled = (): Finding =>
  stop(
    'unsettled',
    { key: 'stations' },
    'do not settle on one straight wall; give all of them by "height", or all by "along"',
  );

// One straight wall, cylinder or cone, fitted to all readings of a blank, and how sure it is.
import { type Finding, Refused, stop } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Blank, Station } from './blank.ts';
import { type Line, type LineCovariance, regress } from './regression.ts';
import { girthReading, measuredGirth, stationProblems, upsideDown } from './stations.ts';

/** Steepest half angle taken for a wall, radians: at 85 degrees it lies nearly flat and is a plate. */
export const steepest = (85 * Math.PI) / 180;

/** Least standard uncertainty reckoned with, mm: a reading said to be perfect still needs a finite weight. */
const leastReading = 1e-6;

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
}

/** The bare wall: its radius is `radius` + along * sin `halfAngle`. Along is mm up the wall from the foot corner. */
export interface StraightWall {
  /** At the foot corner, mm. */
  readonly radius: number;
  /** Lean of the wall from upright, radians; positive when wider at the lip. */
  readonly halfAngle: number;
  /** From the foot corner to the last station, mm along. */
  readonly length: number;
  /** `height` when every station was read by height: then it is heights that stay put where the lean is in doubt. */
  readonly readBy: 'height' | 'along';
  readonly residuals: readonly Residual[];
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
 * The straight wall of least weighted squares through all stations; with two it passes through both.
 *
 * Stations by height and along may be mixed: Gauss-Newton on radius and half angle, each step a weighted straight-line
 * regression; a mix that leaves the lean open is refused. Weights come from `reading` (an across counts pi times) and from `heightReading` by the wall's lean.
 * The half angle is fitted itself, not as a difference of large radii: a nearly upright wall loses no precision.
 * The uncertainty is that of the readings alone, to first order; it does not grow when they disagree.
 *
 * @throws Refused, rules `few-stations`, `one-height`, `upside-down`, `not-a-length`, `tape-too-thick`, `too-steep`,
 * `unsettled`, `meets-axis`; keys as typed in the blank.
 */
export function fitStraightWall(blank: Blank): StraightWall {
  refuseIfAny(stationProblems(blank));
  const { halfAngle, line } = settle(blank);
  const { intercept: radius, covariance } = line;
  const places = blank.stations.map((station) => alongOf(station, halfAngle));
  const wall: StraightWall = {
    radius,
    halfAngle,
    length: Math.max(...places),
    readBy: blank.stations.every(({ position }) => position.kind === 'height') ? 'height' : 'along',
    residuals: blank.stations.map((station, index) =>
      residualOf(station, index, blank, radius, halfAngle, covariance),
    ),
    covariance: { radius: covariance.intercept, halfAngle: covariance.slope, both: covariance.both },
  };
  refuseIfAny([...mixedOrderProblems(blank.stations, places), ...axisProblems(wall)]);
  return wall;
}

const refuseIfAny = (findings: readonly Finding[]): void => {
  if (findings.length > 0) throw new Refused(findings);
};

/** Half angle and the last regression, its intercept made the radius itself. */
interface Settled {
  readonly halfAngle: number;
  readonly line: Line;
}

function settle(blank: Blank): Settled {
  const start = regress(
    blank.stations.map((station) => ({
      at: station.position.mm,
      value: radiusOf(station, blank.tape),
      weight: 1 / radiusVariance(station, blank, 0),
    })),
  );
  let radius = start.intercept;
  let halfAngle = clampLean(Math.atan(start.slope));
  for (let round = 0; round < mostRounds; round++) {
    const step = stepFrom(blank, radius, halfAngle);
    // Mixed stations that hardly tell the two unknowns apart ask for wild steps: half a radian at most.
    const next = clampLean(halfAngle + Math.min(0.5, Math.max(-0.5, step.slope)));
    const moved = mostMoved(blank, halfAngle, step.intercept, next - halfAngle);
    radius += step.intercept;
    halfAngle = next;
    // 1e-10 mm: far under any use, over the rounding of a radius of metres; the step that reaches it goes well past it.
    if (moved <= 1e-10) return settled(blank, radius, halfAngle);
  }
  throw new Refused([unsettled()]);
}

function settled(blank: Blank, radius: number, halfAngle: number): Settled {
  if (Math.abs(halfAngle) >= steepest) throw new Refused([tooSteep()]);
  return { halfAngle, line: { ...stepFrom(blank, radius, halfAngle), intercept: radius, slope: halfAngle } };
}

/** What a Gauss-Newton step would still change: intercept for the radius, slope for the half angle. */
const stepFrom = (blank: Blank, radius: number, halfAngle: number): Line =>
  regress(
    blank.stations.map((station) => ({
      at: widening(station, halfAngle).perRadian,
      value: radiusOf(station, blank.tape) - radius - widening(station, halfAngle).radius,
      weight: 1 / radiusVariance(station, blank, halfAngle),
    })),
  );

const clampLean = (halfAngle: number): number => Math.min(steepest, Math.max(-steepest, halfAngle));

/** Most that a step moves the wall at any station, mm of radius: at the foot rounding may be far larger. */
const mostMoved = ({ stations }: Blank, halfAngle: number, radiusStep: number, leanStep: number): number =>
  Math.max(...stations.map((s) => Math.abs(radiusStep + widening(s, halfAngle).perRadian * leanStep)));

const radiusOf = (station: Station, tape: number): number => measuredGirth(station, tape) / (2 * Math.PI);

/** How much wider than at the foot a leaning wall is at a station, mm, and how that changes with the lean. */
function widening({ position }: Station, halfAngle: number): { radius: number; perRadian: number } {
  const cos = Math.cos(halfAngle);
  if (position.kind === 'along')
    return { radius: position.mm * Math.sin(halfAngle), perRadian: position.mm * cos };
  return { radius: position.mm * Math.tan(halfAngle), perRadian: position.mm / (cos * cos) };
}

/** Variance of a station's radius, mm²: of its reading, and of its height by how fast the wall widens there. */
function radiusVariance(station: Station, blank: Blank, halfAngle: number): number {
  const reading = girthReading(station, Math.max(blank.reading, leastReading)) / (2 * Math.PI);
  const slope = station.position.kind === 'along' ? Math.sin(halfAngle) : Math.tan(halfAngle);
  return reading ** 2 + (slope * blank.heightReading) ** 2;
}

const alongOf = ({ position }: Station, halfAngle: number): number =>
  position.kind === 'along' ? position.mm : position.mm / Math.cos(halfAngle);

function residualOf(
  station: Station,
  index: number,
  blank: Blank,
  radius: number,
  halfAngle: number,
  covariance: LineCovariance,
): Residual {
  const { radius: wider, perRadian } = widening(station, halfAngle);
  const own = radiusVariance(station, blank, halfAngle);
  const fitted = covariance.intercept + 2 * perRadian * covariance.both + perRadian ** 2 * covariance.slope;
  // Where the fit must pass through the station the two are equal but for rounding.
  const left = own - fitted > 1e-9 * own ? own - fitted : 0;
  return {
    station: index,
    along: alongOf(station, halfAngle),
    measured: measuredGirth(station, blank.tape),
    residual: 2 * Math.PI * (radiusOf(station, blank.tape) - radius - wider),
    uncertainty: 2 * Math.PI * Math.sqrt(left),
  };
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

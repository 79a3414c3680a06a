// The walls every property of the unrolling runs over.
import { type FlatWall, flatWall } from '../../src/unroll/flat-wall.ts';

const degrees = Math.PI / 180;

export interface NamedWall {
  readonly name: string;
  readonly wall: FlatWall;
  /** Half angle, radians. */
  readonly halfAngle: number;
  /** Length of the wall, mm, from its foot corner. */
  readonly length: number;
}

/** A wall of a foot radius, wider at the lip (positive) or at the foot (negative), referred to its middle. */
const named = (name: string, footRadius: number, halfAngle: number, length: number): NamedWall => {
  const sine = Math.sin(halfAngle);
  return { name, halfAngle, length, wall: flatWall(footRadius + (sine * length) / 2, sine, length / 2) };
};

/** Half angle that makes a whole turn sweep so many degrees. */
const halfAngleOfSweep = (sweepDeg: number): number => Math.asin(sweepDeg / 360);

export const walls: readonly NamedWall[] = [
  named('a cylinder', 40, 0, 120),
  named('a cylinder but for 1e-9 rad, wider at the lip', 40, 1e-9, 120),
  named('a cylinder but for 1e-9 rad, wider at the foot', 40, -1e-9, 120),
  named('a cylinder but for 1e-6 rad, wider at the lip', 40, 1e-6, 120),
  named('a cylinder but for 1e-6 rad, wider at the foot', 40, -1e-6, 120),
  named('1 degree, wider at the lip', 31, 1 * degrees, 150),
  named('1 degree, wider at the foot', 60, -1 * degrees, 150),
  named('10 degrees, wider at the lip', 20, 10 * degrees, 150),
  named('10 degrees, wider at the foot', 60, -10 * degrees, 150),
  named('60 degrees, wider at the lip', 20, 60 * degrees, 100),
  named('60 degrees, wider at the foot', 120, -60 * degrees, 100),
  named('a sweep of 200 degrees', 10, halfAngleOfSweep(200), 80),
  named('a sweep of 350 degrees, wider at the lip', 10, halfAngleOfSweep(350), 80),
  named('a sweep of 350 degrees, wider at the foot', 100, -halfAngleOfSweep(350), 80),
];

export const realCones = walls.filter(({ halfAngle }) => Math.abs(halfAngle) > 1e-3);

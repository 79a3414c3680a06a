// Where a straight-cut strip would go on a tapered wall: along a geodesic, not along the level line.

import { sinc } from '../../geometry/sinc.ts';
import { type FlatWall, girthAt, sweep } from '../../unroll/flat-wall.ts';

/** How far a straight strip strays from the level line; mm along the wall, positive towards the lip. */
export interface StraightStrip {
  /** At its far end, when it is laid level where it starts; undefined where it never comes round. */
  readonly climb: number | undefined;
  /** In its middle, when both its ends are brought to the line; undefined where it can't be brought round at all. */
  readonly bow: number | undefined;
}

/**
 * A straight edge that sets out along the level line at a height and goes around for so many turns.
 *
 * On the sheet it stays a straight line. With rho the line's distance from the apex and phi the sector's angle for
 * these turns, a line square to the first radius meets the last one at rho / cos phi, so it climbs rho (1 / cos phi - 1);
 * the chord between both ends bows in by rho (1 - cos(phi / 2)). Written here without rho, so a cylinder gives 0.
 * From a quarter turn of sheet on (phi 90 degrees) the line never meets the last radius, from half a turn (180) no
 * straight line reaches it.
 * Source: geodesics of a cone, r = r0 / sin(phi - phi0) on the sheet (references, 11).
 */
export function straightStrip(wall: FlatWall, along: number, turns: number): StraightStrip {
  const phi = sweep(wall) * turns;
  const lean = girthAt(wall, along) * turns * phi;
  const size = Math.abs(phi);
  return {
    climb: size < Math.PI / 2 ? (lean * sinc(phi / 2) ** 2) / (2 * Math.cos(phi)) : undefined,
    bow: size < Math.PI ? 0 - (lean * sinc(phi / 4) ** 2) / 8 : undefined,
  };
}

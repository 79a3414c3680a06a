// How a pattern drawn on the plane is spread over a wall that bends: places up the pattern against places up the wall.
import type { GoreWall } from '../../unroll/gores.ts';

/** The finished band, mm up the sheet. */
interface Band {
  readonly from: number;
  readonly to: number;
}

/** x of the laid pattern is mm around where its scale is taken; y is mm up it, 0 at the foot end of the band. */
export interface GoreLay {
  /** x of one whole turn, mm. */
  readonly around: number;
  /** mm up the sheet, and back. */
  readonly toOn: (y: number) => number;
  readonly fromOn: (on: number) => number;
  /** d on / d y */
  readonly stretchUp: (y: number) => number;
}

/** Rows stay equally far apart; motifs widen with the girth. */
export const evenGoreLay = ({ from }: Band, around: number): GoreLay => ({
  around,
  toOn: (y) => from + y,
  fromOn: (on) => on - from,
  stretchUp: () => 1,
});

/** Spacing of the places up the wall at which rows are summed, mm: Simpson's rule leaves under a millionth of it. */
const spacing = 0.5;

/** A wall is never taken as narrower than this, mm: past its ends it goes on straight, and would close. */
const leastRadius = 0.05;

/**
 * Every angle is kept on the wall; motifs grow with the girth. A row's height goes with the girth there, so y is the
 * integral of around / girth up the wall: the inverse Mercator projection of any surface of revolution (J. P. Snyder,
 * Map Projections: A Working Manual, 1987, eq. 7-1 of the sphere, from memory; the same integral of any meridian).
 */
export function conformalGoreLay(wall: GoreWall, { from, to }: Band, around: number): GoreLay {
  const rate = (on: number): number => around / (2 * Math.PI * Math.max(leastRadius, wall.at(on).radius));
  const simpson = (low: number, high: number): number =>
    ((high - low) / 6) * (rate(low) + 4 * rate((low + high) / 2) + rate(high));
  const steps = Math.max(1, Math.ceil((to - from) / spacing));
  const step = (to - from) / steps;
  const rows = [0];
  for (let i = 0; i < steps; i++) rows.push((rows[i] ?? 0) + simpson(from + i * step, from + (i + 1) * step));
  const node = (index: number): number => Math.min(steps, Math.max(0, index));
  const fromOn = (on: number): number => {
    const i = node(Math.floor((on - from) / step));
    return (rows[i] ?? 0) + simpson(from + i * step, on);
  };
  const toOn = (y: number): number => {
    let [low, high] = [0, steps];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((rows[middle] ?? 0) <= y) low = middle;
      else high = middle;
    }
    const base = y > (rows[steps] ?? 0) ? steps : low;
    let on = from + base * step + (y - (rows[base] ?? 0)) / rate(from + base * step);
    for (let i = 0; i < 4; i++) on -= (fromOn(on) - y) / rate(on);
    return on;
  };
  return { around, toOn, fromOn, stretchUp: (y) => 1 / rate(toOn(y)) };
}

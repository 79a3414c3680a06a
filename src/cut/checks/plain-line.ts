// Lines that are seen at a glance to meet themselves nowhere, and to be wide: most motifs, for which no chords are held against one
// another.
import type { Contour } from '../../geometry/contour.ts';
import { norm } from '../../geometry/point.ts';
import { roundOf } from '../../geometry/simple-ring.ts';
import { type Corners, cornersOf, type EdgeOptions } from './edge-chords.ts';

type ChordOptions = Pick<EdgeOptions, 'tolerance' | 'longest'>;

/** Sides at less than this to their rays, as a sine, are too near to them to be told at a glance. */
const leastSine = 1e-6;

/** Whether a contour surely crosses itself nowhere. False says nothing. */
export const isPlain = (contour: Contour, options: ChordOptions): boolean => {
  if (!contour.closed) return false;
  const { x, y } = cornersOf(contour, options);
  return (roundOf(x, y)?.sine ?? 0) >= leastSine;
};

/** The same where lines are told by how near they are: 17 degrees. */
const wideSine = 0.3;

/**
 * Whether a contour surely runs nowhere along itself, within so much, mm. It goes around its middle once, at no small angle to any ray:
 * of two places that near each other the way between them is at most `apart` over that angle's sine. Where no two chords as near turn
 * back from each other, none lies beside another. False says nothing.
 */
export function staysApart(contour: Contour, apart: number, options: ChordOptions): boolean {
  if (!contour.closed) return false;
  const corners = cornersOf(contour, options);
  const round = roundOf(corners.x, corners.y);
  if (!round || round.sine < wideSine || round.nearest < 10 * apart) return false;
  return turnsSlowly(corners, (2 * apart) / wideSine);
}

/** Sides that face each other across a width are within 30 degrees of side by side; chords may tell that wrongly by half as much, radians. */
const facing = Math.PI / 4;

/**
 * Whether a contour that comes near no other is surely nowhere narrower than a limit, mm, neither within nor around it. Two places that
 * near each other lie under a small angle from its middle, and where both sides run at a wide angle to their rays, they run at a wide
 * angle to each other. False says nothing.
 */
export function isWide(contour: Contour, limit: number, options: ChordOptions): boolean {
  if (!contour.closed) return false;
  const { x, y } = cornersOf(contour, options);
  const round = roundOf(x, y);
  if (!round || limit >= 2 * round.nearest) return false;
  return 2 * Math.asin(limit / 2 / round.nearest) + facing < 2 * Math.asin(Math.min(1, round.sine));
}

/** Whether no two chords with less than so much of the way between them, mm, turn back from each other. */
function turnsSlowly({ x, y }: Corners, reach: number): boolean {
  const count = x.length;
  const after = (k: number) => (k + 1 === count ? 0 : k + 1);
  for (let k = 0; k < count; k++) {
    const end = after(k);
    const dx = (x[end] ?? 0) - (x[k] ?? 0);
    const dy = (y[end] ?? 0) - (y[k] ?? 0);
    let way = 0;
    for (let from = end; way <= reach && from !== k; from = after(from)) {
      const to = after(from);
      const ex = (x[to] ?? 0) - (x[from] ?? 0);
      const ey = (y[to] ?? 0) - (y[from] ?? 0);
      if (dx * ex + dy * ey < 0) return false;
      way += norm(ex, ey);
    }
  }
  return true;
}

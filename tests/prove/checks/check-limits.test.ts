// A sheet held against a wall that steps: it may touch it at the corner alone, wherever that lies.
import { test } from 'vitest';
import { largest } from '../../../src/prove/check.ts';
import { misfits } from '../../../src/prove/checks/check-limits.ts';
import { expectWithin } from '../../closeness.ts';

/** A wall that leans out more from a corner on; mm. */
const [foot, corner, lip] = [
  { along: 0, radius: 30 },
  { along: 10.06, radius: 31 },
  { along: 20, radius: 40 },
];
const asked = {
  wall: { kind: 'bent', places: [foot, corner, lip] },
  film: { stretch: 0.1, gather: 0 },
} as const;
const sine = 0.5;

test.each([0, 0.01, -0.01])(
  'a cone that stands %d mm off the corner misses the wall by as much girth',
  (by) => {
    const cone = { from: 0, radius: corner.radius - by - sine * corner.along, sine };
    const off = misfits({ band: { from: 0, to: 20 }, cone }, asked);
    expectWithin(largest(off), 2 * Math.PI * Math.abs(by), 1e-9);
  },
);

// Strain is counted on the film's own length, as stretch is (engineering strain; common practice, no source).
test.each([0, 0.01])('film gathers by a share of its own girth: a sheet whose radius is %d mm more', (by) => {
  const gather = 0.013;
  const film = { stretch: 0.1, gather };
  const wall = { kind: 'bent', places: [foot, { ...lip, radius: foot.radius }] } as const;
  const cone = { from: 0, radius: foot.radius / (1 - gather) + by, sine: 0 };
  const off = misfits({ band: { from: 0, to: 20 }, cone }, { wall, film });
  expectWithin(largest(off), 2 * Math.PI * by * (1 - gather), 1e-9);
});

import { describe, expect, test } from 'vitest';
import { conformalGoreLay, evenGoreLay } from '../../../src/pattern/gores/gore-lay.ts';
import { conformalLay } from '../../../src/pattern/lay/lay.ts';
import { flatWall, girthAt } from '../../../src/unroll/flat-wall.ts';
import { expectWithin } from '../../closeness.ts';
import { ball, barrel, cone } from '../../unroll/gore-walls.ts';

describe('a conformal lay over a wall that bends', () => {
  // Source: the Mercator projection, y = R ln tan(45° + latitude/2) (Snyder 1987, eq. 7-2), true at the equator.
  test('is the Mercator projection on a globe', () => {
    const R = 60;
    const on = (latitude: number) => ((latitude + 90) / 180) * Math.PI * R;
    const lay = conformalGoreLay(ball(R), { from: on(-60), to: on(60) }, 2 * Math.PI * R);
    const mercator = (latitude: number) => R * Math.log(Math.tan(((90 + latitude) / 360) * Math.PI));
    for (const latitude of [-60, -41, -3, 0, 12, 37, 60])
      expectWithin(lay.fromOn(on(latitude)), mercator(latitude) - mercator(-60), 1e-6);
  });

  test('is the conformal lay of a cone on a cone', () => {
    const wall = flatWall(30, 0.2, 0);
    const straight = conformalLay(wall, 10, { around: girthAt(wall, 50) });
    const lay = conformalGoreLay(cone(30, 0.2), { from: 10, to: 90 }, girthAt(wall, 50));
    for (const on of [6, 10, 33.3, 90, 94]) expectWithin(lay.fromOn(on), straight.fromAlong(on), 1e-6);
  });

  test('goes there and back, and grows motifs with the girth', () => {
    const wall = barrel(50, 120, 60, 1);
    const lay = conformalGoreLay(wall, { from: 3, to: 117 }, 2 * Math.PI * 50);
    for (const on of [-1, 0, 3, 3.2, 40, 77.7, 117, 121]) {
      expectWithin(lay.toOn(lay.fromOn(on)), on, 1e-9);
      expectWithin(lay.stretchUp(lay.fromOn(on)), wall.at(on).radius / 50, 1e-9);
    }
  });
});

test('an even lay keeps rows equally far apart', () => {
  const lay = evenGoreLay({ from: 7, to: 90 }, 300);
  expect([0, 10, 20].map(lay.toOn)).toEqual([7, 17, 27]);
  expect(lay.fromOn(lay.toOn(12.5))).toBe(12.5);
});

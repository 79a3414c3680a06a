// The map onto a gore against the projections it is: proj4's polyconic and sinusoidal, and the proof's own formulas.
import proj4 from 'proj4';
import { describe, expect, test } from 'vitest';
import { type GoreSurface, layGore, rollGore } from '../../src/prove/written/rolled-gore.ts';
import { stepOnGore, toGore } from '../../src/unroll/gore-map.ts';
import { type GoreLevels, type GoreWall, halfWidth } from '../../src/unroll/gores.ts';
import { expectPointWithin, expectWithin } from '../closeness.ts';
import { ball, barrel, cone } from './gore-walls.ts';

const R = 60;

describe.each([
  { levels: 'straight', projection: 'sinu' },
  { levels: 'arcs', projection: 'poly' },
] as const)('a gore of a globe with levels $levels', ({ levels, projection }) => {
  test(`is the map ${projection}, all over and past its edges`, () => {
    const count = 8;
    const frame = { count, levels, from: (Math.PI / 2) * R };
    for (let latitude = -80; latitude <= 80; latitude += 13)
      for (const share of [-1.2, -1, -0.4, 0, 0.01, 0.7, 1, 1.3]) {
        const [x = Number.NaN, y = Number.NaN] = proj4(
          `+proj=longlat +R=${R} +no_defs`,
          `+proj=${projection} +lat_0=0 +lon_0=0 +x_0=0 +y_0=0 +R=${R} +units=m +no_defs`,
          [(share * 180) / count, latitude],
        );
        const on = ((latitude + 90) / 180) * Math.PI * R;
        expectPointWithin(toGore(ball(R), frame, { share, on }), { x, y: -y }, 1e-6);
      }
  });
});

const walls: readonly { name: string; wall: GoreWall; length: number }[] = [
  { name: 'a barrel', wall: barrel(50, 120, 60, 1), length: 120 },
  { name: 'a waist', wall: barrel(40, 90, 50, -1), length: 100 },
  { name: 'a cone', wall: cone(30, 0.2), length: 90 },
  { name: 'a cylinder', wall: cone(35, 0), length: 90 },
];

describe.each(walls)('a gore of $name', ({ wall, length }) => {
  const levelsOf: readonly GoreLevels[] = ['arcs', 'straight'];

  test.each(levelsOf)('with levels %s changes as its own differences say', (levels) => {
    const frame = { count: 9, levels, from: 0 };
    const h = 1e-4;
    for (const share of [-1, -0.3, 0, 0.8])
      for (const on of [5, length / 2, length - 7]) {
        const ways = [
          { share: 1, on: 0 },
          { share: 0, on: 1 },
          { share: -0.3, on: 0.7 },
        ];
        for (const by of ways) {
          const at = (k: number) =>
            toGore(wall, frame, { share: share + k * h * by.share, on: on + k * h * by.on });
          const [ahead, behind] = [at(1), at(-1)];
          const wanted = { x: (ahead.x - behind.x) / (2 * h), y: (ahead.y - behind.y) / (2 * h) };
          expectPointWithin(stepOnGore(wall, frame, { share, on }, by), wanted, 1e-5);
        }
      }
  });

  test.each(levelsOf)('with levels %s rolls up to where it was by the formulas of the proof', (levels) => {
    const count = 9;
    const from = 4;
    const places = Array.from({ length: 20_001 }, (_, i) => {
      const on = (length * i) / 20_000;
      return { on, ...wall.at(on) };
    });
    const surface: GoreSurface = { places, levels, count };
    for (const share of [-1.1, -0.6, 0, 0.2, 1, 1.2])
      for (const on of [6, length / 3, length - 5]) {
        const flat = toGore(wall, { count, levels, from }, { share, on });
        const aside = share * halfWidth(wall.at(on).radius, count);
        const rolled = rollGore(surface, from, { x: flat.x, y: -flat.y });
        expectWithin(rolled.on, on, 1e-5);
        expectWithin(rolled.aside, aside, 1e-5);
        expectPointWithin(layGore(surface, from, { aside, on }), { x: flat.x, y: -flat.y }, 1e-5);
      }
  });
});

test('the proof takes its wall straight on past its ends', () => {
  const places = [0, 50, 100].map((on) => ({ on, radius: 30 + 0.1 * on, slope: 0.1 }));
  const surface: GoreSurface = { places, levels: 'arcs', count: 6 };
  const at = { aside: 3, on: 104 };
  const back = rollGore(surface, 0, layGore(surface, 0, at));
  expectWithin(back.on, at.on, 1e-9);
  expect(back.aside).toBeCloseTo(at.aside, 9);
});

import { describe, expect, test } from 'vitest';
import { wallAt, wallLength, wallOf } from '../../src/blank/wall.ts';
import { grownWall } from '../../src/unroll/grown-wall.ts';
import { aBlank } from '../blank/a-blank.ts';
import { expectWithin } from '../closeness.ts';

/** A barrel of meridian radius 120, 50 mm at its middle, 60 mm up, by close stations. */
const barrelRadius = (up: number) => 50 - 120 + Math.sqrt(120 ** 2 - (up - 60) ** 2);
const barrel = wallOf(
  aBlank(
    Array.from({ length: 49 }, (_, i) => ({ height: i * 2.5, across: 2 * barrelRadius(i * 2.5) })),
    { wall: 'smooth' },
  ),
).wall;

const stepped = wallOf(
  aBlank(
    [
      { height: 0, across: 60 },
      { height: 40, across: 64 },
      { height: 50, across: 80 },
      { height: 100, across: 84 },
    ],
    { wall: 'stepped' },
  ),
).wall;

describe('a wall grown by its coats', () => {
  // Source: the parallel of an arc of radius R is an arc of radius R + d, so as much longer as (R + d)/R.
  test('is longer where it bulges: by the growth times what its lean turns by', () => {
    const grown = grownWall(barrel, 3);
    expectWithin(grown.length / wallLength(barrel), 123 / 120, 1e-5);
    const turned = 2 * Math.asin(60 / 120);
    expectWithin(grown.length - wallLength(barrel), 3 * turned, 2e-3);
  });

  test('has the radius and the lean of the arc it is, at its own places', () => {
    const grown = grownWall(barrel, 3);
    const half = Math.asin(60 / 120);
    for (const share of [0.1, 0.35, 0.5, 0.8]) {
      const angle = half * (2 * share - 1);
      const place = grown.at(123 * 2 * half * share);
      expectWithin(place.radius, 50 - 120 + 123 * Math.cos(angle), 1e-3);
      expectWithin(place.slope, -Math.sin(angle), 1e-4);
    }
  });

  test('goes to the bare wall and back', () => {
    for (const wall of [barrel, stepped])
      for (const growth of [0, 0.04, 2]) {
        const grown = grownWall(wall, growth);
        for (let along = -4; along <= wallLength(wall) + 4; along += 3.7)
          expectWithin(grown.toBare(grown.toGrown(along)), along, 1e-9);
      }
  });

  test('is the bare wall where nothing grows it', () => {
    for (const wall of [barrel, stepped]) {
      const grown = grownWall(wall, 0);
      for (let along = 0; along <= wallLength(wall); along += 5.3) {
        expectWithin(grown.toGrown(along), along, 1e-12);
        expectWithin(grown.at(along).radius, wallAt(wall, along).radius, 1e-9);
      }
    }
  });

  test('has stretches that meet where their lines cross, moved out', () => {
    const growth = 2;
    const grown = grownWall(stepped, growth);
    // The crossing of two moved lines by their normal forms, solved by Cramer's rule.
    const sides = [
      { x: 30, y: 0, to: [32, 40] },
      { x: 32, y: 40, to: [40, 50] },
      { x: 40, y: 50, to: [42, 100] },
    ].map(({ x, y, to: [tx = 0, ty = 0] }) => {
      const length = Math.hypot(tx - x, ty - y);
      const [nx, ny] = [(ty - y) / length, -(tx - x) / length];
      return { nx, ny, c: nx * x + ny * y + growth };
    });
    const crossing = (i: number) => {
      const [a, b] = [sides[i], sides[i + 1]];
      if (!a || !b) throw new Error('no sides');
      const d = a.nx * b.ny - b.nx * a.ny;
      return { x: (a.c * b.ny - b.c * a.ny) / d, y: (a.nx * b.c - b.nx * a.c) / d };
    };
    const [first, second] = [crossing(0), crossing(1)];
    const [low = 0, high = 0] = grown.corners;
    expectWithin(grown.at(low).radius, first.x, 1e-9);
    expectWithin(grown.at(high).radius, second.x, 1e-9);
    expectWithin(high - low, Math.hypot(second.x - first.x, second.y - first.y), 1e-9);
    expect(grown.corners).toHaveLength(2);
  });

  test('goes on without a jump at its corners', () => {
    const grown = grownWall(stepped, 2);
    for (const on of grown.corners)
      expectWithin(grown.at(on - 1e-9).radius, grown.at(on + 1e-9).radius, 1e-6);
  });
});

// The proof's own formulas against the unrolling's, which were written apart from them, and against proj4's conic.
import proj4 from 'proj4';
import { describe, expect, test } from 'vitest';
import { movePoint } from '../../../src/geometry/affine.ts';
import {
  girthOf,
  layDown,
  onward,
  type RolledCone,
  rightOfTurn,
  rollUp,
} from '../../../src/prove/written/rolled-cone.ts';
import { radiusAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { expectPointWithin, expectWithin } from '../../closeness.ts';
import { walls } from '../../unroll/walls.ts';

const heights = [0, 0.25, 0.6, 1];
const turns = [-0.01, 0, 0.1, 0.25, 0.5, 0.75, 0.9, 1, 1.015];

describe.each(walls)('on the wall "$name"', ({ wall, length }) => {
  const from = length / 5;
  const cone: RolledCone = { from, radius: radiusAt(wall, from), sine: wall.sine };
  // A sheet past 340 degrees has no room for an overlap.
  const fitting = turns.filter((turn) => Math.abs(wall.sine) < 0.9 || (turn >= 0 && turn <= 1));
  const places = fitting.flatMap((turn) => heights.map((share) => ({ turn, along: share * length })));

  test('distances on the sheet are those of the sheet that was unrolled', () => {
    const [first] = places;
    if (!first) throw new Error('no places');
    const here = layDown(cone, first);
    const unrolled = toFlat(wall, first);
    for (const place of places) {
      const [p, q] = [layDown(cone, place), toFlat(wall, place)];
      const ours = Math.hypot(p.x - here.x, p.y - here.y);
      expectWithin(ours, Math.hypot(q.x - unrolled.x, q.y - unrolled.y), 1e-9, 'distance');
    }
  });

  test('what is laid down rolls up to where it was', () => {
    for (const place of places) {
      const { turn, along } = rollUp(cone, layDown(cone, place));
      expectWithin((turn - place.turn) * girthOf(cone, place.along), 0, 1e-9, 'around');
      expectWithin(along, place.along, 1e-9, 'along');
    }
  });

  test('a step onward moves every point that far around, and keeps its height', () => {
    for (const { turn, along } of places) {
      const there = movePoint(onward(cone, 0.2 - turn), layDown(cone, { turn, along }));
      expectPointWithin(there, layDown(cone, { turn: 0.2, along }), 1e-9);
    }
  });

  test('the line up the wall at its turn has nothing to its right', () => {
    for (const { turn, along } of places)
      expectWithin(rightOfTurn(cone, turn, layDown(cone, { turn, along })), 0, 1e-9);
  });

  test('turn 0 stands upright at the origin', () => {
    expect(layDown(cone, { turn: 0, along: from })).toEqual({ x: 0, y: 0 });
    expectPointWithin(layDown(cone, { turn: 0, along: from + 7 }), { x: 0, y: 7 }, 1e-12);
  });
});

describe.each([1, 10, 33, 60, 75])('against a map projection of a cone that leans %d degrees', (lean) => {
  test('the rolled-up place is the one the equidistant conic was drawn from', () => {
    // With standard parallels a and b the cone has the sine n = (cos a - cos b) / (b - a), and a place of latitude phi
    // lies cos a / n + a - phi from its point (Snyder 1987, 16-1 to 16-4, on a unit ball). Its point is up.
    const degree = Math.PI / 180;
    const [a, b] = [(lean - 0.5) * degree, (lean + 0.5) * degree];
    const n = (Math.cos(a) - Math.cos(b)) / (b - a);
    const from = lean * degree;
    const slant = Math.cos(a) / n + a - from;
    const scale = 50;
    const cone: RolledCone = { from: 0, radius: scale * slant * n, sine: -n };
    const project = proj4(
      '+proj=longlat +R=1 +no_defs',
      `+proj=eqdc +lat_1=${lean - 0.5} +lat_2=${lean + 0.5} +lat_0=${lean} +lon_0=0 +x_0=0 +y_0=0 +R=1 +no_defs`,
    );
    for (const turn of [0.02, 0.11, 0.24, 0.4])
      for (const up of [-0.1, 0, 0.1]) {
        const [x = Number.NaN, y = Number.NaN] = project.forward([turn * 360, (from + up) / degree]);
        const rolled = rollUp(cone, { x: x * scale, y: y * scale });
        expectWithin(rolled.turn, turn, 1e-8, 'turn');
        expectWithin(rolled.along, up * scale, 1e-7, 'along');
      }
  });
});

import { describe, expect, test } from 'vitest';
import { distance, type Point } from '../../../src/geometry/point.ts';
import { conformalLay, evenLay, stepOnSheet, toSheet, toWallPoint } from '../../../src/pattern/lay/lay.ts';
import { girthAt, radiusAt } from '../../../src/unroll/flat-wall.ts';
import { expectPointWithin, expectWithin, expectWithinPart } from '../../closeness.ts';
import { walls } from '../../unroll/walls.ts';

const from = 7;
const lays = walls.flatMap(({ name, wall, length }) => [
  { name: `even, ${name}`, lay: evenLay(wall, from), wall, length, kind: 'even' as const },
  { name: `conformal, ${name}`, lay: conformalLay(wall, from), wall, length, kind: 'conformal' as const },
]);

const heights = (length: number): number[] => [from, 0.3 * length, length / 2, 0.8 * length, length];

describe.each(lays)('lay: $name', ({ lay, wall, length, kind }) => {
  const girth = girthAt(wall, wall.reference);

  test('begins at the foot of the band', () => {
    expectWithin(lay.toAlong(0), from, 1e-9);
    expectWithin(lay.fromAlong(from), 0, 1e-9);
  });

  test('comes back from the wall to where it was drawn', () => {
    for (const along of heights(length)) expectWithin(lay.toAlong(lay.fromAlong(along)), along, 1e-9);
  });

  test('takes a girth in x once around, at every height', () => {
    for (const along of heights(length)) {
      const y = lay.fromAlong(along);
      expectWithin(toWallPoint(lay, { x: girth, y }).turn - toWallPoint(lay, { x: 0, y }).turn, 1, 1e-12);
    }
  });

  test('says truly how much it stretches up, and how small steps come out on the sheet', () => {
    const h = 1e-4;
    for (const along of heights(length)) {
      const y = lay.fromAlong(along);
      expectWithin((lay.toAlong(y + h) - lay.toAlong(y - h)) / (2 * h), lay.stretchUp(y), 1e-6);
      for (const by of [
        { x: 1, y: 0 },
        { x: 0, y: 1 },
        { x: -0.6, y: 0.8 },
      ]) {
        const at = { x: 0.3 * girth, y };
        const there = (sign: number): Point =>
          toSheet(lay, { x: at.x + sign * h * by.x, y: at.y + sign * h * by.y });
        const [p, q] = [there(-1), there(1)];
        const wanted = { x: (q.x - p.x) / (2 * h), y: (q.y - p.y) / (2 * h) };
        expectPointWithin(stepOnSheet(lay, at, by), wanted, 1e-6);
      }
    }
  });

  if (kind === 'even')
    test('keeps rows equally far apart', () => {
      const rows = [0, 10, 20, 30].map((y) => lay.toAlong(y));
      rows.slice(1).forEach((along, i) => {
        expectWithin(along - (rows[i] ?? 0), 10, 1e-9);
      });
    });
  else
    test('keeps every angle: a small square comes out square, grown by the girth', () => {
      for (const along of heights(length)) {
        const at = { x: 0.7 * girth, y: lay.fromAlong(along) };
        const [across, up] = [stepOnSheet(lay, at, { x: 1, y: 0 }), stepOnSheet(lay, at, { x: 0, y: 1 })];
        const grown = radiusAt(wall, along) / wall.radius;
        expectWithinPart(Math.hypot(across.x, across.y), grown, 1e-9);
        expectWithinPart(Math.hypot(up.x, up.y), grown, 1e-9);
        expectWithin(across.x * up.x + across.y * up.y, 0, 1e-9 * grown * grown);
      }
    });
});

describe('both lays', () => {
  test('agree to first order at the reference height, and everywhere on a cylinder', () => {
    for (const { wall, length } of walls) {
      const [even, conformal] = [evenLay(wall, wall.reference), conformalLay(wall, wall.reference)];
      expectPointWithin(toSheet(even, { x: 50, y: 0 }), toSheet(conformal, { x: 50, y: 0 }), 1e-9);
      if (wall.sine !== 0) continue;
      for (const y of [-length / 2, 3, length / 2])
        expectPointWithin(toSheet(even, { x: 50, y }), toSheet(conformal, { x: 50, y }), 1e-9);
    }
  });

  test('pass from cylinder to cone without a step: 1e-9 rad moves nothing by 1e-6 mm', () => {
    const [cylinder, lip, foot] = walls;
    if (!cylinder || !lip || !foot) throw new Error('no walls');
    for (const other of [lip, foot])
      for (const make of [evenLay, conformalLay])
        for (const y of [0, 50, 110])
          for (const x of [0, 100, 250]) {
            const off = distance(
              toSheet(make(cylinder.wall, from), { x, y }),
              toSheet(make(other.wall, from), { x, y }),
            );
            expect(off).toBeLessThan(1e-6);
          }
  });
});

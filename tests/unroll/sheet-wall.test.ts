import { describe, expect, test } from 'vitest';
import { wallAt, wallLength, wallOf } from '../../src/blank/wall.ts';
import { girthAt, radiusAt } from '../../src/unroll/flat-wall.ts';
import { sheetOnWall, sheetRadii, sheetRadiusAt, sheetSurface } from '../../src/unroll/sheet-wall.ts';
import { leastStretchCone } from '../../src/unroll/strain.ts';
import { aBlank } from '../blank/a-blank.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';

const taper = [
  { height: 0, across: 62 },
  { height: 150, across: 86 },
];
const bulge = [
  { height: 0, across: 80 },
  { height: 25, across: 88 },
  { height: 50, across: 90 },
  { height: 75, across: 88 },
  { height: 100, across: 80 },
];
const build = { coats: 0.06, film: 0.08, gather: 0 };

describe('a sheet on a straight wall', () => {
  const { wall } = wallOf(aBlank(taper));
  const sheet = sheetOnWall(wall, build, { from: 10, to: 140 });

  // A surface parallel to a cone at distance t is the same cone with its radii larger by t cos(half angle).
  test('is the parallel cone through its mid-thickness, with no strain', () => {
    const lean = Math.atan2(12, 150);
    expect(sheet.strain).toEqual([]);
    expectWithin(sheet.flat.sine, Math.sin(lean), 1e-14);
    for (const along of [0, 75, 150]) {
      const bare = 31 + along * Math.sin(lean);
      expectWithin(radiusAt(sheet.flat, along), bare + 0.1 * Math.cos(lean), 1e-11);
    }
  });

  test('is the same whatever height it is referred to', () => {
    const other = sheetOnWall(wall, build, { from: 0, to: 20 });
    for (const along of [0, 75, 150])
      expectWithin(radiusAt(other.flat, along), radiusAt(sheet.flat, along), 1e-11);
  });

  test('read as stepped or smooth is the same sheet, and is not strained', () => {
    for (const kind of ['stepped', 'smooth'] as const) {
      const read = wallOf(aBlank(taper, { wall: kind })).wall;
      const other = sheetOnWall(read, { ...build, gather: 0.01 }, { from: 10, to: 140 });
      for (const along of [10, 75, 140])
        expectWithin(girthAt(other.flat, along), girthAt(sheet.flat, along), 1e-9);
      for (const { strain } of other.strain) expectWithin(strain, 0, 1e-12);
    }
  });
});

describe('a sheet on a wall that bulges', () => {
  const { wall } = wallOf(aBlank(bulge, { wall: 'smooth' }));
  const band = { from: 30, to: 72 };

  test('is sized on its mid-thickness: the wall moved out along its normal', () => {
    for (const along of [0, 20, 50, 90]) {
      const { radius, lean } = wallAt(wall, along);
      expectWithin(sheetRadiusAt(wall, build, along, band), radius + 0.1 * Math.cos(lean), 1e-13);
    }
  });

  test('is the cone that asks the least, strained as said at every place, and gathered nowhere', () => {
    const { flat, strain } = sheetOnWall(wall, build, band);
    const radii = sheetRadii(wall, build, band);
    const { stretch } = leastStretchCone(radii, 0);
    const { toGrown } = sheetSurface(wall, build);
    strain.forEach(({ along }, i) => {
      expectWithin(radii[i]?.along ?? 0, toGrown(along), 1e-12);
    });
    expect([strain[0]?.along, strain.at(-1)?.along]).toEqual([30, 72]);
    strain.forEach((place, i) => {
      expectWithin(place.strain, (radii[i]?.radius ?? 0) / radiusAt(flat, toGrown(place.along)) - 1, 1e-12);
      expectAtMost(-place.strain, 1e-12);
      expectAtMost(place.strain, stretch + 1e-12);
    });
    expectWithin(Math.max(...strain.map((place) => place.strain)), stretch, 1e-12);
    expect(stretch).toBeGreaterThan(0.005);
  });

  test('is larger by what may be gathered, and then stretched less', () => {
    const [taut, loose] = [0, 0.002].map((gather) => sheetOnWall(wall, { ...build, gather }, band));
    if (!taut || !loose) throw new Error('no sheets');
    expectWithin(girthAt(loose.flat, 51) / girthAt(taut.flat, 51), 1 / 0.998, 1e-12);
    expectWithin(Math.min(...loose.strain.map(({ strain }) => strain)), -0.002, 1e-12);
  });

  test('asks for more on all of the wall than on its middle', () => {
    const most = (from: number, to: number) =>
      Math.max(...sheetOnWall(wall, build, { from, to }).strain.map(({ strain }) => strain));
    expect(most(0, wallLength(wall))).toBeGreaterThan(most(30, 72));
  });
});

// A mask by the silhouette of what is laid on a wall: against closed forms, and an offset of another library.
import { describe, expect, test } from 'vitest';
import { decalOnPiece, maskShapes, patternOnPiece, windowShapes } from '../../../src/cut/films/mask.ts';
import { moveContour, rotation } from '../../../src/geometry/affine.ts';
import { arcAbout } from '../../../src/geometry/arc.ts';
import { line, type Shape } from '../../../src/geometry/contour.ts';
import { holdsPoint } from '../../../src/geometry/inside.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { flatWall, girthAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';

const radius = 30;
const cylinder = flatWall(radius, 0, 50);
const girth = girthAt(cylinder, 0);
const plain = (overlap: number) =>
  templateOf(cylinder, { band: { from: 0, to: 100 }, trim: { foot: 0, lip: 0 }, overlap });
const disc = (turn: number, along: number, r: number, wall = cylinder): Shape => {
  const { x, y } = toFlat(wall, { turn, along });
  return { contours: [{ closed: true, segments: arcAbout({ x, y }, { x: x + r, y }, 2 * Math.PI) }] };
};
const areaOf = (shapes: readonly Shape[]) => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

// Beside a disc the line goes on level from its widest place, all around; below it is half of the disc grown by the stand-off.
test.each(['foot', 'lip'] as const)(
  'covers what is between a disc and the %s, as in closed form',
  (covers) => {
    for (const turn of [0.5, 0.98, 0.01]) {
      const mask = maskShapes({
        template: plain(0),
        decal: [disc(turn, 40, 10)],
        covers,
        standOff: 3,
        smooth: 0,
      });
      expect(mask).toHaveLength(1);
      const height = covers === 'foot' ? 40 : 60;
      expectWithin(areaOf(mask), girth * height - (Math.PI * 13 ** 2) / 2, 0.5, `${turn}`);
    }
  },
);

// Where a level line meets a grown disc of radius R at its widest place, a circle of radius r that touches both closes an area:
// its middle lies r below the line and R + r from the disc's middle.
test('is rounded to its radius where it stands up between the disc and the level line', () => {
  const [R, r] = [13, 5];
  const across = Math.sqrt((R + r) ** 2 - r ** 2);
  const angle = Math.atan2(across, r);
  const corner = (r * across) / 2 - (R ** 2 * (Math.PI / 2 - angle)) / 2 - (r ** 2 * angle) / 2;
  const area = (smooth: number) =>
    areaOf(
      maskShapes({ template: plain(0), decal: [disc(0.5, 40, 10)], covers: 'foot', standOff: 3, smooth }),
    );
  expectWithin(area(0) - area(r), 2 * corner, 0.1);
});

test('goes evenly from one thing to the next, and a narrow gap between two is left open', () => {
  const two = [disc(0.4, 40, 10), disc(0.6, 60, 10)];
  const mask = maskShapes({ template: plain(0), decal: two, covers: 'foot', standOff: 3, smooth: 0 });
  const below = (Math.PI * 13 ** 2) / 2;
  expectWithin(areaOf(mask), girth * 50 - 2 * below, 0.5);
  const near = [disc(0.45, 40, 10), disc(0.55 + 12 / girth, 40, 10)];
  const open = maskShapes({ template: plain(0), decal: near, covers: 'foot', standOff: 3, smooth: 8 });
  const shut = maskShapes({ template: plain(0), decal: near, covers: 'foot', standOff: 3, smooth: 0 });
  expect(areaOf(shut) - areaOf(open)).toBeGreaterThan(10);
});

test('falls apart where the decal with its stand-off reaches the foot', () => {
  const low = { template: plain(6), decal: [disc(0.5, 12, 10)], covers: 'foot', smooth: 0 } as const;
  expect(maskShapes({ ...low, standOff: 1.5 })).toHaveLength(1);
  expect(maskShapes({ ...low, standOff: 2.5 }).length).toBe(2);
});

test('a window lies within the decal by as much all around, its holes filled', () => {
  const ring: Shape = { contours: [...disc(0.5, 40, 10).contours, ...disc(0.5, 40, 6).contours] };
  const windowOf = (on: ReturnType<typeof plain>, decal: Shape[], grow: number) =>
    windowShapes(on, decalOnPiece({ template: on, decal }), grow);
  const window = windowOf(plain(0), [ring], -0.5);
  expectWithin(areaOf(window), Math.PI * 9.5 ** 2, 0.05);
  const cone = flatWall(30, 0.08, 40);
  const square = moveContour(rotation(0.3), {
    closed: true,
    segments: [
      line({ x: -5, y: -5 }, { x: 5, y: -5 }),
      line({ x: 5, y: -5 }, { x: 5, y: 5 }),
      line({ x: 5, y: 5 }, { x: -5, y: 5 }),
      line({ x: -5, y: 5 }, { x: -5, y: -5 }),
    ],
  });
  const template = templateOf(cone, { band: { from: 0, to: 100 }, trim: { foot: 0, lip: 0 }, overlap: 6 });
  // Source: Steiner's formula for a convex area grown by d: A + L d + pi d².
  expectWithin(areaOf(windowOf(template, [{ contours: [square] }], 1)), 100 + 40 + Math.PI, 0.01);
});

describe('on a cone as steep as a lampshade, whose sheet is three quarters of a ring', () => {
  const steep = flatWall(80, 0.75, 50);
  const template = templateOf(steep, {
    band: { from: 20, to: 80 },
    trim: { foot: 0, lip: 0 },
    overlap: 6,
  });
  const turns = [0.1, 0.5, 0.9];

  // A turn later a disc would lie on the other end of the sheet.
  test.each(turns)('a window has one opening, where the disc is: %d', (turn) => {
    const decal = [disc(turn, 50, 8, steep)];
    for (const onPiece of [decalOnPiece({ template, decal }), patternOnPiece({ template, decal }, 5)]) {
      const window = windowShapes(template, onPiece, 1);
      expectWithin(areaOf(window), Math.PI * 81, 0.05, `${turn}`);
    }
  });

  test('a disc behind the seam is open at the start, and again where the overlap lies over it', () => {
    const decal = [disc(0.012, 50, 8, steep)];
    const whole = windowShapes(template, decalOnPiece({ template, decal }), 1);
    expect(whole).toHaveLength(2);
    expect(windowShapes(template, patternOnPiece({ template, decal }, 5), 1)).toHaveLength(2);
  });

  test.each(turns)(
    'a rounded mask ends where a line from the tip of the cone touches the disc: %d',
    (turn) => {
      const [mask, ...others] = maskShapes({
        template,
        decal: [disc(turn, 50, 8, steep)],
        covers: 'foot',
        standOff: 2,
        smooth: 8,
      });
      expect(others).toEqual([]);
      // From the tip to where the tangent touches: sqrt(rho^2 - r^2); 80 mm of radius lie 80 / 0.75 mm from it.
      const edge = 50 + Math.sqrt((80 / 0.75) ** 2 - 10 ** 2) - 80 / 0.75;
      const holds = (along: number) =>
        mask !== undefined && holdsPoint(mask, toFlat(steep, { turn: (turn + 0.4) % 1, along }));
      expect([edge - 0.1, edge + 0.1].map(holds)).toEqual([true, false]);
    },
  );
});

// The piece is a rectangle between the two sides of the handle; the rest as without one.
test.each([0.255, 0.5, 0.745])('beside a wide handle a disc is followed as anywhere: %d', (turn) => {
  const clear = 40;
  const template = templateOf(cylinder, {
    band: { from: 0, to: 100 },
    trim: { foot: 0, lip: 0 },
    overlap: 0,
    clear,
  });
  const mask = maskShapes({ template, decal: [disc(turn, 40, 5)], covers: 'foot', standOff: 2, smooth: 0 });
  expectWithin(areaOf(mask), (girth - 2 * clear) * 40 - (Math.PI * 7 ** 2) / 2, 0.5);
});

import { describe, expect, test } from 'vitest';
import { footprintOnPiece, patchOnPiece } from '../../../src/cut/guide/wall-patch.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { flatWall } from '../../../src/unroll/flat-wall.ts';
import { type Template, templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';

const onWall = (sine: number, clear?: number): Template =>
  templateOf(flatWall(40, sine, 50), {
    band: { from: 10, to: 90 },
    trim: { foot: 3, lip: 3 },
    overlap: 6,
    ...(clear === undefined ? {} : { clear }),
  });
const areaOf = (shapes: ReturnType<typeof patchOnPiece>) =>
  shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);
/** Lateral area of a frustum's part: share of the turn x pi (R + r) x slant (Machinery's Handbook, from memory). */
const frustum = (sine: number, turns: number, from: number, to: number) =>
  turns * Math.PI * (80 + (from - 50) * sine + (to - 50) * sine) * (to - from);

describe('a patch of the wall on the piece', () => {
  test.each([0, 0.02, 0.2, -0.2])('has the area it has on the wall, sine %d', (sine) => {
    const shapes = patchOnPiece(onWall(sine), { turn: { from: 0.3, to: 0.55 }, along: { from: 20, to: 60 } });
    expect(shapes).toHaveLength(1);
    expectWithin(areaOf(shapes), frustum(sine, 0.25, 20, 60), 0.05);
  });

  test('that runs through turn 0 lies at both ends, and again in the overlap', () => {
    const shapes = patchOnPiece(onWall(0), { turn: { from: 0.95, to: 1.05 }, along: { from: 20, to: 60 } });
    // A twentieth of a girth of 80 pi at each end, and the 6 mm of overlap joined to the right one.
    expect(shapes).toHaveLength(2);
    expectWithin(areaOf(shapes), (2 * 0.05 * 80 * Math.PI + 6) * 40, 0.05);
  });

  test.each([0, 0.2, -0.2])('all around is all of the piece, sine %d', (sine) => {
    // The wall's own part, and beside it the overlap, a strip 6 mm wide.
    const shapes = patchOnPiece(onWall(sine), { along: { from: 80, to: 200 } });
    expectWithin(areaOf(shapes), frustum(sine, 1, 80, 93) + 6 * 13, 0.05);
  });

  test('ends where the piece does', () => {
    expect(patchOnPiece(onWall(0), { along: { from: 94, to: 200 } })).toEqual([]);
  });

  test('in the room of a handle is not there', () => {
    const patch = { turn: { from: 0.95, to: 1.05 }, along: { from: 20, to: 60 } };
    expect(patchOnPiece(onWall(0, 20), patch)).toEqual([]);
  });
});

describe('a footprint on the piece', () => {
  // A sheet of sine 0.75 is three quarters of a ring: what comes a turn later would lie on its other end.
  test.each([0, 0.2, -0.2, 0.75])('is a rectangle of its own size wherever it is, sine %d', (sine) => {
    for (const turn of [0.2, 0.5, 0.8]) {
      const shapes = footprintOnPiece(onWall(sine), { across: 30, up: 20 }, { turn, along: 50 });
      expect(shapes).toHaveLength(1);
      expect(shapes[0]?.contours[0]?.segments).toHaveLength(4);
      expectWithin(areaOf(shapes), 600, 1e-6);
    }
  });

  test('across the seam lies at both ends, and again in the overlap', () => {
    const shapes = footprintOnPiece(onWall(0), { across: 30, up: 20 }, { turn: 0, along: 50 });
    expectWithin(areaOf(shapes), (30 + 6) * 20, 1e-6);
  });
});

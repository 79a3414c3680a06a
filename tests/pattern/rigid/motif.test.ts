import { describe, expect, test } from 'vitest';
import type { Shape } from '../../../src/geometry/contour.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { NearestFinder } from '../../../src/geometry/nearest.ts';
import {
  layMotif,
  type Motif,
  type MotifLay,
  motifOnPiece,
  shapesOf,
} from '../../../src/pattern/rigid/motif.ts';
import { rollUp } from '../../../src/prove/written/rolled-cone.ts';
import { flatWall, girthAt, toFlat, toWall } from '../../../src/unroll/flat-wall.ts';
import { templateOf } from '../../../src/unroll/template.ts';
import { expectAtMost, expectPointWithin, expectWithin } from '../../closeness.ts';
import { box, circle, sampled } from '../../geometry/drawn.ts';

const lays: readonly MotifLay[] = ['rigid', 'even', 'conformal'];
const degrees = Math.PI / 180;
const walls = [0, 5, -12, 30].map((angle) => ({ angle, wall: flatWall(40, Math.sin(angle * degrees), 60) }));
const at = { turn: 0.3, along: 75 };

const motifOf = (...shapes: Shape[]): Motif => ({
  layers: [{ name: 'item-1', colour: '#17566b', shapes }],
  frame: { minX: -20, minY: -10, maxX: 20, maxY: 10 },
});
/** A dot 12 mm right of the middle and 7 mm above it, so small that its middle tells where a point goes. */
const dot = motifOf({ contours: [circle({ x: 12, y: -7 }, 0.01, 8)] });
const areaOf = (shapes: readonly Shape[]) => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

function middleOf(motif: Motif, wall: ReturnType<typeof flatWall>, lay: MotifLay) {
  const { layers } = layMotif(motif.layers, wall, { at, lay });
  const points = shapesOf(layers).flatMap(({ contours }) => contours.flatMap((c) => sampled(c, 4)));
  const sum = points.reduce((a, p) => ({ x: a.x + p.x, y: a.y + p.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

describe.each(walls)('a motif on a wall of $angle degrees', ({ angle, wall }) => {
  test('laid rigid keeps every distance: its dot is as far from its place as it was drawn', () => {
    const place = toFlat(wall, at);
    const { x, y } = middleOf(dot, wall, 'rigid');
    expectWithin(Math.hypot(x - place.x, y - place.y), Math.hypot(12, 7), 1e-6);
    // Straight up the wall from its place stays straight up.
    const above = motifOf({ contours: [circle({ x: 0, y: -7 }, 0.01, 8)] });
    const up = toWall(wall, middleOf(above, wall, 'rigid'));
    expectWithin(up.turn, at.turn, 1e-9);
    expectWithin(up.along, at.along + 7, 1e-6);
  });

  // Closed forms: the equidistant conic keeps heights and turns; on the conformal one heights go with the logarithm of
  // the radius (J. P. Snyder, Map Projections: A Working Manual, 1987, ch. 15 and 16).
  test('laid even keeps heights, and turns at its own height', () => {
    const { turn, along } = toWall(wall, middleOf(dot, wall, 'even'));
    expectWithin(along, at.along + 7, 1e-5);
    expectWithin((turn - at.turn) * girthAt(wall, at.along), 12, 1e-5);
  });

  test('laid conformal grows up the wall as its girth does', () => {
    const { turn, along } = toWall(wall, middleOf(dot, wall, 'conformal'));
    const [low, high] = [girthAt(wall, at.along), girthAt(wall, along)];
    const sine = Math.sin(angle * degrees);
    const risen = angle === 0 ? along - at.along : ((low / (2 * Math.PI)) * Math.log(high / low)) / sine;
    expectWithin(risen, 7, 1e-5);
    expectWithin((turn - at.turn) * low, 12, 1e-5);
  });

  test.each(lays)(
    'laid %s has its own area within what the girth changes, and a small error of the fit',
    (lay) => {
      const square = motifOf({ contours: [box(-10, -5, 20, 10)] });
      const { layers, fitError } = layMotif(square.layers, wall, { at, lay });
      const change = (10 * Math.abs(Math.sin(angle * degrees))) / 40;
      expectWithin(areaOf(shapesOf(layers)), 200, lay === 'rigid' || angle === 0 ? 1e-6 : 200 * change ** 2);
      expectAtMost(fitError, 0.005);
    },
  );
});

describe('a motif on a piece', () => {
  const wall = flatWall(40, Math.sin(8 * degrees), 60);
  const template = templateOf(wall, { band: { from: 20, to: 100 }, trim: { lip: 3, foot: 3 }, overlap: 6 });
  const square = motifOf({ contours: [box(-4, -4, 8, 8)] });
  const onPiece = (turn: number, along = 60, lay: MotifLay = 'rigid') =>
    shapesOf(motifOnPiece(square, template, { at: { turn, along }, lay }, 1));

  test('lies there once, and twice where the overlap covers it again', () => {
    expect(onPiece(0.5)).toHaveLength(1);
    expectWithin(areaOf(onPiece(0.5)), 64, 1e-6);
    const girth = girthAt(wall, 60);
    const atSeam = onPiece(1 / girth);
    expect(atSeam).toHaveLength(2);
    // From -3 to 5 mm around: all but 2 mm past the run-off at the left end; at the right up to 5 of 6 mm of overlap.
    expectWithin(areaOf(atSeam), 64 - 2 * 8 + 64, 0.2);
  });

  test('is cut off past the outline, with the run-off left', () => {
    expectWithin(areaOf(onPiece(0.5, 103)), 8 * 5, 0.1);
    expect(onPiece(0.5, 120)).toEqual([]);
  });

  test('on a sector of more than half a turn does not come again on its other side', () => {
    const wide = flatWall(60, Math.sin(50 * degrees), 60);
    const piece = templateOf(wide, { band: { from: 20, to: 100 }, trim: { lip: 0, foot: 0 }, overlap: 0 });
    for (const turn of [0.15, 0.3, 0.5, 0.85])
      expect(
        shapesOf(motifOnPiece(square, piece, { at: { turn, along: 60 }, lay: 'rigid' }, 1)),
      ).toHaveLength(1);
  });

  test('on such a sector does not come again on its other side where it is as long as a sixth of the girth', () => {
    const wide = flatWall(60, Math.sin(50 * degrees), 60);
    const piece = templateOf(wide, { band: { from: 20, to: 100 }, trim: { lip: 0, foot: 0 }, overlap: 6 });
    const bar = motifOf({ contours: [box(-34, -4, 68, 8)] });
    const long = { ...bar, frame: { minX: -34, minY: -4, maxX: 34, maxY: 4 } };
    for (const lay of ['rigid', 'even'] as const)
      for (const turn of [0.3, 0.41, 0.6]) {
        const shapes = shapesOf(motifOnPiece(long, piece, { at: { turn, along: 60 }, lay }, 1));
        expect(shapes).toHaveLength(1);
      }
  });

  test('comes to its place by the formulas of the proof too', () => {
    const [shape] = onPiece(0.37, 60, 'conformal');
    const cone = { from: 60, radius: 40, sine: wall.sine };
    const zero = toFlat(wall, { turn: 0, along: 60 });
    const angle = 2 * Math.PI * wall.sine * -0.5;
    const [up, right] = [
      { x: Math.sin(angle), y: -Math.cos(angle) },
      { x: Math.cos(angle), y: Math.sin(angle) },
    ];
    const points = (shape?.contours ?? []).flatMap((c) => sampled(c, 1));
    const rolled = points.map((p) => {
      const d = { x: p.x - zero.x, y: p.y - zero.y };
      return rollUp(cone, { x: d.x * right.x + d.y * right.y, y: d.x * up.x + d.y * up.y });
    });
    const middle = (of: (p: { turn: number; along: number }) => number) =>
      (Math.min(...rolled.map(of)) + Math.max(...rolled.map(of))) / 2;
    expectPointWithin(
      { x: middle((p) => p.turn), y: middle((p) => p.along) / 1e3 },
      { x: 0.37, y: 0.06 },
      1e-4,
    );
  });
});

// Both walls have the same heights, as pieces of a stack do; the flat walls' own maps are held by their tests.
test.each(lays)('laid %s on one piece goes on over another by turn and height', (lay) => {
  const [home, other] = [flatWall(40, 0.1, 30), flatWall(49, 0.35, 70)];
  const motif = motifOf({ contours: [box(-12, -30, 24, 40)] });
  const place = { at: { turn: 0.7, along: 45 }, lay };
  const own = shapesOf(layMotif(motif.layers, home, place).layers).flatMap(({ contours }) => contours);
  const carried = layMotif(motif.layers, other, { ...place, home });
  expectAtMost(carried.fitError, 0.005, 'fit');
  const finder = new NearestFinder(own);
  const points = shapesOf(carried.layers).flatMap(({ contours }) => contours.flatMap((c) => sampled(c, 8)));
  expect(points.length).toBeGreaterThan(30);
  for (const p of points)
    expectAtMost(
      finder.find(toFlat(home, toWall(other, p)), 1)?.distance ?? 1,
      0.006,
      'off the motif at home',
    );
  // Laid about its place on the other wall itself it is elsewhere.
  const apart = shapesOf(layMotif(motif.layers, other, place).layers).flatMap(({ contours }) =>
    contours.flatMap((c) => sampled(c, 8)),
  );
  const off = apart.map((p) => finder.find(toFlat(home, toWall(other, p)), 9)?.distance ?? 9);
  expect(Math.max(...off)).toBeGreaterThan(0.05);
});

// Holes kept out of a combination and put back, against Clipper 6 (clipper-lib), which takes all of them through.
import { expect, test } from 'vitest';
import { parsePathData } from '../../src/drawing/path-data.ts';
import { reverseContour, type Shape } from '../../src/geometry/contour.ts';
import { withHolesApart, withHolesBack } from '../../src/geometry/holes-apart.ts';
import { directed, shapeArea } from '../../src/geometry/measure.ts';
import { clippedShapes, filledShapes } from '../../src/geometry/regions.ts';
import { expectWithin } from '../closeness.ts';
import { chordPoints } from './drawn.ts';
import { clipperArea } from './libraries.ts';

const shapesOf = (data: string): Shape[] => filledShapes(parsePathData(data), 'evenodd', 0.003);
const ringsOf = (shapes: readonly Shape[]) =>
  shapes.flatMap((shape) => directed(shape).map((contour) => chordPoints(contour, 0.0005)));
const areaOf = (shapes: readonly Shape[]) => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

const squares = Array.from(
  { length: 50 },
  (_, i) => `M${2 + 10 * (i % 10)} ${2 + 10 * Math.floor(i / 10)}h6v6h-6Z`,
);
const net = shapesOf(`M0 0H100V50H0Z${squares.join('')}`);

test('a net cut in two keeps each hole in the part that holds it', () => {
  // A strip from edge to edge that winds, and a patch that swallows a hole whole.
  const erasers = shapesOf('M38 -1H41V19H61V51H58V22H38ZM70.5 30.5H79.5V39.5H70.5Z');
  const isNear = ({ minX, maxX }: { readonly minX: number; readonly maxX: number }) => maxX > 37 && minX < 80;
  const { shapes, holes } = withHolesApart(net, isNear);
  expect(holes.length).toBe(20 + 10 - 5);
  const cut = withHolesBack(clippedShapes(shapes, erasers, 'difference', 0.003), holes);
  const area = clipperArea('difference', ringsOf(net), ringsOf(erasers), 'nonzero');
  expectWithin(areaOf(cut), area, 0.01);
  const outers = cut.map(({ contours }) =>
    Math.max(...(contours[0]?.segments ?? []).map(({ from }) => from.x)),
  );
  const most = cut.filter(({ contours }) => contours.length > 1).map(({ contours }) => contours.length - 1);
  expect(outers.length).toBe(cut.length);
  expect(most.reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(holes.length);
});

test('holes of shapes one within the other go to the one around them', () => {
  const rings = shapesOf('M0 0H40V40H0ZM5 5H35V35H5ZM10 10H30V30H10ZM15 15H17V17H15ZM1 1H3V3H1Z');
  const { shapes, holes } = withHolesApart(rings, ({ maxX }) => maxX > 20);
  expect(holes).toHaveLength(2);
  expect(
    withHolesBack(shapes, holes)
      .map((shape) => shapeArea(shape))
      .sort((a, b) => a - b),
  ).toEqual(rings.map((shape) => shapeArea(shape)).sort((a, b) => a - b));
});

test('holes put back run against what is around them, so that what combines the shapes next leaves them open', () => {
  const backwards = net.map(({ contours }): Shape => ({ contours: contours.map(reverseContour) }));
  const corner = shapesOf('M-1 -1H5V5H-1Z');
  const window = shapesOf('M-2 -2H90V52H-2Z');
  const { shapes, holes } = withHolesApart(backwards, ({ maxX, maxY }) => maxX < 9 && maxY < 9);
  const cut = withHolesBack(clippedShapes(shapes, corner, 'difference', 0.003), holes);
  const seen = clippedShapes(cut, window, 'intersection', 0.003);
  const area = clipperArea('difference', ringsOf(net), ringsOf(corner), 'nonzero');
  // Of the net's 100 mm the window takes off 10: a bar less five squares of 6 mm.
  expectWithin(areaOf(seen), area - (10 * 50 - 5 * 36), 0.01);
});

test('a hole whose handles stand out past the edge around it is put back', () => {
  // An eye whose lower lid hangs 0.75 deep by handles 1 deep, in a rim that ends 0.8 below it; and a square beside, to cut.
  const eye = shapesOf('M0 -3H10V0.8H0ZM1 0C3 1 7 1 9 0C7 -2 3 -2 1 0ZM20 0H26V6H20Z');
  const corner = shapesOf('M24 4H30V10H24Z');
  const { shapes, holes } = withHolesApart(eye, ({ minX }) => minX > 15);
  expect(holes).toHaveLength(1);
  const cut = withHolesBack(clippedShapes(shapes, corner, 'difference', 0.003), holes);
  const area = clipperArea('difference', ringsOf(eye), ringsOf(corner), 'nonzero');
  expectWithin(areaOf(cut), area, 0.01);
});

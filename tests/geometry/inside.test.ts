// Places in areas, held against PointInPolygon of Clipper 6 (clipper-lib).
import { expect, test } from 'vitest';
import { parsePathData } from '../../src/drawing/path-data.ts';
import { HolderFinder, holdsPoint, InsideFinder } from '../../src/geometry/inside.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import { filledShapes } from '../../src/geometry/regions.ts';
import { chordPoints } from './drawn.ts';
import { clipperHolds } from './libraries.ts';

test('many areas hold the places that their outlines enclose, asked all at once or one by one', () => {
  const ring = (x: number, y: number) =>
    `M${x} ${y}c3 0 4 2 4 4s-2 5 -5 5s-4 -3 -4 -5s2 -4 5 -4zM${x - 1} ${y + 3}h3v3h-3z`;
  const data = [0, 1, 2, 3, 4].flatMap((i) => [0, 1, 2].map((j) => ring(5 + i * 11.3, 2 + j * 10.7)));
  const shapes = filledShapes(parsePathData(data.join('')), 'evenodd', 0.003);
  const areas = shapes.map(({ contours }) =>
    clipperHolds(contours.map((contour) => chordPoints(contour, 0.0005))),
  );
  const edge = new NearestFinder(shapes.flatMap(({ contours }) => contours));
  const finder = new InsideFinder(shapes);
  const holders = new HolderFinder(shapes);
  let held = 0;
  for (let x = 0.11; x < 60; x += 0.83)
    for (let y = 0.07; y < 34; y += 0.71) {
      // On the edge, to within the chords' tolerance, either answer may come.
      if (edge.find({ x, y }, 0.005)) continue;
      const holding = areas.flatMap((holds, i) => (holds({ x, y }) ? [i] : []));
      const inside = holding.length > 0;
      expect(holders.holdersOf({ x, y }), `${x} ${y}`).toEqual(holding);
      expect(finder.holds({ x, y }), `${x} ${y}`).toBe(inside);
      expect(shapes.some((shape) => holdsPoint(shape, { x, y }))).toBe(inside);
      if (inside) held += 1;
    }
  expect(held).toBeGreaterThan(500);
});

test('of areas that lie around one another each place has its own', () => {
  // Gaps between 40 rings, each with a box that holds all the smaller ones; a quarter disc over them all.
  const arcs = (r: number) => `M${-r} 0A${r} ${r} 0 1 1 ${r} 0A${r} ${r} 0 1 1 ${-r} 0Z`;
  const gaps = Array.from({ length: 40 }, (_, i) =>
    filledShapes(parsePathData(arcs(i + 1) + arcs(i + 1.4)), 'evenodd', 0.003),
  ).flat();
  const over = filledShapes(parsePathData('M0 0H50A50 50 0 0 1 0 50Z'), 'nonzero', 0.003);
  const finder = new HolderFinder([...gaps, ...over]);
  for (let k = 0; k < 400; k++) {
    const [angle, r] = [0.05 + k * 2.4, 1.1 + (k % 200) * 0.2];
    const part = r - Math.floor(r);
    if (Math.abs(part - 0.4) < 0.01 || part < 0.01) continue;
    const p = { x: r * Math.cos(angle), y: r * Math.sin(angle) };
    const own = part < 0.4 ? [Math.floor(r) - 1] : [];
    const isOver = p.x > 0 && p.y > 0;
    expect([...finder.holdersOf(p)].sort((a, b) => a - b)).toEqual(isOver ? [...own, 40] : own);
  }
});

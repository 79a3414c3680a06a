import { describe, expect, it } from 'vitest';
import { polygon, type Shape } from '../../../src/geometry/contour.ts';
import { signedArea, tightBox } from '../../../src/geometry/measure.ts';
import { latticeOf } from '../../../src/pattern/lattice/lattice.ts';
import { periodOf, periodOfLayer, withPeriods } from '../../../src/pattern/period/period.ts';
import type { PeriodContour } from '../../../src/pattern/tile/cut-shapes.ts';
import { expectWithin } from '../../closeness.ts';
import { blob, box, circle, randomFrom } from '../../geometry/drawn.ts';
import { expectedArea, madeArea, makeWrap } from '../a-wrap.ts';
import { height, moveShape, shape, width, withCopies } from '../art.ts';
import { doubledLength, shapeFaults } from '../faults.ts';

const tile = { width, height };
const grid = latticeOf({ across: width, up: height, drop: 0, shift: 0 });
const area = (contours: readonly PeriodContour[]): number =>
  Math.abs(contours.reduce((sum, { contour }) => sum + signedArea(contour), 0));

describe('one period of the artwork', () => {
  const one = shape(blob(randomFrom(1), { x: 2, y: 3 }, 8));

  it('takes a shape that crosses every border once, with its own curves', () => {
    const period = periodOf(withCopies(one), tile, grid);
    expect(period.length).toBe(1);
    expect(period[0]?.borders.size).toBe(0);
    expect(period[0]?.contour.segments.length).toBe(one.contours[0]?.segments.length);
    expectWithin(area(period), Math.abs(signedArea(one.contours[0] ?? polygon([]))), 1e-12);
  });

  it('once worked out is taken as it is by all who lay the tile', () => {
    const layers = [{ name: 'film', colour: '#000000', shapes: withCopies(one) }];
    const [layer] = withPeriods({ ...tile, layers }, grid).layers;
    expect(layer?.period).toEqual(periodOf(withCopies(one), tile, grid));
    expect(layer && periodOfLayer(layer, tile, grid)).toBe(layer?.period);
  });

  it('knows a copy though its nodes are rounded, and numbered from elsewhere', () => {
    const turned = withCopies(one).map(({ contours: [contour] }, i): Shape => {
      const segments = contour?.segments ?? [];
      const from = i % segments.length;
      return shape({ closed: true, segments: [...segments.slice(from), ...segments.slice(0, from)] });
    });
    expect(periodOf(turned, tile, grid).length).toBe(1);
    const rounded = withCopies(one).map((copy, i) =>
      moveShape({ x: 0.003 * (i % 3), y: -0.002 * (i % 2) }, copy),
    );
    expect(periodOf(rounded, tile, grid).length).toBe(1);
  });

  it('cuts at the border what lacks a copy, and marks the border', () => {
    const period = periodOf([one], tile, grid);
    expect(period.every(({ borders }) => borders.size > 0)).toBe(true);
    const { minX, minY, maxX, maxY } = tightBox(period.map(({ contour }) => contour));
    for (const off of [minX, minY]) expectWithin(off, 0, 2e-4);
    expect(maxX).toBeLessThan(width);
    expect(maxY).toBeLessThan(height);
  });

  it('leaves out what the tile does not show', () => {
    expect(periodOf([shape(circle({ x: -20, y: 10 }, 5)), shape(box(width, 0, 9, 9))], tile, grid)).toEqual(
      [],
    );
  });

  it('counts a shape drawn twice as two, and each keeps its hole', () => {
    expect(periodOf([...withCopies(one), ...withCopies(one)], tile, grid).length).toBe(2);
  });

  it('cuts every shape at the border where the step is not the size of the tile', () => {
    const wider = latticeOf({ across: width + 5, up: height, drop: 0, shift: 0 });
    expect(periodOf(withCopies(one), tile, wider).length).toBe(4);
  });
});

const girth120 = { radius: 120 / (2 * Math.PI), around: 3, band: { from: 10, to: 46 }, width, height };

// Files come with two decimals of a px: 0.0026 mm.
describe('art rounded as drawing programs round it', () => {
  it.each([
    { title: 'a background a hair too narrow', shapes: [shape(box(0, 0, 39.998, 29.999))], count: 1 },
    { title: 'a background a hair too wide', shapes: [shape(box(-0.002, -0.001, 40.003, 30.002))], count: 1 },
    {
      title: 'a stripe that crosses the border with a jog',
      shapes: [
        shape(
          polygon([
            { x: -4, y: 10 },
            { x: 44, y: 10.003 },
            { x: 44, y: 15.003 },
            { x: -4, y: 15 },
          ]),
        ),
      ],
      count: 1,
    },
  ])('joins $title, with no stub and no line along the border', ({ shapes, count }) => {
    for (const setting of [{}, { lattice: { a: { x: 40, y: 0 }, b: { x: 3, y: -30 } } }, { sine: 0.1 }]) {
      const made = makeWrap({ ...girth120, shapes, ...setting });
      const found = made.wrap.layers[0]?.shapes ?? [];
      expect(made.wrap.mismatches).toEqual([]);
      expect(doubledLength(made.contours)).toBe(0);
      expect(shapeFaults(found)).toEqual([]);
      if (!('lattice' in setting)) expect(found.length).toBe(count);
      expectWithin(madeArea(made), expectedArea(made), 0.8);
    }
  });

  it('joins stripes and backgrounds of a tile whose size is rounded while its step is not', () => {
    // 226.77 px would be 59.9996 mm: here 39.9996 where 40 is meant.
    const made = makeWrap({
      ...girth120,
      width: 39.9996,
      lattice: { a: { x: 40, y: -4 }, b: { x: 0, y: -30 } },
      shapes: [shape(box(-3, 4, 46, 9)), shape(box(0.0004, 20, 39.9992, 5))],
    });
    expect(doubledLength(made.contours)).toBe(0);
  });

  it('leaves upright and level sides inside the tile where they are', () => {
    const [contour] = periodOf([shape(box(0.03, 5, 20, 10))], tile, grid);
    expect(tightBox(contour ? [contour.contour] : []).minX).toBe(0.03);
  });
});

describe('art that does not join', () => {
  it('is reported at its place, with the length left open', () => {
    // A straight stripe 5 mm wide that climbs 0.5 mm from border to border: by hand, two open edges of 0.5 mm a border,
    // at x = 0 of each tile and 15.5 to 20.5 mm above the tile's foot.
    const climb = (x: number) => (x / width) * 0.5;
    const stripe = polygon([
      { x: -4, y: 10 + climb(-4) },
      { x: 44, y: 10 + climb(44) },
      { x: 44, y: 15 + climb(44) },
      { x: -4, y: 15 + climb(-4) },
    ]);
    const { wrap } = makeWrap({ ...girth120, shapes: [shape(stripe)] });
    expect(wrap.mismatches.length).toBeGreaterThanOrEqual(2);
    for (const { turn, along, length, layer } of wrap.mismatches) {
      expect(layer).toBe('film');
      expectWithin(length, 0.5, 0.001);
      expectWithin((turn * 3) % 1, Math.round((turn * 3) % 1), 1e-4);
      const up = (along - 10) % 30;
      expect(
        Math.min(Math.abs(up - 15), Math.abs(up - 20), Math.abs(up - 14.5), Math.abs(up - 19.5)),
      ).toBeLessThan(0.01);
    }
  });

  it('is not what ends flush at the border beside its twin', () => {
    const { wrap } = makeWrap({ ...girth120, shapes: [shape(box(0, 5, 12, 8)), shape(box(30, 5, 10, 8))] });
    expect(wrap.mismatches).toEqual([]);
    expect(wrap.layers[0]?.shapes.every(({ contours }) => contours.length === 1)).toBe(true);
  });
});

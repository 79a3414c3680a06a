// A pattern cut onto gores: what it covers there against what it covers drawn, by the areas of the wall.
import { describe, expect, test } from 'vitest';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { clippedShapes } from '../../../src/geometry/regions.ts';
import { conformalGoreLay, evenGoreLay } from '../../../src/pattern/gores/gore-lay.ts';
import { type GorePatternOptions, gorePattern } from '../../../src/pattern/gores/gore-pattern.ts';
import { closingOf } from '../../../src/pattern/lattice/closing.ts';
import { goreOutline } from '../../../src/unroll/gores.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { circle } from '../../geometry/drawn.ts';
import { barrel } from '../../unroll/gore-walls.ts';
import { shape } from '../art.ts';

const wall = barrel(50, 120, 60, 1);
const band = { from: 10, to: 110 };
const girth = 2 * Math.PI * 50;

/** Discs so close that several lie across every edge, 20 mm apart both ways; drawn. */
const disc = shape(circle({ x: 10, y: 10 }, 6));
const lattice = { a: { x: 20, y: 0 }, b: { x: 0, y: 20 } };
const tile = { width: 20, height: 20, layers: [{ name: 'discs', colour: '#17566b', shapes: [disc] }] };
const closing = closingOf(lattice, {
  girth,
  patternHeight: 100,
  scale: 'across',
  wholeRows: false,
  around: 15,
});
if (!closing) throw new Error('it goes around');

const optionsFor = (count: number, more: Partial<GorePatternOptions> = {}): GorePatternOptions => ({
  tile,
  lattice,
  closing,
  lay: evenGoreLay(band, girth),
  wall,
  gores: { count, band, spacing: 3, levels: 'straight' },
  runOff: 1,
  ...more,
});

/** Area of the art that stays on the gores once they are cut out. */
function kept(options: GorePatternOptions): number {
  const { layers, fitError } = gorePattern(options);
  expectAtMost(fitError, 2.5e-4);
  const outline = [{ contours: [goreOutline(options.wall, options.gores)] }];
  return layers
    .flatMap(({ gores }) => gores)
    .reduce(
      (sum, shapes) =>
        sum +
        clippedShapes([...shapes], outline, 'intersection', 0.003).reduce((s, one) => s + shapeArea(one), 0),
      0,
    );
}

describe('a pattern on gores', () => {
  // Straight levels keep area (the sinusoidal projection is equal-area): so much of each level line as is drawn of it.
  test.each([6, 15, 16])('covers so much of the wall as is drawn, level by level, on %i gores', (count) => {
    const steps = 20_000;
    let area = 0;
    for (let i = 0; i < steps; i++) {
      const up = (100 * (i + 0.5)) / steps;
      // Five rows of 20 mm; a disc's chord is so much of 20 mm.
      const share = (2 * Math.sqrt(Math.max(0, 36 - ((up % 20) - 10) ** 2))) / 20;
      area += (2 * Math.PI * wall.at(band.from + up).radius * share * 100) / steps;
    }
    // A disc of four cubics is itself a little larger than a circle.
    const drawn = shapeArea(disc) / (36 * Math.PI);
    expectWithin(kept(optionsFor(count)) / (area * drawn), 1, 2e-5);
  });

  test('is the same on gores that stand alike to it', () => {
    const [layer] = gorePattern(optionsFor(15)).layers;
    expect(layer?.gores).toHaveLength(15);
    for (const gore of layer?.gores ?? []) expect(gore).toBe(layer?.gores[0]);
    const [other] = gorePattern(optionsFor(16)).layers;
    expect(new Set(other?.gores).size).toBe(16);
  });

  test('goes on under the overlap of the last gore alone', () => {
    const gores = { count: 15, band, spacing: 3, levels: 'straight', overlap: 5 } as const;
    const [layer] = gorePattern(optionsFor(15, { gores })).layers;
    const reach = (i: number) =>
      Math.max(
        ...(layer?.gores[i] ?? []).flatMap(({ contours }) =>
          contours.flatMap(({ segments }) => segments.map(({ to }) => to.x)),
        ),
      );
    const half = (Math.PI * 50) / 15;
    expectWithin(reach(14), half + 5 + 1, 0.02);
    // No disc reaches the edge of a gore that is just as wide as its tile.
    expectWithin(reach(0), half * 0.6, 0.02);
  });

  test('keeps the shape of its discs where angles are kept', () => {
    const gores = { count: 15, band, spacing: 3, levels: 'arcs' } as const;
    const both = closingOf(lattice, {
      girth,
      patternHeight: 100,
      scale: 'both',
      wholeRows: false,
      around: 15,
    });
    if (!both) throw new Error('it goes around');
    const lay = conformalGoreLay(wall, band, girth);
    const [layer] = gorePattern(optionsFor(15, { gores, lay, closing: both })).layers;
    const whole = (layer?.gores.flat() ?? []).filter(({ contours: [one] }) =>
      one?.segments.every(({ kind }) => kind === 'cubic'),
    );
    // Discs have their middles on the middle lines.
    const ratios = whole.flatMap(({ contours: [one] }) => {
      const points = one?.segments.map(({ to }) => to) ?? [];
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
      const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
      return Math.abs(Math.max(...xs) + Math.min(...xs)) < 0.1 ? [wide / high] : [];
    });
    expect(ratios.length).toBeGreaterThan(3);
    for (const ratio of ratios) expectWithin(ratio, 1, 0.02);
  });

  test('bends at the corners of a wall, and nowhere strays', () => {
    const corner = 60;
    const stepped = {
      at: (on: number) => ({ radius: 50 + Math.max(0, on - corner) * 0.3, slope: on > corner ? 0.3 : 0 }),
    };
    const gores = { count: 12, band, spacing: 3, levels: 'straight', corners: [corner] } as const;
    const pattern = gorePattern(optionsFor(12, { wall: stepped, gores }));
    expectAtMost(pattern.fitError, 2.5e-4);
    // A disc across the corner takes a node more on either side, not dozens.
    const most = Math.max(
      ...(pattern.layers[0]?.gores.flat() ?? []).map(({ contours }) => contours[0]?.segments.length ?? 0),
    );
    expect(most).toBeLessThan(20);
  });
});

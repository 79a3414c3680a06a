// Stripes: what the test draws is the truth.
import { describe, expect, test } from 'vitest';
import { readTile } from '../../../src/artwork/tile.ts';
import { moveContour, rotation } from '../../../src/geometry/affine.ts';
import { boxCorners } from '../../../src/geometry/box.ts';
import { polygon, type Shape } from '../../../src/geometry/contour.ts';
import { clippedShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';
import { freeStudyOf } from '../../../src/pattern/study/repeat-study.ts';
import { stripesRepeat } from '../../../src/pattern/study/stripes.ts';
import { expectWithin } from '../../closeness.ts';
import { box } from '../../geometry/drawn.ts';
import { pictureEngine } from '../../pictures/compare.ts';

const crop = { width: 60, height: 43 };
const frame: Shape = { contours: [polygon(boxCorners({ minX: 0, minY: 0, maxX: 60, maxY: 43 }))] };

/** A wide and a narrow stripe every 9 mm, turned by an angle and cropped. */
function striped(angle: number, count = 40): Shape[] {
  const bars = Array.from({ length: count }, (_, i) => 9 * (i - count / 2)).flatMap((y) => [
    box(-200, y + 1.3, 400, 3),
    box(-200, y + 6, 400, 0.8),
  ]);
  const shapes = bars.map((bar) => ({ contours: [moveContour(rotation(angle), bar)] }));
  return clippedShapes(shapes, [frame], 'intersection', chordTolerance);
}

const across = (p: { x: number; y: number }, angle: number) => -p.x * Math.sin(angle) + p.y * Math.cos(angle);

describe.each([0, Math.PI / 2, Math.PI / 4, 0.3, -0.7])('stripes turned by %d', (angle) => {
  test('repeat by a whole number of their own steps across, and by any step along', () => {
    const found = stripesRepeat({ layers: [{ shapes: striped(angle) }], ...crop }, 0.025);
    expect(found).toBeDefined();
    if (!found) return;
    const steps = [found.a, found.b].map((p) => Math.abs(across(p, angle) / 9));
    for (const step of steps) expectWithin(step, Math.round(step), 0.002, 'steps across');
    // Both steps together tell the step itself: neither is left out, and none is only every other.
    expect(Math.min(...steps.map(Math.round).filter((step) => step > 0))).toBe(1);
    expect(found.confidence).toBeGreaterThan(0.9);
  });
});

test('what has one edge that runs another way is no stripes, and one step shown hardly twice is none', () => {
  const shapes = striped(0);
  expect(stripesRepeat({ layers: [{ shapes }], ...crop }, 0.025)).toBeDefined();
  const more = [...shapes, { contours: [box(20, 5.1, 3, 0.7)] }];
  expect(stripesRepeat({ layers: [{ shapes: more }], ...crop }, 0.025)).toBeUndefined();
  const single = [{ contours: [box(0, 10, 60, 3)] }, { contours: [box(0, 22, 60, 5)] }];
  expect(stripesRepeat({ layers: [{ shapes: single }], ...crop }, 0.025)).toBeUndefined();
});

test('a crop of stripes is laid by them, and its own size is not taken for a repeat of them', () => {
  const study = freeStudyOf(
    { ...crop, layers: [{ name: 'ink', colour: '#123456', shapes: striped(0) }] },
    { a: { x: 60, y: 0 }, b: { x: 0, y: -43 } },
  );
  expect(study.joins).toBe(false);
  expectWithin(study.period?.b.y ?? 0, 9, 0.01, 'step');
  expect(study.period?.confidence).toBeGreaterThan(0.9);
});

test.each([33, -20])(
  'of a picture made of pixels, turned by %i degrees, repeat to half a pixel',
  async (degrees) => {
    const { rasterise, normalise } = await pictureEngine();
    const bars = Array.from({ length: 40 }, (_, i) => 9 * (i - 20)).map(
      (y) =>
        `<path fill="#17566b" d="M-200 ${y + 1.3}h400v3h-400Z"/><path d="M-200 ${y + 6}h400v0.8h-400Z"/>`,
    );
    const ground = '<rect width="60" height="43" fill="#fff"/>';
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 43">${ground}<g transform="rotate(${degrees})">${bars.join('')}</g></svg>`;
    const { tile } = readTile(rasterise(svg, 480), 'deck.png', normalise, { across: 60 });
    const { joins, period } = freeStudyOf(tile, { a: { x: 60, y: 0 }, b: { x: 0, y: -43 } });
    expect(joins).toBe(false);
    if (!period) throw new Error('no repeat was found');
    const angle = (degrees * Math.PI) / 180;
    const steps = [period.a, period.b].map((p) => Math.abs(across(p, angle)));
    for (const step of steps) expectWithin(step, 9 * Math.round(step / 9), 0.5 * (60 / 480), 'steps across');
    expect(Math.min(...steps.map((step) => Math.round(step / 9)).filter((step) => step > 0))).toBe(1);
    expect(period.confidence).toBeGreaterThan(0.9);
  },
);

test('waves of a picture are no stripes', async () => {
  const { rasterise, normalise } = await pictureEngine();
  const waves = Array.from({ length: 9 }, (_, i) => `<path d="M0 ${5 * i}q8 3 16 0t16 0t16 0t16 0v2H0Z"/>`);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 43"><rect width="60" height="43" fill="#fff"/>${waves.join('')}</svg>`;
  const { tile } = readTile(rasterise(svg, 480), 'waves.png', normalise, { across: 60 });
  expect(stripesRepeat(tile, 60 / 480)).toBeUndefined();
});

// Lines put into pixels: where they are, as wide as they are said to be, and nothing beside the window.
import { expect, test } from 'vitest';
import { inkOf } from '../../src/job/view/ink.ts';
import { blankPixels, drawHairlines, fillPixels, type LineLook } from '../../src/page/board/hairlines.ts';
import { InkChords } from '../../src/page/board/ink-chords.ts';

const paper = '#faf7ef';
const size = 40;

/** Path data drawn on bare paper, true to a tenth of a pixel. */
function drawn(data: string, look: Pick<LineLook, 'scale' | 'origin' | 'width'>) {
  const pixels = blankPixels(size, size);
  fillPixels(pixels, paper);
  const chords = new InkChords();
  chords.follow(inkOf(data), 0.1 / look.scale);
  drawHairlines(pixels, chords, { ...look, colour: '#000000', paper });
  return pixels;
}

/** As path data is written. */
const round = (value: number): number => Math.round(value * 1e4) / 1e4;

/** How much of each pixel lines from place to place cover, of 1. */
function covered(width: number, ...places: readonly (readonly [number, number])[]) {
  const steps = places.map(
    ([x, y], i) => `${i === 0 ? 'M' : 'L'}${round((x - 1) / 2)} ${round((y - 3) / 2)}`,
  );
  const pixels = drawn(steps.join(''), { scale: 2, origin: { x: 1, y: 3 }, width });
  const reds = new Uint8Array(pixels.colours.buffer).filter((_, i) => i % 4 === 0);
  return (x: number, y: number): number => 1 - (reds[y * size + x] ?? Number.NaN) / 0xfa;
}

const all = Array.from({ length: size * size }, (_, i) => [i % size, Math.floor(i / size)] as const);

test.each([
  [1, 8.2, 20.7, 31.9, 20.7],
  [1, 20.5, 5, 20.5, 33],
  [1, 6, 7, 31, 30],
  [2, 30, 11, 5.5, 22],
  [3, 12, 34, 24, 4],
])(
  'a line %d wide from %d, %d to %d, %d covers its length times its width, where it is',
  (width, ax, ay, bx, by) => {
    const at = covered(width, [ax, ay], [bx, by]);
    const length = Math.hypot(bx - ax, by - ay);
    const sum = all.reduce((total, [x, y]) => total + at(x, y), 0);
    // Up to a pixel more at each end, counted along the line.
    expect(sum / width).toBeGreaterThan(length * 0.97);
    expect(sum / width).toBeLessThan(length + 3);
    for (const [x, y] of all.filter(([x, y]) => at(x, y) > 0.02)) {
      const off = Math.abs((x + 0.5 - ax) * (by - ay) - (y + 0.5 - ay) * (bx - ax)) / length;
      expect(off).toBeLessThan(width / 2 + Math.SQRT1_2);
    }
  },
);

test('where a line turns, no pixel of its way is left open', () => {
  const at = covered(1, [5, 5], [22.3, 9.6], [24.9, 30.2], [6.1, 27.4], [5, 5]);
  for (const [x, y] of [
    [22, 9],
    [24, 30],
    [6, 27],
    [5, 5],
  ] as const)
    expect(at(x, y) + at(x - 1, y) + at(x, y - 1) + at(x - 1, y - 1)).toBeGreaterThan(0.9);
});

test('what passes beside the window, or out of it, is cut off at its edge', () => {
  const beside = covered(1, [-50, -20], [90, -3]);
  expect(all.every(([x, y]) => beside(x, y) < 0.02)).toBe(true);
  const across = covered(1, [-500, 20.5], [900, 20.5]);
  expect(across(0, 20)).toBeGreaterThan(0.98);
  expect(across(size - 1, 20)).toBeGreaterThan(0.98);
});

test('a curve goes through the middle that its points say', () => {
  const { covered } = drawn('M4 4C4 36 36 36 36 4', { scale: 1, origin: { x: 0, y: 0 }, width: 1 });
  // By its parameter a half: (4 + 3 * 4 + 3 * 36 + 36) / 8 across and (4 + 3 * 36 + 3 * 36 + 4) / 8 up.
  expect((covered[27 * size + 20] ?? 0) + (covered[28 * size + 20] ?? 0)).toBeGreaterThan(230);
});

test('shapes are not joined, a closed one goes back to where it began, and only as many are drawn as are asked for', () => {
  const ink = inkOf('M2 2L12 2L12 12Z\nM22 22C22 30 30 30 30 22');
  const chords = new InkChords();
  chords.follow(ink, 0.1);
  const place = (i: number) => [chords.places[2 * i], chords.places[2 * i + 1]];
  expect([0, 1, 2, 3, 4].map(place)).toEqual([
    [2, 2],
    [12, 2],
    [12, 12],
    [2, 2],
    [22, 22],
  ]);
  expect(place(chords.count - 1)).toEqual([30, 22]);
  expect([...chords.begins.subarray(0, chords.count)].flatMap((begins, i) => (begins ? [i] : []))).toEqual([
    0, 4,
  ]);
  chords.follow(ink, 0.1, 1);
  expect(chords.count).toBe(4);
});

// The transform against its definition, summed term by term.
import { expect, test } from 'vitest';
import { transform } from '../../src/geometry/fourier.ts';
import { randomFrom } from './drawn.ts';

test('gives the sums of its definition, and comes back', () => {
  const random = randomFrom(2);
  const [width, height] = [8, 4];
  const [re, im] = [0, 1].map(() => Float64Array.from({ length: width * height }, () => random() - 0.5));
  if (!re || !im) throw new Error('two parts');
  const grid = { width, height, re: Float64Array.from(re), im: Float64Array.from(im) };
  transform(grid, 'forward');
  for (let v = 0; v < height; v++)
    for (let u = 0; u < width; u++) {
      let [sumRe, sumIm] = [0, 0];
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const angle = -2 * Math.PI * ((u * x) / width + (v * y) / height);
          const [p, q] = [re[y * width + x] ?? 0, im[y * width + x] ?? 0];
          sumRe += p * Math.cos(angle) - q * Math.sin(angle);
          sumIm += p * Math.sin(angle) + q * Math.cos(angle);
        }
      expect(grid.re[v * width + u]).toBeCloseTo(sumRe, 10);
      expect(grid.im[v * width + u]).toBeCloseTo(sumIm, 10);
    }
  transform(grid, 'inverse');
  for (let i = 0; i < width * height; i++) {
    expect(grid.re[i]).toBeCloseTo(re[i] ?? 0, 12);
    expect(grid.im[i]).toBeCloseTo(im[i] ?? 0, 12);
  }
});

test('a side that is no power of two is refused', () => {
  const [re, im] = [new Float64Array(12), new Float64Array(12)];
  expect(() => transform({ width: 4, height: 3, re, im }, 'forward')).toThrow(/power of two/);
});

// How close two ends are, in words. An inch is 25.4 mm (international yard and pound agreement of 1959).
import { expect, test } from 'vitest';
import { gapAngle, gapLength } from '../../src/lengths/closeness.ts';

test('a gap is told as finely as it is measured, and what is finer is not told as none', () => {
  expect(gapLength(0.0254, 'mm')).toBe('to within 0.0254 mm');
  expect(gapLength(0.0254, 'in')).toBe('to within 0.00100 in');
  expect(gapLength(3e-5, 'mm')).toBe('closer than 0.0001 mm');
  expect(gapLength(0, 'in')).toBe('closer than 0.00001 in');
  expect(gapAngle(0.00876)).toBe('to within 0.0088°');
  expect(gapAngle(1e-7)).toBe('closer than 0.0001°');
});

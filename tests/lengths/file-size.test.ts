import { expect, test } from 'vitest';
import { mostFileBytes, tooLarge } from '../../src/lengths/file-size.ts';

test('a file up to the limit is read, and one byte more is not told as if it were as large', () => {
  expect(tooLarge(mostFileBytes)).toBeUndefined();
  expect(tooLarge(mostFileBytes + 1)).toBe('is 50.1 MB; up to 50 MB is read');
  expect(tooLarge(1_000_000_000)).toBe('is 1000 MB; up to 50 MB is read');
  expect(tooLarge(60_000_000, 'would be unpacked')).toBe('would be 60 MB unpacked; up to 50 MB is read');
});

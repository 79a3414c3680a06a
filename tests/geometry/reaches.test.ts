import fc from 'fast-check';
import { expect, test } from 'vitest';
import { longestRun, reaches } from '../../src/geometry/reaches.ts';

const rows = fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 60 });

/** Holds for two neighbours and for every part of what it holds for: spread over a run no more than a limit. */
const within = (values: readonly number[], most: number) => (start: number, end: number) => {
  const run = values.slice(start, end + 1);
  return end - start < 2 || Math.max(...run) - Math.min(...run) <= most;
};

test('each start reaches as far as trying every end finds', () => {
  fc.assert(
    fc.property(rows, fc.integer({ min: 0, max: 20 }), (values, most) => {
      const holds = within(values, most);
      const tried = values.map((_, start) => {
        let end = Math.min(start + 1, values.length - 1);
        while (end + 1 < values.length && holds(start, end + 1)) end++;
        return end;
      });
      expect(reaches(values.length, holds)).toEqual(tried);
    }),
    { seed: 43, numRuns: 500 },
  );
});

test('a run of a thousand that always holds is asked about only a few times', () => {
  let asked = 0;
  const ends = reaches(1000, () => {
    asked++;
    return true;
  });
  expect(new Set(ends)).toEqual(new Set([999]));
  expect(asked).toBeLessThan(25);
});

test('where each start reaches as far as the next, each is asked about a few times', () => {
  let asked = 0;
  const ends = reaches(1000, (start, end) => {
    asked++;
    return end - start <= 300;
  });
  expect(ends.slice(0, 700)).toEqual(Array.from({ length: 700 }, (_, start) => start + 300));
  expect(asked).toBeLessThan(4 * 1000);
});

test('the longest run is the first of equals, and no longer than the part it is looked for in', () => {
  const places = [0, 10, 20.0000000001, 30, 37];
  expect(longestRun(places, [1, 2, 3, 4, 4], 0, 4)).toEqual({ start: 0, end: 1 });
  expect(longestRun(places, [2, 4, 4, 4, 4], 0, 4)).toEqual({ start: 1, end: 4 });
  expect(longestRun(places, [2, 4, 4, 4, 4], 0, 3)).toEqual({ start: 0, end: 2 });
  expect(longestRun(places, [1, 2, 3, 4, 4], 2, 2)).toBeUndefined();
});

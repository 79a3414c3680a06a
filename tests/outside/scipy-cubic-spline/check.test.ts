// Source: SciPy's cubic spline, see source.md.
import { expect, test } from 'vitest';
import { splineAt, splineThrough } from '../../../src/blank/spline.ts';
import { expectWithin } from '../../closeness.ts';
import values from './values.json' with { type: 'json' };

test.each(values.cases)(
  'the spline through $name is the one of the other library, ends and beyond',
  (given) => {
    const spline = splineThrough(given.x, given.y);
    expect(given.at.length).toBe(9);
    given.at.forEach((at, i) => {
      const got = splineAt(spline, at);
      expectWithin(got.value, given.value[i] ?? Number.NaN, 1e-10, `value at ${at}`);
      expectWithin(got.first, given.first[i] ?? Number.NaN, 1e-11, `slope at ${at}`);
      expectWithin(got.second, given.second[i] ?? Number.NaN, 1e-11, `second derivative at ${at}`);
    });
  },
);

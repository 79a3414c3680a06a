// What coats add to a girth, in closed form.
import { expect, test } from 'vitest';
import { coatGrowths, thicknessUnder } from '../../src/blank/coats.ts';
import { expectWithin } from '../closeness.ts';

const coats = [
  { name: 'top', thickness: 0.3, over: true },
  { name: 'base', thickness: 0.4, over: false },
  { name: 'colour', thickness: 0.1, over: false },
];

test('coats under the film go on first, each by two pi times its thickness along the normal', () => {
  const lean = 0.2;
  const [base, colour, top, ...others] = coatGrowths(coats, { girth: 250, lean, film: 0.08 });
  expect(others).toEqual([]);
  expect([base?.name, colour?.name, top?.name]).toEqual(['base', 'colour', 'top']);
  const grown = (mm: number) => 250 + 2 * Math.PI * mm * Math.cos(lean);
  expectWithin(base?.girthAfter ?? 0, grown(0.4), 1e-12);
  expectWithin(colour?.girthAfter ?? 0, grown(0.5), 1e-12);
  // Over the film the film is counted too.
  expectWithin(top?.girthAfter ?? 0, grown(0.88), 1e-12);
  expectWithin(thicknessUnder(coats), 0.5, 1e-12);
});

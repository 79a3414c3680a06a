// The search for a nest ends, whatever lies beside what.
import { expect, test } from 'vitest';
import { nest } from '../../src/sheet/nest.ts';

const rectangle = (across: number, up: number) => ({
  outline: [
    { x: 0, y: 0 },
    { x: across, y: 0 },
    { x: across, y: up },
    { x: 0, y: up },
  ],
  count: 1,
  turns: [0, Math.PI / 2],
});

// The sheet used to be shortened below what the long piece needs, down to the small one: nothing overlapped, and it went on for good.
test('one sheet is never shorter than its longest piece at its best turn', () => {
  const last = [
    ...nest(
      [rectangle(240, 107), rectangle(28, 28)],
      { length: 290, height: 290 },
      { trials: 4000, seed: 1 },
    ),
  ].at(-1);
  expect(last?.sheets).toBe(1);
  expect(last?.lastUsed).toBeCloseTo(107, 4);
});

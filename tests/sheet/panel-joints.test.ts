import { expect, test } from 'vitest';
import { panelJoints } from '../../src/sheet/panel-joints.ts';

const places = (cost: (at: number) => number) =>
  Array.from({ length: 99 }, (_, i) => ({ at: (i + 1) / 100, cost: cost((i + 1) / 100) }));

const noWiderThan = (width: number) => (from: number, to: number) => to - from <= width + 1e-9;

test('a template that fits has no joint', () => {
  expect(panelJoints({ from: 0, to: 1, places: places(() => 1), fits: noWiderThan(1) })).toEqual([]);
});

test('there are as few panels as can be, and the joint stands where it costs least', () => {
  const cost = (at: number) => (Math.abs(at - 0.43) < 1e-9 ? 0 : 1);
  expect(panelJoints({ from: 0, to: 1, places: places(cost), fits: noWiderThan(0.6) })).toEqual([0.43]);
  // The cheapest place would need three panels where two do.
  const far = (at: number) => (Math.abs(at - 0.3) < 1e-9 ? 0 : at);
  expect(panelJoints({ from: 0, to: 1, places: places(far), fits: noWiderThan(0.6) })).toEqual([0.4]);
});

// Every choice tried: the slow way that needs no argument.
test('no other joints of as few panels cost less', () => {
  const costs = [5, 3, 8, 1, 9, 2, 6, 4, 7];
  const some = costs.map((cost, i) => ({ at: (i + 1) / 10, cost }));
  for (const width of [0.2, 0.3, 0.4, 0.6]) {
    const joints = panelJoints({ from: 0, to: 1, places: some, fits: noWiderThan(width) }) ?? [];
    const costOf = (chosen: readonly number[]) =>
      chosen.reduce((sum, at) => sum + (some.find((place) => place.at === at)?.cost ?? 0), 0);
    const all = Array.from({ length: 2 ** 9 }, (_, mask) =>
      some.filter((__, i) => mask & (1 << i)).map(({ at }) => at),
    );
    const possible = all.filter((chosen) =>
      [...chosen, 1].every((at, i) => noWiderThan(width)([0, ...chosen][i] ?? 0, at)),
    );
    const fewest = Math.min(...possible.map(({ length }) => length));
    const cheapest = Math.min(...possible.filter(({ length }) => length === fewest).map(costOf));
    expect(joints).toHaveLength(fewest);
    expect(costOf(joints)).toBe(cheapest);
  }
});

test('a sheet that takes no panel is said to', () => {
  expect(panelJoints({ from: 0, to: 1, places: places(() => 0), fits: () => false })).toBeUndefined();
});

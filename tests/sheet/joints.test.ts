// Joints chosen by dynamic programming, held against trying every choice there is.
import { describe, expect, test } from 'vitest';
import { chooseJoints, type JointOptions } from '../../src/sheet/joints.ts';
import { expectWithin } from '../closeness.ts';
import { randomFrom } from '../geometry/drawn.ts';

/** Whether a choice of places makes panels that all may be. */
function holds(joints: readonly number[], { from, to, longest, shortest }: JointOptions): boolean {
  const ends = [from, ...joints, to];
  return ends.slice(1).every((end, i) => {
    const length = end - (ends[i] ?? 0);
    const most = i === 0 ? longest.first : i === ends.length - 2 ? longest.last : longest.inner;
    return length >= shortest && length <= most;
  });
}

/** The fewest joints and their least cost, by trying all. */
function byTrying(options: JointOptions): { readonly count: number; readonly cost: number } | undefined {
  const { places, costs } = options;
  let best: { readonly count: number; readonly cost: number } | undefined;
  for (let mask = 1; mask < 2 ** places.length; mask++) {
    const chosen = places.flatMap((_, i) => (mask & (1 << i) ? [i] : []));
    if (
      !holds(
        chosen.map((i) => places[i] ?? 0),
        options,
      )
    )
      continue;
    const found = { count: chosen.length, cost: chosen.reduce((sum, i) => sum + (costs[i] ?? 0), 0) };
    if (!best || found.count < best.count || (found.count === best.count && found.cost < best.cost))
      best = found;
  }
  return best;
}

describe('joints', () => {
  test('are as few as can be, and of so few the cheapest', () => {
    const random = randomFrom(11);
    let found = 0;
    for (let round = 0; round < 200; round++) {
      const places = Array.from({ length: 11 }, (_, i) => (i + 0.2 + 0.6 * random()) / 11);
      const options: JointOptions = {
        places,
        costs: places.map(() => Math.round(100 * random())),
        from: 0,
        to: 1,
        longest: { first: 0.2 + 0.4 * random(), inner: 0.15 + 0.4 * random(), last: 0.2 + 0.4 * random() },
        shortest: 0.05,
      };
      const wanted = byTrying(options);
      const joints = chooseJoints(options);
      expect(joints?.length).toBe(wanted?.count);
      if (!joints || !wanted) continue;
      found++;
      expect(holds(joints, options)).toBe(true);
      const cost = joints.reduce((sum, joint) => sum + (options.costs[places.indexOf(joint)] ?? 0), 0);
      expectWithin(cost, wanted.cost, 0.1);
    }
    expect(found).toBeGreaterThan(100);
  });

  test('are even where every place costs the same', () => {
    const places = Array.from({ length: 299 }, (_, i) => (i + 1) / 300);
    const joints = chooseJoints({
      places,
      costs: places.map(() => 0),
      from: 0,
      to: 1,
      longest: { first: 0.4, inner: 0.4, last: 0.4 },
      shortest: 0.01,
    });
    expect(joints).toHaveLength(2);
    expectWithin(joints?.[0] ?? 0, 1 / 3, 1e-9);
    expectWithin(joints?.[1] ?? 0, 2 / 3, 1e-9);
  });

  test('are none where a stretch between places is longer than any panel', () => {
    const options = { from: 0, to: 1, longest: { first: 0.3, inner: 0.3, last: 0.3 }, shortest: 0 };
    expect(chooseJoints({ ...options, places: [0.2, 0.4, 0.8], costs: [0, 0, 0] })).toBeUndefined();
    expect(chooseJoints({ ...options, places: [], costs: [] })).toBeUndefined();
  });
});

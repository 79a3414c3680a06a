// Rings that cross or touch themselves nowhere, told side by side: against the definition, on a coarse grid where much touches.
// Source: segments meet where each has the ends of the other on both sides, or an end on it (Cormen et al., Introduction to
// Algorithms, segment intersection, from memory).
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crossesNothing } from '../../src/geometry/simple-ring.ts';

type Corner = readonly [x: number, y: number];

const side = (ring: readonly Corner[], k: number): readonly [Corner, Corner] => [
  ring[k % ring.length] ?? [0, 0],
  ring[(k + 1) % ring.length] ?? [0, 0],
];

const hand = ([ax, ay]: Corner, [bx, by]: Corner, [px, py]: Corner): number =>
  Math.sign((bx - ax) * (py - ay) - (by - ay) * (px - ax));

const isOn = (a: Corner, b: Corner, p: Corner): boolean =>
  hand(a, b, p) === 0 && [0, 1].every((i) => ((a[i] ?? 0) - (p[i] ?? 0)) * ((b[i] ?? 0) - (p[i] ?? 0)) <= 0);

const meet = ([a, b]: readonly [Corner, Corner], [c, d]: readonly [Corner, Corner]): boolean =>
  (hand(a, b, c) * hand(a, b, d) < 0 && hand(c, d, a) * hand(c, d, b) < 0) ||
  isOn(a, b, c) ||
  isOn(a, b, d) ||
  isOn(c, d, a) ||
  isOn(c, d, b);

/** Sides that follow on each other have one corner in common; all others nothing. A side that goes on straight counts as touching. */
function isSimple(ring: readonly Corner[]): boolean {
  const count = ring.length;
  for (let i = 0; i < count; i++)
    for (let j = i + 1; j < count; j++) {
      const [one, other] = [side(ring, i), side(ring, j)];
      const isNext = j === i + 1 || (i === 0 && j === count - 1);
      if (!isNext && meet(one, other)) return false;
      const [before, after] = j === i + 1 ? [one, other] : [other, one];
      if (isNext && hand(before[0], before[1], after[1]) === 0) return false;
    }
  return true;
}

const told = (ring: readonly Corner[]): boolean =>
  crossesNothing(
    ring.map(([x]) => x),
    ring.map(([, y]) => y),
    1,
  );

const anywhere = fc.array(fc.tuple(fc.nat(60), fc.nat(60)), { minLength: 3, maxLength: 60 });
/** Around a middle, farther and nearer: mostly simple, and of many sides. */
const star = fc.array(fc.nat(4000), { minLength: 3, maxLength: 200 }).map((spokes) =>
  spokes.map((by, i): Corner => {
    const angle = (2 * Math.PI * i) / spokes.length;
    const radius = 3000 + by;
    return [Math.round(radius * Math.cos(angle)), Math.round(radius * Math.sin(angle))];
  }),
);
/** A star with one corner moved anywhere: it crosses in one place, or not. */
const pulled = fc
  .tuple(star, fc.nat(), fc.tuple(fc.nat(8000), fc.nat(8000)))
  .map(([ring, at, to]) =>
    ring.map((corner, i): Corner => (i === at % ring.length ? [to[0] - 4000, to[1] - 4000] : corner)),
  );

test('a ring crosses or touches itself nowhere exactly where no two of its sides meet', () => {
  const seen = { simple: 0, crossed: 0 };
  fc.assert(
    fc.property(fc.oneof(anywhere, star, pulled), (ring) => {
      const simple = isSimple(ring);
      seen[simple ? 'simple' : 'crossed']++;
      expect(told(ring)).toBe(simple);
    }),
    { seed: 63, numRuns: 2000 },
  );
  expect(Math.min(seen.simple, seen.crossed)).toBeGreaterThan(300);
});

import { expect, test } from 'vitest';
import { clipPolygons } from '../../../src/geometry/polygon-clip.ts';
import { type Nest, type NestPlace, nest } from '../../../src/sheet/nest.ts';
import { fillOf, type Instance, instances } from './instances.ts';
import values from './values.json' with { type: 'json' };

/** A short search, so that the tests stay quick; the bench runs the long one. */
const trials = 150_000;

function nested({ kinds, height }: Instance): Nest {
  let last: Nest | undefined;
  for (const layout of nest(kinds, { length: Infinity, height }, { trials, seed: 1 }))
    if (layout) last = layout;
  if (!last) throw new Error('nothing was laid');
  return last;
}

const gridPerUnit = 1e4;
const laid = ({ kinds }: Instance, { kind, turn, x, y }: NestPlace) =>
  (kinds[kind]?.outline ?? []).map((p) => ({
    x: Math.round((p.x * Math.cos(turn) - p.y * Math.sin(turn) + x) * gridPerUnit),
    y: Math.round((p.x * Math.sin(turn) + p.y * Math.cos(turn) + y) * gridPerUnit),
  }));

const areaOf = (ring: readonly { readonly x: number; readonly y: number }[]): number =>
  Math.abs(
    ring.reduce((sum, p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      return sum + (p.x * q.y - p.y * q.x) / 2;
    }, 0),
  ) /
  gridPerUnit ** 2;

test.each(instances)('$name is nested whole, without an overlap and inside its strip', (instance) => {
  const layout = nested(instance);
  const rings = layout.places.map((place) => laid(instance, place));
  const count = instance.kinds.reduce((sum, kind) => sum + kind.count, 0);
  expect(rings).toHaveLength(count);
  const each = instance.kinds.map((_, kind) => layout.places.filter((place) => place.kind === kind).length);
  expect(each).toEqual(instance.kinds.map((kind) => kind.count));
  // A boolean by clipper2-ts: what two pieces have in common is nothing but rounding.
  const worst = Math.max(
    ...rings.flatMap((a, i) =>
      rings
        .slice(i + 1)
        .map((b) =>
          clipPolygons('intersection', [a], [b], 'nonzero').reduce(
            (sum, { outer }) => sum + areaOf(outer),
            0,
          ),
        ),
    ),
  );
  expect(worst).toBeLessThan(instance.area * 1e-7);
  const points = rings.flat().map(({ x, y }) => ({ x: x / gridPerUnit, y: y / gridPerUnit }));
  const hair = instance.height * 1e-6 + 1 / gridPerUnit;
  expect(Math.min(...points.map(({ x }) => x))).toBeGreaterThan(-hair);
  expect(Math.min(...points.map(({ y }) => y))).toBeGreaterThan(-hair);
  expect(Math.max(...points.map(({ y }) => y))).toBeLessThan(instance.height + hair);
  expect(Math.max(...points.map(({ x }) => x))).toBeLessThan(layout.lastUsed + hair);
  // How near the best fill published a search of a second comes; above it something would be wrong.
  const share = fillOf(instance, layout) / instance.bestFill;
  expect(share).toBeGreaterThan(0.76);
  expect(share).toBeLessThan(1.0001);
});

test('all instances of the source are read', () => {
  expect(instances.map(({ name }) => name)).toEqual(values.map(({ name }) => name));
});

test('the same seed gives the same layout', () => {
  const [first] = instances;
  if (!first) throw new Error('no instance');
  expect(nested(first)).toEqual(nested(first));
});

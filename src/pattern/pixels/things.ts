// What a picture shows as things of their own: connected parts that are not its ground. Each may have been put down by itself, so what is
// seen of one is seen once, however many blocks lie on it.
import { Joined } from '../../geometry/joined.ts';
import type { Point } from '../../geometry/point.ts';
import type { Planes } from './planes.ts';
import type { Looked, StepSeen } from './step-blocks.ts';

/** The parts of a picture: of each pixel the number of its part, 0 for ground; and of each part how far it goes, px. */
export interface Things {
  readonly labels: Int32Array;
  readonly extents: readonly number[];
}

/** Shades that a channel is told apart in to find the ground, the commonest colour. */
const shades = 24;

/** What differs from the ground by more than this many deviations of noise is none. */
const beyondNoise = 3;

export function thingsIn({ picture, variance, noise }: Looked): Things {
  const { width, height } = picture;
  const ground = groundOf(picture);
  const least = Math.max(variance, beyondNoise ** 2 * noise);
  const labels = new Int32Array(width * height);
  for (let i = 0; i < labels.length; i++) {
    let squares = 0;
    for (const [k, plane] of picture.planes.entries()) squares += ((plane[i] ?? 0) - (ground[k] ?? 0)) ** 2;
    labels[i] = squares > least ? -1 : 0;
  }
  const extents = [0];
  for (let i = 0; i < labels.length; i++)
    if (labels[i] === -1) extents.push(filled(labels, width, i, extents.length));
  return { labels, extents };
}

/** The mean of the commonest colour. */
function groundOf({ planes }: Planes): readonly number[] {
  const ranges = planes.map((plane) => {
    let [low, high] = [Infinity, -Infinity];
    for (const value of plane) [low, high] = [Math.min(low, value), Math.max(high, value)];
    return { low, per: shades / Math.max(1e-9, high - low) };
  });
  const bins = new Map<number, { count: number; readonly sums: number[] }>();
  const count = planes[0]?.length ?? 0;
  for (let i = 0; i < count; i++) {
    let key = 0;
    for (const [k, { low, per }] of ranges.entries())
      key = key * (shades + 1) + Math.floor(((planes[k]?.[i] ?? 0) - low) * per);
    const bin = bins.get(key) ?? { count: 0, sums: planes.map(() => 0) };
    bins.set(key, bin);
    bin.count++;
    for (const [k, plane] of planes.entries()) bin.sums[k] = (bin.sums[k] ?? 0) + (plane[i] ?? 0);
  }
  let most = { count: 0, sums: [] as readonly number[] };
  for (const bin of bins.values()) if (bin.count > most.count) most = bin;
  return most.sums.map((sum) => sum / Math.max(1, most.count));
}

/** One part given its number; its longer side, px. */
function filled(labels: Int32Array, width: number, from: number, label: number): number {
  const stack = [from];
  labels[from] = label;
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = stack.pop(); i !== undefined; i = stack.pop()) {
    const [x, y] = [i % width, Math.floor(i / width)];
    [minX, minY, maxX, maxY] = [Math.min(minX, x), Math.min(minY, y), Math.max(maxX, x), Math.max(maxY, y)];
    for (let v = -1; v <= 1; v++)
      for (let u = x > 0 ? -1 : 0; u <= (x < width - 1 ? 1 : 0); u++) {
        const j = i + v * width + u;
        if (labels[j] !== -1) continue;
        labels[j] = label;
        stack.push(j);
      }
  }
  return 1 + Math.max(maxX - minX, maxY - minY);
}

/** Parts that go as far as a step are nets, and ground is one: of those what lies so much of a step apart was drawn by itself. */
const partOfStep = 1 / 3;

/** What blocks that show again say of things: how many show again beyond the two that any two steps are made by, and how many nowhere do. */
export interface ThingsSeen {
  readonly beyond: number;
  readonly alone: number;
}

/** Blocks of several steps of a lattice weighed by the things that they lie on. `shortest`: its shortest step, px. */
export function thingsSeen(
  { labels, extents }: Things,
  { width }: Pick<Planes, 'width'>,
  steps: readonly StepSeen[],
  shortest: number,
): ThingsSeen {
  const ids = new Map<string, number>();
  const cell = partOfStep * shortest;
  const idOf = (at: Point, side: number): number => {
    const label = mostOf(labels, width, at, side);
    const isNet = label === 0 || (extents[label] ?? 0) >= shortest;
    const place = (p: number) => Math.floor((p + side / 2) / cell);
    const key = isNet ? `${label} ${place(at.x)} ${place(at.y)}` : `${label}`;
    const id = ids.get(key) ?? ids.size;
    ids.set(key, id);
    return id;
  };
  const pairs = steps.flatMap(({ blocks, side, step }) =>
    blocks.map(({ at, isAgain }) => {
      const there = { x: Math.round(at.x + step.x), y: Math.round(at.y + step.y) };
      return { isAgain, one: idOf(at, side), other: idOf(there, side) };
    }),
  );
  const joined = new Joined(ids.size);
  const again = new Set<number>();
  let made = 0;
  for (const { isAgain, one, other } of pairs) {
    if (!isAgain) continue;
    again.add(one).add(other);
    if (joined.root(one) === joined.root(other)) continue;
    joined.join(one, other);
    made++;
  }
  return { beyond: made - 2, alone: ids.size - again.size };
}

/** The part that most of a block shows. */
function mostOf(labels: Int32Array, width: number, at: Point, side: number): number {
  const counts = new Map<number, number>();
  for (let y = at.y; y < at.y + side; y++)
    for (let i = y * width + at.x; i < y * width + at.x + side; i++) {
      const label = labels[i] ?? 0;
      if (label > 0) counts.set(label, (counts.get(label) ?? 0) + 1);
    }
  let [best, most] = [0, 0];
  for (const [label, count] of counts) if (count > most) [best, most] = [label, count];
  return best;
}

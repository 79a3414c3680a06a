// Finding the repeat of two thousand, six thousand and twenty thousand shapes: processor time, and how it grows.
import type { Shape } from '../../src/geometry/contour.ts';
import { trueRepeat } from '../../src/pattern/repeat/true-repeat.ts';
import { randomFrom } from '../geometry/drawn.ts';
import { cropOf, motifsIn } from '../pattern/a-crop.ts';
import { type Comparison, counted } from './harness.ts';

/** What a crop of 120 mm shows of a lattice of 75 mm, so many shapes in all; the place of the crop is fixed. */
function cropWith(shapes: number): { readonly shapes: readonly Shape[] }[] {
  const random = randomFrom(3);
  const lattice = { a: { x: 75, y: 0 }, b: { x: 0, y: 75 } };
  const motifs = motifsIn(lattice, Math.round((shapes * 75 * 75) / (120 * 120)), random);
  return [
    { shapes: cropOf({ lattice, motifs, width: 120, height: 120, at: { x: 7, y: 11 }, random, cut: false }) },
  ];
}

/** Processor time of one search, ms: on a machine that does more than this, the clock tells nothing. */
function processorTime(work: () => unknown): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

export function repeatComparisons(): Comparison[] {
  // Once to warm up: parsing and compiling are not what grows.
  trueRepeat(cropWith(500), { width: 120, height: 120 });
  const seen = [2000, 6000, 20_000].map((count) => {
    const layers = cropWith(count);
    const shown = layers[0]?.shapes.length ?? 0;
    let found = 0;
    const time = processorTime(() => {
      found = trueRepeat(layers, { width: 120, height: 120 }).length;
    });
    if (found === 0) throw new Error(`no repeat found among ${shown} shapes`);
    return { shown, time };
  });
  const [small, , large] = seen;
  if (!small || !large) return [];
  const nLogN = (n: number) => n * Math.log(n);
  return [
    ...seen.map(({ shown, time }) =>
      counted(`find the repeat of ${shown} shapes, processor time`, time, 10_000, 'ms'),
    ),
    counted(
      `its growth from ${small.shown} to ${large.shown} shapes, against n log n`,
      large.time / small.time,
      nLogN(large.shown) / nLogN(small.shown),
      'times',
    ),
  ];
}

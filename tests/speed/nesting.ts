// Nesting against a rectangle packer on a batch of ours, and against the best fills published.
import { createRequire } from 'node:module';
import { type Contour, polygon } from '../../src/geometry/contour.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { type Nest, nest } from '../../src/sheet/nest.ts';
import type { NestPiece } from '../../src/sheet/nest-board.ts';
import { nestOutline } from '../../src/sheet/nest-outline.ts';
import { flatWall } from '../../src/unroll/flat-wall.ts';
import { outline, templateOf } from '../../src/unroll/template.ts';
import { fillOf, type Instance, instances } from '../outside/esicup/instances.ts';
import type { Comparison } from './harness.ts';

// Its main file is what loads in Node: a plain import of it gives nothing.
const { MaxRectsPacker } = createRequire(import.meta.url)(
  'maxrects-packer',
) as typeof import('maxrects-packer');

/** Between two pieces, and the usable width of a roll of 24 in, mm. */
const gap = 3;
const rollWidth = 600;

const wrap = (radius: number, sine: number, to: number, overlap: number): Contour =>
  outline(
    templateOf(flatWall(radius, sine, to / 2), { band: { from: 0, to }, trim: { lip: 3, foot: 3 }, overlap }),
  );

/** A batch for the museum's shop, invented: cups of two sizes, canisters, a pot, their level arcs, a pennant each. */
const batch: readonly { readonly contour: Contour; readonly count: number }[] = [
  { contour: wrap(37, 0.08, 118, 6), count: 8 },
  { contour: wrap(33, 0.11, 90, 6), count: 6 },
  { contour: wrap(45, 0, 110, 6), count: 4 },
  { contour: wrap(62, 0.2, 95, 8), count: 2 },
  { contour: wrap(38, 0.08, 16, 0), count: 8 },
  {
    contour: polygon([
      { x: 0, y: 0 },
      { x: 70, y: 14 },
      { x: 0, y: 28 },
    ]),
    count: 20,
  },
];

const turns = [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);

function last(kinds: readonly NestPiece[], height: number, trials: number): Nest {
  let layout: Nest | undefined;
  for (const better of nest(kinds, { length: Infinity, height }, { trials, seed: 1 }))
    if (better) layout = better;
  if (!layout) throw new Error('nothing was laid');
  return layout;
}

/** The shortest roll on which the rectangle packer lays the pieces' boxes, each either way round, to a mm. */
function packedLength(): number {
  const boxes = batch.flatMap(({ contour, count }) => {
    const box = tightBox([contour]);
    return Array.from({ length: count }, () => ({
      width: Math.ceil(box.maxX - box.minX),
      height: Math.ceil(box.maxY - box.minY),
      data: undefined,
    }));
  });
  const fits = (length: number): boolean => {
    const packer = new MaxRectsPacker(length, rollWidth, gap, {
      allowRotation: true,
      smart: false,
      pot: false,
    });
    packer.addArray(boxes.map((box) => ({ ...box, x: 0, y: 0 })) as never);
    return packer.bins.length === 1;
  };
  let [low, high] = [0, 20_000];
  while (high - low > 1) {
    const middle = Math.round((low + high) / 2);
    if (fits(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function batchComparison(trials: number): Comparison {
  const kinds = batch.map(({ contour, count }) => ({ outline: nestOutline(contour, gap / 2), count, turns }));
  const ours = last(kinds, rollWidth + gap, trials).lastUsed;
  const other = packedLength();
  const name = 'length of roll a batch of 48 pieces takes, against a rectangle packer (maxrects-packer)';
  return { name, ours, other, unit: 'mm', ratio: ours / other, spread: 0 };
}

/** Seconds of processor time this process has had, all its threads together: the same whatever else the machine does. */
const processorSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** The last layout found in so many seconds of processor time. */
function within(
  { kinds, height }: Instance,
  allowed: number,
): { readonly layout: Nest; readonly took: number } {
  const start = processorSeconds();
  let layout: Nest | undefined;
  let took = 0;
  for (const better of nest(kinds, { length: Infinity, height }, { trials: Infinity, seed: 1 })) {
    took = processorSeconds() - start;
    if (took > allowed) break;
    if (better) layout = better;
  }
  if (!layout) throw new Error('nothing was laid');
  return { layout, took };
}

/** Fill of each open instance over the best published: 1 is as good, and at least 0.9 is aimed at. */
const instanceComparisons = (allowed: number): Comparison[] =>
  instances.map((instance) => {
    const { layout, took } = within(instance, allowed);
    const ours = fillOf(instance, layout) * 100;
    const other = instance.bestFill * 100;
    const name = `fill of ${instance.name} in ${took.toFixed(0)} s, against the best published (ESICUP)`;
    return { name, ours, other, unit: '%', ratio: ours / other, spread: 0 };
  });

/** `seconds` of one core for each open instance; the batch is searched by trials, 2 million of which take about 5 s. */
export const nestingComparisons = (seconds: number): Comparison[] => [
  batchComparison(4e6),
  ...instanceComparisons(seconds),
];

// A picture a little blurred, so that what lies between its pixels can be told from them, and noise counts for less.
import type { Planes } from './planes.ts';

/** Weights of the pixels two off, of those beside, and of a pixel itself: the binomial ones. */
const weights = [1 / 16, 4 / 16, 6 / 16] as const;

/** What blurring leaves of the variance of noise: the squares of all weights, both ways. */
export const blurLeaves = (2 * weights[0] ** 2 + 2 * weights[1] ** 2 + weights[2] ** 2) ** 2;

export function blurred({ width, height, planes }: Planes): Planes {
  return {
    width,
    height,
    planes: planes.map((plane) => blurredAlong(blurredAlong(plane, width, height, 1), width, height, width)),
  };
}

/** Along rows (`step` 1) or columns (`step` the width); at a border the last pixel stands for those past it. */
function blurredAlong(plane: Float64Array, width: number, height: number, step: number): Float64Array {
  const made = new Float64Array(plane.length);
  const isLevel = step === 1;
  const [count, last] = isLevel ? [height, width - 1] : [width, height - 1];
  const [far, near, middle] = weights;
  const [first, reach] = [2 * step, (last - 2) * step];
  for (let line = 0; line < count; line++) {
    const from = isLevel ? line * width : line;
    const at = (i: number) => plane[from + Math.max(0, Math.min(last, i)) * step] ?? 0;
    for (const i of [0, 1, last - 1, last].filter((place) => place >= 0))
      made[from + i * step] = far * (at(i - 2) + at(i + 2)) + near * (at(i - 1) + at(i + 1)) + middle * at(i);
    for (let k = from + first; k <= from + reach; k += step)
      made[k] =
        far * ((plane[k - 2 * step] ?? 0) + (plane[k + 2 * step] ?? 0)) +
        near * ((plane[k - step] ?? 0) + (plane[k + step] ?? 0)) +
        middle * (plane[k] ?? 0);
  }
  return made;
}

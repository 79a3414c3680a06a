// A picture a little blurred, so that what lies between its pixels can be told from them, and noise counts for less.
import type { Planes } from './planes.ts';

/** Weights of a pixel and its neighbours to either side: the binomial ones. */
const weights = [1 / 16, 4 / 16, 6 / 16, 4 / 16, 1 / 16] as const;

/** What blurring leaves of the variance of noise: the squares of all weights, both ways. */
export const blurLeaves = weights.reduce((sum, weight) => sum + weight ** 2, 0) ** 2;

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
  for (let line = 0; line < count; line++) {
    const from = isLevel ? line * width : line;
    for (let i = 0; i <= last; i++) {
      let sum = 0;
      for (let k = -2; k <= 2; k++)
        sum += (weights[k + 2] ?? 0) * (plane[from + Math.max(0, Math.min(last, i + k)) * step] ?? 0);
      made[from + i * step] = sum;
    }
  }
  return made;
}

// A picture as rows of numbers, and the fewest of them that say what its colours do.

/** A picture's channels as numbers, in rows from the top left. */
export interface Planes {
  readonly width: number;
  readonly height: number;
  readonly planes: readonly Float64Array[];
}

/** Mixes of channels that hold less than this share of all the variance say nothing. */
const leastTelling = 0.02;

/** Rounds in which a mix settles. */
const rounds = 40;

/**
 * The same picture in as few planes as tell it: mixes of its channels that vary by themselves, the most varying first.
 * Source: principal components by the power method with deflation, from memory.
 */
export function tellingPlanes({ planes, ...size }: Planes): Planes {
  const centred = planes.map((plane) => {
    let sum = 0;
    for (const value of plane) sum += value;
    const mean = sum / Math.max(1, plane.length);
    return plane.map((value) => value - mean);
  });
  const varies = centred.map((p) => centred.map((q) => productOf(p, q)));
  const total = varies.reduce((sum, row, k) => sum + (row[k] ?? 0), 0);
  const told: Float64Array[] = [];
  while (told.length < planes.length) {
    const { mix, variance } = widestMix(varies);
    if (!(variance > leastTelling * total)) break;
    told.push(mixed(centred, mix));
    for (const [i, row] of varies.entries())
      for (const j of row.keys()) row[j] = (row[j] ?? 0) - variance * (mix[i] ?? 0) * (mix[j] ?? 0);
  }
  return { ...size, planes: told };
}

function productOf(p: Float64Array, q: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < p.length; i++) sum += (p[i] ?? 0) * (q[i] ?? 0);
  return sum;
}

function widestMix(varies: readonly (readonly number[])[]): {
  readonly mix: readonly number[];
  readonly variance: number;
} {
  // From the channel that varies most: an even mix may be one that does not vary at all.
  const first = varies.reduce((best, row, k) => ((row[k] ?? 0) > (varies[best]?.[best] ?? 0) ? k : best), 0);
  let mix: readonly number[] = varies.map((_, k) => (k === first ? 1 : 0));
  let variance = 0;
  for (let round = 0; round < rounds; round++) {
    const next = varies.map((row) => row.reduce((sum, value, k) => sum + value * (mix[k] ?? 0), 0));
    variance = Math.hypot(...next);
    if (variance === 0) break;
    mix = next.map((value) => value / variance);
  }
  return { mix, variance };
}

const mixed = (planes: readonly Float64Array[], mix: readonly number[]): Float64Array => {
  const made = new Float64Array(planes[0]?.length ?? 0);
  for (const [k, plane] of planes.entries()) {
    const weight = mix[k] ?? 0;
    for (let i = 0; i < made.length; i++) made[i] = (made[i] ?? 0) + weight * (plane[i] ?? 0);
  }
  return made;
};

/** The picture with so many pixels, each way, made one; what is over at its right and lower border is left off. */
export function smaller({ width, height, planes }: Planes, times: number): Planes {
  const [w, h] = [Math.floor(width / times), Math.floor(height / times)];
  const made = planes.map((plane) => {
    const means = new Float64Array(w * h);
    for (let y = 0; y < h * times; y++)
      for (let x = 0; x < w * times; x++) {
        const to = Math.floor(y / times) * w + Math.floor(x / times);
        means[to] = (means[to] ?? 0) + (plane[y * width + x] ?? 0) / (times * times);
      }
    return means;
  });
  return { width: w, height: h, planes: made };
}

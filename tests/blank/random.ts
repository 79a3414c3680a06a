// Seeded noise for Monte Carlo checks (JCGM 101:2008: propagation of distributions).

/** Seeded uniform numbers in (0, 1): mulberry32. */
export const uniform = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
};

/** Box and Muller. */
export const normal = (random: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());

/** Sample standard deviation. */
export function deviation(values: readonly number[]): number {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
}

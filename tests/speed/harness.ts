// Two ways of doing the same work, timed turn and turn about in one run.

export interface Comparison {
  readonly name: string;
  readonly ours: number;
  readonly other: number;
  readonly unit: string;
  /** Ours over other: under 1 is faster (or less). */
  readonly ratio: number;
  /** Half the distance between the quartiles of the ratio of each round, over the median. */
  readonly spread: number;
}

const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)] ?? 0;
  return below + ((sorted[Math.ceil(at)] ?? below) - below) * (at - Math.floor(at));
};

/** Results are added up here, so that no work can be left out as dead. */
let sink = 0;

const timed = (work: () => number): number => {
  const start = performance.now();
  sink += work();
  return performance.now() - start;
};

export interface Rounds {
  readonly rounds: number;
  readonly warmUp: number;
}

/** Time both, one after the other, round by round. `work` gives a number that depends on what it did. */
export function compare(
  name: string,
  ours: () => number,
  other: () => number,
  { rounds, warmUp }: Rounds,
): Comparison {
  for (let i = 0; i < warmUp; i++) sink += ours() + other();
  const pairs = Array.from({ length: rounds }, () => [timed(ours), timed(other)] as const);
  const ratios = pairs.map(([a, b]) => a / b);
  return {
    name,
    ours: quantile(
      pairs.map(([a]) => a),
      0.5,
    ),
    other: quantile(
      pairs.map(([, b]) => b),
      0.5,
    ),
    unit: 'ms',
    ratio: quantile(ratios, 0.5),
    spread: (quantile(ratios, 0.75) - quantile(ratios, 0.25)) / 2 / quantile(ratios, 0.5),
  };
}

/** Two counts that are not times. */
export const counted = (name: string, ours: number, other: number, unit: string): Comparison => ({
  name,
  ours,
  other,
  unit,
  ratio: ours / other,
  spread: 0,
});

export const checksum = (): number => sink;

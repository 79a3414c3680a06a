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

interface Timed {
  readonly took: number;
  readonly gave: number;
}

const timed = (work: () => number): Timed => {
  const start = performance.now();
  const gave = work();
  const took = performance.now() - start;
  sink += gave;
  return { took, gave };
};

export interface Rounds {
  readonly rounds: number;
  readonly warmUp: number;
  /** Ours alone so many times more before: what is short is compiled later than what takes seconds. */
  readonly oursBefore?: number;
  /** Done after ours and before theirs, on nobody's time. */
  readonly between?: () => void;
  /** Holds what both gave against one another. @throws Error where they differ. */
  readonly agreeing?: (ours: number, other: number) => void;
}

/** Time both, one after the other, round by round. Either gives a number that depends on what it did. */
export function compare(
  name: string,
  ours: () => number,
  other: () => number,
  { rounds, warmUp, oursBefore = 0, between, agreeing }: Rounds,
): Comparison {
  for (let i = 0; i < warmUp; i++) sink += ours() + other();
  for (let i = 0; i < oursBefore; i++) sink += ours();
  const pairs = Array.from({ length: rounds }, () => {
    const one = timed(ours);
    between?.();
    const two = timed(other);
    agreeing?.(one.gave, two.gave);
    return [one.took, two.took] as const;
  });
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

// Straight lines through places by least squares, weighted or not.

export interface Observation {
  readonly at: number;
  readonly value: number;
  /** 1 over the variance of the value; more than 0. */
  readonly weight: number;
  /** What the intercept counts in this value: 1 if left out, 0 where the value tells of the slope alone. */
  readonly share?: number;
}

/** Variances and covariance of a line's intercept and slope. */
export interface LineCovariance {
  readonly intercept: number;
  readonly slope: number;
  readonly both: number;
}

export interface Line {
  readonly intercept: number;
  readonly slope: number;
  /** By the law of propagation from the weights alone: the scatter of the values about the line has no part in it. */
  readonly covariance: LineCovariance;
}

/**
 * The line value = share * intercept + slope * at of least weighted squares. Needs two observations that differ in
 * at / share. Written about the weighted mean, so that nothing is lost where the places are far from 0.
 * Source: Bevington, Data Reduction and Error Analysis, weighted fit to a straight line (from memory); with shares,
 * the normal equations of two unknowns, made diagonal by the shift to the mean.
 */
export function regress(given: readonly Observation[]): Line {
  const observations = given.map((observation) => ({ share: 1, ...observation }));
  const total = sum(observations, ({ share, weight }) => share * share * weight);
  const meanAt = sum(observations, ({ at, share, weight }) => share * at * weight) / total;
  const meanValue = sum(observations, ({ value, share, weight }) => share * value * weight) / total;
  const squares = sum(observations, ({ at, share, weight }) => weight * (at - share * meanAt) ** 2);
  const products = sum(
    observations,
    ({ at, value, share, weight }) => weight * (at - share * meanAt) * (value - share * meanValue),
  );
  const slope = products / squares;
  return {
    intercept: meanValue - slope * meanAt,
    slope,
    covariance: {
      intercept: 1 / total + (meanAt * meanAt) / squares,
      slope: 1 / squares,
      both: -meanAt / squares,
    },
  };
}

/** The line of least squares through values at places, each as sure as another. */
export const lineThrough = (
  at: readonly number[],
  values: readonly number[],
): Pick<Line, 'intercept' | 'slope'> =>
  regress(values.map((value, i) => ({ at: at[i] ?? 0, value, weight: 1 })));

type Shared = Observation & { readonly share: number };

const sum = (observations: readonly Shared[], of: (observation: Shared) => number): number =>
  observations.reduce((total, observation) => total + of(observation), 0);

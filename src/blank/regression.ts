// Weighted straight-line regression: the least-squares step of the wall fit.

export interface Observation {
  readonly at: number;
  readonly value: number;
  /** 1 over the variance of the value; more than 0. */
  readonly weight: number;
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
  /** Weighted spread of the places, their weighted root mean square distance from their mean. */
  readonly spread: number;
}

/**
 * The line value = intercept + slope * at of least weighted squares. Needs two different places.
 * Written about the weighted mean, so that nothing is lost where the places are far from 0.
 * Source: Bevington, Data Reduction and Error Analysis, weighted fit to a straight line (from memory).
 */
export function regress(observations: readonly Observation[]): Line {
  const total = sum(observations, ({ weight }) => weight);
  const meanAt = sum(observations, ({ at, weight }) => at * weight) / total;
  const meanValue = sum(observations, ({ value, weight }) => value * weight) / total;
  const squares = sum(observations, ({ at, weight }) => weight * (at - meanAt) ** 2);
  const products = sum(observations, ({ at, value, weight }) => weight * (at - meanAt) * (value - meanValue));
  const slope = products / squares;
  return {
    intercept: meanValue - slope * meanAt,
    slope,
    covariance: {
      intercept: 1 / total + (meanAt * meanAt) / squares,
      slope: 1 / squares,
      both: -meanAt / squares,
    },
    spread: Math.sqrt(squares / total),
  };
}

const sum = (observations: readonly Observation[], of: (observation: Observation) => number): number =>
  observations.reduce((total, observation) => total + of(observation), 0);

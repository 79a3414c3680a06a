// One row of a proof: what was measured, what is allowed, and whether it holds.

export type CheckUnit = 'mm' | 'degrees' | '%' | 'count';

export interface Check {
  /** The rule's stable name. */
  readonly rule: string;
  readonly value: number;
  readonly limit: number;
  readonly pass: boolean;
  readonly unit: CheckUnit;
  /** `most`: the value may be up to the limit; `least`: it has to reach it. */
  readonly bound: 'most' | 'least';
  /** What the value is of, in a maker's words. */
  readonly says: string;
}

/** What stands for a value that could not be measured, or is past all measure. */
const beyond = 99_999;

/**
 * A value as it is told, to a billionth: JavaScript leaves the last bit of an arctangent to its engine, and the page's report differed in it
 * from the command's.
 */
const told = (value: number): number => (Number.isFinite(value) ? Math.round(value * 1e9) / 1e9 : beyond);

type Measured = Pick<Check, 'rule' | 'value' | 'limit' | 'unit' | 'says'>;

/** A row whose value may be up to its limit. */
export const atMost = ({ rule, value, limit, unit, says }: Measured): Check => ({
  rule,
  value: told(value),
  limit,
  pass: value <= limit,
  unit,
  bound: 'most',
  says,
});

/** A row whose value has to reach its limit, but for `slack`. */
export const atLeast = ({ rule, value, limit, unit, says }: Measured, slack: number): Check => ({
  rule,
  value: told(value),
  limit,
  pass: value >= limit - slack,
  unit,
  bound: 'least',
  says,
});

/** The largest of many, 0 of none; what could not be measured counts as past all measure. */
export function largest(values: Iterable<number>): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Number.isFinite(value) ? value : beyond);
  return most;
}

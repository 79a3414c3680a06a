// Fixed-point arithmetic of 60 decimals on whole numbers, to know what a formula gives before any rounding.

const places = 60n;
const one = 10n ** places;

/** A fixed-point number: the value times 10^60. */
export type Fixed = bigint;

/** A double, exactly: every double is a whole number of halves of halves. */
export function fixed(value: number): Fixed {
  if (!Number.isFinite(value)) throw new Error(`no fixed-point number: ${value}`);
  let numerator = value;
  let halvings = 0n;
  while (!Number.isInteger(numerator)) {
    numerator *= 2;
    halvings += 1n;
  }
  return (BigInt(numerator) * one) / 2n ** halvings;
}

export const times = (a: Fixed, b: Fixed): Fixed => (a * b) / one;
export const over = (a: Fixed, b: Fixed): Fixed => (a * one) / b;
export const toNumber = (a: Fixed): number => {
  const sign = a < 0n ? -1 : 1;
  const digits = (a < 0n ? -a : a).toString().padStart(Number(places) + 1, '0');
  const split = digits.length - Number(places);
  return sign * Number(`${digits.slice(0, split)}.${digits.slice(split)}`);
};

/** pi to 60 decimals, the table value. */
export const pi: Fixed = 3141592653589793238462643383279502884197169399375105820974944n;

/** sin and cos by their series. */
export function sine(angle: Fixed): Fixed {
  let [term, sum] = [angle, angle];
  for (let n = 2n; term !== 0n; n += 2n) {
    term = -times(times(term, angle), angle) / (n * (n + 1n));
    sum += term;
  }
  return sum;
}

export function cosine(angle: Fixed): Fixed {
  let [term, sum] = [one, one];
  for (let n = 1n; term !== 0n; n += 2n) {
    term = -times(times(term, angle), angle) / (n * (n + 1n));
    sum += term;
  }
  return sum;
}

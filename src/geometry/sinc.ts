// Functions that stay exact where a cone turns into a cylinder.

/** sin(x) / x, 1 at 0. Below 1e-4 the series' next term, x^4/120, is under the last bit. */
export const sinc = (x: number): number => (Math.abs(x) < 1e-4 ? 1 - (x * x) / 6 : Math.sin(x) / x);

/** atan(x) / x, 1 at 0. */
export const atanc = (x: number): number => (Math.abs(x) < 1e-4 ? 1 - (x * x) / 3 : Math.atan(x) / x);

/** asin(x) / x, 1 at 0. */
export const asinc = (x: number): number => (Math.abs(x) < 1e-4 ? 1 + (x * x) / 6 : Math.asin(x) / x);

/** (e^x - 1) / x, 1 at 0. */
export const expm1c = (x: number): number => (x === 0 ? 1 : Math.expm1(x) / x);

/** ln(1 + x) / x, 1 at 0. */
export const log1pc = (x: number): number => (x === 0 ? 1 : Math.log1p(x) / x);

// The cubic spline through readings: smooth, and linear in what was read, so that uncertainty can be carried through.

/** A piecewise cubic: on [x[i], x[i+1]] it is y[i] + slope[i] d + ... , kept as values and first derivatives. */
export interface Spline {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** First derivative at each knot. */
  readonly slope: readonly number[];
}

/**
 * The cubic spline through points, with second derivatives continuous and the 'not-a-knot' end condition: the first
 * two and the last two spans are one cubic each, so that a cubic comes back exactly. Needs rising x; two points give
 * the straight line, three the parabola. Source: C. de Boor, A Practical Guide to Splines, ch. IV, from memory.
 */
export function splineThrough(x: readonly number[], y: readonly number[]): Spline {
  return { x, y, slope: slopesOf(x, y) };
}

/** The spline with the straight line of its first slope put before it, down to `from`; as it is where it begins there. */
export function straightBelow({ x, y, slope }: Spline, from: number): Spline {
  const [x0 = 0, y0 = 0, m0 = 0] = [x[0], y[0], slope[0]];
  if (x0 <= from) return { x, y, slope };
  return { x: [from, ...x], y: [y0 + m0 * (from - x0), ...y], slope: [m0, ...slope] };
}

function slopesOf(x: readonly number[], y: readonly number[]): number[] {
  const n = x.length;
  const at = (values: readonly number[], i: number): number => values[i] ?? 0;
  const h = (i: number): number => at(x, i + 1) - at(x, i);
  const chord = (i: number): number => (at(y, i + 1) - at(y, i)) / h(i);
  if (n === 2) return [chord(0), chord(0)];
  if (n === 3) {
    const bend = (chord(1) - chord(0)) / (h(0) + h(1));
    return [chord(0) - bend * h(0), chord(0) + bend * h(0), chord(1) + bend * h(1)];
  }
  const rows = Array.from({ length: n }, (_, i): [number, number, number, number] => {
    if (i === 0) {
      const sum = h(0) + h(1);
      return [0, h(1), sum, ((h(0) + 2 * sum) * h(1) * chord(0) + h(0) ** 2 * chord(1)) / sum];
    }
    if (i === n - 1) {
      const [last, before] = [h(n - 2), h(n - 3)];
      const sum = last + before;
      return [sum, before, 0, (last ** 2 * chord(n - 3) + (2 * sum + last) * before * chord(n - 2)) / sum];
    }
    return [h(i), 2 * (h(i) + h(i - 1)), h(i - 1), 3 * (h(i) * chord(i - 1) + h(i - 1) * chord(i))];
  });
  return solved(rows);
}

/** Rows of (before, own, after, right side), solved by elimination: the system is diagonally dominant inside. */
function solved(rows: [number, number, number, number][]): number[] {
  rows.forEach((row, i) => {
    const above = rows[i - 1];
    if (!above) return;
    const factor = row[0] / above[1];
    row[1] -= factor * above[2];
    row[3] -= factor * above[3];
  });
  const values = new Array<number>(rows.length).fill(0);
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i];
    if (row) values[i] = (row[3] - row[2] * (values[i + 1] ?? 0)) / row[1];
  }
  return values;
}

/** Value and first two derivatives at a place; past the ends the end spans go on. */
export function splineAt(
  { x, y, slope }: Spline,
  at: number,
): { readonly value: number; readonly first: number; readonly second: number } {
  let i = 0;
  while (i < x.length - 2 && at > (x[i + 1] ?? Infinity)) i++;
  const [x0, y0, m0] = [x[i] ?? 0, y[i] ?? 0, slope[i] ?? 0];
  const [x1, y1, m1] = [x[i + 1] ?? 0, y[i + 1] ?? 0, slope[i + 1] ?? 0];
  const h = x1 - x0;
  const d = at - x0;
  const chord = (y1 - y0) / h;
  const c = (3 * chord - 2 * m0 - m1) / h;
  const e = (m0 + m1 - 2 * chord) / (h * h);
  return {
    value: y0 + d * (m0 + d * (c + d * e)),
    first: m0 + d * (2 * c + 3 * d * e),
    second: 2 * c + 6 * d * e,
  };
}

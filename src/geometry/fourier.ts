// The discrete Fourier transform of a square grid.
// Source: Cooley and Tukey, Math. Comp. 19 (1965) 297-301, in the usual form for powers of two.

/** A square grid of complex numbers in rows; its side a power of two. */
export interface ComplexGrid {
  readonly side: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** The transform in place; `inverse` undoes it, the division by the count included. @throws Error where the side is no power of two. */
export function transform(grid: ComplexGrid, direction: 'forward' | 'inverse'): void {
  const { side, re, im } = grid;
  const sign = direction === 'forward' ? -1 : 1;
  const turns = turnsOf(side, sign);
  const line = { re: new Float64Array(side), im: new Float64Array(side) };
  // A column is taken out of the grid first: its numbers lie a row apart, where each would be fetched anew at every level.
  for (const { from, step } of linesOf(side)) {
    for (let i = 0; i < side; i++) {
      line.re[i] = re[from + i * step] ?? 0;
      line.im[i] = im[from + i * step] ?? 0;
    }
    transformLine(line.re, line.im, turns);
    for (let i = 0; i < side; i++) {
      re[from + i * step] = line.re[i] ?? 0;
      im[from + i * step] = line.im[i] ?? 0;
    }
  }
  if (direction === 'forward') return;
  const count = side * side;
  for (let i = 0; i < count; i++) {
    re[i] = (re[i] ?? 0) / count;
    im[i] = (im[i] ?? 0) / count;
  }
}

interface Turns {
  readonly cos: Float64Array;
  readonly sin: Float64Array;
}

function turnsOf(side: number, sign: number): Turns {
  if (side < 1 || (side & (side - 1)) !== 0) throw new Error(`a side of ${side} is no power of two`);
  const angles = Array.from({ length: side / 2 }, (_, i) => (2 * Math.PI * i) / side);
  return {
    cos: Float64Array.from(angles, Math.cos),
    sin: Float64Array.from(angles, (a) => sign * Math.sin(a)),
  };
}

function* linesOf(side: number): Generator<{ readonly from: number; readonly step: number }> {
  for (let row = 0; row < side; row++) yield { from: row * side, step: 1 };
  for (let column = 0; column < side; column++) yield { from: column, step: side };
}

function transformLine(re: Float64Array, im: Float64Array, { cos, sin }: Turns): void {
  const side = re.length;
  for (let i = 1, j = 0; i < side; i++) {
    let bit = side >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      swap(re, i, j);
      swap(im, i, j);
    }
  }
  for (let length = 2; length <= side; length <<= 1) {
    const half = length >> 1;
    const each = side / length;
    for (let start = 0; start < side; start += length)
      for (let k = 0; k < half; k++) {
        const [p, q] = [start + k, start + k + half];
        const c = cos[k * each] ?? 1;
        const s = sin[k * each] ?? 0;
        const x = (re[q] ?? 0) * c - (im[q] ?? 0) * s;
        const y = (re[q] ?? 0) * s + (im[q] ?? 0) * c;
        re[q] = (re[p] ?? 0) - x;
        im[q] = (im[p] ?? 0) - y;
        re[p] = (re[p] ?? 0) + x;
        im[p] = (im[p] ?? 0) + y;
      }
  }
}

function swap(values: Float64Array, i: number, j: number): void {
  const kept = values[i] ?? 0;
  values[i] = values[j] ?? 0;
  values[j] = kept;
}

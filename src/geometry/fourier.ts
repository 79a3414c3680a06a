// The discrete Fourier transform of a grid.
// Source: Cooley and Tukey, Math. Comp. 19 (1965) 297-301, in the usual form for powers of two.

/** A grid of complex numbers in rows; its sides are powers of two. */
export interface ComplexGrid {
  readonly width: number;
  readonly height: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** The transform in place; `inverse` undoes it, the division by the count included. @throws Error where a side is no power of two. */
export function transform(grid: ComplexGrid, direction: 'forward' | 'inverse'): void {
  const { width, height, re, im } = grid;
  const sign = direction === 'forward' ? -1 : 1;
  transformLines(grid, { lines: height, apart: width, length: width, step: 1 }, sign);
  transformLines(grid, { lines: width, apart: 1, length: height, step: width }, sign);
  if (direction === 'forward') return;
  const count = width * height;
  for (let i = 0; i < count; i++) {
    re[i] = (re[i] ?? 0) / count;
    im[i] = (im[i] ?? 0) / count;
  }
}

/** So many lines of a grid, each so far from the next; how many numbers each has, and how far they lie from each other. */
interface Lines {
  readonly lines: number;
  readonly apart: number;
  readonly length: number;
  readonly step: number;
}

function transformLines({ re, im }: ComplexGrid, { lines, apart, length, step }: Lines, sign: number): void {
  const turns = turnsOf(length, sign);
  // A column is taken out of the grid first: its numbers lie a row apart, where each would be fetched anew at every level.
  const line = { re: new Float64Array(length), im: new Float64Array(length) };
  for (let n = 0; n < lines; n++) {
    const from = n * apart;
    for (let i = 0; i < length; i++) {
      line.re[i] = re[from + i * step] ?? 0;
      line.im[i] = im[from + i * step] ?? 0;
    }
    transformLine(line.re, line.im, turns);
    for (let i = 0; i < length; i++) {
      re[from + i * step] = line.re[i] ?? 0;
      im[from + i * step] = line.im[i] ?? 0;
    }
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

// Path data as numbers: what a canvas draws by, and what goes from one thread to another without being written out.

export interface Ink {
  /** One a command: `inkCodes`. */
  readonly codes: Uint8Array<ArrayBuffer>;
  /** x and y of every point that the commands take, in their order. */
  readonly points: Float64Array<ArrayBuffer>;
}

export const inkCodes = { move: 0, line: 1, cubic: 2, close: 3 } as const;

/** How many points a command takes, by its code. */
export const pointsOf: readonly number[] = [1, 1, 3, 0];

const codeOf: Readonly<Record<string, number>> = {
  M: inkCodes.move,
  L: inkCodes.line,
  C: inkCodes.cubic,
  Z: inkCodes.close,
};

/** A command of our own path data, with its numbers. */
const command = /([MLCZ])([^MLCZ]*)/g;

/** Path data as `writePathData` writes it: absolute M, L, C and Z, one of each letter. @throws Error at any other. */
export function inkOf(data: string): Ink {
  const codes: number[] = [];
  const points: number[] = [];
  for (const [whole, letter = '', numbers = ''] of data.matchAll(command)) {
    const code = codeOf[letter];
    const values = numbers === '' ? [] : numbers.split(' ').map(Number);
    if (code === undefined || values.length !== 2 * (pointsOf[code] ?? 0) || !values.every(Number.isFinite))
      throw new Error(`path data is not as it is written: ${whole}`);
    codes.push(code);
    points.push(...values);
  }
  return { codes: Uint8Array.from(codes), points: Float64Array.from(points) };
}

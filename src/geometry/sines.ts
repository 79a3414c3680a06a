// Sine and cosine of our own, the same to the last bit wherever they run. JavaScript leaves that bit to its engine, and
// engines differ in it; a bit decides which of two equal corners a clipped outline begins at, and files are other bytes.

/** pi/2 in three parts of 33 bits, and what each leaves: a multiple of a part is exact. */
const quarter = {
  first: [1.5707963267341256, 6.077100506506192e-11],
  second: [6.077100506303966e-11, 2.0222662487959506e-21],
  third: [2.0222662487111665e-21, 8.4784276603689e-32],
} as const;

const finer = [quarter.second, quarter.third];

/** Past so many quarter turns the parts no longer hold; nothing here turns that often. */
const mostQuarters = 2 ** 20;

/** What is left of an angle past whole quarter turns, in two parts that add up to it, and how many turns were taken. */
interface Reduced {
  readonly quarters: number;
  readonly rest: number;
  readonly tail: number;
}

function reduced(angle: number): Reduced {
  const size = Math.abs(angle);
  const quarters = Math.round((size * 2) / Math.PI);
  if (quarters === 0) return { quarters, rest: angle, tail: 0 };
  let left = size - quarters * quarter.first[0];
  let lost = quarters * quarter.first[1];
  // Where nearly everything cancels, the next part of pi/2 gives the bits that are missing.
  for (let i = 0; i < finer.length && Math.abs(left - lost) <= size / 65_536; i++) {
    const [part, after] = finer[i] ?? quarter.third;
    const before = left;
    const taken = quarters * part;
    left = before - taken;
    lost = quarters * after - (before - left - taken);
  }
  const rest = left - lost;
  const tail = left - rest - lost;
  return angle < 0 ? { quarters: -quarters, rest: -rest, tail: -tail } : { quarters, rest, tail };
}

/** Sine within an eighth of a turn of 0. */
function sineNear(x: number, tail: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    0.00833333333332249 +
    z *
      (-0.0001984126982985795 +
        z * (2.7557313707070068e-6 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)));
  return x - (z * (0.5 * tail - v * r) - tail + v * 0.16666666666666632);
}

/** Cosine within an eighth of a turn of 0. */
function cosineNear(x: number, tail: number): number {
  const z = x * x;
  const r =
    z *
    (0.0416666666666666 +
      z *
        (-0.001388888888887411 +
          z *
            (2.480158728947673e-5 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))));
  const half = 0.5 * z;
  const most = 1 - half;
  return most + (1 - most - half + (z * r - x * tail));
}

/** Angles smaller than this are near enough as they are. */
const near = Math.PI / 4;

/** Sine (`ahead` 0) or cosine (1) of an angle, by the quarter turn it lies in. */
function turned(angle: number, ahead: 0 | 1): number {
  if (Math.abs(angle) < near) return ahead === 0 ? sineNear(angle, 0) : cosineNear(angle, 0);
  const { quarters, rest, tail } = reduced(angle);
  const place = (((quarters + ahead) % 4) + 4) % 4;
  const size = place % 2 === 0 ? sineNear(rest, tail) : cosineNear(rest, tail);
  return place < 2 ? size : -size;
}

const isFar = (angle: number): boolean => !(Math.abs(angle) < mostQuarters);

/** What a pair of functions of angles has to give. */
export interface Sines {
  readonly sin: (angle: number) => number;
  readonly cos: (angle: number) => number;
}

/**
 * Sine and cosine, to within one unit in the last place, by sums, products and roundings alone, which every engine
 * does alike. Angles past a million turns, and what is no number, are left to `far`.
 * Source of the method and its coefficients: fdlibm, k_sin.c, k_cos.c and e_rem_pio2.c (Sun Microsystems, 1993), from
 * memory; checked against the engine's own.
 */
export const sinesOf = (far: Sines): Sines => ({
  sin: (angle) => (angle === 0 || isFar(angle) ? far.sin(angle) : turned(angle, 0)),
  cos: (angle) => (isFar(angle) ? far.cos(angle) : turned(angle, 1)),
});

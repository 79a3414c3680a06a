// How a pattern closes around the wall: which whole sum of its two steps becomes the girth.
import type { Affine } from '../../geometry/affine.ts';
import type { Point } from '../../geometry/point.ts';
import { type Extent, wholeRowsIn } from './bare-rows.ts';
import { cellArea, gcd, type Lattice, step, stepsIn } from './lattice.ts';

/** A pattern's way around the wall. */
export interface Closing {
  /** The whole numbers n, m for which n a + m b becomes once around. */
  readonly n: number;
  readonly m: number;
  /** Finished size over drawn size, around and up, at the middle of the band. */
  readonly scaleAcross: number;
  readonly scaleUp: number;
  /** How far the pattern is turned so that it closes, radians, positive counter-clockwise as seen. */
  readonly lean: number;
  /** Of whole rows: how far above the drawing's lower edge the band begins, drawn mm; left out, at it. */
  readonly foot?: number;
  /** How far along the drawing from its left edge turn 0 is, drawn mm; left out, at it. */
  readonly start?: number;
}

export interface ClosingOptions {
  /** Girth of the sheet at the middle of the band, mm. */
  readonly girth: number;
  /** Height of the laid pattern that fills the band, mm: the band's length, but for a conformal lay. */
  readonly patternHeight: number;
  /** The count of repeats around, if the maker says it. */
  readonly around?: number;
  /** Whether heights follow the scale around (`both`) or stay as drawn (`across`). */
  readonly scale: 'both' | 'across';
  /** Whether the rows are stretched so that a whole number fills the band. */
  readonly wholeRows: boolean;
  /** Where motifs stand: the band then begins and ends between their rows; left out, at the drawing's lower edge. */
  readonly extents?: readonly Extent[];
}

/** A lean up to this is not seen on a cup; past it the maker is told. Ours: 1 degree climbs 4.7 mm around a 270 mm girth. */
export const leanSeen = Math.PI / 180;

/** Beyond this no lean is chosen unasked. */
const leanMost = (3 * Math.PI) / 180;

/** One degree of lean counts like 7 % of scale: rows that climb are seen sooner than motifs that widen. */
const leanWeight = 4;

const leanOf = (sum: Point): number => Math.atan2(sum.y, sum.x);

/** The m that brings n a + m b closest to level. */
const levellest = ({ a, b }: Lattice, n: number): number => (b.y === 0 ? 0 : 0 - Math.round((n * a.y) / b.y));

/** What a way around asks of the pattern: by how much, as a ratio, it is scaled, and how far it leans. */
const costOf = (sum: Point, girth: number): number =>
  Math.abs(Math.log(girth / Math.hypot(sum.x, sum.y))) + leanWeight * Math.abs(leanOf(sum));

/** What a closing asks of the pattern, 0 where it is laid as drawn: scale and lean together. */
export const closingCost = ({ scaleAcross, lean }: Closing): number =>
  Math.abs(Math.log(scaleAcross)) + leanWeight * Math.abs(lean);

/** The whole sums within half to twice the drawn size, those that ask the least of the pattern first. */
function sumsNear(lattice: Lattice, girth: number): readonly { readonly n: number; readonly m: number }[] {
  for (const reach of [Math.tan(leanMost) * girth, girth]) {
    const box = { minX: girth * 0.5, maxX: girth * 2, minY: -reach, maxY: reach };
    const sums = stepsIn(lattice, box).map(({ i, j, at }) => ({ n: i, m: j, cost: costOf(at, girth) }));
    if (sums.length > 0) return sums.sort((one, other) => one.cost - other.cost);
  }
  return [];
}

/** The count of repeats in a sum: of `a`, or of `b` where the pattern goes around by `b` alone. */
export const repeatsAround = ({ n, m }: { readonly n: number; readonly m: number }): number =>
  Math.abs(n) || Math.abs(m);

/** Drawn height of one row once the pattern is turned level: the period's area over the mean step around, mm. */
export const rowHeight = (lattice: Lattice, closing: { readonly n: number; readonly m: number }): number => {
  const sum = step(lattice, closing.n, closing.m);
  return (cellArea(lattice) * repeatsAround(closing)) / Math.hypot(sum.x, sum.y);
};

/**
 * The closing the options ask for, or the one that asks the least of the pattern. Undefined where nothing closes
 * within half to twice the drawn size, or where the count asked for goes up the wall rather than around it.
 */
export function closingOf(lattice: Lattice, options: ClosingOptions): Closing | undefined {
  const { girth, around } = options;
  const sum =
    around === undefined ? sumsNear(lattice, girth)[0] : { n: around, m: levellest(lattice, around) };
  return sum && closingBy(lattice, sum, options);
}

/** The closings within half to twice the drawn size that lean little, those that ask the least of the pattern first. */
export const closingsNear = (lattice: Lattice, options: ClosingOptions): readonly Closing[] =>
  sumsNear(lattice, options.girth).flatMap((sum) => closingBy(lattice, sum, options) ?? []);

/** The closing by a given sum; undefined where it goes up the wall rather than around it. */
export function closingBy(
  lattice: Lattice,
  { n, m }: { readonly n: number; readonly m: number },
  { girth, patternHeight, scale, wholeRows, extents = [] }: Omit<ClosingOptions, 'around'>,
): Closing | undefined {
  const once = step(lattice, n, m);
  const lean = leanOf(once);
  if (!(Math.abs(lean) < Math.PI / 4)) return undefined;
  const scaleAcross = girth / Math.hypot(once.x, once.y);
  const drawnRow = rowHeight(lattice, { n, m });
  const plain = scale === 'both' ? scaleAcross : 1;
  if (!wholeRows) return { n, m, scaleAcross, scaleUp: plain, lean };
  // Rows of a pattern that leans climb, and no level line runs between them.
  const { rows, foot } = wholeRowsIn(
    Math.abs(lean) < levelLean ? extents : [],
    drawnRow,
    patternHeight / (drawnRow * plain),
  );
  const scaleUp = patternHeight / (rows * drawnRow);
  return { n, m, scaleAcross, scaleUp, lean, ...(foot === 0 ? {} : { foot: foot * drawnRow }) };
}

/** Leaning less than this, a pattern stands level, radians. */
const levelLean = 1e-6;

/** Whether a sum is the one its count of repeats goes around by, leaning least. */
export const isLevellest = (
  lattice: Lattice,
  { n, m }: { readonly n: number; readonly m: number },
): boolean => n > 0 && m === levellest(lattice, n);

/** Rows of the pattern up the band, of which it takes so much of its height, mm; whole where `wholeRows` was asked. */
export const rowsUp = (lattice: Lattice, closing: Closing, patternHeight: number): number =>
  patternHeight / (rowHeight(lattice, closing) * closing.scaleUp);

/** The smallest count at which the pattern closes level: 2 for a half drop; undefined where no count up to 12 does. */
export function levelCount(lattice: Lattice): number | undefined {
  for (let n = 1; n <= 12; n++) {
    const sum = step(lattice, n, levellest(lattice, n));
    if (Math.abs(leanOf(sum)) < levelLean) return n;
  }
  return undefined;
}

/**
 * The map from the drawing (drawn mm, y down) to the laid pattern: mm around at the middle of the band, and mm up.
 * The sum n a + m b is turned level and becomes `girth`; the drawing's bottom edge, at `lowerEdge`, comes to height 0, or what stands above
 * it where whole rows begin, and its left edge to turn 0, or what stands beside it where it begins elsewhere.
 */
export function layOut(closing: Closing, lowerEdge: number): Affine {
  const { scaleAcross: sx, scaleUp: sy, lean, foot = 0, start = 0 } = closing;
  const bottom = lowerEdge - foot;
  const cos = Math.cos(lean);
  const sin = Math.sin(lean);
  // Turn by -lean in the drawing's frame, then scale, then flip y so that up is positive.
  const [e, f] = [-sx * (sin * bottom + start), sy * cos * bottom];
  return { a: sx * cos, b: sy * sin, c: sx * sin, d: -sy * cos, e, f };
}

/** How many times the laid pattern repeats exactly around the wall at one height. */
export const equalParts = (closing: Closing): number => Math.max(1, gcd(closing.n, closing.m));

// Are the files at their true size? And if not, is it a px taken for another part of an inch?
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { distance } from '../../geometry/point.ts';
import { atMost, type Check, largest } from '../check.ts';
import { guideCurves, type ProvedPiece, type ReadPiece, spanOf } from '../written/piece.ts';
import { acrossFrom } from '../written/rolled-cone.ts';

/** Size off by this share is over 0.02 mm on a cup, %: more than rounding in a file can do. */
const scaleLimit = 0.01;

/** What programs take a px for: 96 of an inch (CSS), 72 (older drawing programs), and one for the other. */
const pxSizes: readonly { readonly scale: number; readonly says: string }[] = [
  { scale: 25.4 / 96, says: 'each mm of it became a px of 25.4/96 mm' },
  { scale: 25.4 / 72, says: 'each mm of it became a px of 25.4/72 mm' },
  { scale: 96 / 25.4, says: 'it was saved in px of 25.4/96 mm and its numbers are read as mm' },
  { scale: 72 / 25.4, says: 'it was saved in px of 25.4/72 mm and its numbers are read as mm' },
  { scale: 96 / 72, says: 'px of 1/96 in were read as 1/72 in' },
  { scale: 72 / 96, says: 'px of 1/72 in were read as 1/96 in' },
];

/** How near a scale must be to one of those to be named so, as a share. */
const pxNear = 0.005;

export interface Sized {
  readonly file: string;
  readonly way: string;
  /** Size as it is over size as it should be. */
  readonly scale: number;
}

const sizeOf = (contours: readonly Contour[]): readonly [number, number] => {
  const { minX, minY, maxX, maxY } = tightBox(contours);
  return [maxX - minX, maxY - minY];
};

/** Sides of the two squares on every guide, mm. */
const squareSides = [25, 25.4];

/** The closed squares among the register marks, measured both ways. */
function squaresOf(piece: ReadPiece): Sized[] {
  const squares = guideCurves(piece, 'register').filter(({ closed }) => closed);
  return squares.flatMap(({ segments }, i) => {
    const side = squareSides[i % squareSides.length] ?? Number.NaN;
    const sides = segments.map(({ from, to }) => Math.hypot(to.x - from.x, to.y - from.y));
    return sides.map((size) => ({
      file: piece.guide.name,
      way: `at the ${side} mm square`,
      scale: size / side,
    }));
  });
}

/** What each file's own size says a unit of it is, mm. */
const unitsOf = ({ cut, guide }: ReadPiece): Sized[] =>
  [cut, guide].flatMap(({ name, perUnit }) => [
    { file: name, way: 'across, by its own width', scale: perUnit.across },
    { file: name, way: 'up, by its own height', scale: perUnit.up },
  ]);

/** The guide's seam lines against the wall. */
function seamLines(piece: ProvedPiece, isStraight: boolean): Sized[] {
  const { cone, band, guide, beside } = piece;
  const [start, finish] = ['seam-start', 'seam-finish'].map(
    (id) => guideCurves(piece, 'seam', id)[0]?.segments[0],
  );
  if (!start || !finish) return [{ file: guide.name, way: 'at its seam lines', scale: Number.NaN }];
  const corner = (turn: number, along: number) =>
    acrossFrom(cone, turn, turn === 0 ? beside.start : -beside.finish, along);
  const foot = corner(0, band.from);
  const up = {
    file: guide.name,
    way: 'up the wall',
    scale: distance(start.from, start.to) / distance(foot, corner(0, band.to)),
  };
  if (!isStraight) return [up];
  const around = distance(start.from, finish.from) / distance(foot, corner(spanOf(piece), band.from));
  return [up, { file: guide.name, way: 'around', scale: around }];
}

/** The cut outline against the one of the guide. */
function outlines(piece: ReadPiece): Sized[] {
  const wanted = sizeOf(guideCurves(piece, 'outline'));
  return sizeOf(piece.outline).map((size, i) => ({
    file: piece.cut.name,
    way: i === 0 ? 'around' : 'up the wall',
    scale: size / (wanted[i] ?? Number.NaN),
  }));
}

const off = ({ scale }: Sized): number => (Number.isFinite(scale) ? Math.abs(scale - 1) * 100 : Number.NaN);

/** Are the files at their true size? */
export const scaleCheck = (pieces: readonly ProvedPiece[], isStraight: boolean): Check =>
  sizeCheck(pieces.flatMap((piece) => [...fileSizes(piece), ...seamLines(piece, isStraight)]));

/** What a cut file and its guide say of their own size. */
export const fileSizes = (piece: ReadPiece): Sized[] => [
  ...unitsOf(piece),
  ...outlines(piece),
  ...squaresOf(piece),
];

/** Whether all that was measured has its true size. */
export function sizeCheck(sizes: readonly Sized[]): Check {
  const worst = sizes.reduce((a, b) => (largest([off(b)]) > largest([off(a)]) ? b : a));
  const value = largest(sizes.map(off));
  return atMost({
    rule: 'scale',
    value,
    limit: scaleLimit,
    unit: '%',
    says: value <= scaleLimit ? 'size off, any way, in any file' : scaleWords(worst),
  });
}

function scaleWords({ file, way, scale }: Sized): string {
  if (!Number.isFinite(scale)) return `size off: ${file} has none that can be told ${way}`;
  const px = pxSizes.find((size) => Math.abs(scale / size.scale - 1) < pxNear);
  const times = `${file} is ${scale.toPrecision(5)} times its size ${way}`;
  return px ? `size off: ${times}, for ${px.says}; save it in mm` : `size off: ${times}`;
}

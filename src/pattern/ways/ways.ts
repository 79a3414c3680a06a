// The ways a tile can close around a wall, best first: by its own repeat, by the one found in it, book-matched, or as it is.

import type { Tile } from '../../artwork/tile.ts';
import type { Contour } from '../../geometry/contour.ts';
import { most } from '../../geometry/extremes.ts';
import { tightBox } from '../../geometry/measure.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { type Extent, motifExtents } from '../lattice/bare-rows.ts';
import {
  type Closing,
  type ClosingOptions,
  closingBy,
  closingCost,
  closingOf,
  closingsNear,
  isLevellest,
  repeatsAround,
  rowsUp,
} from '../lattice/closing.ts';
import { type Lattice, step } from '../lattice/lattice.ts';
import { windowOf } from '../period/clean-period.ts';
import type { PatternTile } from '../period/period.ts';
import type { MotifLay } from '../rigid/motif.ts';
import type { RepeatStudy } from '../study/repeat-study.ts';
import { sureRepeat } from '../study/sure-repeat.ts';
import { distortionOf } from './distortion.ts';
import { type MirroredWays, mirroredTile } from './mirrored.ts';

/**
 * What a way lays: `repeat` the tile by its own steps, `period` one period found in it, `mirrored` the tile and its mirror
 * image in turn, `strip` the tile by its own steps with cover strips over its borders, `as-drawn` so though it does not join.
 */
export type WayKind = 'repeat' | 'period' | 'mirrored' | 'strip' | 'as-drawn';

export interface Way {
  /** Stable, so that a job can name it. */
  readonly key: string;
  readonly kind: WayKind;
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly scale: ClosingOptions['scale'];
  readonly lay: MotifLay;
  /** Repeats around: of mirrored tiles each one counts. */
  readonly around: number;
  /** Rows up the band. */
  readonly rows: number;
  /** What of a motif's proportions changes most, where on the band it does so most: a share, 0 where none does. */
  readonly distortion: number;
  /** The same on the widest motif, mm. */
  readonly distortionMm: number;
  /** What the way asks of the art: 0 where it is laid as drawn. Ways are listed by it. */
  readonly cost: number;
}

/** What a pattern has to close around. */
export interface WayGround {
  /** Girth of the sheet at the middle of the band, and at its two ends, mm. */
  readonly girth: number;
  readonly ends: { readonly foot: number; readonly lip: number };
  /** Of the laid pattern in the band, mm; by a conformal lay other than the band's length. */
  readonly patternHeight: number;
  readonly lay: MotifLay;
  readonly scale: ClosingOptions['scale'];
  readonly wholeRows: boolean;
  /** Of whole rows: where motifs stand. */
  readonly extents?: readonly Extent[];
  /** The count of repeats around, if the maker says it. */
  readonly around?: number;
}

/** How many closings of each kind are looked at. */
const listed = { repeat: 5, period: 5, mirrored: 2, strip: 2, 'as-drawn': 1 } as const;

/** What a kind asks of the art beside scale and lean: other art at its borders, film over them, or a border open all the way up. */
const askedBy: Readonly<Record<WayKind, number>> = {
  repeat: 0,
  period: 0,
  mirrored: 0.25,
  strip: 0.5,
  'as-drawn': 1,
};

/** Stretched around alone, a motif changes its shape, which is seen sooner than its size. */
const stretchWeight = 1.6;

/** A change of size under this is not worth a way of its own; past the second no motif bears it around alone. */
const leastStretch = 0.003;
const mostStretch = 0.15;

/** The ways a tile can close, those that ask least of it first. */
export function waysToClose(tile: Tile, study: RepeatStudy, ground: WayGround): readonly Way[] {
  const motif = widestMotif(tile, study.period ?? study.lattice);
  const make = wayMaker(ground, motif);
  const between = ground.wholeRows ? { ...ground, extents: motifExtents(tile) } : ground;
  const kinds = study.joins ? joinedWays(study, between, make) : brokenWays(tile, study, between, make);
  const ways = [...kinds].sort((one, other) => one.cost - other.cost);
  const always = (way: Way): boolean => way.kind === 'as-drawn' || isPlainWay(way, ground);
  return ways
    .filter((way, i) => ways.findIndex((other) => other.key === way.key) === i)
    .filter((way, i) => i < leastListed || sizeChange(way) < mostChange || always(way))
    .filter((way, i) => i < mostListed || always(way));
}

/** A maker compares a few ways, not all: past these, only those that change the drawn size by no more than so much. */
const leastListed = 3;
const mostListed = 9;
const mostChange = Math.log(1.4);

const sizeChange = ({ closing: { scaleAcross, scaleUp } }: Way): number =>
  Math.max(Math.abs(Math.log(scaleAcross)), Math.abs(Math.log(scaleUp)));

function joinedWays({ lattice, period }: RepeatStudy, ground: WayGround, make: MakeWay): Way[] {
  const own = near('repeat', lattice, ground, make);
  const isFiner = period && !isSame(period, lattice);
  const finer = isFiner ? near('period', period, ground, make, period.confidence) : [];
  return [...own, ...finer.filter((way) => !own.some((other) => liesAlike(way, other)))];
}

/** Whether two ways lay the same pattern in the same place, as those of a joining tile and of a finer step within it may. */
function liesAlike(one: Way, other: Way): boolean {
  const [sum, itsSum] = [aroundStep(one), aroundStep(other)];
  const heights = Math.abs(one.closing.scaleUp / other.closing.scaleUp - 1) * Math.hypot(sum.x, sum.y);
  return distance(sum, itsSum) <= joinTolerance && heights <= joinTolerance;
}

/** The step of the art as drawn that goes once around. */
const aroundStep = ({ lattice, closing: { n, m } }: Way): Point => step(lattice, n, m);

function brokenWays(tile: Tile, study: RepeatStudy, ground: WayGround, make: MakeWay): Way[] {
  const { lattice, period } = study;
  const found =
    period && windowOf(tile, period) ? near('period', period, ground, make, period.confidence) : [];
  const [asDrawn] = sumsOf('as-drawn', lattice, ground);
  // Strips run straight up and level: over borders that drop or shift they would show steps.
  const isGrid = lattice.a.y === 0 && lattice.b.x === 0;
  const level = sumsOf('strip', lattice, ground).filter(({ n, m }) => n > 0 && m === 0);
  return [
    ...found,
    ...near('mirrored', mirroredLattice(tile, study, ground), ground, make),
    ...(isGrid ? level.slice(0, listed.strip).map((sum) => make('strip', lattice, sum, ground.scale)) : []),
    ...(asDrawn ? [make('as-drawn', lattice, asDrawn, ground.scale)] : []),
  ];
}

/** What covers or mirrors borders keeps rows where they were drawn. */
const optionsOf = (
  kind: WayKind,
  { girth, patternHeight, scale, wholeRows, extents }: WayGround,
): Omit<ClosingOptions, 'around'> => ({
  girth,
  patternHeight,
  scale,
  wholeRows,
  ...(extents && askedBy[kind] === 0 ? { extents } : {}),
});

const isSame = (one: Lattice, other: Lattice): boolean =>
  one.a.x === other.a.x && one.a.y === other.a.y && one.b.x === other.b.x && one.b.y === other.b.y;

type MakeWay = (
  kind: WayKind,
  lattice: Lattice,
  closing: Closing,
  scale: ClosingOptions['scale'],
  confidence?: number,
) => Way;

/** The best closings of a lattice, and those of them that keep the heights as drawn. */
function near(kind: WayKind, lattice: Lattice, ground: WayGround, make: MakeWay, confidence = 1): Way[] {
  const options = optionsOf(kind, ground);
  const sums = sumsOf(kind, lattice, ground).slice(0, listed[kind]);
  const plain = sums.map((closing) => make(kind, lattice, closing, ground.scale, confidence));
  if (ground.scale === 'across') return plain;
  const stretched = sums.slice(0, 2).flatMap((sum) => {
    const closing = closingBy(lattice, sum, { ...options, scale: 'across' });
    const change = closing ? Math.abs(Math.log(closing.scaleAcross)) : 0;
    const isBorne = closing && change > leastStretch && change < mostStretch;
    // Rows that have to end whole may leave both the same height.
    const isOther = isBorne && Math.abs(Math.log(closing.scaleUp / sum.scaleUp)) > leastStretch;
    return isOther ? [make(kind, lattice, closing, 'across', confidence)] : [];
  });
  return [...plain, ...stretched];
}

/** The closings of a kind: by the count that is asked for, or those that ask least of the art. */
function sumsOf(kind: WayKind, lattice: Lattice, ground: WayGround): readonly Closing[] {
  const { around } = ground;
  if (around === undefined) return closingsNear(lattice, optionsOf(kind, ground));
  const repeats = kind === 'mirrored' ? around / 2 : around;
  const closing = closingOf(lattice, { ...optionsOf(kind, ground), around: repeats });
  return Number.isInteger(repeats) && closing ? [closing] : [];
}

/** Ways of a ground, their figures worked out on a motif so wide, mm. */
const wayMaker =
  (ground: WayGround, motif: number): MakeWay =>
  (kind, lattice, closing, scale, confidence = 1) => {
    const distortion = distortionOf(ground.lay, closing, ground).proportions;
    const stretch = Math.abs(Math.log(closing.scaleAcross / closing.scaleUp));
    const cost = closingCost(closing) + (stretchWeight - 1) * stretch + askedBy[kind] + (1 - confidence);
    return {
      key: keyOf(kind, lattice, closing, scale === 'across' && ground.scale !== 'across'),
      kind,
      lattice,
      closing,
      scale,
      lay: ground.lay,
      around: repeatsAround(closing) * (kind === 'mirrored' ? 2 : 1),
      rows: rowsUp(lattice, closing, ground.patternHeight),
      distortion,
      distortionMm: distortion * motif * closing.scaleUp,
      cost,
    };
  };

const words: Readonly<Record<WayKind, string>> = {
  repeat: 'around',
  period: 'period',
  mirrored: 'mirrored',
  strip: 'strip',
  'as-drawn': 'as-drawn',
};

function keyOf(kind: WayKind, lattice: Lattice, closing: Closing, isStretched: boolean): string {
  const { n, m } = closing;
  if (kind === 'as-drawn') return words[kind];
  const count = isLevellest(lattice, closing)
    ? String(kind === 'mirrored' ? 2 * n : n)
    : `${n}a${m < 0 ? '-' : '+'}${Math.abs(m)}b`;
  return `${words[kind]}-${count}${isStretched ? '-across' : ''}`;
}

/** The widest motif that stands in a period: the widest shape no wider than it, mm. */
function widestMotif({ layers, width }: Tile, { a, b }: Lattice): number {
  const period = Math.min(width, Math.max(Math.abs(a.x), Math.abs(b.x)));
  const widths = layers.flatMap(({ shapes }) =>
    shapes.map(({ contours }) => {
      const { minX, maxX } = tightBox(contours);
      return maxX - minX;
    }),
  );
  return (
    most(
      widths.filter((wide) => wide <= period),
      0,
    ) || period
  );
}

/** Tiles mirrored around; above one another too, where rows stand that do not join as they are. */
const mirroredWaysOf = (
  tile: Tile,
  { borders }: RepeatStudy,
  { girth, patternHeight }: WayGround,
): MirroredWays => {
  const count = Math.max(1, Math.round(girth / (2 * tile.width)));
  const rows = patternHeight / ((girth / (2 * tile.width * count)) * tile.height);
  return rows > 1 && borders.open.some(({ border }) => border === 'level') ? 'both' : 'around';
};

function mirroredLattice(tile: Tile, study: RepeatStudy, ground: WayGround): Lattice {
  const times = mirroredWaysOf(tile, study, ground) === 'both' ? 2 : 1;
  return { a: { x: 2 * tile.width, y: 0 }, b: { x: 0, y: -times * tile.height } };
}

/** The tile that a way lays. */
export function tileOfWay({ kind, lattice }: Pick<Way, 'kind' | 'lattice'>, tile: Tile): PatternTile {
  if (kind === 'mirrored')
    return mirroredTile(tile, Math.abs(step(lattice, 0, 1).y) > tile.height ? 'both' : 'around');
  if (kind !== 'period') return tile;
  const window: Contour | undefined = windowOf(tile, lattice);
  return window ? { ...tile, window } : tile;
}

/** Whether a way shows what was never drawn, or covers or leaves open what does not meet: it is never taken unasked. */
const asksTheArt = ({ kind }: Way): boolean => askedBy[kind] > 0;

/** The way to take unasked: a tile that joins goes around by its own steps, another by a repeat that is sure; else none is clear. */
export function clearlyBest(ways: readonly Way[], study: RepeatStudy): Way | undefined {
  if (study.joins) return ways.find(({ kind }) => kind === 'repeat');
  const [first] = ways;
  if (!first || asksTheArt(first)) return undefined;
  return (study.period?.confidence ?? 0) >= sureRepeat ? first : undefined;
}

/** Whether a way is what a tile is laid by where nothing is chosen: the closing of its own steps that asks least of it. */
export function isPlainWay({ kind, lattice, closing, scale }: Way, ground: WayGround): boolean {
  const { around } = ground;
  const own = closingOf(lattice, {
    ...optionsOf(kind, ground),
    ...(around === undefined ? {} : { around }),
  });
  return kind === 'repeat' && scale === ground.scale && own?.n === closing.n && own.m === closing.m;
}

// What a tile is found to be: whether it joins its copies, and the repeat that its art truly has.
import type { Tile } from '../../artwork/tile.ts';
import type { Point } from '../../geometry/point.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { steppedLattice } from '../joins/border-drop.ts';
import { type Joins, joinsOf } from '../joins/joins.ts';
import { cellArea, coordinates, type Lattice } from '../lattice/lattice.ts';
import { reduced, tidied } from '../lattice/same-lattice.ts';
import { fittedInto } from '../period/clean-period.ts';
import { pictureRepeat } from '../pixels/picture-repeat.ts';
import { finestLattice } from '../repeat/finest-lattice.ts';
import { leastStep } from '../repeat/held-steps.ts';
import { type FoundRepeat, repeatTolerance, trueRepeat } from '../repeat/true-repeat.ts';
import { drawnSo, levelled } from './levelled.ts';
import { recurrenceAround } from './recurs-around.ts';
import { recursThroughout } from './recurs-throughout.ts';
import { jumpOf, type SpacingJump, spacingJump, tells, wholeStep } from './spacing-jump.ts';
import { stripesRepeat } from './stripes.ts';
import { offered, sureRepeat } from './sure-repeat.ts';

export interface RepeatStudy {
  /** The steps that the tile was taken to repeat by: its own size, or what the maker says. */
  readonly lattice: Lattice;
  readonly borders: Joins;
  /** Whether the tile can be laid beside itself and no eye finds where: its borders meet, and its spacing goes on. */
  readonly joins: boolean;
  /** Whether all that speaks for that answer, or against it, may be chance, or as it was drawn: only an eye can tell then. */
  readonly isDoubtful: boolean;
  /** The farthest that outlines, or copies of a motif, are from where they go on, mm. */
  readonly mismatch: number;
  /** The likeliest lattice of the art; undefined where it has none that shows. */
  readonly period: FoundRepeat | undefined;
  /** Other lattices the art may have, the likelier first. */
  readonly others: readonly FoundRepeat[];
  /** Where borders meet but the spacing jumps: by how much, mm. */
  readonly jump: number | undefined;
  /** Whether it jumps from row to row. */
  readonly jumpsUp: boolean;
  /** Whether the steps are none that were given: the tile joins by them alone. */
  readonly stepped?: true;
}

/** Study a tile that is to repeat by a lattice. */
export function repeatStudyOf(tile: Tile, lattice: Lattice): RepeatStudy {
  const borders = joinsOf(tile, lattice);
  const [found, ...others] = repeatsOf(tile);
  const told = borders.joins ? spacingJump(tile, lattice, found) : undefined;
  const jump = told?.jump;
  const joins = borders.joins && jump === undefined;
  const finer = joins && !found?.along ? finestOf(tile, lattice, found) : undefined;
  return {
    lattice,
    borders,
    joins,
    isDoubtful: joins
      ? !isPlaced(borders, lattice, found, finer)
      : isCutInDoubt(borders, told) && !isNoWhole(tile, lattice, found),
    mismatch: Math.max(borders.mismatch, jump ?? 0),
    period: joins ? periodOfJoined(lattice, borders, found, finer) : (told?.by ?? found),
    others,
    jump,
    jumpsUp: told?.isUp ?? false,
  };
}

/**
 * Whether a tile tells that its copies stand where they were drawn to: by what crosses each of its borders, by a sure repeat within, or by
 * motifs that stand as far apart within as they do across the border. Where it does not, one that was cut elsewhere would meet as well.
 */
function isPlaced(
  { placed }: Joins,
  lattice: Lattice,
  found: FoundRepeat | undefined,
  finer: Lattice | undefined,
): boolean {
  if ((found?.confidence ?? 0) >= sureRepeat) return true;
  const steps = finer ? [finer.a, finer.b].map((step) => coordinates(lattice, step)) : [];
  return (
    (placed.side || steps.some(({ i }) => isPart(i))) && (placed.level || steps.some(({ j }) => isPart(j)))
  );
}

const isPart = (times: number): boolean => Math.abs(times - Math.round(times)) > 1e-6;

/** Whether nobody can tell from a tile alone that it does not join: what only ends on its borders may be a side drawn there. */
const isCutInDoubt = ({ open }: Joins, told: SpacingJump | undefined): boolean =>
  told ? told.by.confidence < sureRepeat : open.every(({ ends }) => ends);

/** Whether a tile surely repeats by steps that its own are no whole sums of: a crop of that pattern, whatever ends on its borders. */
const isNoWhole = (tile: Tile, lattice: Lattice, found: FoundRepeat | undefined): boolean =>
  tells(tile, found) && jumpOf(lattice, found) !== undefined;

/** Steps of fewer grains of what was traced than this are the width of a line. */
const leastGrains = 4;

/** The finest lattice by which all of a tile that joins recurs, with how surely it does; undefined where that is its own. */
function finestOf(tile: Tile, lattice: Lattice, found: FoundRepeat | undefined): FoundRepeat | undefined {
  const slack = slackIn(tile);
  const recursAround = recurrenceAround(tile, lattice, slack);
  let confidence = 1;
  const recurs = (step: Point): boolean => {
    const sure = recursAround(step);
    const isWhole =
      sure > 0 && recursThroughout(tile.layers, tile, { own: lattice, finer: { a: step, b: step } }, slack);
    if (isWhole) confidence = Math.min(confidence, sure);
    return isWhole;
  };
  const shown = found && finerBy(found, lattice);
  const first = shown && recurs(shown.a) && recurs(shown.b) ? shown : undefined;
  const least = Math.max(leastStep, leastGrains * (tile.grain ?? 0));
  const finest = finestLattice(first ?? lattice, recurs, least) ?? first;
  return finest && { ...tidied(reduced(finest)), confidence };
}

/** A found lattice of which a tile's own steps are whole sums, made exact by these; undefined where it is no finer. */
const finerBy = (found: FoundRepeat, lattice: Lattice): Lattice | undefined =>
  Math.round(cellArea(lattice) / cellArea(found)) > 1 && jumpOf(lattice, found) === undefined
    ? exactly(found, lattice)
    : undefined;

/** Copies in a tile that joins stand within so much of where they should, mm: all of it shows, and only what files round is no wish. */
const slackIn = ({ grain = 0 }: Tile): number => Math.max(grain, joinTolerance);

/** Study a tile whose repeat nobody gave: by its own sides, or by the drop or shift with which alone it joins. */
export function freeStudyOf(tile: Tile, lattice: Lattice): RepeatStudy {
  const study = repeatStudyOf(tile, lattice);
  // Where all goes on by a drop, film does not end on the borders, straight as its sides may be.
  if (study.borders.joins && study.borders.sides.length === 0) return study;
  const steps = steppedLattice(tile);
  const stepped = steps && repeatStudyOf(tile, steps);
  return stepped?.joins ? { ...stepped, stepped: true } : study;
}

/** The lattices that a tile's art may have, the likeliest first: by its areas, or by its pixels where it has some. */
function repeatsOf({ layers, pixels, ...size }: Tile): readonly FoundRepeat[] {
  const settled = (found: FoundRepeat, within: number): FoundRepeat => {
    const level = levelled(found, within);
    return { ...level, ...fittedInto(size, level, within) };
  };
  const pixelSlack = pixels ? Math.max(pixels.pixel.x, pixels.pixel.y) : 0;
  const stripes = stripesRepeat({ layers, ...size }, Math.max(repeatTolerance / 2, pixelSlack));
  if (stripes) return [{ ...stripes, ...fittedInto(size, stripes, drawnSo) }];
  if (!pixels) return trueRepeat(layers, size).map((found) => settled(unsureOfSeveral(found), drawnSo));
  const { width, height, rgb, pixel } = pixels;
  const count = width * height;
  const planes = [0, 1, 2].map((k) => {
    const plane = new Float64Array(count);
    for (let i = 0; i < count; i++) plane[i] = rgb[3 * i + k] ?? 0;
    return plane;
  });
  const inMm = ({ x, y }: Point): Point => ({ x: x * pixel.x, y: y * pixel.y });
  return pictureRepeat({ width, height, planes }).map(({ a, b, confidence }) =>
    settled({ a: inMm(a), b: inMm(b), confidence }, pixelsDrawnSo * Math.max(pixel.x, pixel.y)),
  );
}

/** Where other steps do as well nobody can tell which is meant: such a lattice is offered. */
const unsureOfSeveral = ({ isOneOfSeveral = false, ...found }: FoundRepeat): FoundRepeat =>
  isOneOfSeveral ? { ...found, confidence: Math.min(found.confidence, offered) } : found;

/** The same of steps that were found by pixels, px. */
const pixelsDrawnSo = 0.3;

/**
 * The repeat of a tile that joins: the finer one by which all of it recurs; else its own. A finer one by which not all recurs is offered:
 * laid by it the tile would lose what differs.
 */
function periodOfJoined(
  lattice: Lattice,
  borders: Joins,
  found: FoundRepeat | undefined,
  finest: FoundRepeat | undefined,
): FoundRepeat {
  if (finest) return finest;
  const finer = found && found.confidence >= sureRepeat ? finerBy(found, lattice) : undefined;
  if (found && finer) return { ...finer, confidence: Math.min(found.confidence, offered) };
  // Every outline that goes on across a border halves the doubt that it does so by chance; where none does, only the
  // file's size tells.
  return { ...lattice, confidence: 1 - 2 ** -(1 + borders.crossings / 2) };
}

/** A found lattice as exact fractions of the tile's own steps. */
function exactly(found: Lattice, { a, b }: Lattice): Lattice | undefined {
  const [p, q] = [wholeStep(a, found), wholeStep(b, found)];
  const area = p.i * q.j - p.j * q.i;
  if (area === 0) return undefined;
  const solved = (of: 'x' | 'y') => ({
    first: (a[of] * q.j - b[of] * p.j) / area,
    second: (b[of] * p.i - a[of] * q.i) / area,
  });
  const [x, y] = [solved('x'), solved('y')];
  return { a: { x: x.first, y: y.first }, b: { x: x.second, y: y.second } };
}

/**
 * How many of the art's own periods a tile shows, by the steps they are told with: columns of them across, rows up. A column is as wide
 * as a period's area over its step up, a row as high as that area over its step around.
 */
export function periodsShown(tile: { readonly width: number; readonly height: number }, period: Lattice) {
  const area = cellArea(period);
  return {
    across: (tile.width * Math.abs(period.b.y)) / area,
    up: (tile.height * Math.abs(period.a.x)) / area,
  };
}

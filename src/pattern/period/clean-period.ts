// One clean period out of a crop that shows more: every motif once, and so that it joins its own copies.

import type { Tile } from '../../artwork/tile.ts';
import { shifted } from '../../geometry/affine.ts';
import { type Box, boxCorners, boxOfPoints, movedBox } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import { type Contour, polygon, type Shape } from '../../geometry/contour.ts';
import { shapeArea, spanOf, tightBox } from '../../geometry/measure.ts';
import { add, cross, type Point, scale, subtract } from '../../geometry/point.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { coordinates, type Lattice, step, stepsIn } from '../lattice/lattice.ts';
import { repeatTolerance } from '../repeat/true-repeat.ts';
import { type BoxedShape, isInside, type PeriodContour, type Size, shapesCutBy } from '../tile/cut-shapes.ts';
import { hair } from '../tile/flush.ts';
import { withoutAbutting } from './abutting.ts';
import { withMeetingBorders } from './meeting-borders.ts';

/** Copies of one motif: where each stands differs by rounding alone, its area by this share. */
const alikeArea = 0.02;

/** A motif of the period has to show at this share of the places where the crop would show it: else it was drawn once. */
const leastShown = 0.5;

/**
 * The period's window in a crop: a parallelogram of two steps of the lattice, in the middle of what is shown, mm;
 * undefined where the crop shows no whole period.
 */
export function windowOf({ width, height }: Size, lattice: Lattice): Contour | undefined {
  const fitting = periodsOf(lattice)
    .filter(({ box }) => box.maxX - box.minX <= width && box.maxY - box.minY <= height)
    .sort((p, q) => sizeOf(p.box) - sizeOf(q.box))[0];
  if (!fitting) return undefined;
  const { corners, box } = fitting;
  const by = { x: (width - box.minX - box.maxX) / 2, y: (height - box.minY - box.maxY) / 2 };
  return polygon(grownByHair(corners).map((corner) => add(corner, by)));
}

/** One period as parallelograms of several pairs of its steps, with their boxes. */
const periodsOf = ({ a, b }: Lattice): readonly { corners: readonly Point[]; box: Box }[] =>
  [-2, -1, 0, 1, 2]
    .flatMap((k) => [
      { a, b: { x: b.x + k * a.x, y: b.y + k * a.y } },
      { a: { x: a.x + k * b.x, y: a.y + k * b.y }, b },
    ])
    .map((pair) => cornersOf(pair))
    .map((corners) => ({ corners, box: boxOfPoints(corners) }));

/**
 * A lattice whose period is as wide or as tall as the crop but for what it was found by, made small enough by that to be taken
 * out of it: a crop of exactly one period has one.
 */
export function fittedInto({ width, height }: Size, lattice: Lattice, slack: number): Lattice {
  if (windowOf({ width, height }, lattice)) return lattice;
  const over = periodsOf(lattice)
    .map(({ box }) => ({ x: box.maxX - box.minX, y: box.maxY - box.minY }))
    .filter(({ x, y }) => x <= width + slack && y <= height + slack)
    .sort((p, q) => p.x + p.y - q.x - q.y)[0];
  if (!over) return lattice;
  const by = { x: Math.min(1, (width - hair) / over.x), y: Math.min(1, (height - hair) / over.y) };
  const less = ({ x, y }: Point): Point => ({ x: x * by.x, y: y * by.y });
  return { a: less(lattice.a), b: less(lattice.b) };
}

/** A parallelogram whose sides stand a hair further out, so that neighbouring periods overlap. */
function grownByHair(corners: readonly Point[]): readonly Point[] {
  const [p, q, r] = corners;
  if (!p || !q || !r) return corners;
  const [u, v] = [subtract(q, p), subtract(r, q)];
  const area = Math.abs(cross(u, v));
  const middle = scale(add(p, r), 0.5);
  // A hair across the other pair of sides, as a share of half their distance.
  const grown = 1 + (2 * hair * Math.max(lengthOf(u), lengthOf(v))) / area;
  return corners.map((corner) => add(middle, scale(subtract(corner, middle), grown)));
}

const lengthOf = ({ x, y }: Point): number => Math.hypot(x, y);

const sizeOf = ({ minX, minY, maxX, maxY }: Box): number => maxX - minX + (maxY - minY);

/** The corners of one period, in the order of a box's corners. */
function cornersOf({ a, b }: Lattice): readonly Point[] {
  const origin = { x: 0, y: 0 };
  return a.x * b.y - a.y * b.x > 0 ? [origin, a, add(a, b), b] : [origin, b, add(a, b), a];
}

/**
 * The contours of one layer's period. A motif that the crop shows whole is taken whole, once: the copy nearest to the
 * middle. What is nowhere whole (a net, or motifs larger than what is left of the crop) is cut at the window's border.
 * What recurs nowhere although the crop would show it again is no part of the pattern, and is left out.
 */
export function cleanPeriodOf(
  shapes: readonly Shape[],
  crop: Size & Pick<Tile, 'pixels'>,
  lattice: Lattice,
  window: Contour,
): PeriodContour[] {
  const { pixels, width, height } = crop;
  // Copies that were traced differ by what a pixel leaves open.
  const slack = pixels ? Math.max(pixels.pixel.x, pixels.pixel.y, repeatTolerance) : repeatTolerance;
  const tile: Crop = { width, height, slack };
  const drawn = withoutAbutting(shapes).map(
    (shape): Placed => ({ shape, box: tightBox(shape.contours), area: shapeArea(shape) }),
  );
  const whole = drawn.filter((item) => isWhole(item, tile));
  const motifs = motifsOf(whole, tile, lattice);
  const known = new ShownMotifs(motifs, tile, lattice);
  const cut = drawn.filter((item) => !isWhole(item, tile) && !known.cover(item));
  return [
    ...motifs.flatMap(({ shape }) =>
      shape.contours.map((contour) => ({ contour, borders: new Set<number>() })),
    ),
    ...(pixels
      ? withMeetingBorders(shapesCutBy(cut, window), window, lattice, slack)
      : shapesCutBy(cut, window)),
  ];
}

/** A crop, and what copies of one motif in it may differ by, mm. */
interface Crop extends Size {
  readonly slack: number;
}

interface Placed extends BoxedShape {
  readonly area: number;
}

/** Whether a shape stands clear of the crop's edge, which may have cut it. */
const isWhole = ({ box }: Placed, tile: Crop): boolean => isInside(box, tile, tile.slack);

/** A motif for each family of copies, those that do not recur left out. */
function motifsOf(whole: readonly Placed[], tile: Crop, lattice: Lattice): readonly Placed[] {
  const families = new Families(lattice, tile.slack);
  for (const item of byDistance(whole, tile)) families.add(item);
  return families.all
    .filter(({ first, count }) => {
      const places = placesShown(first, tile, lattice);
      return places < 2 || count >= leastShown * places;
    })
    .map(({ first }) => first);
}

const byDistance = (items: readonly Placed[], { width, height }: Size): Placed[] => {
  const away = ({ box }: Placed) =>
    Math.hypot((box.minX + box.maxX - width) / 2, (box.minY + box.maxY - height) / 2);
  return [...items].sort((p, q) => away(p) - away(q));
};

/** How many copies of a motif would stand whole in the crop. */
const placesShown = ({ box }: Placed, { width, height, slack }: Crop, lattice: Lattice): number =>
  [
    ...stepsIn(lattice, {
      minX: slack - box.minX,
      minY: slack - box.minY,
      maxX: width - slack - box.maxX,
      maxY: height - slack - box.maxY,
    }),
  ].length;

interface Family {
  readonly first: Placed;
  count: number;
}

/** Shapes by where in the period they stand. */
class Families {
  readonly all: Family[] = [];
  readonly #lattice: Lattice;
  readonly #slack: number;
  readonly #cells = new Map<string, Family[]>();

  constructor(lattice: Lattice, slack: number) {
    this.#lattice = lattice;
    this.#slack = slack;
  }

  /** Boxes a twentieth of the period wide: a family is looked for in its own and those around it. */
  #cellOf({ x, y }: Point): readonly [number, number] {
    const { i, j } = coordinates(this.#lattice, { x, y });
    return [Math.floor((i - Math.floor(i)) * cellsPerStep), Math.floor((j - Math.floor(j)) * cellsPerStep)];
  }

  add(item: Placed): void {
    const corner = { x: item.box.minX, y: item.box.minY };
    const [column, row] = this.#cellOf(corner);
    for (const [dx, dy] of around)
      for (const family of this.#cells.get(keyOf(column + dx, row + dy)) ?? [])
        if (isCopy(item, family.first, this.#lattice, this.#slack)) {
          family.count++;
          return;
        }
    const family: Family = { first: item, count: 1 };
    this.all.push(family);
    const key = keyOf(column, row);
    this.#cells.set(key, [...(this.#cells.get(key) ?? []), family]);
  }
}

const cellsPerStep = 20;
const keyOf = (column: number, row: number): string =>
  `${(column + cellsPerStep) % cellsPerStep} ${(row + cellsPerStep) % cellsPerStep}`;
const around = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].map((dy) => [dx, dy] as const));

/** Whether two shapes are the same motif a whole number of steps apart, by their boxes and areas. */
function isCopy(one: Placed, other: Placed, lattice: Lattice, slack: number): boolean {
  const larger = Math.max(one.area, other.area);
  // A rim as wide as the slack is what areas may differ by where that is more.
  const rim = slack > repeatTolerance ? slack * rimOf(one.shape) : 0;
  if (Math.abs(one.area - other.area) > Math.max(alikeArea * larger, rim / 2)) return false;
  const by = stepBetween(one.box, other.box, lattice);
  const near = (p: number, q: number) => Math.abs(p - q) <= 2 * slack;
  return (
    near(one.box.minX, other.box.minX + by.x) &&
    near(one.box.minY, other.box.minY + by.y) &&
    near(one.box.maxX, other.box.maxX + by.x) &&
    near(one.box.maxY, other.box.maxY + by.y)
  );
}

/** The whole step nearest to the one from a box's corner to another's. */
function stepBetween(one: Box, other: Box, lattice: Lattice): Point {
  const { i, j } = coordinates(lattice, { x: one.minX - other.minX, y: one.minY - other.minY });
  return step(lattice, Math.round(i), Math.round(j));
}

/** Copies of motifs that the crop's edge cuts: what shows there needs no cutting of its own. */
class ShownMotifs {
  readonly #frame: Shape;
  readonly #slack: number;
  readonly #copies: readonly { readonly motif: Placed; readonly by: Point }[];
  readonly #index: BoxIndex;

  constructor(motifs: readonly Placed[], { width, height, slack }: Crop, lattice: Lattice) {
    this.#slack = slack;
    const crop = { minX: 0, minY: 0, maxX: width, maxY: height };
    this.#frame = { contours: [polygon(boxCorners(crop))] };
    this.#copies = motifs.flatMap((motif) =>
      stepsShowing(motif.box, crop, lattice)
        .filter((by) => !isInside(movedBox(motif.box, by), { width, height }, slack))
        .map((by) => ({ motif, by })),
    );
    this.#index = new BoxIndex(this.#copies.length, (add) => {
      for (const { motif, by } of this.#copies) {
        const { minX, minY, maxX, maxY } = movedBox(motif.box, by);
        add(minX, minY, maxX, maxY);
      }
    });
  }

  /** Whether all that shows of a shape is what shows of a motif's copies. */
  cover({ shape, box }: Placed): boolean {
    const near = this.#index.meeting(box.minX, box.minY, box.maxX, box.maxY);
    if (near.length === 0) return false;
    const copies = near.flatMap((at) => {
      const copy = this.#copies[at];
      return copy ? [{ contours: shifted(copy.motif.shape.contours, copy.by) }] : [];
    });
    const shown = clippedShapes([shape], [this.#frame], 'intersection', chordTolerance);
    const left = clippedShapes(shown, copies, 'difference', chordTolerance);
    return totalOf(left, shapeArea) <= this.#slack * totalOf(shown, rimOf);
  }
}

const totalOf = (shapes: readonly Shape[], of: (shape: Shape) => number): number =>
  shapes.reduce((sum, shape) => sum + of(shape), 0);

const rimOf = ({ contours }: Shape): number => contours.reduce((sum, contour) => sum + spanOf(contour), 0);

/** The steps that bring a box into another. */
const stepsShowing = (box: Box, into: Box, lattice: Lattice): readonly Point[] =>
  [
    ...stepsIn(lattice, {
      minX: into.minX - box.maxX,
      minY: into.minY - box.maxY,
      maxX: into.maxX - box.minX,
      maxY: into.maxY - box.minY,
    }),
  ].map(({ at }) => at);

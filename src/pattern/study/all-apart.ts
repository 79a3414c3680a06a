// Tiles whose motifs all differ and stand clear of its borders: laid beside itself such a tile joins, and nothing in it can recur.

import type { Tile } from '../../artwork/tile.ts';
import type { Box } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { segmentCount } from '../../geometry/kept-contour.ts';
import { extentAlong, tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { repeatTolerance } from '../repeat/true-repeat.ts';
import type { Size } from '../tile/cut-shapes.ts';

/** Outlines whose sizes differ by more are no copies, mm: each side of one may stand off. */
const alike = 2 * repeatTolerance;

/** Larger outlines, and ones of more pieces, may repeat within themselves: as a share of the tile, and in pieces. */
const largest = 0.25;
const mostPieces = 100;

/** So many outlines, of all sizes, are held against all of them. */
const mostAsked = 128;

/** So many of those that one step brings to their like may be chance: a sure repeat brings more than half of an eighth of all. */
const mostByChance = 3;

/** More like pairs than this are not held against one another: something may well recur. */
const mostPairs = 2000;

/**
 * Whether nothing of a tile comes near its borders, and no step brings more of its outlines than chance does to ones of their size. No
 * repeat that is sure can then be found in it, or in it beside a copy of itself; finding none takes a quarter of a small job.
 */
export function isAllApart({ layers, pixels, width, height }: Tile): boolean {
  if (pixels) return false;
  const outlines: Outline[] = [];
  for (const { shapes } of layers)
    for (const { contours } of shapes)
      for (const contour of contours) {
        const outline = new Outline(contour);
        const { minX, minY, maxX, maxY } = outline.box;
        const isClear =
          minX > repeatTolerance &&
          minY > repeatTolerance &&
          maxX < width - repeatTolerance &&
          maxY < height - repeatTolerance;
        const isSmall = maxX - minX < largest * width && maxY - minY < largest * height;
        if (!isClear || !isSmall || segmentCount(contour) > mostPieces) return false;
        outlines.push(outline);
      }
  const steps = stepsToLike(outlines);
  return steps !== undefined && !isShared(steps, { width, height });
}

/** An outline's size along several lines, which copies have in common however they were drawn. */
class Outline {
  readonly box: Box;
  readonly width: number;
  readonly height: number;
  readonly #contour: Contour;
  /** How far it reaches each way along each line, from the middle of its box; as far as that was asked for. */
  readonly #reaches: (readonly [number, number])[] = [];

  constructor(contour: Contour) {
    this.#contour = contour;
    this.box = tightBox([contour]);
    this.width = this.box.maxX - this.box.minX;
    this.height = this.box.maxY - this.box.minY;
  }

  isLike(other: Outline): boolean {
    if (Math.abs(this.height - other.height) > alike) return false;
    for (let i = 0; i < directions.length; i++) {
      const [one, two] = [this.#reach(i), other.#reach(i)];
      if (Math.abs(one[0] - two[0]) > alike || Math.abs(one[1] - two[1]) > alike) return false;
    }
    return true;
  }

  #reach(i: number): readonly [number, number] {
    const known = this.#reaches[i];
    if (known) return known;
    const direction = directions[i] ?? level;
    const [from, to] = extentAlong(this.#contour, direction);
    const x = (this.box.minX + this.box.maxX) / 2;
    const y = (this.box.minY + this.box.maxY) / 2;
    const middle = x * direction.x + y * direction.y;
    const reach = [from - middle, to - middle] as const;
    this.#reaches[i] = reach;
    return reach;
  }
}

const level: Point = { x: 1, y: 0 };
/** Between level and upright, in eighths of a right angle each way from there. */
const directions = [4, 12, 2, 10, 6, 14].map((sixteenths): Point => {
  const angle = (sixteenths * Math.PI) / 16;
  return { x: Math.cos(angle), y: Math.sin(angle) };
});

/** The steps from some outlines to ones like them, x and y in turn; undefined where there are too many. */
function stepsToLike(outlines: readonly Outline[]): readonly number[] | undefined {
  const byWidth = [...outlines].sort((p, q) => p.width - q.width);
  const every = Math.max(1, byWidth.length / mostAsked);
  const steps: number[] = [];
  const take = (one: Outline, other: Outline): void => {
    if (one.isLike(other)) steps.push(other.box.minX - one.box.minX, other.box.minY - one.box.minY);
  };
  for (let asked = 0; asked < byWidth.length && steps.length < 2 * mostPairs; asked += every) {
    const at = Math.floor(asked);
    const one = byWidth[at];
    if (!one) break;
    for (const way of [1, -1])
      for (let i = at + way; ; i += way) {
        const other = byWidth[i];
        if (!other || Math.abs(other.width - one.width) > alike) break;
        take(one, other);
      }
  }
  return steps.length < 2 * mostPairs ? steps : undefined;
}

/** Whether more steps than chance has are the same one, or its opposite, whole tiles apart. */
function isShared(steps: readonly number[], { width, height }: Size): boolean {
  for (let i = 0; i < steps.length; i += 2) {
    let same = 1;
    for (let j = i + 2; j < steps.length; j += 2) {
      const [x, y, otherX, otherY] = [steps[i] ?? 0, steps[i + 1] ?? 0, steps[j] ?? 0, steps[j + 1] ?? 0];
      const isSame = isWhole(otherX - x, width) && isWhole(otherY - y, height);
      const isOpposite = isWhole(otherX + x, width) && isWhole(otherY + y, height);
      if (isSame || isOpposite) same += 1;
    }
    if (same > mostByChance) return true;
  }
  return false;
}

/** Whether a length is some whole times a size, as closely as outlines that are alike may stand. */
const isWhole = (length: number, size: number): boolean =>
  Math.abs(length - size * Math.round(length / size)) <= 2 * alike;

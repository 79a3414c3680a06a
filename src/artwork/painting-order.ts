// Colours stacked as layers keep one order each; a drawing that paints a colour again, over another, has more.
import { type Finding, look } from '../finding.ts';
import { type Box, hullBox } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import type { Shape } from '../geometry/contour.ts';
import { clippedShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';

/** One painted area and its colour. */
export interface PaintedArea {
  readonly colour: string;
  readonly shape: Shape;
}

/** Pairs whose boxes meet that are looked at for true overlap, for any two colours: enough to see what is meant. */
const mostLooks = 200;

const overlap = (a: Shape, b: Shape): boolean =>
  clippedShapes([a], [b], 'intersection', chordTolerance).length > 0;

/** Looks for areas painted over others of a colour that is stacked above their own. */
class OrderReader {
  readonly #painted: readonly PaintedArea[];
  readonly #boxes: readonly Box[];
  readonly #index: BoxIndex;
  readonly #rank: ReadonlyMap<string, number>;
  /** Looks left for each pair of colours; none once an overlap is found. */
  readonly #looksLeft = new Map<string, number>();

  constructor(painted: readonly PaintedArea[], rank: ReadonlyMap<string, number>) {
    this.#painted = painted;
    this.#rank = rank;
    this.#boxes = painted.map(({ shape }) => hullBox(shape.contours));
    this.#index = new BoxIndex(painted.length, (add) => {
      for (const { minX, minY, maxX, maxY } of this.#boxes) add(minX, minY, maxX, maxY);
    });
  }

  /** The areas of colours stacked above this one that it is painted over, one a colour, if not found before. */
  coveredBy(i: number): PaintedArea[] {
    const item = this.#painted[i];
    const box = this.#boxes[i];
    if (!item || !box) return [];
    return this.#index.meeting(box.minX, box.minY, box.maxX, box.maxY).flatMap((below) => {
      const under = this.#painted[below];
      const isBelow = below < i && under !== undefined && this.#rankOf(under) > this.#rankOf(item);
      return isBelow && this.#isOver(item, under) ? [under] : [];
    });
  }

  #rankOf({ colour }: PaintedArea): number {
    return this.#rank.get(colour) ?? 0;
  }

  #isOver(item: PaintedArea, under: PaintedArea): boolean {
    const pair = `${item.colour} ${under.colour}`;
    const left = this.#looksLeft.get(pair) ?? mostLooks;
    if (left === 0) return false;
    const isOver = overlap(item.shape, under.shape);
    this.#looksLeft.set(pair, isOver ? 0 : left - 1);
    return isOver;
  }
}

/**
 * A finding where a colour is painted over another that is stacked above it: layers go on in the order in which their
 * colours first appear, so there the vessel will not look like the drawing. Once for any two colours.
 */
export function paintingOrderFindings(painted: readonly PaintedArea[], file: string): Finding[] {
  const rank = new Map<string, number>();
  for (const { colour } of painted) if (!rank.has(colour)) rank.set(colour, rank.size);
  if (rank.size < 2) return [];
  const reader = new OrderReader(painted, rank);
  return painted.flatMap(({ colour, shape }, i) =>
    reader.coveredBy(i).map((under) => {
      const { minX: x, minY: y } = hullBox(shape.contours);
      const says = `paints ${colour} over ${under.colour}, but as layers ${under.colour} lies over ${colour}; give what lies on top a colour of its own`;
      return look('painting-order', { file, x, y }, says);
    }),
  );
}

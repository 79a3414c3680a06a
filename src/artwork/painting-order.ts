// Colours stacked as layers keep one order each. A drawing that paints a colour again, over another, has more: there
// the layer that would lie on top is cut away, so that the vessel shows what the drawing shows.
import { type Finding, note } from '../finding.ts';
import { type Box, hullBox } from '../geometry/box.ts';
import { BoxIndex } from '../geometry/box-index.ts';
import type { Shape } from '../geometry/contour.ts';
import { shapeArea, tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { clippedShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';

/** One painted area and its colour. */
export interface PaintedArea {
  readonly colour: string;
  readonly shape: Shape;
}

/** What one painted area leaves to see once its colour is a layer, and what was said of it. */
export interface LayeredAreas {
  readonly areas: readonly { readonly colour: string; readonly shapes: readonly Shape[] }[];
  readonly findings: readonly Finding[];
}

/** mm²: less than this cut away is the rounding of areas that only touch. */
const leastCut = 1e-4;

const areaOf = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

type ColouredAreas = readonly [colour: string, shapes: readonly Shape[]];

/** The middle of the largest of areas: a place to look at, where the corner of a box may lie on none of them. */
function middleOfLargest(shapes: readonly Shape[]): Point {
  const [largest] = [...shapes].sort((a, b) => shapeArea(b) - shapeArea(a));
  const { minX, maxX, minY, maxY } = tightBox(largest?.contours ?? []);
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

/** Cuts areas where a colour stacked below their own was painted over them. */
class LayerCutter {
  readonly #painted: readonly PaintedArea[];
  readonly #boxes: readonly Box[];
  readonly #index: BoxIndex;
  readonly #rank: ReadonlyMap<string, number>;
  /** One finding for any two colours. */
  readonly findings = new Map<string, Finding>();
  readonly #ground: readonly string[];
  readonly #file: string;

  constructor(
    painted: readonly PaintedArea[],
    rank: ReadonlyMap<string, number>,
    ground: readonly string[],
    file: string,
  ) {
    this.#painted = painted;
    this.#ground = ground;
    this.#rank = rank;
    this.#file = file;
    this.#boxes = painted.map(({ shape }) => hullBox(shape.contours));
    this.#index = new BoxIndex(painted.length, (add) => {
      for (const { minX, minY, maxX, maxY } of this.#boxes) add(minX, minY, maxX, maxY);
    });
  }

  /** What is left of an area. */
  leftOf(under: PaintedArea, i: number): readonly Shape[] {
    let left: readonly Shape[] = [under.shape];
    for (const [colour, over] of this.#paintedOver(under, i)) {
      const cut = clippedShapes([...left], over, 'difference', chordTolerance);
      if (areaOf(left) - areaOf(cut) < leastCut) continue;
      this.#say([colour, over], [under.colour, left]);
      left = cut;
    }
    return left;
  }

  /** Areas of colours stacked below, painted later where this one may be, by their colour. */
  #paintedOver(under: PaintedArea, i: number): Map<string, Shape[]> {
    const found = new Map<string, Shape[]>();
    const box = this.#boxes[i];
    if (!box) return found;
    for (const above of this.#index.meeting(box.minX, box.minY, box.maxX, box.maxY)) {
      const over = this.#painted[above];
      if (above <= i || over === undefined || this.#rankOf(over) >= this.#rankOf(under)) continue;
      const shapes = found.get(over.colour) ?? [];
      shapes.push(over.shape);
      found.set(over.colour, shapes);
    }
    return found;
  }

  #rankOf({ colour }: PaintedArea): number {
    return this.#rank.get(colour) ?? 0;
  }

  #say([over, above]: ColouredAreas, [under, below]: ColouredAreas): void {
    const pair = `${over} ${under}`;
    if (this.findings.has(pair) || this.#ground.includes(over)) return;
    const says = `paints ${over} over ${under}, but as layers ${under} lies over ${over}; there ${under} is cut away, so that the vessel shows what the drawing shows`;
    const place = middleOfLargest(clippedShapes([...below], [...above], 'intersection', chordTolerance));
    this.findings.set(pair, note('painting-order', { file: this.#file, ...place }, says));
  }
}

/**
 * Colours from the lowest layer up: those of `order` first, then the others as they were given, each once. Those of `order`
 * that are not among them are left out.
 */
export function inOrder(colours: readonly string[], order: readonly string[] = []): readonly string[] {
  const known = new Set(colours);
  return [...new Set([...order.filter((colour) => known.has(colour)), ...colours])];
}

/**
 * The areas as layers show them, in painting order, when layers are stacked in the order that is asked for, or else in which
 * their colours first appear: where a colour is painted over another that is stacked above it, the other is cut away there.
 * Colours of the ground are no film: they lie below all, and nothing is said where they are painted over one.
 */
export function layeredAreas(
  areas: LayeredAreas['areas'],
  file: string,
  {
    order = [],
    ground = [],
  }: { readonly order?: readonly string[]; readonly ground?: readonly string[] } = {},
): LayeredAreas {
  const colours = inOrder(
    areas.map(({ colour }) => colour),
    [...ground, ...order],
  );
  const rank = new Map(colours.map((colour, i) => [colour, i]));
  if (rank.size < 2) return { areas, findings: [] };
  const painted = areas.flatMap(({ colour, shapes }) => shapes.map((shape) => ({ colour, shape })));
  const cutter = new LayerCutter(painted, rank, ground, file);
  let i = 0;
  const cut = areas.map(({ colour, shapes }) => ({
    colour,
    shapes: shapes.flatMap((shape) => cutter.leftOf({ colour, shape }, i++)),
  }));
  return { areas: cut, findings: [...cutter.findings.values()] };
}

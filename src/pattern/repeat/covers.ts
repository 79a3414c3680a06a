// What lies over a pattern: a label, a bar, a mark of somebody's. It shows once, and hides what recurs under it.
import { type Box, boxOfPoints, hullBox } from '../../geometry/box.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { pointAt } from '../../geometry/segment.ts';
import type { Agreement, Missing } from '../film/film-scan.ts';
import type { Size } from '../tile/cut-shapes.ts';

/** Art that is hidden to more than this share shows no repeat of its own. */
export const mostHidden = 0.45;

/** A drawing of more contours is not looked at so: it would take longer than all the rest, and shows enough beside a label. */
const mostContours = 4000;

/** More contours that recur nowhere are no label, but art that is drawn by hand. */
const mostOver = 60;

/** So many contours that recur have to meet what lies over them. */
const leastMet = 2;

/** So far past what lies over a pattern nothing is looked at: outlines are cut there, mm. */
const margin = 0.2;

/**
 * Boxes around the contours of a drawing that recur by no step though they should, where they meet others that do: by themselves, and as
 * letters on a plate that is as bare as the drawing's ground.
 */
export function coversOf(
  layers: readonly { readonly shapes: readonly Shape[] }[],
  agreements: readonly Agreement[],
  crop: Size,
): readonly (readonly Box[])[] {
  const asked = new Set(agreements.flatMap((one) => [...one.balance.keys()]));
  const recurs = new Set(
    agreements.flatMap((one) =>
      [...one.balance].flatMap(([contour, balance]) => (balance > 0 ? [contour] : [])),
    ),
  );
  const contours = layers.flatMap(({ shapes }) => shapes.flatMap((shape) => shape.contours));
  if (contours.length > mostContours) return [];
  const boxes = contours.map((contour) => hullBox([contour]));
  // Contours are numbered from 1.
  const isOdd = (i: number) => asked.has(i + 1) && !recurs.has(i + 1);
  const others = boxes.filter((_, i) => recurs.has(i + 1));
  const covers = contours.filter((_, i) => isOdd(i));
  if (covers.length > mostOver) return [];
  const isOver = (box: Box): boolean => others.filter((other) => meet(box, other)).length >= leastMet;
  const own = covers
    .filter((contour) => isOver(hullBox([contour])))
    .flatMap(slicesOf)
    .map((box) => dilated(box));
  const plates = plateMargins.map((times) =>
    together(covers.map((contour) => hullBox([contour])))
      .map((box) => dilated(box, times * Math.min(box.maxX - box.minX, heightOf(box))))
      .filter(isOver),
  );
  return [own, ...plates]
    .map((boxes) => boxes.map((box) => within(box, crop)))
    .filter((boxes) => boxes.length > 0);
}

/**
 * The box of what hides a pattern, by what is missing: of each either the place where it does not show lies there, or the one where
 * it shows, for outlines that were cut along a cover recur nowhere. It grows from where most of them meet by what makes it
 * larger by least.
 */
export function patchOf(missing: readonly Missing[], { width, height }: Size): Box | undefined {
  const pairs = missing.map(({ way, at, along, seenAt, seenAlong }) =>
    way === 'level'
      ? [
          { x: along, y: at },
          { x: seenAlong, y: seenAt },
        ]
      : [
          { x: at, y: along },
          { x: seenAt, y: seenAlong },
        ],
  );
  const cellOf = ({ x, y }: Point): number =>
    Math.floor((x / width) * cellsAside) + 1000 * Math.floor((y / height) * cellsAside);
  const counts = new Map<number, Point[]>();
  for (const place of pairs.flat()) {
    const cell = counts.get(cellOf(place)) ?? [];
    cell.push(place);
    counts.set(cellOf(place), cell);
  }
  const densest = [...counts.values()].reduce((best, cell) => (cell.length > best.length ? cell : best), []);
  if (densest.length === 0) return undefined;
  let box = boxOfPoints(densest);
  let left = pairs;
  for (;;) {
    left = left.filter((pair) => !pair.some((place) => isIn(box, place)));
    if (left.length === 0) return dilated(box);
    box = left
      .flatMap((pair) => pair.map((place) => grown(box, place)))
      .reduce((best, one) => (areaOf(one) < areaOf(best) ? one : best));
  }
}

/** Cells a side in which places that are missing are counted. */
const cellsAside = 10;

const areaOf = ({ minX, minY, maxX, maxY }: Box): number => (maxX - minX) * (maxY - minY);

const isIn = ({ minX, minY, maxX, maxY }: Box, { x, y }: Point): boolean =>
  x >= minX && y >= minY && x <= maxX && y <= maxY;

const grown = ({ minX, minY, maxX, maxY }: Box, { x, y }: Point): Box => ({
  minX: Math.min(minX, x),
  minY: Math.min(minY, y),
  maxX: Math.max(maxX, x),
  maxY: Math.max(maxY, y),
});

/** Boxes side by side that hold a contour, each as high as it is there: a bar that lies slantwise fills little of one box. */
function slicesOf({ segments }: Contour): readonly Box[] {
  const places = segments.flatMap((segment) =>
    Array.from({ length: placesEach }, (_, k) => pointAt(segment, (k + 0.5) / placesEach)),
  );
  const { minX, maxX } = boxOfPoints(places);
  const wide = (maxX - minX) / slices;
  const parts = Array.from({ length: slices }, (_, k) => minX + k * wide);
  return parts.flatMap((from) => {
    const inside = places.filter(({ x }) => x >= from - wide / 2 && x <= from + 1.5 * wide);
    if (inside.length === 0) return [];
    const { minY, maxY } = boxOfPoints(inside);
    return [{ minX: from, maxX: from + wide, minY, maxY }];
  });
}

const slices = 16;
const placesEach = 40;

/** The share of a crop that boxes hide, those that lie over one another counted twice. */
export const hiddenShare = (boxes: readonly Box[], { width, height }: Size): number =>
  boxes.reduce((sum, { minX, minY, maxX, maxY }) => sum + (maxX - minX) * (maxY - minY), 0) /
  (width * height);

const dilated = ({ minX, minY, maxX, maxY }: Box, by = margin): Box => ({
  minX: minX - by,
  minY: minY - by,
  maxX: maxX + by,
  maxY: maxY + by,
});

/** How far a plate goes on past its letters, over their height. */
const plateMargins = [0.6, 1.2];

/** Boxes that stand nearer together than they are high, as one. */
function together(boxes: readonly Box[]): readonly Box[] {
  return boxes.reduce<readonly Box[]>((groups, box) => {
    const near = groups.filter((group) =>
      meet(dilated(group, heightOf(box) / 2), dilated(box, heightOf(box) / 2)),
    );
    return [...groups.filter((group) => !near.includes(group)), near.reduce(hullOf, box)];
  }, []);
}

const heightOf = ({ minY, maxY }: Box): number => maxY - minY;

const hullOf = (one: Box, other: Box): Box => ({
  minX: Math.min(one.minX, other.minX),
  minY: Math.min(one.minY, other.minY),
  maxX: Math.max(one.maxX, other.maxX),
  maxY: Math.max(one.maxY, other.maxY),
});

const within = ({ minX, minY, maxX, maxY }: Box, { width, height }: Size): Box => ({
  minX: Math.max(0, minX),
  minY: Math.max(0, minY),
  maxX: Math.min(width, maxX),
  maxY: Math.min(height, maxY),
});

const meet = (one: Box, other: Box): boolean =>
  one.minX <= other.maxX + margin &&
  other.minX <= one.maxX + margin &&
  one.minY <= other.maxY + margin &&
  other.minY <= one.maxY + margin;

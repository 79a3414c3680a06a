// What stands on every printed page beside the drawing: rulers, page number, page map, marks to join pages by.
import type { DrawnGroup } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { shifted } from '../geometry/affine.ts';
import { boxCorners } from '../geometry/box.ts';
import { type Contour, polygon, polyline } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { bare, footer, type PagePlace, type PaperGrid, sharedBy } from './paper-grid.ts';

/** Size of the words at the foot of a page, and of the letters at joins, mm. */
const footSize = 3;
const joinSize = 3.2;

/** Half the width of a join mark, mm: within what neighbouring pages share. */
const joinArm = 3;

/** Where the words beside the rulers begin, mm from the drawing's left edge: past 4 in and its label. */
const besideRulers = 120;

interface Marks {
  readonly lines: Contour[];
  readonly areas: (readonly Contour[])[];
}

const segment = (from: Point, to: Point): Contour => polyline([from, to]);

/** Words no wider than there is room. */
function fitting(text: string, size: number, room: number, words: DrawWords): readonly Contour[] {
  const full = words(text, size);
  const width = full.length === 0 ? 0 : tightBox(full).maxX;
  return width <= room ? full : words(text, (size * room) / width);
}

/** Two rulers, 100 mm above 4 in, their left ends under one another. The long line of each is its length exactly. */
function rulers(left: number, top: number, words: DrawWords): Marks {
  const ruler = (y: number, step: number, count: number, isLong: (i: number) => boolean) => [
    segment({ x: left, y }, { x: left + step * count, y }),
    ...Array.from({ length: count + 1 }, (_, i) => {
      const x = left + step * i;
      return segment({ x, y }, { x, y: y - (isLong(i) ? 3 : 1.6) });
    }),
  ];
  const [high, low] = [top + 4.5, top + 12.5];
  return {
    lines: [...ruler(high, 5, 20, (i) => i % 2 === 0), ...ruler(low, 25.4 / 4, 16, (i) => i % 4 === 0)],
    areas: [
      shifted(words('100 mm', footSize), { x: left + 103.5, y: high }),
      shifted(words('4 in', footSize), { x: left + 103.5, y: low }),
    ],
  };
}

/** A small plan of all pages, this one filled, its top right corner at the point. */
function pageMap(grid: PaperGrid, here: PagePlace, right: number, top: number): Marks & { width: number } {
  const { columns, rows, width, height, pages } = grid;
  const most = { x: 22, y: footer.height - 1 };
  const scale = Math.min(most.x / (columns * width), most.y / (rows * height), 8 / height);
  const [w, h] = [width * scale, height * scale];
  const left = right - columns * w;
  const page = ({ column, row }: PagePlace, inset: number): Contour => {
    const [x, y] = [left + column * w, top + row * h];
    return polygon(
      boxCorners({ minX: x + inset, minY: y + inset, maxX: x + w - inset, maxY: y + h - inset }),
    );
  };
  const gap = Math.min(w, h) * 0.08;
  return { lines: pages.map((tile) => page(tile, gap)), areas: [[page(here, gap)]], width: columns * w };
}

/** The letters of joins: A to Z, then AA and so on. */
function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}

/** Pages that share an edge, and where on it they are joined. */
export interface Join {
  readonly name: string;
  readonly first: PagePlace;
  /** The page to the right of the first, or below it. */
  readonly second: PagePlace;
  /** The two marks, mm from the top left corner of the page of the first column and row. */
  readonly spots: readonly Point[];
}

/** Where along an edge a mark may stand, as a share of it: the first of these whose surroundings are bare. */
const places = [0.2, 0.15, 0.25, 0.1, 0.3, 0.05, 0.35, 0.4, 0.45];

/** Every pair of pages that share an edge, named in reading order. */
export function joinsOf(grid: PaperGrid): Join[] {
  const { pages } = grid;
  const find = (column: number, row: number) => pages.find((t) => t.column === column && t.row === row);
  const pairs = pages.flatMap((first) =>
    (
      [
        ['right', find(first.column + 1, first.row)],
        ['below', find(first.column, first.row + 1)],
      ] as const
    ).flatMap(([way, second]) => (second ? [{ first, second, way }] : [])),
  );
  return pairs.map(({ first, second, way }, i) => ({
    name: letters(i),
    first,
    second,
    spots: [places, places.map((share) => 1 - share)].map((shares) => bareSpot(grid, first, way, shares)),
  }));
}

function bareSpot(
  grid: PaperGrid,
  first: PagePlace,
  way: 'right' | 'below',
  shares: readonly number[],
): Point {
  const { window, step, ink } = grid;
  const spots = shares.map((share): Point => {
    const onPage =
      way === 'right'
        ? { x: window.maxX - sharedBy / 2, y: window.minY + share * (window.maxY - window.minY) }
        : { x: window.minX + share * (window.maxX - window.minX), y: window.maxY - sharedBy / 2 };
    return { x: onPage.x + first.column * step.x, y: onPage.y + first.row * step.y };
  });
  const room = joinArm + 2;
  const isBare = (spot: Point) =>
    !ink.some(({ x, y }) => Math.abs(x - spot.x) < room && Math.abs(y - spot.y) < room);
  // Where lines are everywhere a mark among them is better than none.
  return spots.find(isBare) ?? spots[0] ?? { x: 0, y: 0 };
}

/** Where the marks of a page's joins stand on it, mm from its top left corner. */
export const joinSpots = ({ step }: PaperGrid, here: PagePlace, joins: readonly Join[]) =>
  joins
    .filter(({ first, second }) => first === here || second === here)
    .flatMap(({ name, spots }) =>
      spots.map((spot) => ({ name, x: spot.x - here.column * step.x, y: spot.y - here.row * step.y })),
    );

/** Crosses in the middle of what two pages share, with the join's letter; laid over one another they fall together. */
function joinMarks(grid: PaperGrid, here: PagePlace, joins: readonly Join[], words: DrawWords): Marks {
  const marks = joinSpots(grid, here, joins);
  return {
    lines: marks.flatMap(({ x, y }) => [
      segment({ x: x - joinArm, y }, { x: x + joinArm, y }),
      segment({ x, y: y - joinArm }, { x, y: y + joinArm }),
    ]),
    areas: marks.map(({ name, x, y }) => shifted(words(name, joinSize), { x: x + 0.8, y: y - 0.8 })),
  };
}

export interface PageMarkOptions {
  /** How many pages there are in all. */
  readonly count: number;
  readonly joins: readonly Join[];
  /** What the print is of. */
  readonly title: string;
  readonly words: DrawWords;
  /** By what the print is corrected for its printer, in words. */
  readonly corrected?: string;
}

/** All marks of one page, mm from its top left corner; `here` is left out for a page of words alone. */
export function pageMarks(
  grid: PaperGrid,
  here: PagePlace | undefined,
  { count, joins, title, words, corrected }: PageMarkOptions,
): DrawnGroup[] {
  const { window, pages } = grid;
  const isJoined = here !== undefined && pages.length > 1;
  const top = window.maxY + footer.gap;
  const map = here && pageMap(grid, here, window.maxX, top + 0.5);
  const left = window.minX + besideRulers;
  const room = window.maxX - left - (map?.width ?? 0) - 2;
  const texts = [
    here ? `page ${pages.indexOf(here) + 1} of ${count}` : `page ${count} of ${count}: the words`,
    title,
    'print at 100 %, not "fit to page",',
    corrected === undefined
      ? 'and measure a ruler before you cut'
      : `measure a ruler; for one printer: ${corrected}`,
    ...(isJoined ? ['join pages cross on cross, letter on letter'] : []),
  ];
  const all = [
    rulers(bare, top, words),
    ...(isJoined && map ? [map] : []),
    ...(here ? [joinMarks(grid, here, joins, words)] : []),
  ];
  const written = texts.map((text, i) =>
    shifted(fitting(text, footSize, room, words), { x: left, y: top + 2.8 + i * 3.7 }),
  );
  const frame = isJoined ? [polygon(boxCorners(window))] : [];
  return [
    {
      role: 'register',
      paths: [...frame, ...all.flatMap(({ lines }) => lines)].map((line) => ({ contours: [line] })),
    },
    {
      role: 'note',
      paths: [...all.flatMap(({ areas }) => areas), ...written]
        .filter((contours) => contours.length > 0)
        .map((contours) => ({ contours })),
    },
  ];
}

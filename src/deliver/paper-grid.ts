// Which way a drawing is turned on sheets of paper, and how many it takes.
import type { Drawing } from '../drawing/drawing.ts';
import { Refused, stop } from '../finding.ts';
import { type Affine, compose, inverse, movePoint, rotation, translation } from '../geometry/affine.ts';
import type { Box } from '../geometry/box.ts';
import type { Contour } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import { pointAt } from '../geometry/segment.ts';
import type { Paper } from './paper.ts';

/** Border that desk printers may leave bare, mm. Common practice, no source. */
export const bare = 10;

/** Height of the strip at the foot of a page for rulers and words, mm, and its distance from the drawing. */
export const footer = { height: 17, gap: 2 };

/** How far neighbouring pages show the same, mm. */
export const sharedBy = 10;

/** Steps in which a drawing is turned to save paper, degrees. */
const turnStep = 5;

/** More pages than this, six square metres of a4, nobody tapes together; as many take some ten seconds to write. */
const mostPages = 150;

/** Which page of the grid, counted from 0. */
export interface PagePlace {
  readonly column: number;
  readonly row: number;
}

export interface PaperGrid {
  readonly width: number;
  readonly height: number;
  /** The part of each page that the drawing may fill, mm from the page's top left corner. */
  readonly window: Box;
  readonly columns: number;
  readonly rows: number;
  /** The pages that hold any of the drawing, in reading order. */
  readonly pages: readonly PagePlace[];
  /** From the drawing to the window of the first column and row. */
  readonly place: Affine;
  /** From one page to the next, mm. */
  readonly step: { readonly x: number; readonly y: number };
  /** Points close together on all lines, and those of each piece's border, placed as for the first column and row. */
  readonly ink: readonly Point[];
  readonly borders: readonly (readonly Point[])[];
}

/** How finely lines are looked at to see which pages they touch, mm. */
const spacing = 1;

function pointsOf({ segments }: Contour): Point[] {
  return segments.flatMap((s) => {
    const steps = Math.max(1, Math.ceil(Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) / spacing));
    return Array.from({ length: steps + 1 }, (_, i) => pointAt(s, i / steps));
  });
}

const contoursOf = (drawing: Drawing, only?: 'outline'): Contour[] =>
  drawing.groups
    .filter(({ role, apart }) => !apart && (only === undefined || role === only))
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));

/**
 * The way of laying the pieces of a drawing on paper that takes the fewest pages: upright or across, and turned by an
 * angle where that saves pages. Straight goes before turned, upright before across. Given twice: with what is to
 * spare shared between above and below, and with all of it below. @throws Refused where it takes too many pages.
 */
export function paperGrids(drawing: Drawing, paper: Paper): readonly [PaperGrid, PaperGrid] {
  const drawn = {
    ink: contoursOf(drawing).flatMap(pointsOf),
    borders: contoursOf(drawing, 'outline').map(pointsOf),
  };
  const upright = { width: paper.across, height: paper.up };
  const across = { width: paper.up, height: paper.across };
  const ways = anglesTried.flatMap((angle) => [upright, across].map((page) => wayOf(drawn.ink, page, angle)));
  const fewest = (all: readonly Way[], count: (way: Way) => number): Way[] => {
    const least = Math.min(...all.map(count));
    return all.filter((way) => count(way) === least);
  };
  // Pages that hold nothing are not printed, so of more than two a larger grid may take less paper; a much larger never does.
  const least = Math.min(...ways.map(({ x, y }) => x.count * y.count));
  if (least > mostPages) throw tooManyPages(least, paper);
  const near = least > 2 ? 2 * least : least;
  const candidates = ways.filter(({ x, y }) => x.count * y.count <= near);
  const [best = wayOf(drawn.ink, upright, 0)] =
    near === least
      ? candidates
      : fewest(candidates, (way) => neededPages(sheetsOf(way, way.y.spare / 2), drawn).length);
  return [gridOf(best, best.y.spare / 2, drawn), gridOf(best, 0, drawn)];
}

function tooManyPages(count: number, { name }: Paper): Refused {
  const says = `a print at true size takes some ${count} pages of ${name}, and up to ${mostPages} are made; give larger paper, such as a roll's "900x2000mm", or a narrower band`;
  return new Refused([stop('too-many-pages', { key: '--paper-size' }, says)]);
}

/** Radians, the straight one first, up to a right angle either way. */
const anglesTried = Array.from({ length: 90 / turnStep + 1 }, (_, i) => i * turnStep)
  .flatMap((degrees) => (degrees === 0 ? [0] : [degrees, -degrees]))
  .map((degrees) => (degrees * Math.PI) / 180);

/** What a drawing takes of paper one way: pages that stand beside each other, and what is to spare on them, mm. */
interface Way {
  readonly page: { readonly width: number; readonly height: number };
  readonly angle: number;
  readonly box: Box;
  readonly window: Box;
  readonly x: Fill;
  readonly y: Fill;
}

interface Fill {
  readonly count: number;
  readonly step: number;
  readonly spare: number;
}

function fillOf(size: number, room: number): Fill {
  const step = room - sharedBy;
  const count = Math.max(1, Math.ceil((size - sharedBy) / step - 1e-9));
  return { step, count, spare: count * step + sharedBy - size };
}

function wayOf(ink: readonly Point[], page: Way['page'], angle: number): Way {
  const box = turnedBox(ink, angle);
  const window = {
    minX: bare,
    minY: bare,
    maxX: page.width - bare,
    maxY: page.height - bare - footer.height - footer.gap,
  };
  const x = fillOf(box.maxX - box.minX, window.maxX - window.minX);
  const y = fillOf(box.maxY - box.minY, window.maxY - window.minY);
  return { page, angle, box, window, x, y };
}

/** The box of points turned by an angle about the origin. */
function turnedBox(points: readonly Point[], angle: number): Box {
  const turned = rotation(angle);
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    const [atX, atY] = [turned.a * x + turned.c * y, turned.b * x + turned.d * y];
    if (atX < minX) minX = atX;
    if (atX > maxX) maxX = atX;
    if (atY < minY) minY = atY;
    if (atY > maxY) maxY = atY;
  }
  return points.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : { minX, minY, maxX, maxY };
}

/** A grid before anything is laid on it. */
type Sheets = Omit<PaperGrid, 'pages' | 'ink' | 'borders'>;

/** What lies on it, as drawn. */
type Ink = Pick<PaperGrid, 'ink' | 'borders'>;

/** The sheets of a way, with so much of what is to spare above, mm. */
function sheetsOf({ page, angle, box, window, x, y }: Way, above: number): Sheets {
  const shift = translation(window.minX + x.spare / 2 - box.minX, window.minY + above - box.minY);
  const place = compose(rotation(angle), shift);
  return { ...page, window, columns: x.count, rows: y.count, place, step: { x: x.step, y: y.step } };
}

function gridOf(way: Way, above: number, drawn: Ink): PaperGrid {
  const sheets = sheetsOf(way, above);
  const placed = (p: Point): Point => movePoint(sheets.place, p);
  return {
    ...sheets,
    ink: drawn.ink.map(placed),
    borders: drawn.borders.map((border) => border.map(placed)),
    pages: neededPages(sheets, drawn),
  };
}

/**
 * Pages that hold a line which no neighbour shows as well, or that lie wholly within a piece. Of many ways only their number is
 * asked: nothing is made anew for each point.
 */
function neededPages({ window, step, columns, rows, place }: Sheets, { ink, borders }: Ink): PagePlace[] {
  const touched = new Set<number>();
  const clamp = (at: number, count: number) => Math.min(count - 1, Math.max(0, Math.floor(at)));
  const [left, top] = [window.minX + sharedBy / 2, window.minY + sharedBy / 2];
  for (const { x, y } of ink) {
    const column = clamp((place.a * x + place.c * y + place.e - left) / step.x, columns);
    const row = clamp((place.b * x + place.d * y + place.f - top) / step.y, rows);
    touched.add(row * columns + column);
  }
  const all = Array.from({ length: rows * columns }, (_, i) => ({
    column: i % columns,
    row: Math.floor(i / columns),
  }));
  const middle = { x: (window.minX + window.maxX) / 2, y: (window.minY + window.maxY) / 2 };
  const back = inverse(place);
  return all.filter(
    ({ column, row }) =>
      touched.has(row * columns + column) ||
      isInside(movePoint(back, { x: middle.x + column * step.x, y: middle.y + row * step.y }), borders),
  );
}

/** Whether a point lies inside by the even-odd rule. Source: ray crossing count, standard. */
export function isInside(p: Point, borders: readonly (readonly Point[])[]): boolean {
  let inside = false;
  for (const border of borders)
    border.forEach((a, i) => {
      const b = border[(i + 1) % border.length] ?? a;
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    });
  return inside;
}

// Which way a drawing is turned on sheets of paper, and how many it takes.
import type { Drawing } from '../drawing/drawing.ts';
import { type Affine, compose, movePoint, rotation, translation } from '../geometry/affine.ts';
import { type Box, boxOfPoints } from '../geometry/box.ts';
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
  /** Points close together on all lines, placed as for the first column and row. */
  readonly ink: readonly Point[];
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
    .filter(({ role }) => only === undefined || role === only)
    .flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));

/**
 * The way of laying a drawing on paper that takes the fewest pages: upright or across, and turned by an angle where
 * that saves pages. Straight goes before turned, upright before across.
 */
export function paperGrid(drawing: Drawing, paper: Paper): PaperGrid {
  const ink = contoursOf(drawing).flatMap(pointsOf);
  const turns = Array.from({ length: 180 / turnStep }, (_, i) => i * turnStep).flatMap((degrees) =>
    degrees === 0 ? [0] : [degrees, -degrees],
  );
  const upright = { width: paper.across, height: paper.up };
  const across = { width: paper.up, height: paper.across };
  const borders = contoursOf(drawing, 'outline').map(pointsOf);
  let best: PaperGrid | undefined;
  for (const degrees of turns)
    for (const page of [upright, across]) {
      if (Math.abs(degrees) > 90) continue;
      const grid = gridAt(ink, page, (degrees * Math.PI) / 180);
      if (best && grid.columns * grid.rows >= best.columns * best.rows) continue;
      best = grid;
    }
  const grid = best ?? gridAt(ink, upright, 0);
  const placed = ink.map((p) => movePoint(grid.place, p));
  return { ...grid, ink: placed, pages: neededPages(grid, placed, borders) };
}

function gridAt(
  ink: readonly Point[],
  page: { readonly width: number; readonly height: number },
  angle: number,
): PaperGrid {
  const turned = rotation(angle);
  const box = boxOfPoints(ink.length === 0 ? [{ x: 0, y: 0 }] : ink.map((p) => movePoint(turned, p)));
  const window = {
    minX: bare,
    minY: bare,
    maxX: page.width - bare,
    maxY: page.height - bare - footer.height - footer.gap,
  };
  const along = (size: number, room: number) => {
    const step = room - sharedBy;
    const count = Math.max(1, Math.ceil((size - sharedBy) / step - 1e-9));
    return { step, count, before: (count * step + sharedBy - size) / 2 };
  };
  const x = along(box.maxX - box.minX, window.maxX - window.minX);
  const y = along(box.maxY - box.minY, window.maxY - window.minY);
  const shift = translation(window.minX + x.before - box.minX, window.minY + y.before - box.minY);
  return {
    ...page,
    window,
    columns: x.count,
    rows: y.count,
    pages: [],
    place: compose(turned, shift),
    step: { x: x.step, y: y.step },
    ink: [],
  };
}

/** Pages that hold a line which no neighbour shows as well, or that lie wholly within a piece. */
function neededPages(
  grid: PaperGrid,
  ink: readonly Point[],
  borders: readonly (readonly Point[])[],
): PagePlace[] {
  const { window, step, columns, rows, place } = grid;
  const touched = new Set<number>();
  const clamp = (at: number, count: number) => Math.min(count - 1, Math.max(0, Math.floor(at)));
  for (const { x, y } of ink) {
    const column = clamp((x - window.minX - sharedBy / 2) / step.x, columns);
    const row = clamp((y - window.minY - sharedBy / 2) / step.y, rows);
    touched.add(row * columns + column);
  }
  const placedBorders = borders.map((border) => border.map((p) => movePoint(place, p)));
  const all = Array.from({ length: rows * columns }, (_, i) => ({
    column: i % columns,
    row: Math.floor(i / columns),
  }));
  const middle = { x: (window.minX + window.maxX) / 2, y: (window.minY + window.maxY) / 2 };
  return all.filter(
    ({ column, row }) =>
      touched.has(row * columns + column) ||
      isInside({ x: middle.x + column * step.x, y: middle.y + row * step.y }, placedBorders),
  );
}

/** Whether a point lies inside by the even-odd rule. Source: ray crossing count, standard. */
function isInside(p: Point, borders: readonly (readonly Point[])[]): boolean {
  let inside = false;
  for (const border of borders)
    border.forEach((a, i) => {
      const b = border[(i + 1) % border.length] ?? a;
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    });
  return inside;
}

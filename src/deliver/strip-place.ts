// Where the words and squares of a guide stand on paper: as one block where there is room, never cut by a page's edge.
import { type Drawing, type DrawnGroup, shiftedGroups } from '../drawing/drawing.ts';
import { type Box, boxesMeet, grow } from '../geometry/box.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { isInside, type PagePlace, type PaperGrid } from './paper-grid.ts';

/** Room kept between the block and lines of the pieces, mm, and how finely places for it are tried. */
const clear = 4;
const tryStep = 4;

/** The groups of a guide that stand apart, put on a page; `page` is left out where they need one of their own. */
export interface PlacedStrip {
  readonly page?: PagePlace;
  /** mm from the page's top left corner. */
  readonly groups: readonly DrawnGroup[];
}

/** Undefined where the drawing has nothing that stands apart. `taken`: places of marks on each page, by its own corner. */
export function placedStrip(
  drawing: Drawing,
  grid: PaperGrid,
  taken: (page: PagePlace) => readonly Point[],
): PlacedStrip | undefined {
  const groups = drawing.groups.filter(({ apart, paths }) => apart && paths.length > 0);
  if (groups.length === 0) return undefined;
  const box = tightBox(groups.flatMap(({ paths }) => paths.flatMap(({ contours }) => contours)));
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const to = (corner: Point) => shiftedGroups(groups, { x: corner.x - box.minX, y: corner.y - box.minY });
  for (const page of grid.pages) {
    const corner = bareCorner(grid, page, { width, height }, taken(page));
    if (corner) return { page, groups: to(corner) };
  }
  return { groups: to({ x: grid.window.minX, y: grid.window.minY }) };
}

/** The lowest place on a page, and of those the leftmost, where a block meets no line; none where there is none. */
function bareCorner(
  { window, step, ink, borders }: PaperGrid,
  { column, row }: PagePlace,
  { width, height }: { readonly width: number; readonly height: number },
  taken: readonly Point[],
): Point | undefined {
  const here = [...ink.map(({ x, y }) => ({ x: x - column * step.x, y: y - row * step.y })), ...taken].filter(
    ({ x, y }) => x >= window.minX && x <= window.maxX && y >= window.minY && y <= window.maxY,
  );
  for (let y = window.maxY - height - clear; y >= window.minY; y -= tryStep)
    for (let x = window.minX + clear; x + width <= window.maxX; x += tryStep) {
      const block: Box = grow({ minX: x, minY: y, maxX: x + width, maxY: y + height }, clear);
      const isOver = here.some((p) => boxesMeet(block, { minX: p.x, minY: p.y, maxX: p.x, maxY: p.y }));
      // Where no line is near, all of the block is inside a piece, or none of it.
      const middle = { x: x + column * step.x + width / 2, y: y + row * step.y + height / 2 };
      if (!isOver && !isInside(middle, borders)) return { x, y };
    }
  return undefined;
}

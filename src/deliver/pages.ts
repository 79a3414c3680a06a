// A drawing at true size on sheets of paper: one page after the other, ready to be written.
import type { Drawing, DrawnGroup } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { type Affine, compose, translation } from '../geometry/affine.ts';
import type { Box } from '../geometry/box.ts';
import { joinsOf, pageMarks } from './page-marks.ts';
import type { Paper } from './paper.ts';
import { paperGrid } from './paper-grid.ts';

export interface Page {
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** The part of the page that shows the drawing, mm from the page's top left corner. */
  readonly window: Box;
  /** From the drawing to the page: a turn and a shift, nothing is made larger or smaller. */
  readonly place: Affine;
  /** Rulers, words and marks, mm from the page's top left corner. */
  readonly marks: readonly DrawnGroup[];
}

export interface PageOptions {
  readonly paper: Paper;
  /** What the print is of; stands on every page. */
  readonly title: string;
  readonly words: DrawWords;
}

/**
 * The pages of a drawing, in reading order. Neighbours share 10 mm; pages that would hold nothing are left out.
 * Every page has a ruler of 100 mm and one of 4 in.
 */
export function pagesOf(drawing: Drawing, { paper, title, words }: PageOptions): Page[] {
  const grid = paperGrid(drawing, paper);
  const { width, height, window, step, place } = grid;
  const joins = joinsOf(grid);
  return grid.pages.map((page) => ({
    width,
    height,
    window,
    place: compose(place, translation(-page.column * step.x, -page.row * step.y)),
    marks: pageMarks(grid, page, { joins, title, words }),
  }));
}

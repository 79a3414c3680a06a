// A drawing at true size on sheets of paper: one page after the other, ready to be written.
import type { Drawing, DrawnGroup } from '../drawing/drawing.ts';
import type { DrawWords } from '../drawing/words.ts';
import { type Affine, compose, translation } from '../geometry/affine.ts';
import type { Box } from '../geometry/box.ts';
import { joinSpots, joinsOf, pageMarks } from './page-marks.ts';
import type { Paper } from './paper.ts';
import { paperGrids } from './paper-grid.ts';
import type { PlacedPicture } from './placed-picture.ts';
import { placedStrip } from './strip-place.ts';

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
  /** Pictures among them. */
  readonly pictures?: readonly PlacedPicture[];
}

export interface PageOptions {
  readonly paper: Paper;
  /** What the print is of; stands on every page. */
  readonly title: string;
  readonly words: DrawWords;
  /** By what the print is corrected for its printer, in words; left out where it is not. */
  readonly corrected?: string;
}

/**
 * The pages of a drawing, in reading order. Neighbours share 10 mm; pages that would hold nothing are left out. Words
 * and squares that stand apart go where a page has room for all of them, else on a page of their own, the last.
 * Every page has a ruler of 100 mm and one of 4 in.
 */
export function pagesOf(drawing: Drawing, { paper, title, words, corrected }: PageOptions): Page[] {
  const ways = paperGrids(drawing, paper).map((grid) => {
    const joins = joinsOf(grid);
    return { grid, joins, strip: placedStrip(drawing, grid, (page) => joinSpots(grid, page, joins)) };
  });
  // The words below the pieces may want all that is to spare; else it is shared between above and below.
  const [shared] = ways;
  const way = ways.find(({ strip }) => !strip || strip.page) ?? shared;
  if (!way) return [];
  const { grid, joins, strip } = way;
  const { width, height, window, step, place } = grid;
  const hasOwnPage = strip !== undefined && strip.page === undefined;
  const options = {
    count: grid.pages.length + (hasOwnPage ? 1 : 0),
    joins,
    title,
    words,
    ...(corrected ? { corrected } : {}),
  };
  const pages = grid.pages.map((page) => ({
    width,
    height,
    window,
    place: compose(place, translation(-page.column * step.x, -page.row * step.y)),
    marks: [...pageMarks(grid, page, options), ...(strip?.page === page ? strip.groups : [])],
  }));
  if (!hasOwnPage) return pages;
  // Nothing of the drawing is in the window of a page of words.
  const elsewhere = translation(-2 * (drawing.width + width), -2 * (drawing.height + height));
  const marks = [...pageMarks(grid, undefined, options), ...strip.groups];
  return [...pages, { width, height, window, place: compose(place, elsewhere), marks }];
}

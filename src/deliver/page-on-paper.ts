// A page of words, tables and pictures laid out on sheets of paper.
import { widthOf } from '../drawing/broken-lines.ts';
import type { DrawnGroup } from '../drawing/drawing.ts';
import { shiftedGroups } from '../drawing/drawing.ts';
import { translation } from '../geometry/affine.ts';
import type { Page as PaperPage } from './pages.ts';
import type { Paper } from './paper.ts';
import { sectionUnits, titleUnits } from './paper-blocks.ts';
import { type BlockOptions, colours, type Unit, wordsAt } from './paper-ink.ts';
import type { PlacedPicture } from './placed-picture.ts';
import type { Page } from './write-page.ts';

/** Clear along the edges of the paper, mm; at the foot a line of words stands in it. */
const margin = 15;
const footWords = { em: 2.6, up: 8 } as const;

/** Tallest picture as a share of the room on a page: under it stands what it shows. */
const tallestPicture = 0.38;

export interface OnPaperOptions extends Pick<BlockOptions, 'words' | 'bold' | 'pictureOf'> {
  readonly paper: Paper;
}

/** The sheets in order; nothing that belongs together is parted, and a table's head stands on each of its sheets. */
export function pageOnPaper(page: Page, { paper, words, bold, pictureOf }: OnPaperOptions): PaperPage[] {
  const width = paper.across - 2 * margin;
  const room = paper.up - 2 * margin;
  const options = { words, bold, width, tallest: tallestPicture * room, pictureOf };
  const units = [
    ...titleUnits(page, options),
    ...page.sections.flatMap((section) => sectionUnits(section, options)),
  ];
  const sheets = sheetsOf(units, room);
  return sheets.map((sheet, i) => {
    const says = `${page.title}: page ${i + 1} of ${sheets.length}`;
    const at = [margin, paper.up - footWords.up] as const;
    const em = footWords.em * Math.min(1, width / widthOf(says, { words, em: footWords.em }));
    return sheetPage(sheet, paper, wordsAt(says, { words, em }, ...at, colours.quiet));
  });
}

/** Units that have to stand on one sheet: each with those that it keeps next to it. */
function together(units: readonly Unit[]): readonly (readonly Unit[])[] {
  const runs: Unit[][] = [];
  let isOpen = false;
  for (const unit of units) {
    const last = runs.at(-1);
    if (isOpen && last) last.push(unit);
    else runs.push([unit]);
    isOpen = unit.keepsNext === true;
  }
  return runs;
}

const heightOf = (units: readonly Unit[]): number => units.reduce((sum, { height }) => sum + height, 0);

/** Units sheet by sheet. What is taller than a sheet is parted all the same. */
function sheetsOf(units: readonly Unit[], room: number): readonly (readonly Unit[])[] {
  const sheets: Unit[][] = [[]];
  let left = room;
  const put = (unit: Unit) => {
    if (unit.height > left) {
      sheets.push([]);
      left = room;
      if (unit.head) {
        sheets.at(-1)?.push(unit.head);
        left -= unit.head.height;
      }
    }
    sheets.at(-1)?.push(unit);
    left -= unit.height;
  };
  for (const run of together(units)) {
    const height = heightOf(run);
    if (height > left && height <= room) {
      sheets.push([]);
      left = room;
      const head = run[0]?.head;
      if (head) put({ ...head, keepsNext: false });
    }
    for (const unit of run) put(unit);
  }
  return sheets.filter((sheet) => sheet.length > 0);
}

function sheetPage(units: readonly Unit[], paper: Paper, foot: DrawnGroup): PaperPage {
  const marks: DrawnGroup[] = [foot];
  const pictures: PlacedPicture[] = [];
  let y = margin;
  for (const { height, ink } of units) {
    marks.push(...shiftedGroups(ink.groups, { x: margin, y }));
    pictures.push(
      ...ink.pictures.map((picture) => ({ ...picture, x: picture.x + margin, y: picture.y + y })),
    );
    y += height;
  }
  return {
    width: paper.across,
    height: paper.up,
    window: { minX: 0, minY: 0, maxX: paper.across, maxY: paper.up },
    place: translation(0, 0),
    marks,
    pictures,
  };
}

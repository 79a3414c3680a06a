// The sheets of a job: all the pieces that its batch takes, laid onto sheets or a roll of each film, one file a sheet.
import type { ShownSheet } from '../../picture/sheets-picture.ts';
import type { SheetText } from '../../prove/proof.ts';
import { type LaidSheets, layOnSheets, type SheetStock } from '../../sheet/lay-sheets.ts';
import type { NamedFile } from '../deliverables.ts';
import { runOff } from '../plan/plan.ts';
import type { SheetReport } from '../report.ts';
import type { Film, Sheet } from '../typed/material.ts';
import type { Job } from '../typed/resolved-job.ts';
import { type FilmPiece, type FilmToCut, filmsOf, type PieceToNest, paperSheets } from './films-to-cut.ts';
import { type NestedSheet, sheetFile } from './sheet-file.ts';

/** How long is searched: by trials, the same on every machine; and as long as the caller says so. */
export interface NestSearch {
  readonly trials: number;
  /** Asked again and again while the search goes on; it stops at the best so far where this gives false. */
  readonly goOn?: (soFar: SheetsSoFar) => Promise<boolean>;
}

/** What a search has come to. */
export interface SheetsSoFar {
  readonly film: string;
  readonly sheets: number;
  /** mm of the last sheet, or of the roll. */
  readonly lastUsed: number;
}

export interface NestedSheets {
  readonly files: readonly NamedFile[];
  readonly reports: readonly SheetReport[];
  /** The files as they are proved. */
  readonly texts: readonly SheetText[];
  /** What lies where, to be drawn. */
  readonly shown: readonly Omit<ShownSheet, 'says' | 'colour'>[];
}

/** A short search: a second or two for a batch. */
export const standardSearch: NestSearch = { trials: 60_000 };

/** A seed of no meaning: the same pieces give the same sheets. */
const seed = 1;

/** More pieces than this in one search take too long: larger batches are nested in parts that are laid alike. */
export const mostPieces = 120;

/**
 * The sheets of a job; none where it has no sheet, or where a piece fits none. The pieces are read from their written
 * files, so that a sheet holds the very lines that were proved. `first`: the number of the first sheet.
 */
export async function nestSheets(
  { job, pieces }: { readonly job: Job; readonly pieces: readonly PieceToNest[] },
  search: NestSearch = standardSearch,
  first = 1,
): Promise<NestedSheets> {
  const { sheet, batch = 1 } = job;
  const sheets: NestedSheet[] = [];
  for (const film of sheet && pieces.length > 0 ? filmsOf(pieces) : []) {
    if (!sheet) break;
    for (const { count, times } of runsOf(film.pieces.length, batch)) {
      const laid = await searched(film, { sheet, film: job.film, count }, search);
      // Paper that its sheet can't hold is cut by itself; film is what sheets are bought for.
      if (!laid && film.name === paperSheets) continue;
      if (!laid) return { files: [], reports: [], texts: [], shown: [] };
      const set = { film, laid, stock: stockOf(sheet), title: job.name };
      for (const { index, alike } of kindsOfSheet(laid))
        sheets.push(sheetFile(set, { index, number: first + sheets.length, times: times * alike }));
    }
  }
  return {
    files: sheets.map(({ stem, cut, report: { sheet: number } }) => ({
      file: `${stem}.cut.svg`,
      role: 'sheet',
      sheet: number,
      content: cut,
    })),
    reports: sheets.map(({ report }) => report),
    texts: sheets.map(({ stem, cut, report: { times, film } }) => ({ stem, cut, times, film })),
    shown: sheets.map(({ shown }) => shown),
  };
}

/** A batch in runs that are nested alike: so many vessels at once, so many times. */
function runsOf(kinds: number, batch: number): readonly { readonly count: number; readonly times: number }[] {
  const most = Math.max(1, Math.floor(mostPieces / Math.max(1, kinds)));
  const times = Math.floor(batch / most);
  const left = batch - times * most;
  return [...(times > 0 ? [{ count: most, times }] : []), ...(left > 0 ? [{ count: left, times: 1 }] : [])];
}

/** Sheets that hold the same pieces are cut from one file, that of the last of them: the search draws the last sheet in. */
function kindsOfSheet({
  laid,
  sheets,
}: LaidSheets): readonly { readonly index: number; readonly alike: number }[] {
  const kinds = new Map<string, { readonly index: number; readonly alike: number }>();
  for (let index = 0; index < sheets; index++) {
    const on = laid.filter(({ sheet }) => sheet === index).map(({ piece }) => piece);
    const holds = on.sort((a, b) => a - b).join();
    kinds.set(holds, { index, alike: (kinds.get(holds)?.alike ?? 0) + 1 });
  }
  return [...kinds.values()].sort((a, b) => a.index - b.index);
}

const stockOf = ({ across, up = Number.POSITIVE_INFINITY, margin, spacing, mirror }: Sheet): SheetStock => ({
  across,
  up,
  margin: Math.max(margin, runOff),
  spacing,
  mirror,
});

/** Turns at which a piece may lie on its sheet, radians: by quarters as it is drawn, or along the film's grain. */
function turnsFor({ turned }: FilmPiece, grain: Film['grain']): readonly number[] {
  if (grain === undefined) return [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);
  const along = (grain === 'up' ? 0 : Math.PI / 2) - turned;
  return [along, along + Math.PI];
}

/** Lines are written to a ten-thousandth of a mm: what was planned to fit to the last hair may be larger by a few of them. */
const written = 0.001;

interface Searched {
  readonly sheet: Sheet;
  readonly film: Film;
  readonly count: number;
}

/** The best layout found; none where a piece fits no sheet. */
async function searched(
  film: FilmToCut,
  input: Searched,
  search: NestSearch,
): Promise<LaidSheets | undefined> {
  const stock = stockOf(input.sheet);
  return (
    (await searchedOn(stock, film, input, search)) ??
    (await searchedOn({ ...stock, margin: stock.margin - written }, film, input, search))
  );
}

async function searchedOn(
  stock: SheetStock,
  film: FilmToCut,
  { film: { grain }, count }: Searched,
  { trials, goOn }: NestSearch,
): Promise<LaidSheets | undefined> {
  const pieces = film.pieces.map((piece) => ({
    outline: piece.border,
    count,
    turns: turnsFor(piece, grain),
  }));
  // One piece alone has nothing to be laid against.
  const isAlone = pieces.length * count === 1;
  let best: LaidSheets | undefined;
  for (const layout of layOnSheets(pieces, stock, { trials: isAlone ? 0 : trials, seed })) {
    best = layout ?? best;
    if (!best || !goOn) continue;
    const { sheets, lastUsed } = best;
    if (!(await goOn({ film: film.name, sheets, lastUsed }))) break;
  }
  return best;
}

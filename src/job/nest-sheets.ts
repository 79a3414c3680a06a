// The sheets of a job: all the pieces that its batch takes, laid onto sheets or a roll of each film, one file a sheet.
import { readSvg } from '../deliver/read-svg.ts';
import { writeSvg } from '../deliver/write-svg.ts';
import type { Drawing, DrawnGroup, DrawnPath } from '../drawing/drawing.ts';
import { moveContour } from '../geometry/affine.ts';
import type { Contour } from '../geometry/contour.ts';
import { shapeArea, signedArea } from '../geometry/measure.ts';
import { clippedShapes } from '../geometry/regions.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { degrees } from '../lengths/angle.ts';
import type { ShownSheet } from '../picture/sheets-picture.ts';
import type { SheetText } from '../prove/proof.ts';
import { hullOf, type LaidSheets, layOnSheets, type SheetStock } from '../sheet/lay-sheets.ts';
import { groupsInOrder } from './cutting.ts';
import type { NamedFile, WrittenPiece } from './deliverables.ts';
import type { Film, Sheet } from './material.ts';
import { runOff } from './plan.ts';
import type { SheetReport } from './report.ts';
import type { Job } from './resolved-job.ts';

/** A piece as it is cut: its file, and how far it is turned there, radians, x towards y. */
export interface PieceToNest extends Pick<WrittenPiece, 'stem' | 'cut'> {
  readonly turned: number;
  /** Left out: the films of its colours. */
  readonly material?: 'paper';
}

/** What sheets of paper are told by, as those of films by their colour. */
export const paperSheets = 'paper';

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

/** One kind of piece of one film. */
interface FilmPiece {
  readonly stem: string;
  readonly turned: number;
  readonly border: Contour;
  /** mm² */
  readonly area: number;
  readonly outlines: readonly DrawnPath[];
  readonly art: readonly DrawnGroup[];
  readonly relief: readonly DrawnPath[];
}

interface FilmToCut {
  readonly name: string;
  readonly pieces: readonly FilmPiece[];
}

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
      for (let i = 0; i < laid.sheets; i++)
        sheets.push(sheetFile(set, { index: i, number: first + sheets.length, times }));
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

/** The films to cut: one a colour, whatever has it; plain pieces are cut from the first. */
function filmsOf(all: readonly PieceToNest[]): readonly FilmToCut[] {
  const paper = all
    .filter(({ material }) => material === 'paper')
    .map((piece) => filmPiece(piece, readSvg(piece.cut, `${piece.stem}.cut.svg`), []));
  const pieces = all.filter(({ material }) => material === undefined);
  const read = pieces.map((piece) => {
    const drawing = readSvg(piece.cut, `${piece.stem}.cut.svg`);
    return { piece, drawing, art: filmsOfArt(artOf(drawing)) };
  });
  const films = new Set(read.flatMap(({ art }) => art.map(({ film }) => film)));
  const names = films.size > 0 ? [...films] : [''];
  const cut = names.map((name, first) => ({
    name,
    pieces: read.flatMap(({ piece, drawing, art }) => {
      const own = art.filter(({ film }) => film === name).map(({ group }) => group);
      return own.length > 0 || (art.length === 0 && first === 0) ? [filmPiece(piece, drawing, own)] : [];
    }),
  }));
  return paper.length > 0 ? [...cut, { name: paperSheets, pieces: paper }] : cut;
}

/** Each layer's film, by its colour. Layers of a piece that lie on one another are two films, though of one colour. */
function filmsOfArt(
  art: readonly DrawnGroup[],
): readonly { readonly film: string; readonly group: DrawnGroup }[] {
  const films: { film: string; group: DrawnGroup }[] = [];
  for (const group of art) {
    const { colour = '' } = group;
    const isTaken = (film: string) => films.some((one) => one.film === film && lieOver(one.group, group));
    let film = colour;
    for (let i = 2; isTaken(film); i++) film = `${colour} (${i})`;
    films.push({ film, group });
  }
  return films;
}

/** mm²: less than this is the rounding of areas that only touch. */
const leastOver = 0.01;

const lieOver = ({ paths: one }: DrawnGroup, { paths: other }: DrawnGroup): boolean =>
  clippedShapes(one, other, 'intersection', chordTolerance).reduce(
    (sum, shape) => sum + shapeArea(shape),
    0,
  ) > leastOver;

const artOf = ({ groups }: Drawing): DrawnGroup[] =>
  groups.filter(({ role, paths }) => role === 'artwork' && paths.length > 0);

function filmPiece({ stem, turned }: PieceToNest, drawing: Drawing, art: readonly DrawnGroup[]): FilmPiece {
  const outlines = drawing.groups.filter(({ role }) => role === 'outline').flatMap(({ paths }) => paths);
  const contours = outlines.flatMap((path) => path.contours);
  return {
    stem,
    turned,
    border: hullOf(contours),
    area: contours.reduce((sum, contour) => sum + Math.abs(signedArea(contour)), 0),
    outlines,
    art,
    relief: drawing.groups.filter(({ role }) => role === 'relief').flatMap(({ paths }) => paths),
  };
}

/** A batch in runs that are nested alike: so many vessels at once, so many times. */
function runsOf(kinds: number, batch: number): readonly { readonly count: number; readonly times: number }[] {
  const most = Math.max(1, Math.floor(mostPieces / Math.max(1, kinds)));
  const times = Math.floor(batch / most);
  const left = batch - times * most;
  return [...(times > 0 ? [{ count: most, times }] : []), ...(left > 0 ? [{ count: left, times: 1 }] : [])];
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

async function searched(
  film: FilmToCut,
  { sheet, film: { grain }, count }: { readonly sheet: Sheet; readonly film: Film; readonly count: number },
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
  for (const layout of layOnSheets(pieces, stockOf(sheet), { trials: isAlone ? 0 : trials, seed })) {
    best = layout ?? best;
    if (!best || !goOn) continue;
    const { sheets, lastUsed } = best;
    if (!(await goOn({ film: film.name, sheets, lastUsed }))) break;
  }
  return best;
}

/** The art of all pieces on a sheet, one group a layer. */
function byLayer(art: readonly DrawnGroup[]): readonly DrawnGroup[] {
  const groups = new Map<string | undefined, DrawnGroup>();
  for (const group of art) {
    const known = groups.get(group.layer);
    groups.set(group.layer, known ? { ...known, paths: [...known.paths, ...group.paths] } : group);
  }
  return [...groups.values()];
}

interface NestedSheet {
  readonly stem: string;
  readonly cut: string;
  readonly report: SheetReport;
  readonly shown: NestedSheets['shown'][number];
}

/** The sheets of one search. */
interface SheetSet {
  readonly film: FilmToCut;
  readonly laid: LaidSheets;
  readonly stock: SheetStock;
  readonly title: string;
}

/** Where one sheet stands among those of its film, and among all. */
interface SheetPlace {
  readonly index: number;
  readonly number: number;
  readonly times: number;
}

function sheetFile(
  { film, laid, stock, title }: SheetSet,
  { index, number, times }: SheetPlace,
): NestedSheet {
  const page = laid.pages[index] ?? { across: 0, up: 0 };
  const here = laid.laid.filter(({ sheet }) => sheet === index);
  const copies = new Map<string, number>();
  const placed = here.flatMap((place) => {
    const piece = film.pieces[place.piece];
    if (!piece) return [];
    const copy = (copies.get(piece.stem) ?? 0) + 1;
    copies.set(piece.stem, copy);
    return [{ ...place, piece, id: `${piece.stem}.${copy}` }];
  });
  const moved = (paths: readonly DrawnPath[], move: (typeof placed)[number]['move']) =>
    paths.map((path) => ({ contours: path.contours.map((contour) => moveContour(move, contour)) }));
  const art = placed.flatMap(({ piece, move }) =>
    piece.art.map((group) => ({ ...group, paths: moved(group.paths, move) })),
  );
  const outlines = placed.flatMap(({ piece, move, id }) =>
    moved(piece.outlines, move).map((path, i) => ({ ...path, id: i === 0 ? id : `${id}-${i + 1}` })),
  );
  const relief = placed.flatMap(({ piece, move }) => moved(piece.relief, move));
  const drawing: Drawing = {
    width: page.across,
    height: page.up,
    groups: groupsInOrder([
      ...byLayer(art),
      ...(relief.length > 0 ? [{ role: 'relief' as const, paths: relief }] : []),
      { role: 'outline', paths: outlines },
    ]),
  };
  const stem = `sheet-${number}`;
  const long = Math.max(page.across, page.up);
  const isLast = index === laid.sheets - 1;
  const area = placed.reduce((sum, { piece }) => sum + piece.area, 0);
  const used = isLast ? Math.min(laid.lastUsed + 2 * stock.margin, long) : long;
  const report: SheetReport = {
    sheet: number,
    file: `${stem}.cut.svg`,
    film: film.name,
    across: page.across,
    up: page.up,
    times,
    used,
    isLast,
    // Of a roll, what runs off it may be shorter than it is wide.
    cutInto: Math.min(stock.across, stock.up) * (Number.isFinite(stock.up) ? used : page.up),
    covered: area,
    pieces: placed.map(({ piece, turn, move, id }) => ({
      part: piece.stem,
      id,
      at: { x: move.e, y: move.f },
      turnedDeg: degrees(turn),
    })),
  };
  const shown = {
    ...page,
    margin: stock.margin,
    pieces: placed.map(({ piece, move, id }) => ({
      name: id.replace(/\.(\d+)$/, ' $1'),
      outlines: moved(piece.outlines, move).flatMap(({ contours }) => contours),
    })),
  };
  return { stem, shown, cut: writeSvg(drawing, { title: `${title}: ${stem}`, filled: false }), report };
}

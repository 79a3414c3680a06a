// One sheet as it is written: the pieces that lie on it in one cut file, its report, and its picture.
import { writeSvg } from '../../deliver/write-svg.ts';
import type { Drawing, DrawnGroup, DrawnPath } from '../../drawing/drawing.ts';
import { type Affine, moveContour } from '../../geometry/affine.ts';
import { degrees } from '../../lengths/angle.ts';
import type { ShownSheet } from '../../picture/sheets-picture.ts';
import type { LaidSheets, SheetStock } from '../../sheet/lay-sheets.ts';
import { groupsInOrder } from '../blade/cutting.ts';
import type { SheetReport } from '../report.ts';
import type { FilmPiece, FilmToCut } from './films-to-cut.ts';

/** The art of all pieces on a sheet, one group a layer. */
function byLayer(art: readonly DrawnGroup[]): readonly DrawnGroup[] {
  const groups = new Map<string | undefined, DrawnGroup>();
  for (const group of art) {
    const known = groups.get(group.layer);
    groups.set(group.layer, known ? { ...known, paths: [...known.paths, ...group.paths] } : group);
  }
  return [...groups.values()];
}

/** A sheet worked out and written. */
export interface NestedSheet {
  readonly stem: string;
  readonly cut: string;
  readonly report: SheetReport;
  readonly shown: Omit<ShownSheet, 'says' | 'colour'>;
}

/** The sheets of one search. */
export interface SheetSet {
  readonly film: FilmToCut;
  readonly laid: LaidSheets;
  readonly stock: SheetStock;
  readonly title: string;
}

/** Where one sheet stands among those of its film, and among all. */
export interface SheetPlace {
  readonly index: number;
  readonly number: number;
  readonly times: number;
}

/** A piece where it lies on its sheet, and what it is known by there. */
interface PlacedPiece {
  readonly piece: FilmPiece;
  readonly id: string;
  readonly move: Affine;
  /** Radians. */
  readonly turn: number;
}

const moved = (paths: readonly DrawnPath[], move: Affine): readonly DrawnPath[] =>
  paths.map((path) => ({ contours: path.contours.map((contour) => moveContour(move, contour)) }));

/** The pieces on one sheet: copies of a piece are numbered. */
function placedOn({ film, laid }: SheetSet, index: number): readonly PlacedPiece[] {
  const copies = new Map<string, number>();
  return laid.laid
    .filter(({ sheet }) => sheet === index)
    .flatMap(({ piece: at, move, turn }) => {
      const piece = film.pieces[at];
      if (!piece) return [];
      const copy = (copies.get(piece.stem) ?? 0) + 1;
      copies.set(piece.stem, copy);
      return [{ piece, move, turn, id: `${piece.stem}.${copy}` }];
    });
}

/** What the blade follows: art and relief first, the outlines last. */
function sheetDrawing(
  placed: readonly PlacedPiece[],
  page: { readonly across: number; readonly up: number },
): Drawing {
  const art = placed.flatMap(({ piece, move }) =>
    piece.art.map((group) => ({ ...group, paths: moved(group.paths, move) })),
  );
  const outlines = placed.flatMap(({ piece, move, id }) =>
    moved(piece.outlines, move).map((path, i) => ({ ...path, id: i === 0 ? id : `${id}-${i + 1}` })),
  );
  const relief = placed.flatMap(({ piece, move }) => moved(piece.relief, move));
  return {
    width: page.across,
    height: page.up,
    groups: groupsInOrder([
      ...byLayer(art),
      ...(relief.length > 0 ? [{ role: 'relief' as const, paths: relief }] : []),
      { role: 'outline', paths: outlines },
    ]),
  };
}

/** One sheet of a search. */
export function sheetFile(set: SheetSet, { index, number, times }: SheetPlace): NestedSheet {
  const { film, laid, stock, title } = set;
  const page = laid.pages[index] ?? { across: 0, up: 0 };
  const placed = placedOn(set, index);
  const stem = `sheet-${number}`;
  const long = Math.max(page.across, page.up);
  const isLast = index === laid.sheets - 1;
  const used = isLast ? Math.min(laid.lastUsed + 2 * stock.margin, long) : long;
  return {
    stem,
    cut: writeSvg(sheetDrawing(placed, page), { title: `${title}: ${stem}`, filled: false, asRead: true }),
    report: {
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
      covered: placed.reduce((sum, { piece }) => sum + piece.area, 0),
      pieces: placed.map(({ piece, turn, move, id }) => ({
        part: piece.stem,
        id,
        at: { x: move.e, y: move.f },
        turnedDeg: degrees(turn),
      })),
    },
    shown: {
      ...page,
      margin: stock.margin,
      pieces: placed.map(({ piece, move, id }) => ({
        name: id.replace(/\.(\d+)$/, ' $1'),
        outlines: moved(piece.outlines, move).flatMap(({ contours }) => contours),
      })),
    },
  };
}

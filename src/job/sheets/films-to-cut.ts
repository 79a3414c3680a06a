// The films that the pieces of a job are cut from: one a colour of art, each with what of every piece is cut of it.
import { readSvg } from '../../deliver/read-svg.ts';
import type { Drawing, DrawnGroup, DrawnPath } from '../../drawing/drawing.ts';
import type { Contour } from '../../geometry/contour.ts';
import { signedArea } from '../../geometry/measure.ts';
import { hullOf } from '../../sheet/lay-sheets.ts';
import { artOf, filmsOfArt } from '../blade/films-of-art.ts';
import type { WrittenPiece } from '../deliverables.ts';

/** A piece as it is cut: its file, and how far it is turned there, radians, x towards y. */
export interface PieceToNest extends Pick<WrittenPiece, 'stem' | 'cut'> {
  readonly turned: number;
  /** Left out: the films of its colours. */
  readonly material?: 'paper';
}

/** What sheets of paper are told by, as those of films by their colour. */
export const paperSheets = 'paper';

/** One kind of piece of one film. */
export interface FilmPiece {
  readonly stem: string;
  readonly turned: number;
  readonly border: Contour;
  /** mm² */
  readonly area: number;
  readonly outlines: readonly DrawnPath[];
  readonly art: readonly DrawnGroup[];
  readonly relief: readonly DrawnPath[];
}

export interface FilmToCut {
  readonly name: string;
  readonly pieces: readonly FilmPiece[];
}

/** The films to cut: one a colour, whatever has it; plain pieces are cut from the first. */
export function filmsOf(all: readonly PieceToNest[]): readonly FilmToCut[] {
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

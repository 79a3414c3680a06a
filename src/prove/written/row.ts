// The pieces at one height: one, or the panels it is parted into, brought together in one frame.
import type { Band } from '../../blank/flat-band.ts';
import { moveContour } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { middleOf, type ProvedPiece } from './piece.ts';
import { onward, type RolledCone } from './rolled-cone.ts';

/** All that goes around at one height, in the frame of its first panel: that of turn 0. */
export interface ProvedRow {
  readonly panels: readonly ProvedPiece[];
  readonly cone: RolledCone;
  readonly band: Band;
  readonly trim: { readonly lip: number; readonly foot: number };
}

/** The art of one panel in the frame of its row. */
export interface PanelArt {
  readonly panel: ProvedPiece;
  readonly contours: readonly Contour[];
}

/** One layer of art all around a row. */
export interface RowLayer {
  readonly row: ProvedRow;
  readonly name: string;
  readonly arts: readonly PanelArt[];
  /** All of it. */
  readonly contours: readonly Contour[];
  readonly finder: NearestFinder;
}

/** The rows of pieces that come from the foot up, the panels of each in the order of their turns. */
export function rowsOf(pieces: readonly ProvedPiece[]): readonly ProvedRow[] {
  const rows: ProvedPiece[][] = [];
  for (const piece of pieces) {
    const last = rows.at(-1);
    if (last && piece.turns.from > 0) last.push(piece);
    else rows.push([piece]);
  }
  return rows.flatMap((panels): ProvedRow[] => {
    const [first, last] = [panels[0], panels.at(-1)];
    if (!first || !last) return [];
    const { band, trim, before } = first;
    const turns = { from: first.turns.from, to: last.turns.to };
    const middle = middleOf(first.cone, { band, trim, before, turns, overlap: last.overlap });
    return [{ panels, cone: { ...first.cone, middle }, band, trim }];
  });
}

/** The layers of a row, by name. A whole piece's curves are as they were read. */
export function layersOfRow(row: ProvedRow): readonly RowLayer[] {
  const names = [...new Set(row.panels.flatMap(({ layers }) => layers.map(({ name }) => name)))];
  return names.map((name) => {
    const arts = row.panels.map((panel) => ({
      panel,
      contours: inRow(
        row,
        panel,
        panel.layers.filter((layer) => layer.name === name).flatMap(({ shapes }) => shapes.flat()),
      ),
    }));
    const contours = arts.flatMap((art) => art.contours);
    return { row, name, arts, contours, finder: new NearestFinder(contours) };
  });
}

function inRow(
  { cone }: ProvedRow,
  { turns }: ProvedPiece,
  contours: readonly Contour[],
): readonly Contour[] {
  if (turns.from === 0) return contours;
  const move = onward(cone, turns.from);
  return contours.map((contour) => moveContour(move, contour));
}

// Does the finished band stay where film lies down, and every piece on its sheet and its page?
import type { Band } from '../../blank/flat-band.ts';
import { inverse } from '../../geometry/affine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { precision } from '../../geometry/tolerance.ts';
import { type Asked, askedRadius } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import { guideCurves, type ProvedPiece, pageCurves, type ReadPiece } from '../written/piece.ts';
import { girthOf, rollUp } from '../written/rolled-cone.ts';
import { samplesOn } from '../written/samples.ts';

/** How far a band reaches past the flat band that holds the most of it, mm. */
function pastFlat(band: Band, flatBands: readonly Band[]): number {
  const past = flatBands.map(({ from, to }) => Math.max(0, from - band.from, band.to - to));
  return past.length === 0 ? band.to - band.from : Math.min(...past);
}

/** The band that the finished edges of the guides enclose on the wall. */
function finishedBand(pieces: readonly ProvedPiece[]): Band {
  const alongs = pieces.flatMap((piece) =>
    samplesOn(guideCurves(piece, 'trim')).map((p) => rollUp(piece.cone, p).along),
  );
  return { from: Math.min(...alongs), to: Math.max(...alongs) };
}

/** Places up the wall at which film is held against it. */
const places = 100;

interface Laid {
  /** Share by which film is stretched; negative: gathered. */
  readonly strain: number;
  /** Girth of the wall less that of the sheet, mm. */
  readonly loose: number;
  /** Girth of the sheet, mm: film is stretched and gathered by shares of its own. */
  readonly sheet: number;
}

/** The sheet of a piece held against the wall it goes on. */
function laidOn(piece: Pick<ProvedPiece, 'band' | 'cone'>, { wall }: Pick<Asked, 'wall'>): Laid[] {
  const { from, to } = piece.band;
  const even = Array.from({ length: places + 1 }, (_, i) => from + ((to - from) * i) / places);
  // At a corner between two of them the sheet may touch the wall there alone.
  const known = wall.kind === 'bent' ? wall.places.map(({ along }) => along) : [];
  return [...even, ...known.filter((along) => along > from && along < to)].map((along) => {
    // Where a piece begins at a corner, it lies on the stretch above that.
    const girth = 2 * Math.PI * askedRadius(wall, along === from ? along + 1e-6 : along);
    const sheet = girthOf(piece.cone, along);
    return { strain: girth / sheet - 1, loose: girth - sheet, sheet };
  });
}

/** How far a sheet is from being this wall's own size: it touches it somewhere, and is nowhere larger than gathering takes, mm. */
export function misfits(
  piece: Pick<ProvedPiece, 'band' | 'cone'>,
  asked: Pick<Asked, 'wall' | 'film'>,
): number[] {
  const rows = laidOn(piece, asked);
  return [
    Math.min(...rows.map(({ loose }) => loose)),
    ...rows.map(({ loose, sheet }) => -loose - asked.film.gather * sheet),
  ];
}

/** On a wall that bends: what the sheet asks of the film, and whether it is the wall's own size. */
function strainChecks(pieces: readonly ProvedPiece[], asked: Asked): Check[] {
  const { film, flatBands } = asked;
  const bent = pieces.filter(({ band }) => pastFlat(band, flatBands) > precision);
  const strains = pieces.flatMap((piece) => laidOn(piece, asked)).map(({ strain }) => strain);
  const fits = atMost({
    rule: 'fits-wall',
    value: largest(pieces.flatMap((piece) => misfits(piece, asked))),
    limit: precision,
    unit: 'mm',
    says: 'girth of the sheet off the wall it lies on',
  });
  if (bent.length === 0) return [fits];
  const stretch = atMost({
    rule: 'stretch',
    value: 100 * largest(strains),
    limit: 100 * film.stretch + 1e-4,
    unit: '%',
    says: 'stretch asked of the film',
  });
  return [fits, stretch];
}

function flatCheck(pieces: readonly ProvedPiece[], { band, flatBands }: Asked): Check {
  const accepted = pastFlat(band, flatBands);
  return atMost({
    rule: 'flat',
    value: pastFlat(finishedBand(pieces), flatBands),
    limit: accepted + precision,
    unit: 'mm',
    says:
      accepted > precision
        ? 'finished band past where the wall is flat, as far as the job asked for'
        : 'finished band past where the wall is flat',
  });
}

/** A sheet of film and its margin, mm. */
export interface SheetRoom {
  readonly across: number;
  readonly up: number;
  readonly margin: number;
}

/** How far a piece is larger than the room on its sheet, the better way round, mm. */
export function pastSheet(outline: readonly Contour[], sheet: SheetRoom): number {
  const box = tightBox(outline);
  const sizes = [box.maxX - box.minX, box.maxY - box.minY];
  const room = [sheet.across - 2 * sheet.margin, sheet.up - 2 * sheet.margin];
  const over = (ways: readonly number[]) => Math.max(...ways.map((size, i) => size - (room[i] ?? 0)));
  return Math.max(0, Math.min(over(sizes), over([...sizes].reverse())));
}

/** How far anything that is cut lies outside the file's own size, mm. */
export function pastPage({ cut, place, outline, layers }: ReadPiece): number {
  const { across, up } = cut.units;
  const page = inverse(place);
  let past = 0;
  for (const { segments } of [...outline, ...layers.flatMap(({ shapes }) => shapes.flat())])
    for (const { from } of segments) {
      const x = page.a * from.x + page.c * from.y + page.e;
      const y = page.b * from.x + page.d * from.y + page.f;
      past = Math.max(past, -x, -y, x - across, y - up);
    }
  return past;
}

export function limitChecks(pieces: readonly ProvedPiece[], asked: Asked): Check[] {
  const { sheet, wall } = asked;
  const sizes = [
    atMost({
      rule: 'on-page',
      value: largest(pieces.map(pastPage)),
      limit: precision,
      unit: 'mm',
      says: 'cut lines past the edge of their file',
    }),
  ];
  if (sheet && !asked.isPaper)
    sizes.push(
      atMost({
        rule: 'sheet',
        value: largest(pieces.map((piece) => pastSheet(pageCurves(piece, 'outline'), sheet))),
        limit: precision,
        unit: 'mm',
        says: 'a piece larger than the room on its sheet',
      }),
    );
  return [flatCheck(pieces, asked), ...(wall.kind === 'bent' ? strainChecks(pieces, asked) : []), ...sizes];
}

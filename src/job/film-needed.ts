// How much film a batch takes, laid onto the job's sheets.
import type { Contour } from '../geometry/contour.ts';
import { signedArea } from '../geometry/measure.ts';
import { type Nest, nest } from '../sheet/nest.ts';
import { nestOutline } from '../sheet/nest-outline.ts';
import type { Job } from './resolved-job.ts';

export interface FilmNeeded {
  /** Area of all pieces of one vessel, mm². */
  readonly area: number;
  /** Of the whole batch, where the job has a sheet that takes the pieces. */
  readonly batch?: {
    readonly sheets: number;
    /** How far the last sheet is used, mm along its longer side. */
    readonly lastUsed: number;
    /** Share of what is cut into that ends as waste: whole sheets, and of the last what is used. */
    readonly waste: number;
  };
}

/** Between two pieces on a sheet, mm. Common practice, no source. */
const pieceGap = 2;

/** A short search: the sheet says how much film to have, not how to lay it. */
const search = { trials: 60_000, seed: 1 };
const alone = { ...search, trials: 0 };

const quarters = [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);

/** The film of a batch, by the outlines of its pieces. Pieces larger than the sheet leave `batch` out. */
export function filmNeeded(
  borders: readonly Contour[],
  { sheet, batch = 1 }: Pick<Job, 'sheet' | 'batch'>,
): FilmNeeded {
  const area = borders.reduce((sum, border) => sum + Math.abs(signedArea(border)), 0);
  if (!sheet) return { area };
  const [length, height] = [
    Math.max(sheet.across, sheet.up) - 2 * sheet.margin,
    Math.min(sheet.across, sheet.up) - 2 * sheet.margin,
  ];
  const kinds = borders.map((border) => ({
    outline: nestOutline(border, pieceGap / 2),
    count: batch,
    turns: quarters,
  }));
  // Pieces keep their gap from one another, not from the sheet's margin.
  const room = { length: length + pieceGap, height: height + pieceGap };
  let laid: Nest | undefined;
  for (const better of nest(kinds, room, kinds.length * batch === 1 ? alone : search))
    if (better) laid = better;
  if (!laid) return { area };
  const { sheets, lastUsed } = laid;
  const waste = 1 - (area * batch) / (height * (length * (sheets - 1) + Math.min(lastUsed, length)));
  return { area, batch: { sheets, lastUsed: Math.min(lastUsed, length), waste } };
}

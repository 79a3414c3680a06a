// The room on a job's sheet, and what is too large for it.
import { type Finding, look } from '../../finding.ts';
import { moveContour, rotation } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { type Room, turnToFit } from '../../geometry/fit-box.ts';
import { tightBox } from '../../geometry/measure.ts';
import { inMm } from '../../lengths/length.ts';
import { decoratesApart } from '../typed/placed-motif.ts';
import type { Job } from '../typed/resolved-job.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import { runOff } from './plan.ts';

/** What tells whether a wrap has to fit a sheet. */
export type ForSheet = Pick<Job, 'sheet' | 'film' | 'mask' | 'artwork' | 'items' | 'lettering'>;

/** Room on a job's sheet for what lies in the middle of a file of its own; endless upwards on a roll. */
export interface SheetRoom extends Room {
  /** Where the film has a grain: the only way a part may lie, radians. */
  readonly only?: number;
}

/** Art runs on past a part's outline: less than this is never the margin. */
export const roomOf = (job: ForSheet): SheetRoom | undefined => {
  // A plain wrap is paper, which is printed on as many pages as it takes.
  return decoratesApart(job) && !job.mask ? undefined : filmRoom(job);
};

/** The same for film that is cut whatever the wrap is. */
const filmRoom = ({ sheet, film }: Pick<Job, 'sheet' | 'film'>): SheetRoom | undefined => {
  if (!sheet) return undefined;
  const { across, up = Number.POSITIVE_INFINITY } = sheet;
  const margin = Math.max(sheet.margin, runOff);
  const only = film.grain === undefined ? {} : { only: film.grain === 'up' ? 0 : Math.PI / 2 };
  return { across: across - 2 * margin, up: up - 2 * margin, ...only };
};

/** The least turn at which an outline fits the sheet, radians, x towards y; undefined where it fits at none. */
export function turnOnSheet(border: Contour, { only, ...room }: SheetRoom): number | undefined {
  if (only === undefined) return turnToFit(border, room);
  return turnToFit(moveContour(rotation(only), border), room) === 0 ? only : undefined;
}

export const roomInWords = ({ across, up }: Room): string =>
  across <= 0 || up <= 0
    ? 'nothing'
    : Number.isFinite(up)
      ? `${inMm(across)} by ${inMm(up)}`
      : `a width of ${inMm(across)}`;

/** Gores that fit the sheet of a job at no turn. */
export function goresTooLarge(outlines: readonly Contour[], job: ForSheet, file: TypedIn): Finding[] {
  const room = roomOf(job);
  if (!room) return [];
  const large = outlines.filter((border) => turnOnSheet(border, room) === undefined);
  const boxes = large.map((border) => tightBox([border]));
  return tooLargeLook(boxes, room, file, 'more "gores"');
}

/** Said where there are parts that fit the sheet at no turn. */
export function tooLargeLook(
  boxes: readonly Box[],
  { across, up }: Room,
  file: TypedIn,
  instead = 'joints closer together',
): Finding[] {
  if (boxes.length === 0) return [];
  const width = Math.max(...boxes.map(({ minX, maxX }) => maxX - minX));
  const height = Math.max(...boxes.map(({ minY, maxY }) => maxY - minY));
  const says = `holds ${roomInWords({ across, up })} inside its margin, and what is cut of it is ${inMm(width)} by ${inMm(height)}, which fits at no turn; use a larger sheet, a shorter band, or ${instead}`;
  return [look('sheet-too-small', typedAt(file, 'sheet'), says)];
}

/** A piece besides the wrap is never parted: said where it fits the sheet no way round. `says`: what it is. */
export function partTooLarge(
  { says: what, outlines }: { readonly says: string; readonly outlines: readonly Contour[] },
  job: Pick<Job, 'sheet' | 'film'>,
  file: TypedIn,
): Finding[] {
  const room = filmRoom(job);
  if (!room || outlines.length === 0) return [];
  const { minX, minY, maxX, maxY } = tightBox(outlines);
  const [width, height] = [maxX - minX, maxY - minY];
  const lies = (across: number, up: number) => across <= room.across && up <= room.up;
  const isUpright = room.only === undefined || room.only === 0;
  if ((isUpright && lies(width, height)) || (room.only !== 0 && lies(height, width))) return [];
  const says = `holds ${roomInWords(room)} inside its margin, and ${what} is ${inMm(width)} by ${inMm(height)}, which fits it no way round, so that nothing of this vessel is laid on sheets; use a larger sheet, or make that smaller`;
  return [look('sheet-too-small', typedAt(file, 'sheet'), says)];
}

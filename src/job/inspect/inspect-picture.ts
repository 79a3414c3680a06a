// The pictures of inspected artwork: what was found, and what was mended.
import { withinFrame } from '../../cut/checks/film-layers.ts';
import { writeArt } from '../../deliver/write-art.ts';
import type { DrawWords } from '../../drawing/words.ts';
import type { Units } from '../../lengths/length.ts';
import { inspectedPicture } from '../../picture/inspected.ts';
import type { Inspected } from './inspect.ts';
import { mendPicture } from './mend-picture.ts';

/** The picture of inspected artwork, each finding that has a place marked with its number. */
export function inspectionPicture(
  { art, film, report, scale }: Inspected,
  title: string,
  words: DrawWords,
  units: Units = 'mm',
): string {
  const marks = report.checks.flatMap(({ where, rule, says }, i) =>
    where.x === undefined || where.y === undefined
      ? []
      : [{ number: i + 1, at: { x: where.x * scale, y: where.y * scale }, rule, says }],
  );
  const notes = report.checks.flatMap(({ where, says, rule }, i) =>
    where.x === undefined ? [`${i + 1}. ${rule}: ${says}`] : [],
  );
  return inspectedPicture(
    {
      title,
      width: art.width,
      height: art.height,
      layers: film.map((layer) => withinFrame(layer, art)),
      lines: [],
      marks,
      notes: [...(report.checks.length === 0 ? ['nothing stands against cutting it'] : []), ...notes],
    },
    words,
    units,
  );
}

/** Mended artwork as a file; undefined where none was asked for. */
export const mendedArt = ({ art, mended }: Inspected, title: string): string | undefined =>
  mended && writeArt({ width: art.width, height: art.height, layers: mended.after }, `${title}, mended`);

/** Mended artwork over what it was; undefined where none was asked for. */
export const mendedPicture = (
  { art, mended }: Inspected,
  title: string,
  words: DrawWords,
  units: Units,
): string | undefined =>
  mended &&
  mendPicture({ ...mended, title: `${title}, mended`, width: art.width, height: art.height, units }, words);

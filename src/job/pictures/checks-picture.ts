// The picture of what the checks before the blade found on a wrap: its film laid flat, each finding marked with its number.
import type { DrawWords } from '../../drawing/words.ts';
import type { Finding } from '../../finding.ts';
import { shifted } from '../../geometry/affine.ts';
import { grow } from '../../geometry/box.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { inspectedPicture } from '../../picture/inspected.ts';
import { toFlat, type WallPoint } from '../../unroll/flat-wall.ts';
import { outline } from '../../unroll/template.ts';
import type { PieceChecks } from '../lay/wrap-checks.ts';
import type { Job } from '../typed/resolved-job.ts';

/** Bare room around the piece, mm. */
const room = 4;

/** Whether anything found needs the maker's eye; notes alone make no picture. */
export const needsPicture = ({ found }: PieceChecks): boolean =>
  found.some(({ finding }) => finding.level !== 'note');

/** `checks`: all of the report's, which number the marks from 1. */
export function checksPicture(
  { template, layers, found }: PieceChecks,
  job: Pick<Job, 'name' | 'units'> & { readonly checks: readonly Finding[] },
  words: DrawWords,
): string {
  const border = outline(template);
  const box = grow(tightBox([border]), room);
  const by = { x: -box.minX, y: -box.minY };
  const placed = (at: WallPoint): Point => {
    const { x, y } = toFlat(template.wall, at);
    return { x: x + by.x, y: y + by.y };
  };
  const numberOf = (says: string) => job.checks.findIndex((check) => check.says === says) + 1;
  const marks = found.flatMap(({ finding: { rule, says }, places: [first, ...again] }) =>
    first ? [{ number: numberOf(says), at: placed(first), rule, says, again: again.map(placed) }] : [],
  );
  return inspectedPicture(
    {
      title: `${job.name}: what the checks before the blade found`,
      width: box.maxX - box.minX,
      height: box.maxY - box.minY,
      layers: layers.map(({ colour, shapes }) => ({
        colour,
        shapes: shapes.map(({ contours }) => ({ contours: shifted(contours, by) })),
      })),
      lines: shifted([border], by),
      marks,
      notes: marks.some(({ again }) => again.length > 0)
        ? ['Small marks without a number are the same in other repeats.']
        : [],
    },
    words,
    job.units,
  );
}

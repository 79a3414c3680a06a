// Do the sheets hold the very pieces that were proved: each as often as it is needed, none over another or off its sheet?
import { boxesMeet } from '../../geometry/box.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { clipPolygons } from '../../geometry/polygon-clip.ts';
import { precision } from '../../geometry/tolerance.ts';
import { atMost, type Check, largest } from '../check.ts';
import type { DeliveredFile } from '../written/delivered-file.ts';
import { samplesOn } from '../written/samples.ts';
import {
  curvesIn,
  type DeliveredSheet,
  type Found,
  type LookedAt,
  layersIn,
  piecesOn,
  segmentsOf,
  withoutLaidElsewhere,
} from './found-pieces.ts';

/** What the sheets are to be. All mm. */
export interface AskedSheets {
  readonly across: number;
  /** Endless where it is a roll. */
  readonly up: number;
  readonly margin: number;
  readonly mirror: boolean;
  /** Vessels alike. */
  readonly batch: number;
}

/** Grid units a mm, and mm² that are no overlap: what rounding of two borders side by side can come to. */
const gridPerMm = 1e4;
const leastOverlap = 0.01;

/** How many pairs of pieces of a sheet lie over one another. */
function overlaps(found: readonly Found[]): number {
  const rings = found.map(({ outline }) => ({
    box: tightBox([outline]),
    ring: samplesOn([outline]).map(({ x, y }) => ({
      x: Math.round(x * gridPerMm),
      y: Math.round(y * gridPerMm),
    })),
  }));
  return rings.reduce(
    (sum, one, i) =>
      sum +
      rings.slice(i + 1).filter((other) => {
        if (!boxesMeet(one.box, other.box)) return false;
        const common = clipPolygons('intersection', [one.ring], [other.ring], 'nonzero');
        const area = common.reduce((total, { outer }) => total + Math.abs(ringArea(outer)), 0);
        return area / gridPerMm ** 2 > leastOverlap;
      }).length,
    0,
  );
}

const ringArea = (ring: readonly Point[]): number =>
  ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    return sum + (p.x * q.y - p.y * q.x) / 2;
  }, 0);

/** How far pieces of a sheet are past the margin, and the file larger than the sheet, mm. */
function pastMargin({ units }: DeliveredFile, found: readonly Found[], { across, up, margin }: AskedSheets) {
  const box = tightBox(found.map(({ outline }) => outline));
  const long = Math.min(up, units.up);
  const past = [
    margin - box.minX,
    margin - box.minY,
    box.maxX - (across - margin),
    box.maxY - (long - margin),
  ];
  return Math.max(0, units.across - across, units.up - up, ...past);
}

/** Of a whole wrap, a piece, a panel, or a panel of a piece. */
const plainWrap = /wrap(?:-\d{1,3})?(?:-[a-z])?$/;
const motif = /^(?:item|lettering)-\d+$/;

/** Whether a piece without art may be the paper that a vessel's motifs are laid by: those of a list have its folder before their names. */
function isTemplate(stem: string, parts: ReadonlyMap<string, DeliveredFile>): boolean {
  const folder = stem.replace(plainWrap, '');
  return (
    plainWrap.test(stem) &&
    [...parts.keys()].some((name) => name.startsWith(folder) && motif.test(name.slice(folder.length)))
  );
}

/** How many of a piece the sheets have more or fewer than the batch takes: one lies on a sheet for each of its layers. */
function pieceMiss(
  [stem, part]: readonly [string, DeliveredFile],
  looked: readonly LookedAt[],
  isPaper: boolean,
  batch: number,
): number {
  const laid = (isOne: (piece: Found) => boolean) =>
    looked.reduce(
      (sum, { found, times }) =>
        sum + times * found.filter((piece) => piece.stem === stem && isOne(piece)).length,
      0,
    );
  // One sheet holds several layers where they are one film.
  const own = layersIn(part);
  if (own.size === 0) {
    const all = laid(() => true);
    return all === 0 && isPaper ? 0 : Math.abs(all - batch);
  }
  const each = [...own].map((layer) =>
    Math.abs(laid(({ layers }) => layers.some((one) => one.layer === layer)) - batch),
  );
  return each.reduce(
    (sum, count) => sum + count,
    laid(({ layers }) => layers.length === 0),
  );
}

/** Rows of the sheets, whose pieces come from `parts`, by the stems of their files. */
export function sheetChecks(
  sheets: readonly DeliveredSheet[],
  parts: ReadonlyMap<string, DeliveredFile>,
  asked: AskedSheets,
): Check[] {
  const looked = withoutLaidElsewhere(
    sheets.map((sheet) => ({ ...sheet, found: piecesOn(sheet.file, parts) })),
    asked.batch,
  );
  const counts = [...parts].map((part) => pieceMiss(part, looked, isTemplate(part[0], parts), asked.batch));
  const strangers = looked.map(({ file, found }) =>
    Math.abs(
      segmentsOf(curvesIn(file, 'artwork')).length -
        found.reduce((sum, { layers }) => sum + layers.reduce((all, { art }) => all + art, 0), 0),
    ),
  );
  const faults = looked.reduce((sum, { file }) => sum + file.faults.length, 0);
  const all = looked.flatMap(({ found }) => found);
  const count = (rule: string, value: number, says: string): Check =>
    atMost({ rule, value, limit: 0, unit: 'count', says });
  return [
    count('sheet-files', faults, 'things on the sheets that are not plain paths in mm'),
    count(
      'sheet-pieces',
      [...counts, ...strangers].reduce((sum, value) => sum + value, 0),
      'pieces, and lines of art, that the sheets have more or fewer than the batch takes',
    ),
    atMost({
      rule: 'sheet-lines',
      value: largest(all.flatMap(({ off, layers }) => [off, ...layers.map((layer) => layer.off)])),
      limit: precision,
      unit: 'mm',
      says: 'lines of a piece on its sheet off those of its own file',
    }),
    count(
      'sheet-mirror',
      all.filter(({ isMirrored }) => isMirrored !== asked.mirror).length,
      asked.mirror ? 'pieces that are not mirrored, as this film is to be' : 'pieces that are mirrored',
    ),
    count(
      'sheet-overlap',
      looked.reduce((sum, { found }) => sum + overlaps(found), 0),
      'pairs of pieces that lie over one another',
    ),
    atMost({
      rule: 'sheet-margin',
      value: largest(looked.map(({ file, found }) => pastMargin(file, found, asked))),
      limit: precision,
      unit: 'mm',
      says: 'pieces past the margin of their sheet',
    }),
  ];
}

// The proof: delivered files rolled back onto the blank and measured. Each check is a file of its own.
import { isMotifLayer } from '../drawing/motif-name.ts';
import type { Asked } from './asked.ts';
import { atMost, type Check, largest } from './check.ts';
import { collarChecks } from './checks/check-collars.ts';
import { coverChecks } from './checks/check-cover.ts';
import { doubledCheck, doubledLines } from './checks/check-doubled.ts';
import { edgeChecks } from './checks/check-edges.ts';
import { fileChecks } from './checks/check-file.ts';
import { jointChecks } from './checks/check-joints.ts';
import { knifeChecks } from './checks/check-knife.ts';
import { layerFileChecks } from './checks/check-layer-files.ts';
import { levelJointChecks } from './checks/check-level-joints.ts';
import { limitChecks } from './checks/check-limits.ts';
import { maskChecks } from './checks/check-mask.ts';
import { motifChecks } from './checks/check-motifs.ts';
import { registerChecks } from './checks/check-register.ts';
import { reliefChecks } from './checks/check-relief.ts';
import { partsFound, repeatCheck, repeatMiss } from './checks/check-repeats.ts';
import { sameChecks } from './checks/check-same.ts';
import { scaleCheck } from './checks/check-scale.ts';
import { sheetChecks } from './checks/check-sheets.ts';
import { stencilChecks } from './checks/check-stencil.ts';
import { stripChecks } from './checks/check-strips.ts';
import type { DeliveredSheet } from './checks/found-pieces.ts';
import { type SeamGap, type SeamPiece, seamChecks, seamGap, worseGap } from './seams/seam-gap.ts';
import { windingSidesOf } from './seams/winding-sides.ts';
import { readCut, readFiles } from './written/cutter-file.ts';
import type { PieceText } from './written/delivered-file.ts';
import { type ProvedPiece, placePiece } from './written/piece.ts';
import { layersOfRow, type ProvedRow, type RowLayer, rowsOf } from './written/row.ts';

export interface Proof {
  readonly pass: boolean;
  readonly checks: readonly Check[];
  /** What the two ends of the art miss each other by; where there is art and a seam. */
  readonly seamGap?: SeamGap;
}

/** The pieces, from the foot up, each placed where the one below ends; panels side by side. */
function placed(asked: Asked, files: readonly PieceText[]): ProvedPiece[] {
  const sides = [0, ...(asked.panels?.joints ?? []), 1];
  const panels = sides.length - 1;
  let from = asked.band.from;
  return files.flatMap((text, i) => {
    const read = readFiles(text, asked.cutter);
    if (!read) return [];
    const { cut, guide } = read;
    const at = i % panels;
    const piece = placePiece(
      asked,
      {
        number: i + 1,
        cut,
        guide,
        turns: { from: sides[at] ?? 0, to: sides[at + 1] ?? 1 },
        isLowest: i < panels,
        isHighest: i >= files.length - panels,
      },
      from,
    );
    if (piece && at === panels - 1) from = piece.band.to;
    return piece ?? [];
  });
}

/** How many pieces lack a file, or a guide that tells where it lies on the wall; and how many panels there are not. */
const missingCheck = (asked: Asked, files: readonly PieceText[], pieces: readonly ProvedPiece[]): Check =>
  atMost({
    rule: 'files',
    value: files.length === 0 ? 1 : files.length - pieces.length + missingParts(asked, files.length),
    limit: 0,
    unit: 'count',
    says: 'pieces without a cut file and a guide whose seam lines can be read',
  });

/** How many files are missing to make whole rows of panels, and all the levels where it is known how many. */
function missingParts({ panels, levels }: Asked, files: number): number {
  const count = (panels?.joints.length ?? 0) + 1;
  if (levels) return Math.max(0, count * (levels.at.length + 1) - files);
  return (count - (files % count)) % count;
}

/** Rows of the cover strips; none where none were asked for. */
function stripRows(asked: Asked, rows: readonly ProvedRow[], files: readonly PieceText[]): Check[] {
  const { strip } = asked;
  if (!strip) return [];
  const whole = files.flatMap((text) => readFiles(text, asked.cutter) ?? []);
  const joints = rows.slice(1).map(({ band }) => band.from);
  return stripChecks(
    { asked, strip, upright: asked.clear === undefined ? 1 : 0, joints, called: 'strip' },
    whole,
  );
}

/** Rows of the cover strips on borders of the pattern; none where none were asked for. */
function borderRows(asked: Asked, files: readonly PieceText[]): Check[] {
  const { covers } = asked;
  if (!covers) return [];
  const { upright, along: joints } = covers;
  const whole = files.flatMap((text) => readFiles(text, asked.cutter) ?? []);
  return stripChecks({ asked, strip: covers, upright, joints, called: 'cover' }, whole);
}

/** Rows of the collars; none where none were asked for. */
function collarRows(asked: Asked, files: readonly PieceText[]): Check[] {
  const { collars = [] } = asked;
  if (collars.length === 0) return [];
  return collarChecks(
    asked,
    collars,
    files.flatMap((text) => readFiles(text, asked.cutter) ?? []),
  );
}

/** A sheet's file, as text, and how often it is to be cut. */
export interface SheetText {
  readonly stem: string;
  readonly cut: string;
  /** There where the cut file holds the way of a knife's axis: the lines themselves. */
  readonly guide?: string;
  readonly times: number;
  /** What is cut from it, as its report tells. */
  readonly film?: string;
}

/** Sheets as they were delivered. */
export const readSheets = (
  sheets: readonly SheetText[],
  cutter: Asked['cutter'],
): readonly DeliveredSheet[] =>
  sheets.flatMap((sheet) => {
    const file = readCut(sheet, cutter);
    return file ? [{ file, times: sheet.times }] : [];
  });

/** All the files of a job that can be proved. */
export interface ProofFiles {
  /** From the foot up, panels in the order of their turns. */
  readonly wraps: readonly PieceText[];
  /** That of the seam first, then those of the joints from the foot up. */
  readonly strips?: readonly PieceText[];
  /** Those on borders of the pattern: up the wall by their turns, then level from the foot up. */
  readonly covers?: readonly PieceText[];
  /** What else is cut: known only by the sheets it lies on. */
  readonly others?: readonly PieceText[];
  /** Collars of paper, from the foot up. */
  readonly collars?: readonly PieceText[];
  readonly sheets?: readonly SheetText[];
}

/** Rows of the sheets; none where there are none. */
function sheetRows(
  { sheet, cutter }: Asked,
  { wraps, strips = [], covers = [], others = [], collars = [], sheets = [] }: ProofFiles,
): Check[] {
  if (!sheet || sheets.length === 0) return [];
  // Collars that no sheet holds are cut by themselves.
  const hasPaper = sheets.some(({ film }) => film === 'paper');
  const all = [...wraps, ...strips, ...covers, ...others, ...(hasPaper ? collars : [])];
  return sheetsOf({ sheet, cutter }, all, sheets);
}

function sheetsOf(
  { sheet, cutter }: AskedOfSheets,
  pieces: readonly PieceText[],
  sheets: readonly SheetText[],
): Check[] {
  const parts = pieces.flatMap((text) => {
    const cut = readCut(text, cutter);
    return cut ? [[text.stem, cut] as const] : [];
  });
  return sheetChecks(readSheets(sheets, cutter), new Map(parts), sheet);
}

/** What sheets are held against. */
export interface AskedOfSheets {
  readonly sheet: NonNullable<Asked['sheet']>;
  readonly cutter: Asked['cutter'];
}

/** Hold sheets alone against the pieces, of whatever vessels, that are to lie on them. */
export function proofOfSheets(
  asked: AskedOfSheets,
  pieces: readonly PieceText[],
  sheets: readonly SheetText[],
): Proof {
  const checks = [...sheetsOf(asked, pieces, sheets), ...knifeChecks(sheets, asked.cutter)];
  return { pass: checks.every(({ pass }) => pass), checks };
}

/** Hold the files of a job against what it asked for. */
export function proofOf(asked: Asked, files: ProofFiles): Proof {
  const { wraps, strips = [], covers = [], others = [], sheets = [] } = files;
  const pieces = placed(asked, wraps);
  const missing = missingCheck(asked, wraps, pieces);
  if (pieces.length === 0) return { pass: false, checks: [missing] };
  const rows = rowsOf(pieces);
  // A motif is laid once: it has no next repeat, and no seam to meet at.
  const layers = rows.flatMap(layersOfRow).filter(({ name }) => !isMotifLayer(name));
  const gap = gapOf(asked, layers);
  const checks = [
    missing,
    ...fileChecks(pieces),
    scaleCheck(pieces, asked.wall.kind === 'straight'),
    ...sameChecks(pieces),
    ...edgeChecks(pieces, asked),
    ...coverChecks(rows, asked),
    ...(gap ? seamChecks(gap) : []),
    ...(asked.panels ? jointChecks(layers) : []),
    ...levelJointChecks(rows, layers),
    ...patternChecks(asked, layers),
    ...registerChecks(pieces, asked),
    ...layerFileChecks([...wraps, ...others], asked.cutter),
    ...reliefChecks(pieces, asked, others),
    ...stencilChecks(pieces, asked),
    ...limitChecks(pieces, asked),
    ...stripRows(asked, rows, strips),
    ...borderRows(asked, covers),
    ...collarRows(asked, files.collars ?? []),
    ...sheetRows(asked, files),
    ...motifChecks(asked, others),
    ...maskChecks(asked, others),
    ...knifeChecks(
      [...wraps, ...strips, ...covers, ...others, ...(files.collars ?? []), ...sheets],
      asked.cutter,
    ),
  ];
  return { pass: checks.every(({ pass }) => pass), checks, ...(gap ? { seamGap: gap } : {}) };
}

/** The worst gap of the pieces; undefined without art, and where a handle keeps the ends apart. */
function gapOf({ clear, winds }: Asked, layers: readonly RowLayer[]): SeamGap | undefined {
  if (clear !== undefined || layers.length === 0) return undefined;
  return layers.map((layer) => seamGap(lineOf(layer, winds), [layer])).reduce(worseGap);
}

/** A row with the line of its seam, where that winds. */
function lineOf({ row }: RowLayer, winds = false): SeamPiece {
  const [first] = row.panels;
  const sides = winds && first ? windingSidesOf(first) : undefined;
  return sides ? { cone: row.cone, band: row.band, line: sides.left } : row;
}

/** In how many equal parts the pattern goes around: as it is known, or else as the files show. */
const partsOf = ({ equalParts, around = 1 }: Asked, layers: readonly RowLayer[]): number =>
  equalParts ?? partsFound(layers, around);

function patternChecks(asked: Asked, layers: readonly RowLayer[]): Check[] {
  if (layers.length === 0) return [];
  const equalParts = partsOf(asked, layers);
  const misses = layers.map((layer) => repeatMiss(layer, equalParts, asked.cleared));
  const doubled = layers.flatMap(({ arts }) => arts).map(({ contours }) => doubledLines(contours));
  return [
    repeatCheck(largest(misses), equalParts),
    doubledCheck(doubled.reduce((sum, count) => sum + count, 0)),
  ];
}

// Do the collars run level on the wall, and do their ends meet?
import { precision } from '../../geometry/tolerance.ts';
import type { Asked, AskedCollar } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import type { DeliveredFile } from '../written/delivered-file.ts';
import { type ProvedPiece, placePiece } from '../written/piece.ts';
import { levelOff, outlineOff } from './check-edges.ts';
import { fileChecks } from './check-file.ts';
import { sameChecks } from './check-same.ts';

/** A collar's two files. */
interface CollarFiles {
  readonly cut: DeliveredFile;
  readonly guide: DeliveredFile;
}

/** A collar put on the wall: a narrow wrap of its own, with its tab for an overlap. */
function placed(asked: Asked, collar: AskedCollar, files: CollarFiles, number: number) {
  const { wall, from, to, tab } = collar;
  const { panels: _, winds: __, ...rest } = asked;
  const own = { ...rest, wall, band: { from, to }, trim: { lip: 0, foot: 0 }, overlap: tab, before: 0 };
  const whole = { ...files, number, turns: { from: 0, to: 1 }, isLowest: true, isHighest: true };
  return placePiece(own, whole, from);
}

const levelLine = 'level-line';

/** `files` in the order of the collars. */
export function collarChecks(
  asked: Asked,
  collars: readonly AskedCollar[],
  files: readonly CollarFiles[],
): Check[] {
  const found = collars.map((collar, i) => {
    const own = files[i];
    return { collar, piece: own && placed(asked, collar, own, i + 1) };
  });
  const pieces = found.flatMap(({ piece }): ProvedPiece[] => (piece ? [piece] : []));
  const faults = [...fileChecks(pieces), ...sameChecks(pieces)].filter(({ pass }) => !pass);
  return [
    atMost({
      rule: 'collar-files',
      value: Math.abs(files.length - collars.length) + collars.length - pieces.length + faults.length,
      limit: 0,
      unit: 'count',
      says: `collars missing, or whose files can't be read${faults[0] ? `, or have ${faults[0].says}` : ''}`,
    }),
    atMost({
      rule: 'collar-outline',
      value: largest([
        ...pieces.map(outlineOff),
        ...found.flatMap(({ collar, piece }) => (piece ? levelOff(piece, levelLine, collar.along) : [])),
      ]),
      limit: precision,
      unit: 'mm',
      says: 'outline of a collar off the one that runs level on this wall, or its level line off its height',
    }),
  ];
}

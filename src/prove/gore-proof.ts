// The proof of a job in gores: the delivered files rolled onto the wall gore by gore, and measured.
import { precision } from '../geometry/tolerance.ts';
import type { AskedGores } from './asked-gores.ts';
import { atMost, type Check, largest } from './check.ts';
import { doubledCheck, doubledLines } from './checks/check-doubled.ts';
import { fileChecks } from './checks/check-file.ts';
import { goreChecks } from './checks/check-gores.ts';
import { knifeChecks } from './checks/check-knife.ts';
import { pastPage, pastSheet } from './checks/check-limits.ts';
import { registerChecks } from './checks/check-register.ts';
import { sameChecks } from './checks/check-same.ts';
import { fileSizes, sizeCheck } from './checks/check-scale.ts';
import { sheetChecks } from './checks/check-sheets.ts';
import { type Proof, readSheets, type SheetText } from './proof.ts';
import { goreSeamGap } from './seams/gore-seams.ts';
import { seamChecks } from './seams/seam-gap.ts';
import { readFiles } from './written/cutter-file.ts';
import type { PieceText } from './written/delivered-file.ts';
import { goresByName, type ProvedGores, readGores } from './written/gore-pieces.ts';

/** Hold the file of all gores, and the sheets they are laid on apart, against what the job asked for. */
export function proofOfGores(asked: AskedGores, text: PieceText, sheets: readonly SheetText[] = []): Proof {
  const { count } = asked.surface;
  const read = readFiles(text, asked.cutter);
  const proved = read && readGores(read.cut, read.guide, count);
  const missing = atMost({
    rule: 'files',
    value: count - (proved?.gores.length ?? 0),
    limit: 0,
    unit: 'count',
    says: 'gores without an outline to cut and a middle line on the guide',
  });
  if (!proved || proved.gores.length < count) return { pass: false, checks: [missing] };
  const gap = goreSeamGap(asked, proved.gores);
  const checks = [
    missing,
    ...fileChecks([proved.sheet]),
    sizes(asked, proved),
    ...sameChecks([proved.sheet]),
    ...goreChecks(asked, proved),
    ...(gap ? seamChecks(gap) : []),
    ...(gap ? [doubledIn(proved)] : []),
    ...registerChecks(
      proved.gores.map((gore) => ({ ...gore, shift: { x: 0, y: 0 } })),
      asked,
    ),
    ...roomChecks(asked, proved),
    ...(asked.sheet && sheets.length > 0
      ? sheetChecks(readSheets(sheets, asked.cutter), goresByName(proved), asked.sheet)
      : []),
    ...knifeChecks([text, ...sheets], asked.cutter),
  ];
  return { pass: checks.every(({ pass }) => pass), checks, ...(gap ? { seamGap: gap } : {}) };
}

/** True size by the files, the squares, and the middle line of each gore. */
function sizes({ band }: AskedGores, { sheet, gores }: ProvedGores): Check {
  const middles = gores.map(({ number, middle }) => ({
    file: sheet.guide.name,
    way: `up the middle of gore ${number}`,
    scale: middle / (band.to - band.from),
  }));
  return sizeCheck([...fileSizes(sheet), ...middles]);
}

function doubledIn({ sheet }: ProvedGores): Check {
  const counts = sheet.layers.map(({ shapes }) => doubledLines(shapes.flat()));
  return doubledCheck(counts.reduce((sum, count) => sum + count, 0));
}

/** Does all that is cut lie on its page, and each gore on its sheet of film? */
function roomChecks({ sheet: film }: AskedGores, { sheet, gores }: ProvedGores): Check[] {
  const page = atMost({
    rule: 'on-page',
    value: pastPage(sheet),
    limit: precision,
    unit: 'mm',
    says: 'cut lines past the edge of their file',
  });
  if (!film) return [page];
  const off = atMost({
    rule: 'sheet',
    value: largest(gores.map(({ outline }) => pastSheet(outline, film))),
    limit: precision,
    unit: 'mm',
    says: 'a gore larger than the room on its sheet',
  });
  return [page, off];
}

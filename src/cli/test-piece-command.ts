// `seamwright test-piece`: a square and two scales for a cutter and a printer, so that their files can be corrected.

import { draftTestPiece, testPieceName } from '../job/cutter/test-piece.ts';
import { filesOfPiece } from '../job/deliverables.ts';
import { printOf } from '../job/prints/print.ts';
import { standardCutter } from '../job/typed/material.ts';
import { correctionOf } from '../job/typed/measured.ts';
import { paperNamed } from '../job/typed/print-paper.ts';
import { readCutter } from '../job/typed/read-cutter.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { delivered } from './delivery.ts';
import { readText } from './files.ts';
import type { CommonOptions } from './options.ts';
import { exitStatus, printFindings, printJson } from './output.ts';
import { givenPrinter, type PrinterFlags } from './print-flags.ts';
import { loadWords } from './tools.ts';

export interface TestPieceFlags extends CommonOptions, PrinterFlags {
  readonly cutter?: string;
  readonly paperSize: string;
}

const printName = 'test-piece.print.pdf';

async function givenCutter(file: string | undefined) {
  if (file === undefined) return standardCutter;
  return readCutter(parseJson(await readText(file, file, { key: '--cutter' }), file), file);
}

export async function testPieceCommand(flags: TestPieceFlags): Promise<number> {
  const paper = paperNamed(flags.paperSize);
  const printer = await givenPrinter(flags);
  const cutter = await givenCutter(flags.cutter);
  const words = await loadWords();
  const { piece, strip, lines, checks } = draftTestPiece({
    cutter,
    cutterFile: flags.cutter,
    printer,
    words,
  });
  const folder = flags.out ?? 'out';
  const files = await delivered(folder, async (delivery) => {
    const written = [piece, strip].flatMap(filesOfPiece);
    for (const { file, content } of written) await delivery.stage(file, content);
    const guideName = `${piece.stem}.guide.svg`;
    const guide = await delivery.readBack(guideName);
    const correction = correctionOf(printer?.measured);
    const print = await printOf(guide, guideName, { paper, title: testPieceName, words, correction });
    await delivery.stage(printName, print);
    return [...written.map(({ file, role }) => ({ file, role })), { file: printName, role: 'print' }];
  });
  if (flags.json) printJson({ checks, files });
  else
    process.stdout.write(
      `${[...lines, `written to ${folder}: ${files.map(({ file }) => file).join(', ')}`].join('\n')}\n`,
    );
  printFindings(checks);
  return exitStatus(checks);
}

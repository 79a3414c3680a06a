// `seamwright collar`: paper arcs that give level lines once they are wrapped.
import { dirname, join } from 'node:path';
import { draftCollars } from '../job/parts/collar.ts';
import type { CollarAsk } from '../job/plan/collar-plan.ts';
import { printOf } from '../job/prints/print.ts';
import { correctionOf } from '../job/typed/measured.ts';
import { paperNamed } from '../job/typed/print-paper.ts';
import { standardCollar } from '../job/typed/resolved-collars.ts';
import { givenBlank } from './blank-input.ts';
import { thicknessOfFlags } from './coat-flags.ts';
import { delivered } from './delivery.ts';
import { FlagLengths } from './flag-lengths.ts';
import type { CommonOptions } from './options.ts';
import { exitStatus, printFindings, printJson } from './output.ts';
import { givenPrinter, type PrinterFlags } from './print-flags.ts';
import { loadWords } from './tools.ts';
import { told, unitsTold } from './units-told.ts';

export interface CollarFlags extends CommonOptions, PrinterFlags {
  readonly height: readonly string[];
  readonly along: readonly string[];
  readonly edge?: string;
  readonly width?: string;
  readonly paper?: string;
  readonly coat: readonly string[];
  readonly overlap?: string;
  readonly paperSize: string;
}

function edgeOf(typed: string | undefined, lengths: FlagLengths): CollarAsk['edge'] {
  if (typed === undefined || typed === 'upper' || typed === 'lower') return typed;
  return lengths.refuse('--edge', `"${typed}" is no edge of a collar; give upper or lower`);
}

function askOfFlags(flags: CollarFlags): CollarAsk {
  const lengths = new FlagLengths(flags.units);
  const edge = edgeOf(flags.edge, lengths);
  const lines = (['height', 'along'] as const).flatMap((kind) =>
    flags[kind].map((text) => ({ kind, mm: lengths.read(`--${kind}`, text) ?? 0 })),
  );
  const ask = {
    lines,
    ...(edge === undefined ? {} : { edge }),
    width: lengths.read('--width', flags.width, 'positive') ?? standardCollar.width,
    paper: lengths.read('--paper', flags.paper) ?? standardCollar.paper,
    coats: thicknessOfFlags(flags.coat, lengths),
    tab: lengths.read('--overlap', flags.overlap) ?? standardCollar.tab,
  };
  lengths.finish();
  return ask;
}

const names = { cut: 'collar.cut.svg', guide: 'collar.guide.svg', print: 'collar.print.pdf' };

export async function collarCommand(file: string, flags: CollarFlags): Promise<number> {
  const paper = paperNamed(flags.paperSize);
  const correction = correctionOf((await givenPrinter(flags))?.measured);
  const ask = askOfFlags(flags);
  const { blank } = await givenBlank(file, { units: flags.units });
  const words = await loadWords();
  const draft = draftCollars({
    ...ask,
    blank,
    blankFile: file,
    keyed: (key) => `--${key}`,
    units: unitsTold(),
    words,
  });
  const folder = flags.out ?? join(dirname(file), 'out');
  const report = await delivered(folder, async (delivery) => {
    await delivery.stage(names.cut, draft.cut);
    await delivery.stage(names.guide, draft.guide);
    const guide = await delivery.readBack(names.guide);
    await delivery.stage(
      names.print,
      await printOf(guide, names.guide, { paper, title: draft.title, words, correction }),
    );
    const files = [
      { file: names.cut, role: 'cut' },
      { file: names.guide, role: 'guide' },
      { file: names.print, role: 'print' },
      { file: 'collar.report.json', role: 'report' },
    ];
    const made = { ...draft.report, files };
    await delivery.stage('collar.report.json', `${JSON.stringify(made, undefined, 2)}\n`);
    return made;
  });
  if (flags.json) printJson(report);
  else
    process.stdout.write(
      `${[...draft.lines.map(told), `written to ${folder}: ${report.files.map((f) => f.file).join(', ')}`].join('\n')}\n`,
    );
  printFindings(report.checks);
  return exitStatus(report.checks);
}

// `seamwright unroll`: the plain template of a blank.
import { dirname, join } from 'node:path';
import { draftPieces } from '../job/make.ts';
import { type Coat, type Job, standardFilm, standardOverlap, standardTrim } from '../job/resolved-job.ts';
import { givenBlank } from './blank-input.ts';
import { deliverDrafts } from './deliver-draft.ts';
import { FlagLengths } from './flag-lengths.ts';
import type { BlankFlags } from './options.ts';
import { type PrintFlags, printFiles, printPaper } from './print-file.ts';
import { loadWords } from './tools.ts';

export interface UnrollFlags extends BlankFlags, PrintFlags {
  readonly band?: string;
  readonly coat: readonly string[];
  readonly film?: string;
  readonly overlap?: string;
  readonly trimLip?: string;
  readonly trimFoot?: string;
  readonly pieces: 'one' | 'stacked';
}

/** `from..to`, two lengths. */
function bandOf(text: string | undefined, lengths: FlagLengths): Job['band'] {
  if (text === undefined) return undefined;
  const [from, to, ...rest] = text.split('..');
  if (!from?.trim() || !to?.trim() || rest.length > 0)
    return lengths.refuse(
      '--band',
      `"${text}" is not a band; give two lengths along the wall, such as 12..130`,
    );
  const band = { from: lengths.read('--band', from), to: lengths.read('--band', to, 'positive') };
  if (band.from === undefined || band.to === undefined) return undefined;
  if (band.from >= band.to)
    return lengths.refuse('--band', `"${text}" is upside down; give the lower height first, such as 12..130`);
  return { from: band.from, to: band.to };
}

function jobOfFlags(flags: UnrollFlags, name: string): Omit<Job, 'blank'> {
  const lengths = new FlagLengths(flags.units);
  const band = bandOf(flags.band, lengths);
  const coats = flags.coat.map(
    (text, i): Coat => ({ name: `coat ${i + 1}`, thickness: lengths.read('--coat', text) ?? 0, over: false }),
  );
  const job = {
    name,
    units: flags.units,
    ...(band ? { band } : {}),
    coats,
    film: { ...standardFilm, thickness: lengths.read('--film', flags.film) ?? standardFilm.thickness },
    pieces: flags.pieces === 'stacked' ? ('stacked' as const) : ('one' as const),
    edges: 'straight' as const,
    seam: { style: 'overlap' as const, overlap: lengths.read('--overlap', flags.overlap) ?? standardOverlap },
    trim: {
      lip: lengths.read('--trim-lip', flags.trimLip) ?? standardTrim.lip,
      foot: lengths.read('--trim-foot', flags.trimFoot) ?? standardTrim.foot,
    },
  };
  lengths.finish();
  return job;
}

export async function unrollCommand(file: string | undefined, flags: UnrollFlags): Promise<number> {
  const paper = printPaper(flags);
  const { blank, named } = await givenBlank(file, flags);
  const job: Job = { ...jobOfFlags(flags, 'plain template'), blank: { kind: 'here', blank } };
  const words = await loadWords();
  const drafts = draftPieces({
    job,
    jobFile: 'the command line',
    blank,
    blankFile: named,
    plain: true,
    tools: { words, normalise: (svg) => svg },
  });
  const folder = flags.out ?? join(file === undefined ? '.' : dirname(file), 'out');
  return deliverDrafts(drafts, {
    ...flags,
    folder,
    stem: 'template',
    more: async (written) => {
      const prints = await Promise.all(
        written.map(({ guide, stem }) => printFiles(paper, guide, stem, `${blank.name}: ${stem}`, words)),
      );
      return prints.flat();
    },
  });
}

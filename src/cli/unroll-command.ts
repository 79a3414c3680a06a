// `seamwright unroll`: the plain template of a blank.
import { dirname, join } from 'node:path';
import { stemOf, type WrittenPiece } from '../job/deliverables.ts';
import { draftPieces } from '../job/lay/make.ts';
import type { GoresAsked } from '../job/plan/gore-plan.ts';
import { printFiles } from '../job/prints/prints.ts';
import { draftGores, reportGores } from '../job/proof/gores.ts';
import { reportDrafts } from '../job/proof/report-drafts.ts';
import { standardCutter, standardFilm } from '../job/typed/material.ts';
import { type Job, standardOverlap, standardTrim } from '../job/typed/resolved-job.ts';
import { bandOf } from './band-flag.ts';
import { givenBlank } from './blank-input.ts';
import { coatsOfFlags } from './coat-flags.ts';
import { deliver } from './deliver.ts';
import { type FilmFlags, givesOfFlags } from './film-flags.ts';
import { FlagLengths } from './flag-lengths.ts';
import { type GoreFlags, goresOf, piecesOf } from './gore-flags.ts';
import type { BlankFlags } from './options.ts';
import { type PrintFlags, printingOn } from './print-flags.ts';
import { loadWords } from './tools.ts';
import { unitsTold } from './units-told.ts';

export interface UnrollFlags extends BlankFlags, FilmFlags, GoreFlags, PrintFlags {
  readonly band?: string;
  readonly coat: readonly string[];
  readonly film?: string;
  readonly overlap?: string;
  readonly trimLip?: string;
  readonly trimFoot?: string;
}

/** What the flags ask for: a job, and how its gores are cut where it is to be gores. */
interface Asked {
  readonly job: Omit<Job, 'blank'>;
  readonly gores?: GoresAsked;
}

function askedOf(flags: UnrollFlags, name: string): Asked {
  const lengths = new FlagLengths(flags.units);
  const pieces = piecesOf(flags, lengths);
  const gores = pieces === 'gores' || pieces === 'darts' ? goresOf(flags, lengths) : undefined;
  const band = bandOf(flags.band, lengths);
  const coats = coatsOfFlags(flags.coat, lengths);
  const film = {
    ...standardFilm,
    thickness: lengths.read('--film', flags.film) ?? standardFilm.thickness,
    ...givesOfFlags(flags, lengths),
  };
  // Gores lie edge to edge, the last with the first too, unless an overlap is asked for.
  const overlap = lengths.read('--overlap', flags.overlap) ?? (gores ? 0 : standardOverlap);
  const job = {
    name,
    units: unitsTold(),
    ...(band ? { band } : {}),
    coats,
    film,
    cutter: standardCutter,
    pieces: pieces === 'stacked' ? ('stacked' as const) : ('one' as const),
    edges: 'straight' as const,
    seam: { style: gores && overlap === 0 ? ('butt' as const) : ('overlap' as const), overlap },
    trim: {
      lip: lengths.read('--trim-lip', flags.trimLip) ?? standardTrim.lip,
      foot: lengths.read('--trim-foot', flags.trimFoot) ?? standardTrim.foot,
    },
  };
  lengths.finish();
  return gores ? { job, gores } : { job };
}

export async function unrollCommand(file: string | undefined, flags: UnrollFlags): Promise<number> {
  const on = await printingOn(flags);
  const { blank, typedIn } = await givenBlank(file, flags);
  const asked = askedOf(flags, 'plain template');
  const words = await loadWords();
  const input = {
    job: { ...asked.job, blank: { kind: 'here' as const, blank } },
    jobFile: undefined,
    blank,
    blankFile: typedIn,
    plain: true,
    files: new Map(),
    tools: { words, normalise: (svg: string) => svg, setText: noText },
  };
  const options = { ...flags, folder: flags.out ?? join(file === undefined ? '.' : dirname(file), 'out') };
  const prints = (written: readonly WrittenPiece[]) => printFiles(on, written, blank.name, words);
  if (asked.gores) {
    const draft = draftGores({ ...input, gores: asked.gores });
    const { cut, guide } = draft;
    const rest = async (written: readonly WrittenPiece[]) => ({
      report: reportGores(draft, []),
      files: await prints(written),
    });
    return deliver({ pieces: [{ stem: 'template', cut, guide }], rest }, options);
  }
  const drafts = draftPieces(input);
  const rest = async (written: readonly WrittenPiece[]) => ({
    report: reportDrafts(drafts),
    files: await prints(written),
  });
  const pieces = drafts.map(({ cut, guide, mark }) => ({ stem: stemOf('template', mark), cut, guide }));
  return deliver({ pieces, rest }, options);
}

/** A plain template decorates nothing. */
function noText(): never {
  throw new Error('a plain template has no lettering');
}

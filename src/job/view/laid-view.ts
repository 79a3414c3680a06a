// A job laid flat to be looked at, whatever pieces it is cut in: what its guides show, and what is said of it.

import { draftPieces } from '../lay/make.ts';
import type { MakeInput } from '../make-input.ts';
import { partsOf } from '../parts/parts.ts';
import { goreLayersAsMade } from '../proof/gore-proof.ts';
import { draftGores, looseGores, reportGores } from '../proof/gores.ts';
import { reportDrafts } from '../proof/report-drafts.ts';
import type { Report } from '../report.ts';
import { type ArtLaid, artLaid } from './art-laid.ts';
import { type FlatView, flatViewOf, looseFlatPiece } from './flat-view.ts';
import { maskViewOf } from './mask-view.ts';

export interface LaidView {
  readonly view: FlatView;
  readonly report: Omit<Report, 'files'>;
  /** How the pattern lies; left out where more than one is drawn, or where it can't be carried to other readings. */
  readonly laid?: ArtLaid;
}

/** @throws Refused where the input can't be made. */
export function laidView(input: MakeInput): LaidView {
  if (input.job.pieces === 'gores') {
    const draft = draftGores({ ...input, gores: looseGores(input.job) });
    return {
      view: { pieces: [looseFlatPiece(draft, '')] },
      report: reportGores(draft, goreLayersAsMade(draft)),
    };
  }
  const drafts = draftPieces(input);
  const parts = partsOf(input, drafts);
  const laid = parts.length === 0 ? artLaid(input.job, drafts) : undefined;
  return {
    view: withSpray(flatViewOf(drafts, parts), maskViewOf(input.job, drafts, parts)),
    report: reportDrafts(drafts, undefined, parts),
    ...(laid ? { laid } : {}),
  };
}

/** The only piece of a job with a mask shows what is sprayed past it. */
function withSpray({ pieces }: FlatView, mask: ReturnType<typeof maskViewOf>): FlatView {
  const [d] = mask?.pieces ?? [];
  if (!mask || d === undefined) return { pieces };
  const around = { d, sprayed: mask.sprayed };
  return { pieces: pieces.map((piece, i) => (i === 0 ? { ...piece, around } : piece)) };
}

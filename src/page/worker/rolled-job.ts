// A job on its vessel: from four sides, and as a solid to turn.

import { draftPieces } from '../../job/lay/make.ts';
import type { MakeInput } from '../../job/make-input.ts';
import { partsOf } from '../../job/parts/parts.ts';
import { drawRolled, rolledPieces, rolledSubject } from '../../job/pictures/rolled.ts';
import { goresOnVessel } from '../../job/pictures/rolled-gores.ts';
import { draftGores, looseGores } from '../../job/proof/gores.ts';
import { maskViewOf } from '../../job/view/mask-view.ts';
import { seenInPieces, type VesselView, vesselViewOf } from '../../job/view/vessel-view.ts';
import type { SolidSeen } from '../model/messages.ts';
import { filmCovers } from './film-covers.ts';

/** Both ways to see it, each drawn when it is asked for. */
interface RolledJob {
  readonly svg: () => string;
  readonly solid: () => VesselView;
}

/** @throws Refused where the input can't be made. */
export function rolledJob(input: MakeInput): RolledJob {
  const { job, blank, tools } = input;
  if (job.pieces === 'gores') {
    const gores = draftGores({ ...input, gores: looseGores(job) });
    return seenInPieces(gores, goresOnVessel(gores, blank, gores), tools.words);
  }
  const drafts = draftPieces({ ...input, unchecked: true });
  const [draft, second] = drafts;
  if (!draft) throw new Error('a job has at least one piece');
  const parts = partsOf(input, drafts);
  if (second) return seenInPieces(draft, rolledPieces(drafts, blank, drafts, parts), tools.words);
  const subject = rolledSubject(draft, blank, draft, parts);
  const mask = maskViewOf(job, drafts, parts);
  return {
    svg: () => drawRolled(subject, tools.words),
    solid: () => vesselViewOf(draft, subject, mask),
  };
}

/** A solid with its film drawn; undefined where this browser can't draw it here. */
export async function solidSeen({ layers, mask, ...solid }: VesselView): Promise<SolidSeen | undefined> {
  const covers = await filmCovers({ layers, ...(mask ? { mask } : {}), ...solid });
  if (!covers) return undefined;
  const named = layers.map(({ name, colour }) => ({ name, colour }));
  const seen = mask && { mask: { film: mask.film, sprayed: mask.sprayed } };
  return { ...solid, layers: named, ...seen, covers };
}

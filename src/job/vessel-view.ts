// The finished vessel as a solid to turn on a screen, from the written files.
import { longestBand } from '../blank/wall.ts';
import { writePathData } from '../drawing/path-data.ts';
import { uncoloured } from '../picture/rolled-film.ts';
import { type RolledSolid, rolledSolid } from '../picture/rolled-solid.ts';
import type { Draft } from './draft.ts';
import type { Film } from './resolved-job.ts';
import type { RolledSubject } from './rolled.ts';

/** The vessel to be turned on a screen: its surfaces, and the film of the cut file to be laid on the sheet's. */
export interface VesselView extends RolledSolid {
  readonly layers: readonly {
    readonly name: string;
    readonly colour: string;
    /** Path data of each piece of film in the cut file, mm; its area by the even-odd rule. */
    readonly pieces: readonly string[];
  }[];
  readonly use: Film['use'];
  /** The circles of the sheet's wall from the foot up, by the bare wall's lengths, mm: what is between two of them is straight. */
  readonly rings: readonly { readonly along: number; readonly radius: number; readonly height: number }[];
  /** A handle is known by where it is joined alone, so it is not among the surfaces. */
  readonly hasHandle: boolean;
}

/** Screens show no more than this many places to the mm. */
const screenSteps = 1000;

export function vesselViewOf({ plan, job }: Draft, { drawing, vessel }: RolledSubject): VesselView {
  const { toGrown, toBare } = plan.lengths;
  const flat = longestBand(plan.flatBands) ?? plan.band;
  const length = vessel.profile.at(-1)?.along ?? 0;
  const coated = job.coats
    .filter(({ over }) => !over)
    .map(({ covers }) => covers ?? flat)
    .map(({ from, to }) => ({ from: Math.max(0, toGrown(from)), to: Math.min(length, toGrown(to)) }));
  return {
    ...rolledSolid(vessel, coated),
    layers: drawing.groups
      .filter(({ role }) => role === 'artwork')
      .map(({ layer, colour, paths }) => ({
        name: layer ?? '',
        colour: colour ?? uncoloured,
        pieces: paths.map(({ contours }) => writePathData(contours, screenSteps)),
      })),
    use: job.film.use,
    rings: vessel.profile.map(({ along, radius, height }) => ({ along: toBare(along), radius, height })),
    hasHandle: vessel.handleSpan !== undefined,
  };
}

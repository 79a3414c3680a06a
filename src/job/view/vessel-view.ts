// The finished vessel as a solid to turn on a screen, from the written files.
import { longestBand } from '../../blank/wall.ts';
import { writePathData } from '../../drawing/path-data.ts';
import type { DrawWords } from '../../drawing/words.ts';
import type { Contour } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { rolledSheets } from '../../picture/rolled/rolled.ts';
import { finishedFilm, uncoloured } from '../../picture/rolled/rolled-film.ts';
import { type RolledSolid, rolledSolid } from '../../picture/rolled/rolled-solid.ts';
import type { RolledVessel } from '../../picture/rolled/rolled-vessel.ts';
import { picturePath } from '../../picture/rolled-path.ts';
import { flatWall } from '../../unroll/flat-wall.ts';
import type { RolledPieces, RolledSubject } from '../pictures/rolled.ts';
import type { Ground } from '../plan/plan.ts';
import type { Film } from '../typed/material.ts';
import type { Span } from '../typed/read-spans.ts';
import type { Job } from '../typed/resolved-job.ts';

/** The vessel to be turned on a screen: its surfaces, and the film of the cut file to be laid on the sheet's. */
export interface VesselView extends RolledSolid {
  readonly layers: readonly {
    readonly name: string;
    readonly colour: string;
    /** Path data of each piece of film as it lies in the sheet's box, mm; its area by the even-odd rule. */
    readonly pieces: readonly string[];
  }[];
  readonly use: Film['use'];
  /** Whether it is shown upside down, standing on its lip. */
  readonly standsOnLip?: true;
  /** The circles of the sheet's wall from the foot up, by the bare wall's lengths, mm: what is between two of them is straight. */
  readonly rings: readonly { readonly along: number; readonly radius: number; readonly height: number }[];
  /** Of a job with a mask: the colours of its film and of the spray, and path data of the film as it lies in the sheet's box. */
  readonly mask?: { readonly film: string; readonly sprayed: string; readonly pieces: readonly string[] };
}

/** Screens show no more than this many places to the mm. */
const screenSteps = 1000;

/** Contours as a screen draws them. */
export const screenPath = (contours: readonly Contour[]): string => writePathData(contours, screenSteps);

/** A vessel in one piece of film, as its own flat drawing shows it; with what is cut apart and laid on it. */
export function vesselViewOf(
  draft: Laid,
  { drawing, vessel }: RolledSubject,
  mask?: VesselView['mask'],
): VesselView {
  const layers = new Map<string, VesselView['layers'][number]>();
  for (const { role, layer: name = '', colour = uncoloured, paths } of drawing.groups) {
    if (role !== 'artwork') continue;
    // Motifs cut apart may be of the same film.
    const before = layers.get(name) ?? { name, colour, pieces: [] };
    const pieces = paths.map(({ contours }) => screenPath(contours));
    layers.set(name, { ...before, pieces: [...before.pieces, ...pieces] });
  }
  return { ...bareView(draft, vessel), layers: [...layers.values()], ...(mask ? { mask } : {}) };
}

/** How far the outlines of film may stray where pieces are drawn on the wall: a screen's dot is larger, mm. */
const coarsest = 0.03;

/** A vessel in several pieces: no flat drawing shows them all, so they are drawn on the wall unrolled about its axis. */
function vesselViewOfPieces(draft: Laid, { sheets, vessel }: RolledPieces): VesselView {
  const { radius, reference } = vessel.wall;
  const unrolled = { ...vessel, wall: flatWall(radius, 0, reference), origin: { x: 0, y: 0 } };
  const ring = (points: readonly Point[]): string =>
    picturePath(
      points.map(({ x, y }) => ({ x: x - Math.PI * radius, y: reference - y })),
      true,
    );
  return {
    ...bareView(draft, unrolled),
    layers: finishedFilm(sheets, unrolled, coarsest).map(({ layer, colour, pieces }) => ({
      name: layer,
      colour,
      pieces: pieces.map((rings) => rings.map(ring).join('')).filter((d) => d !== ''),
    })),
  };
}

/** Several pieces on their vessel, from four sides and as a solid. */
export const seenInPieces = (draft: Laid, pieces: RolledPieces, words: DrawWords) => ({
  svg: () => rolledSheets(pieces.sheets, pieces.vessel, words),
  solid: () => vesselViewOfPieces(draft, pieces),
});

/** What a view needs to know of a job that is laid. */
interface Laid {
  readonly plan: Pick<Ground, 'lengths' | 'flatBands'> & { readonly band: Span };
  readonly job: Pick<Job, 'coats' | 'film'>;
}

function bareView({ plan, job }: Laid, vessel: RolledVessel): Omit<VesselView, 'layers'> {
  const { toGrown, toBare } = plan.lengths;
  const flat = longestBand(plan.flatBands) ?? plan.band;
  const length = vessel.profile.at(-1)?.along ?? 0;
  const coated = job.coats
    .filter(({ over }) => !over)
    .map(({ covers }) => covers ?? flat)
    .map(({ from, to }) => ({ from: Math.max(0, toGrown(from)), to: Math.min(length, toGrown(to)) }));
  return {
    ...rolledSolid(vessel, coated),
    use: job.film.use,
    ...(vessel.standsOnLip ? { standsOnLip: true } : {}),
    rings: vessel.profile.map(({ along, radius, height }) => ({ along: toBare(along), radius, height })),
  };
}

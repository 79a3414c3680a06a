// The proof of a job in gores: what the job and its blank ask for, put before the files as they were written.
import type { Blank } from '../../blank/blank.ts';
import { thicknessUnder } from '../../blank/coats.ts';
import type { Band } from '../../blank/flat-band.ts';
import { flatBandsOfWall, roundLimits, wallOf } from '../../blank/wall.ts';
import { Refused, stop } from '../../finding.ts';
import type { LayerAsMade } from '../../prove/asked.ts';
import type { AskedGores } from '../../prove/asked-gores.ts';
import { proofOfGores } from '../../prove/gore-proof.ts';
import type { Proof, SheetText } from '../../prove/proof.ts';
import { coverOf } from '../../prove/written/centre.ts';
import type { PieceText } from '../../prove/written/delivered-file.ts';
import type { GoreSurface } from '../../prove/written/rolled-gore.ts';
import { askedCutterOf } from '../blade/asked-cutter.ts';
import { coatedBand, coatsOnWall } from '../plan/coats-on-wall.ts';
import { bandOnMoved, movedWall } from '../plan/moved-wall.ts';
import { filmGives } from '../plan/plan-findings.ts';
import type { Job } from '../typed/resolved-job.ts';
import type { GoresDraft } from './gores.ts';

/** Half the width over which a smooth wall's bend is taken, mm. */
const bendReach = 0.5;

/** Excess of a gore's edge over its middle, K w²/8; of straight levels (s/r)² w²/8. */
function strainOf({ places, levels }: Omit<GoreSurface, 'count'>): AskedGores['strainAt'] {
  const near = (on: number) => {
    let [low, high] = [0, places.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((places[middle]?.on ?? 0) <= on) low = middle;
      else high = middle;
    }
    return places[low];
  };
  return (on, width) => {
    const here = near(on);
    if (!here) return Number.NaN;
    if (levels === 'straight') return ((here.slope / here.radius) ** 2 * width ** 2) / 8;
    const [low, high] = [near(on - bendReach), near(on + bendReach)];
    if (!low || !high || low.on === high.on) return 0;
    const bend = Math.abs((low.slope - high.slope) / (high.on - low.on)) / here.radius;
    return (bend * width ** 2) / 8;
  };
}

/** What a job in gores asks for on its blank. @throws Refused where the blank is no wall, or the gores are not counted. */
export function askedGoresOf(
  { job, blank }: { readonly job: Job; readonly blank: Blank },
  layers: readonly LayerAsMade[],
): AskedGores {
  const { wall } = wallOf(blank);
  const { film, seam, trim, sheet, gores: count } = job;
  if (count === undefined)
    throw new Refused([
      stop('no-gores', { file: 'job.json', key: 'gores' }, 'is not given; make the job again'),
    ]);
  const band: Band = job.band ?? roundLimits(wall, blank);
  const flatBands = flatBandsOfWall(wall, blank);
  const { coats } = coatsOnWall(wall, job.coats, {
    spread: coatedBand(flatBands, band),
    band,
    film: film.thickness,
    file: 'job.json',
  });
  const moved = movedWall(wall, thicknessUnder(coats) + film.thickness / 2);
  return {
    surface: { ...moved.surface, count },
    band: bandOnMoved(moved, band),
    trim,
    overlap: seam.overlap,
    film: { stretch: filmGives(film), gather: film.gather },
    cutter: askedCutterOf(job.cutter),
    strainAt: strainOf(moved.surface),
    ...(sheet
      ? { sheet: { ...sheet, up: sheet.up ?? Number.POSITIVE_INFINITY, batch: job.batch ?? 1 } }
      : {}),
    layers,
  };
}

/** The layers of a draft as they were drawn, gore by gore; places are told from the foot end of a gore's middle line. */
export const goreLayersAsMade = ({ plan: { options, onSheet }, art }: GoresDraft): readonly LayerAsMade[] => {
  const foot = { x: 0, y: options.band.from - onSheet.from };
  return (art?.pattern.layers ?? []).flatMap(({ name, gores }) =>
    gores.map((shapes, i) => {
      const { area, middle } = coverOf(
        shapes.map(({ contours }) => contours),
        foot,
      );
      return { layer: name, piece: i + 1, area, middle: { right: middle.x, up: foot.y - middle.y } };
    }),
  );
};

/** The proof of a draft by its files, as read back from where they were written. */
export const proofOfGoresDraft = (
  { job }: GoresDraft,
  blank: Blank,
  layers: readonly LayerAsMade[],
  written: PieceText,
  sheets: readonly SheetText[] = [],
): Proof => proofOfGores(askedGoresOf({ job, blank }, layers), written, sheets);

// The proof of a job: what the job and its blank ask for, put before the files as they were written.
import type { Blank } from '../blank/blank.ts';
import { thicknessUnder } from '../blank/coats.ts';
import type { Band } from '../blank/flat-band.ts';
import { roomBeside } from '../blank/handle-room.ts';
import {
  closePlaces,
  flatBandsOfWall,
  longestBand,
  type Wall,
  wallLength,
  wallOf,
  wallWithin,
} from '../blank/wall.ts';
import { Refused, stop } from '../finding.ts';
import { subtract } from '../geometry/point.ts';
import { equalParts } from '../pattern/closing.ts';
import type { Asked, AskedWall, LayerAsMade } from '../prove/asked.ts';
import { coverOf } from '../prove/centre.ts';
import type { PieceText } from '../prove/delivered-file.ts';
import { type Proof, proofOf, type SheetText } from '../prove/proof.ts';
import { edgePoint } from '../unroll/template.ts';
import { askedCutterOf } from './asked-cutter.ts';
import { coatsOnWall } from './coats-on-wall.ts';
import type { Draft } from './draft.ts';
import { shareCut } from './film-giving.ts';
import { clearedAround, motifsAsMade } from './motifs-as-made.ts';
import { filmGives } from './plan-findings.ts';
import type { Job } from './resolved-job.ts';
import { beforeSeam } from './seam.ts';

export type { LayerAsMade } from '../prove/asked.ts';
export type { Proof } from '../prove/proof.ts';

/** What is known of the pattern and the motifs; nothing where there are none. */
export type KnownPattern = Pick<Asked, 'equalParts' | 'layers' | 'motifs' | 'cleared'>;

/** What the proof needs to know besides the files. */
export interface ProofInput {
  readonly job: Job;
  readonly blank: Blank;
  readonly pattern?: KnownPattern;
}

/** The middle of the film on a wall, `around` of its girth: the coats and half the film lie along the wall's normal. */
function askedWall(wall: Wall, off: number, band: Band, around = 1): AskedWall {
  const radiusAt = (along: number, from = Number.NEGATIVE_INFINITY): number => {
    const { radius, lean } = wallWithin(wall, along, { from });
    return around * (radius + off * Math.cos(lean));
  };
  if (wall.kind === 'straight')
    return { kind: 'straight', radius: radiusAt(0), sine: around * Math.sin(wall.straight.halfAngle) };
  // At a corner film has two radii, one where the stretch below ends and one where that above begins.
  const places = closePlaces(wall, band).flatMap((along) =>
    [radiusAt(along), radiusAt(along, along)].map((radius) => ({ along, radius })),
  );
  return { kind: 'bent', places };
}

/** A band, and the places of motifs that lie outside it. */
function withMotifs({ from, to }: Band, { motifs = [] }: KnownPattern): Band {
  const alongs = motifs.map(({ along }) => along);
  return {
    from: Math.min(from, ...alongs.map((at) => at - 1)),
    to: Math.max(to, ...alongs.map((at) => at + 1)),
  };
}

/** What a job asks for on its blank. @throws Refused where the blank is no wall, or the job has no band on it. */
export function askedOf({ job, blank, pattern = {} }: ProofInput): Asked {
  const { wall } = wallOf(blank);
  const flatBands = flatBandsOfWall(wall, blank);
  const band = job.band ?? longestBand(flatBands);
  if (!band)
    throw new Refused([stop('no-band', { key: 'band' }, 'is not given, and this wall has no flat band')]);
  const { film, seam, trim, sheet, panels, artwork } = job;
  const flat = longestBand(flatBands) ?? { from: 0, to: wallLength(wall) };
  const { coats } = coatsOnWall(wall, job.coats, { flat, band, film: film.thickness, file: 'job.json' });
  const middle = thicknessUnder(coats) + film.thickness / 2;
  return {
    // Film that gives is cut as for a wall with so much less girth.
    wall: askedWall(wall, middle, withMotifs(band, pattern), shareCut(film)),
    band,
    trim,
    overlap: seam.overlap,
    before: beforeSeam(seam),
    ...(seam.style === 'winding' ? { winds: true } : {}),
    ...(panels && typeof panels.joints !== 'string' && panels.joints.length > 0
      ? { panels: { joints: panels.joints, overlap: panels.overlap } }
      : {}),
    film: { stretch: filmGives(film), gather: film.gather },
    cutter: askedCutterOf(job.cutter),
    flatBands,
    ...(blank.handle ? { clear: roomBeside(blank.handle) } : {}),
    ...(seam.strip === undefined
      ? {}
      : { strip: { width: seam.strip, wall: askedWall(wall, middle + film.thickness, band) } }),
    ...(sheet
      ? { sheet: { ...sheet, up: sheet.up ?? Number.POSITIVE_INFINITY, batch: job.batch ?? 1 } }
      : {}),
    ...(artwork?.around === undefined ? {} : { around: artwork.around }),
    ...pattern,
  };
}

/** The layers of drafts as they were drawn, from the foot up. */
export const layersAsMade = (drafts: readonly Draft[]): readonly LayerAsMade[] =>
  drafts.flatMap(({ plan: { template }, layers }, piece) => {
    const { wall, seam, band } = template;
    const foot = edgePoint(wall, seam.start, band.from);
    const line = subtract(edgePoint(wall, seam.start, band.to), foot);
    const length = Math.hypot(line.x, line.y);
    const up = { x: line.x / length, y: line.y / length };
    return layers.map(({ name, shapes }) => {
      const { area, middle } = coverOf(
        shapes.map(({ contours }) => contours),
        foot,
      );
      const from = subtract(middle, foot);
      return {
        layer: name,
        piece: piece + 1,
        area,
        middle: { right: from.y * up.x - from.x * up.y, up: from.x * up.x + from.y * up.y },
      };
    });
  });

/** Whether a part's files are those of a cover strip: `strip`, or `strip-1`, `strip-2` of joints from the foot up. */
export const isStrip = ({ stem }: Pick<PieceText, 'stem'>): boolean => /^strip(?:-\d+)?$/.test(stem);

/** The proof of drafts by their files, and those of their parts, as read back from where they were written. */
export function proofOfDrafts(
  drafts: readonly Draft[],
  blank: Blank,
  written: readonly PieceText[],
  parts: readonly PieceText[] = [],
  sheets: readonly SheetText[] = [],
): Proof {
  const [first] = drafts;
  if (!first) throw new Error('a job has at least one piece');
  const closing = first.pattern?.plan.closing;
  const pattern = {
    ...(closing ? { equalParts: equalParts(closing) } : {}),
    layers: layersAsMade(drafts),
    motifs: motifsAsMade(drafts),
    cleared: clearedAround(drafts),
  };
  return proofOf(askedOf({ job: first.job, blank, pattern }), {
    wraps: written,
    strips: parts.filter(isStrip),
    others: parts.filter((part) => !isStrip(part)),
    sheets,
  });
}

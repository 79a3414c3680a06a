// The proof of a job: what the job and its blank ask for, put before the files as they were written.
import type { Blank } from '../../blank/blank.ts';
import { thicknessUnder } from '../../blank/coats.ts';
import type { Band } from '../../blank/flat-band.ts';
import { roomBeside } from '../../blank/handle-room.ts';
import {
  flatBandsOfWall,
  longestBand,
  type Wall,
  wallAt,
  wallLength,
  wallOf,
  wallWithin,
} from '../../blank/wall.ts';
import { Refused, stop } from '../../finding.ts';
import { subtract } from '../../geometry/point.ts';
import { equalParts } from '../../pattern/lattice/closing.ts';
import type { Asked, AskedCollar, AskedMask, AskedWall, LayerAsMade } from '../../prove/asked.ts';
import { type Proof, proofOf, type SheetText } from '../../prove/proof.ts';
import { coverOf } from '../../prove/written/centre.ts';
import type { PieceText } from '../../prove/written/delivered-file.ts';
import { edgePoint } from '../../unroll/template.ts';
import { askedCutterOf } from '../blade/asked-cutter.ts';
import { uprightTurns } from '../closing/border-strips.ts';
import type { Draft } from '../draft.ts';
import { clearedAround, motifsAsMade } from '../parts/motifs-as-made.ts';
import { coatedBand, coatsOnWall } from '../plan/coats-on-wall.ts';
import { movedWall, placeOnMoved, placeUnderMoved } from '../plan/moved-wall.ts';
import { filmGives } from '../plan/plan-findings.ts';
import { beforeSeam } from '../plan/seam.ts';
import { shareCut } from '../typed/film-giving.ts';
import { decoratesApart } from '../typed/placed-motif.ts';
import { type Collars, collarsOn } from '../typed/resolved-collars.ts';
import type { Job } from '../typed/resolved-job.ts';
import type { Mask } from '../typed/resolved-mask.ts';

export type { LayerAsMade } from '../../prove/asked.ts';
export type { Proof } from '../../prove/proof.ts';

/** What is known of the pattern and the motifs, heights in mm on the sheet; nothing where there are none. */
export type KnownPattern = Pick<Asked, 'equalParts' | 'layers' | 'motifs' | 'cleared'>;

/** The same as a report tells it: heights up the bare wall. */
const onSheet = ({ motifs = [], cleared = [], ...rest }: KnownPattern, { on }: Surface): KnownPattern => ({
  ...rest,
  motifs: motifs.map(({ along, reach, ...motif }) => ({
    ...motif,
    along: on(along),
    ...(reach ? { reach: { from: on(reach.from), to: on(reach.to) } } : {}),
  })),
  cleared: cleared.map((area) => ({ ...area, from: on(area.from), to: on(area.to) })),
});

/** What the proof needs to know besides the files. */
export interface ProofInput {
  readonly job: Job;
  readonly blank: Blank;
  readonly pattern?: KnownPattern;
  /** What a report tells of it instead. */
  readonly told?: KnownPattern;
}

/** Collars: paper on the coats, on the cone that touches the wall along the level line. */
function askedCollars(collars: Collars, wall: Wall, coats: number, band: Band): readonly AskedCollar[] {
  const { at, width, paper, overlap } = collarsOn(collars, band);
  const length = wallLength(wall);
  return [...at]
    .sort((a, b) => a.along - b.along)
    .map(({ along, edge }) => {
      const isLower = edge === 'lower';
      const strip = isLower
        ? { from: along, to: Math.min(length, along + width) }
        : { from: Math.max(0, along - width), to: along };
      const { radius, lean } = wallWithin(wall, along, strip);
      const sine = Math.sin(lean);
      const middle = radius + (coats + paper / 2) * Math.cos(lean);
      return {
        ...strip,
        along,
        tab: overlap,
        wall: { kind: 'straight', radius: middle - along * sine, sine },
      };
    });
}

/** The middle of the film on a wall, and how the bare wall's heights are told on it. */
interface Surface {
  readonly wall: AskedWall;
  readonly on: (along: number) => number;
  readonly along: (on: number) => number;
}

const same = (height: number): number => height;

/** Motifs may stand a little past the foot and the lip corner, mm: there the wall goes straight on. */
const pastEnds = 5;

/** `around` of its girth: the coats and half the film lie along the wall's normal. */
function surfaceOf(wall: Wall, off: number, around = 1): Surface {
  if (wall.kind === 'straight') {
    const { radius, lean } = wallAt(wall, 0);
    return {
      wall: {
        kind: 'straight',
        radius: around * (radius + off * Math.cos(lean)),
        sine: around * Math.sin(lean),
      },
      on: same,
      along: same,
    };
  }
  const moved = movedWall(wall, off);
  const places = moved.surface.places.map(({ on, radius }) => ({ along: on, radius: around * radius }));
  const ends = [places[0], places.at(-1)].flatMap((end, i) => {
    const slope = moved.surface.places.at(-i)?.slope ?? 0;
    const by = i === 0 ? -pastEnds : pastEnds;
    return end ? [{ along: end.along + by, radius: end.radius + around * by * slope }] : [];
  });
  const [below, above] = ends;
  return {
    wall: { kind: 'bent', places: [...(below ? [below] : []), ...places, ...(above ? [above] : [])] },
    on: (along) => placeOnMoved(moved, along),
    along: (on) => placeUnderMoved(moved, on),
  };
}

const askedMask = ({ covers, standOff, window }: Mask): AskedMask => ({
  covers,
  standOff,
  ...(window ? { window: window.grow } : {}),
});

/** What a job asks for on its blank. @throws Refused where the blank is no wall, or the job has no band on it. */
export function askedOf({ job, blank, pattern = {}, told }: ProofInput): Asked {
  const { wall } = wallOf(blank);
  const flatBands = flatBandsOfWall(wall, blank);
  const band = job.band ?? longestBand(flatBands);
  if (!band)
    throw new Refused([stop('no-band', { key: 'band' }, 'is not given, and this wall has no flat band')]);
  const { film, seam, trim, sheet, panels, artwork, collars } = job;
  const { coats } = coatsOnWall(wall, job.coats, {
    spread: coatedBand(flatBands, band),
    band,
    film: film.thickness,
    file: 'job.json',
  });
  const middle = thicknessUnder(coats) + film.thickness / 2;
  // Film that gives is cut as for a wall with so much less girth.
  const surface = surfaceOf(wall, middle, shareCut(film));
  const onSurface = ({ on }: Surface, { from, to }: Band): Band => ({ from: on(from), to: on(to) });
  const askedStrip = (width: number) => {
    const above = surfaceOf(wall, middle + film.thickness);
    const fromFilm = (on: number) => above.on(surface.along(on));
    return { width, wall: above.wall, band: onSurface(above, band), fromFilm };
  };
  return {
    wall: surface.wall,
    band: onSurface(surface, band),
    trim,
    overlap: seam.overlap,
    before: beforeSeam(seam),
    ...(seam.style === 'winding' ? { winds: true } : {}),
    ...(panels && typeof panels.joints !== 'string' && panels.joints.length > 0
      ? { panels: { joints: panels.joints, overlap: panels.overlap } }
      : {}),
    ...(panels?.levels && panels.levels.length > 0
      ? { levels: { at: panels.levels.map(surface.on), overlap: panels.overlap } }
      : {}),
    film: { stretch: filmGives(film), gather: film.gather },
    cutter: askedCutterOf(job.cutter),
    flatBands: flatBands.map((flatBand) => onSurface(surface, flatBand)),
    ...(blank.handle ? { clear: roomBeside(blank.handle) } : {}),
    ...(seam.strip === undefined ? {} : { strip: askedStrip(seam.strip) }),
    ...(collars ? { collars: askedCollars(collars, wall, thicknessUnder(coats), band) } : {}),
    ...coversAsked({ job, blank }, askedStrip, surface),
    ...(sheet
      ? { sheet: { ...sheet, up: sheet.up ?? Number.POSITIVE_INFINITY, batch: job.batch ?? 1 } }
      : {}),
    ...(artwork?.around === undefined ? {} : { around: artwork.around }),
    ...(told ? onSheet(told, surface) : pattern),
    ...(job.mask ? { mask: askedMask(job.mask) } : {}),
    ...(job.stencil ? { holds: true } : {}),
    ...(decoratesApart(job) && !job.mask ? { isPaper: true } : {}),
    ...(job.relief ? { relief: { clear: job.relief.clear, use: film.use } } : {}),
  };
}

/** What a job asks for of cover strips on borders of its pattern. */
function coversAsked(
  { job, blank }: Pick<ProofInput, 'job' | 'blank'>,
  askedStrip: (width: number) => NonNullable<Asked['strip']>,
  { on }: Surface,
): Pick<Asked, 'covers'> {
  const { strips } = job.artwork ?? {};
  if (!strips) return {};
  const { width, turns = [], along = [] } = strips;
  const upright = uprightTurns(turns, { job, blank }).length;
  return { covers: { ...askedStrip(width), upright, along: along.map(on) } };
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
const isStrip = ({ stem }: Pick<PieceText, 'stem'>): boolean => /^strip(?:-\d+)?$/.test(stem);

/** Whether a part's files are those of a collar of paper. */
const isCollar = ({ stem }: Pick<PieceText, 'stem'>): boolean => /^collar-\d+$/.test(stem);

/** Whether a part's files are those of a cover strip on a border of the pattern. */
const isCover = ({ stem }: Pick<PieceText, 'stem'>): boolean => /^cover-\d+$/.test(stem);

/**
 * The proof of drafts by their files, and those of their parts, as read back from where they were written. `layers`: as `layersAsMade`
 * gives them, where they are known.
 */
export function proofOfDrafts(
  drafts: readonly Draft[],
  blank: Blank,
  written: readonly PieceText[],
  parts: readonly PieceText[] = [],
  sheets: readonly SheetText[] = [],
  layers = layersAsMade(drafts),
): Proof {
  const [first] = drafts;
  if (!first) throw new Error('a job has at least one piece');
  const closing = first.pattern?.plan.closing;
  const pattern = {
    ...(closing ? { equalParts: equalParts(closing) } : {}),
    layers,
    motifs: motifsAsMade(drafts),
    cleared: clearedAround(drafts),
  };
  return proofOf(askedOf({ job: first.job, blank, pattern }), {
    wraps: written,
    strips: parts.filter(isStrip),
    collars: parts.filter(isCollar),
    covers: parts.filter(isCover),
    others: parts.filter((part) => !isStrip(part) && !isCollar(part) && !isCover(part)),
    sheets,
  });
}

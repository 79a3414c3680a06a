// The plan of a wrap: the blank's wall, the band, the sheet's own wall, the template; and all that stands against it.
import type { Blank } from '../../blank/blank.ts';
import { thicknessUnder } from '../../blank/coats.ts';
import type { Band } from '../../blank/flat-band.ts';
import { roomBeside } from '../../blank/handle-room.ts';
import {
  closePlaces,
  flatBandsOfWall,
  longestBand,
  meanLean,
  type Wall,
  wallGirthAt,
  wallLength,
  wallOf,
} from '../../blank/wall.ts';
import { type Finding, Refused, refuseIfAny, stop } from '../../finding.ts';
import { precision } from '../../geometry/tolerance.ts';
import { degrees } from '../../lengths/angle.ts';
import { inMm } from '../../lengths/length.ts';
import { radiusAt, sweep } from '../../unroll/flat-wall.ts';
import { type SheetBuild, type SheetLengths, sheetOnWall, sheetSurface } from '../../unroll/sheet-wall.ts';
import { type Template, templateOf, turnOfEdge } from '../../unroll/template.ts';
import { shareCut } from '../typed/film-giving.ts';
import type { Job } from '../typed/resolved-job.ts';
import { called, type TypedIn, toldAt, typedAt } from '../typed/typed-at.ts';
import { type CoatsOnWall, coatedBand, coatFindings, coatsOnWall } from './coats-on-wall.ts';
import { type Measures, measuresOf } from './measures.ts';
import { offFlat, overlapFindings, planFindings, strainFindings } from './plan-findings.ts';
import { beforeSeam } from './seam.ts';

/** What the plan needs of a job; `file` is named in findings. */
export interface PlanInput {
  readonly job: Pick<Job, 'band' | 'coats' | 'film' | 'seam' | 'trim' | 'shown'>;
  readonly jobFile: TypedIn;
  readonly blank: Blank;
  readonly blankFile: TypedIn;
  /** Of one of several pieces: the band of all of them together, mm along. */
  readonly whole?: Band;
}

export interface Plan {
  readonly wall: Wall;
  /** Bands on which film lies flat, from the foot up. */
  readonly flatBands: readonly Band[];
  /** The finished band, mm along the bare wall. */
  readonly band: Band;
  /** Heights on it are the sheet's own, mm on. */
  readonly template: Template;
  /** From the bare wall's lengths to the sheet's, and back: under coats a wall that bends is longer or shorter. */
  readonly lengths: SheetLengths;
  readonly build: SheetBuild;
  /** Strain of the film around a wall that bends, at close places up the band, mm along; empty on a straight wall. */
  readonly strain: readonly { readonly along: number; readonly strain: number }[];
  readonly coats: CoatsOnWall;
  /** How well the blank is known, for a wrap of this band. */
  readonly measures: Measures;
  readonly findings: readonly Finding[];
}

/** How far art that leaves the piece goes on into the waste before it is closed, mm: a blade's overshoot and then some. */
export const runOff = 1;

/** Widest sector laid flat as one piece, degrees: past it the two ends come too close to cut and carry. */
export const widestSweepDeg = 350;

/** What a plan stands on, however its band is cut. */
export interface Ground
  extends Pick<Plan, 'wall' | 'flatBands' | 'band' | 'lengths' | 'build' | 'coats' | 'measures'> {
  /** What the wall's readings say. */
  readonly wallSays: readonly Finding[];
  /** What the job asks of the maker on this wall and band. */
  readonly jobSays: readonly Finding[];
}

/** The ground of a band. @throws Refused where the band is not on the wall. */
export function planGround(
  input: PlanInput,
  bandOf: (wall: Wall, flatBands: readonly Band[]) => Band,
): Ground {
  const { job, blank, blankFile } = input;
  const { wall, findings } = wallOf(blank);
  const flatBands = flatBandsOfWall(wall, blank);
  const band = bandOf(wall, flatBands);
  refuseIfAny(bandStops(input, wall, band));
  const { whole = band } = input;
  const coats = planCoats(input, wall, flatBands, whole);
  const under = thicknessUnder(coats.coats);
  const { thickness: film, gather } = job.film;
  const build = { coats: under, film, gather, around: shareCut(job.film) };
  const measures = measuresOf(blank, wall, whole, job.seam.hold);
  const wallSays = [...toldAt(findings, blankFile), ...offFlat(input, wall, band)];
  const jobSays = [...planFindings(input), ...measureFindings(input, wall, whole, coats, measures)];
  const { toGrown, toBare } = sheetSurface(wall, build);
  const lengths = { toGrown, toBare };
  return { wall, flatBands, band, lengths, build, coats, measures, wallSays, jobSays };
}

/** @throws Refused with everything that keeps the band from being laid flat. */
export function planWrap(input: PlanInput): Plan {
  const { job, blank } = input;
  const ground = planGround(input, (wall, flatBands) => {
    const band = job.band ?? longestBand(flatBands);
    if (!band) throw new Refused([noFlatBand(input, wall)]);
    return band;
  });
  const { wall, flatBands, band, lengths, build, coats, measures, wallSays, jobSays } = ground;
  const { flat, strain, band: onSheet } = sheetOnWall(wall, build, band);
  const clear = blank.handle && roomBeside(blank.handle);
  const template = templateOf(flat, {
    band: onSheet,
    trim: job.trim,
    overlap: job.seam.overlap,
    before: beforeSeam(job.seam),
    ...(clear === undefined ? {} : { clear }),
  });
  refuseIfAny(templateStops(input, template, wall.kind === 'straight' ? undefined : band));
  const bends = strainFindings(input, wall, build, flatBands, band, strain);
  const findings = [...wallSays, ...bends, ...jobSays];
  return { wall, flatBands, band, template, lengths, build, strain, coats, measures, findings };
}

function planCoats(
  { job, jobFile }: PlanInput,
  wall: Wall,
  flatBands: readonly Band[],
  band: Band,
): CoatsOnWall {
  const spread = coatedBand(flatBands, band);
  return coatsOnWall(wall, job.coats, { spread, band, film: job.film.thickness, file: jobFile });
}

/** Heights at which a wall that bends is looked at for where it is narrowest. */
const waists = 32;

const narrowestGirth = (wall: Wall, { from, to }: Band): number =>
  Math.min(
    ...Array.from({ length: waists + 1 }, (_, i) => wallGirthAt(wall, from + ((to - from) * i) / waists)),
  );

/** What the coats and the readings leave open on this wrap. */
function measureFindings(
  { job, jobFile, blank }: PlanInput,
  wall: Wall,
  band: Band,
  coats: CoatsOnWall,
  measures: Measures,
): readonly Finding[] {
  const { reading } = blank;
  return [
    ...coatFindings(job.coats, coats, { lean: meanLean(wall), reading, file: jobFile }),
    ...overlapFindings(measures, job, jobFile, narrowestGirth(wall, band)),
  ];
}

const noFlatBand = ({ jobFile, blankFile }: PlanInput, wall: Wall): Finding =>
  stop(
    'no-flat-band',
    typedAt(blankFile, 'stations'),
    `this wall of ${inMm(wallLength(wall))} bends everywhere, so a straightedge finds no flat band on it; give ${called(jobFile, 'band')}, and a film that stretches`,
  );

/** A band lower than this is finer than a knife can part and a hand can lay, mm. Ours. */
const leastBand = 1;

function bandStops({ job, jobFile }: PlanInput, wall: Wall, band: Band): Finding[] {
  const stops: Finding[] = [];
  const length = wallLength(wall);
  const top = inMm(length);
  if (band.to > length + precision)
    stops.push(
      stop(
        'band-outside',
        typedAt(jobFile, 'band.to'),
        `${inMm(band.to)} is past the lip; the wall is ${top} along, so give an end up to that`,
      ),
    );
  if (band.from >= length)
    stops.push(
      stop(
        'band-outside',
        typedAt(jobFile, 'band.from'),
        `${inMm(band.from)} is past the lip; the wall is ${top} along`,
      ),
    );
  if (band.to > band.from && band.to - band.from < leastBand)
    stops.push(
      stop(
        'band-too-low',
        typedAt(jobFile, 'band'),
        `is ${inMm(band.to - band.from)} high, which no film can be cut and laid to; give one of ${inMm(leastBand)} or more`,
      ),
    );
  const places = closePlaces(wall, { from: 0, to: length });
  const least = Math.min(...places.map((along) => wallGirthAt(wall, along)));
  if (job.seam.overlap >= least)
    stops.push(
      stop(
        'overlap-too-wide',
        typedAt(jobFile, 'seam.overlap'),
        `${inMm(job.seam.overlap)} is more than the least girth, ${inMm(least)}; 4 to 10 mm is usual`,
      ),
    );
  return stops;
}

/** `stretch`: of a wall that bends, which of it the template is for. */
function templateStops(
  { job, jobFile, blankFile }: PlanInput,
  template: Template,
  stretch: Band | undefined,
): Finding[] {
  const { wall, piece, left, right } = template;
  const ends = [
    { along: piece.from - runOff, key: 'trim.foot', size: job.trim.foot },
    { along: piece.to + runOff, key: 'trim.lip', size: job.trim.lip },
  ];
  const pointed = ends.filter(({ along }) => radiusAt(wall, along) <= runOff);
  if (pointed.length > 0)
    return pointed.map(({ key, size }) =>
      stop(
        'past-the-point',
        typedAt(jobFile, key),
        size > 0
          ? `${inMm(size)} reaches past the point where this wall closes; give less, or a band further from it`
          : `even without a trim the band ends too near the point where this wall closes: film is cut ${inMm(runOff)} past it; give a band further from it`,
      ),
    );
  const sweepDeg = Math.abs(degrees(sweep(wall)));
  if (sweepDeg > widestSweepDeg)
    return [
      stop(
        'sweep-too-wide',
        blankFile === undefined ? {} : { file: blankFile },
        `${stretch ? `from ${inMm(stretch.from)} to ${inMm(stretch.to)} along ` : ''}this wall is so flat a cone that it lies down as ${sweepDeg.toFixed(1)} degrees of a ring; one piece can be up to ${widestSweepDeg}${stretch ? ', so leave that stretch bare: make a job of each side of it, with a "band" of its own' : ''}`,
      ),
    ];
  const narrow = radiusAt(wall, piece.from) < radiusAt(wall, piece.to) ? piece.from : piece.to;
  const turns =
    turnOfEdge(wall, { ...right, offset: right.offset + runOff }, narrow) -
    turnOfEdge(wall, { ...left, offset: left.offset - runOff }, narrow);
  if (Math.abs(sweep(wall)) * turns >= 2 * Math.PI)
    return [
      stop(
        'overlaps-itself',
        typedAt(jobFile, 'seam.overlap'),
        `with an overlap of ${inMm(job.seam.overlap)} the flat ring meets itself; give less overlap`,
      ),
    ];
  return [];
}

// The plan of a wrap: the blank's wall, the band, the sheet's own wall, the template; and all that stands against it.
import type { Blank } from '../blank/blank.ts';
import { type Band, flatBand } from '../blank/flat-band.ts';
import { bareGirthAt, fitStraightWall, type StraightWall } from '../blank/straight-wall.ts';
import { wallFindings } from '../blank/wall-findings.ts';
import { type Finding, look, note, Refused, stop } from '../finding.ts';
import { precision } from '../geometry/tolerance.ts';
import { formatLength } from '../lengths/length.ts';
import { radiusAt, sweep } from '../unroll/flat-wall.ts';
import { sheetWall } from '../unroll/sheet-wall.ts';
import { type Template, templateOf, turnOfEdge } from '../unroll/template.ts';
import type { Job } from './resolved-job.ts';

/** What the plan needs of a job; `file` is named in findings. */
export interface PlanInput {
  readonly job: Pick<Job, 'band' | 'coats' | 'film' | 'seam' | 'trim'>;
  readonly jobFile: string;
  readonly blank: Blank;
  readonly blankFile: string;
}

export interface Plan {
  readonly wall: StraightWall;
  readonly flat: Band;
  readonly template: Template;
  readonly findings: readonly Finding[];
}

/** How far art that leaves the piece goes on into the waste before it is closed, mm: a blade's overshoot and then some. */
export const runOff = 1;

/** Widest sector laid flat as one piece, degrees: past it the two ends come too close to cut and carry. */
const widestSweepDeg = 350;

const mm = (value: number): string => formatLength(value, 'mm');
const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** @throws Refused with everything that keeps the band from being laid flat. */
export function planWrap(input: PlanInput): Plan {
  const { job, blank, blankFile } = input;
  const wall = fitStraightWall(blank);
  const flat = flatBand(wall, blank);
  const band = job.band ?? flat;
  refuseIfAny(bandStops(input, wall, band));
  const under = job.coats.filter(({ over }) => !over).reduce((sum, { thickness }) => sum + thickness, 0);
  const flatWall = sheetWall(wall, { coats: under, film: job.film.thickness }, (band.from + band.to) / 2);
  const clear = blank.handle && blank.handle.spans / 2 + blank.handle.keepOff;
  const template = templateOf(flatWall, {
    band,
    trim: job.trim,
    overlap: job.seam.overlap,
    ...(clear === undefined ? {} : { clear }),
  });
  refuseIfAny(templateStops(input, template));
  const found = wallFindings(blank, wall).map((f) => ({ ...f, where: { file: blankFile, ...f.where } }));
  return { wall, flat, template, findings: [...found, ...planFindings(input, flat, band)] };
}

function refuseIfAny(stops: readonly Finding[]): void {
  if (stops.length > 0) throw new Refused(stops);
}

function bandStops({ job, jobFile }: PlanInput, wall: StraightWall, band: Band): Finding[] {
  const stops: Finding[] = [];
  const top = mm(wall.length);
  if (band.to > wall.length + precision)
    stops.push(
      stop(
        'band-outside',
        { file: jobFile, key: 'band.to' },
        `${mm(band.to)} is past the lip; the wall is ${top} along, so give a "to" up to that`,
      ),
    );
  if (band.from >= wall.length)
    stops.push(
      stop(
        'band-outside',
        { file: jobFile, key: 'band.from' },
        `${mm(band.from)} is past the lip; the wall is ${top} along`,
      ),
    );
  const least = Math.min(bareGirthAt(wall, 0), bareGirthAt(wall, wall.length));
  if (job.seam.overlap >= least)
    stops.push(
      stop(
        'overlap-too-wide',
        { file: jobFile, key: 'seam.overlap' },
        `${mm(job.seam.overlap)} is more than the least girth, ${mm(least)}; 4 to 10 mm is usual`,
      ),
    );
  return stops;
}

function templateStops({ job, jobFile, blankFile }: PlanInput, template: Template): Finding[] {
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
        { file: jobFile, key },
        `${mm(size)} reaches past the point where this wall closes; give less, or a band further from it`,
      ),
    );
  const sweepDeg = Math.abs(degrees(sweep(wall)));
  if (sweepDeg > widestSweepDeg)
    return [
      stop(
        'sweep-too-wide',
        { file: blankFile },
        `this wall is so flat a cone that it lies down as ${sweepDeg.toFixed(1)} degrees of a ring; one piece can be up to ${widestSweepDeg}`,
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
        { file: jobFile, key: 'seam.overlap' },
        `with an overlap of ${mm(job.seam.overlap)} the flat ring meets itself; give less overlap`,
      ),
    ];
  return [];
}

function planFindings({ job, jobFile, blank }: PlanInput, flat: Band, band: Band): Finding[] {
  const found: Finding[] = [];
  const beyond = { foot: flat.from - band.from, lip: band.to - flat.to };
  for (const end of ['foot', 'lip'] as const)
    if (beyond[end] > precision)
      found.push(
        look(
          'off-flat',
          {
            file: jobFile,
            key: end === 'foot' ? 'band.from' : 'band.to',
            along: end === 'foot' ? band.from : band.to,
          },
          `reaches ${mm(beyond[end])} past where the wall is flat, onto the rounded ${end}; film puckers there, so stay within ${mm(flat.from)} to ${mm(flat.to)}`,
        ),
      );
  if (blank.handle && job.seam.overlap > 0)
    found.push(
      note(
        'handle-no-seam',
        { file: jobFile, key: 'seam' },
        'the piece stops on both sides of the handle, so it has no seam and no overlap',
      ),
    );
  if (job.coats.length > 0)
    found.push(
      note(
        'coat-caution',
        { file: jobFile, key: 'coats' },
        "resins and clear coats can irritate and sensitise skin and lungs until cured: gloves that suit the product, fresh air, no flame; follow the product's own safety sheet and local rules, and keep coats off the lip and the inside unless certified for food contact",
      ),
    );
  return found;
}

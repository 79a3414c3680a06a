// What a plan that can be made still asks of the maker's eye.
import type { Blank } from '../../blank/blank.ts';
import type { Band } from '../../blank/flat-band.ts';
import { leastHold } from '../../blank/sure.ts';
import { roundLimits, type Wall } from '../../blank/wall.ts';
import { type Finding, look, note } from '../../finding.ts';
import { precision } from '../../geometry/tolerance.ts';
import { inMm, inMmErrs, measuredErrs, measuredLength } from '../../lengths/length.ts';
import { type SheetBuild, widestOnWall } from '../../unroll/sheet-wall.ts';
import { givingInWords } from '../typed/film-giving.ts';
import type { Film } from '../typed/material.ts';
import type { Job } from '../typed/resolved-job.ts';
import { given, type TypedIn, typedAt } from '../typed/typed-at.ts';
import type { Measures } from './measures.ts';

export interface PlanFindingsInput {
  readonly job: Pick<Job, 'coats' | 'film' | 'seam' | 'shown'>;
  readonly jobFile: TypedIn;
  readonly blank: Blank;
}

const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;

/** A band that reaches onto a declared round. */
export function offFlat({ jobFile, blank }: PlanFindingsInput, wall: Wall, band: Band): Finding[] {
  const limits = roundLimits(wall, blank);
  const beyond = { foot: limits.from - band.from, lip: band.to - limits.to };
  return (['foot', 'lip'] as const)
    .filter((end) => beyond[end] > inMmErrs)
    .map((end) =>
      look(
        'off-flat',
        typedAt(jobFile, end === 'foot' ? 'band.from' : 'band.to', {
          along: end === 'foot' ? band.from : band.to,
        }),
        `reaches ${inMm(beyond[end])} past where the wall is flat, onto the rounded ${end}; film puckers there, so stay within ${inMm(limits.from)} to ${inMm(limits.to)}`,
      ),
    );
}

/** A film said to give nothing still gives this much when it is laid by hand. Common practice, no source. */
const leastStretch = 0.002;

/** The share by which a film may be stretched in laying. */
export const filmGives = ({ stretch }: Pick<Film, 'stretch'>): number => Math.max(stretch, leastStretch);

export const liesWithin = (band: Band, flat: Band): boolean =>
  band.from >= flat.from - precision && band.to <= flat.to + precision;

/** A band over a wall that bends, on which one piece asks more of the film than it gives. */
export function strainFindings(
  { job, jobFile }: PlanFindingsInput,
  wall: Wall,
  build: SheetBuild,
  flatBands: readonly Band[],
  band: Band,
  strain: readonly { readonly along: number; readonly strain: number }[],
): Finding[] {
  if (strain.length === 0 || flatBands.some((flat) => liesWithin(band, flat))) return [];
  const most = strain.reduce((a, b) => (b.strain > a.strain ? b : a));
  const { gather } = job.film;
  const stretch = filmGives(job.film);
  if (most.strain <= stretch + 1e-6) return [];
  const widest = widestOnWall(wall, build, band, { stretch, gather });
  const instead = widest
    ? `on one piece it lies down from ${inMm(widest.from)} to ${inMm(widest.to)}`
    : 'no band of it lies down on one piece';
  const says = `asks ${percent(most.strain)} of stretch at ${inMm(most.along)} along, and this film gives ${percent(stretch)}; ${instead}; or cut it in stacked pieces: ${given(jobFile, 'pieces', 'stacked')}`;
  return [look('needs-stretch', typedAt(jobFile, 'band', { along: most.along }), says)];
}

/** Film thicker than this is more likely another figure, mm: cut films are 0.05 to 0.3. Common practice, no source. */
const thickFilm = 1;

export function planFindings({ job, jobFile, blank }: PlanFindingsInput): Finding[] {
  const found: Finding[] = [];
  if (blank.handle && (job.seam.overlap > 0 || job.seam.strip !== undefined))
    found.push(
      note(
        'handle-no-seam',
        typedAt(jobFile, 'seam'),
        'the piece stops on both sides of the handle, so it has no seam and no overlap',
      ),
    );
  if (job.shown === 'upside-down')
    found.push(
      note(
        'upside-down',
        typedAt(jobFile, 'shown'),
        'artwork and lettering are laid on their heads, so that they read right once the vessel stands on its lip; pictures show it so, and guides as it is cut, foot down',
      ),
    );
  const giving = givingInWords(job.film);
  if (giving !== undefined)
    found.push(
      note(
        'film-gives',
        typedAt(jobFile, 'film.measured'),
        `the wrap: ${giving}; lay it with the same pull as the strip`,
      ),
    );
  if (job.film.thickness > thickFilm)
    found.push(
      look(
        'film-thick',
        typedAt(jobFile, 'film.thickness'),
        `${inMm(job.film.thickness)} is thicker than films that are cut (0.05 to 0.3 mm are usual); is it meant?`,
      ),
    );
  if (job.coats.length > 0)
    found.push(
      note(
        'coat-caution',
        typedAt(jobFile, 'coats'),
        "resin and clear coat can harm skin and lungs until cured: gloves, fresh air, no flame. The product's safety sheet and local rules come first; nothing on lip or inside that is not certified for food contact",
      ),
    );
  return found;
}

/** Past this a trim is more likely another figure in the wrong place, mm: 2 to 5 are usual. Common practice, no source. */
const widestTrim = 25;

/** A trim so wide that it was hardly meant. */
export const trimFindings = ({
  job: { trim },
  jobFile,
}: {
  readonly job: Pick<Job, 'trim'>;
  readonly jobFile: TypedIn;
}): Finding[] =>
  (['lip', 'foot'] as const)
    .filter((end) => trim[end] > widestTrim)
    .map((end) =>
      look(
        'trim-wide',
        typedAt(jobFile, `trim.${end}`),
        `${inMm(trim[end])} is cut away at the ${end} after laying, where 2 to 5 mm are usual; is it meant?`,
      ),
    );

/** Past this share of the girth an overlap is more likely a girth or a width in the wrong place: 4 to 10 mm are usual. Common practice, no source. */
const widestOverlap = 0.25;

/**
 * Whether the seam covers what the readings leave open: `overlap-short` and `strip-narrow` (look), `butt-open` (note); and whether an
 * overlap was hardly meant, `overlap-wide` (look). `girth`: the narrowest of the band, mm.
 */
export function overlapFindings(
  { overlap, seam }: Measures,
  job: Pick<Job, 'seam'>,
  file: TypedIn,
  girth: number,
): Finding[] {
  if (!overlap) return [];
  const { style, overlap: has, strip = 0, hold = leastHold } = job.seam;
  // The line both layers are cut along has half of the overlap either side, so only half of it may be eaten up.
  const parts = style === 'cut-through' ? 2 : 1;
  const [foot, lip, least, advised] = [
    2 * seam.foot,
    2 * seam.lip,
    parts * overlap.coversAt95,
    parts * overlap.recommended,
  ].map((mm) => measuredLength(mm, 'mm'));
  if (style === 'butt')
    return [
      note(
        'butt-open',
        typedAt(file, 'seam'),
        `the readings leave ${foot} of girth open at the foot edge and ${lip} at the lip edge, which a butt seam does not cover; wrap the paper first, or give an overlap`,
      ),
    ];
  if (style === 'strip') return stripFindings(overlap.coversAt95, { strip, hold }, file);
  if (has > widestOverlap * girth) {
    const says = `${inMm(has)} laps over more than a quarter of this wall, which is ${inMm(girth)} around where it is narrowest; 4 to 10 mm are usual: is it meant?`;
    return [look('overlap-wide', typedAt(file, 'seam.overlap'), says)];
  }
  if (has >= parts * overlap.coversAt95 - measuredErrs) return [];
  const says = `${inMm(has)} may not cover: the readings leave ${foot} of girth open at the foot edge and ${lip} at the lip edge (19 times in 20); give ${least} at least, better ${advised}, or read the girth with a tape`;
  return [look('overlap-short', typedAt(file, 'seam.overlap'), says)];
}

/** A cover strip that the readings may leave too narrow to hold on both sides. */
function stripFindings(
  open: number,
  { strip, hold }: { readonly strip: number; readonly hold: number },
  file: TypedIn,
): Finding[] {
  const least = open + 2 * hold;
  if (strip >= least - measuredErrs) return [];
  const says = `${inMm(strip)} may not hold: the readings leave ${measuredLength(open, 'mm')} of the seam open (19 times in 20), and ${inMm(hold)} of it has to hold on either side; give ${measuredLength(least, 'mm')} or more`;
  return [look('strip-narrow', typedAt(file, 'seam.strip'), says)];
}

// Paper templates wrapped around the blank: each corrects the wall that it was made from.
import { type Finding, refuseIfAny, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank } from './blank.ts';
import { type Band, flatBand } from './flat-band.ts';
import { climbUncertainty, type PaperFit } from './paper-miss.ts';
import { bareGirthAt, fitStraightWall, heightAt, type StraightWall } from './straight-wall.ts';

/** A paper fit as typed, mm: what was not said is left out. */
export interface TypedFit {
  readonly foot: number;
  readonly lip: number;
  readonly climb?: number;
  readonly band?: Band;
  readonly paper: number;
  readonly reading: number;
}

/** Ordinary printing paper, 80 g/m². Common practice, no source. */
export const standardPaper = 0.1;

/** A template that misses by more than this part of the girth was made for another vessel. */
const mostMiss = 0.1;

/** How narrow a band can be that tells a taper, mm. */
const leastBand = 5;

/**
 * The fits in order, each with the template it was made from: the wall as known before it, over its flat band unless
 * it names another. A fit that missed by more than its reading replaces every reading before it; one that missed by no
 * more counts as one reading more.
 * @throws Refused, rules `fit-too-far`, `fit-band`, and those of `fitStraightWall` and `flatBand`.
 */
export function resolveFits(blank: Blank, typed: readonly TypedFit[]): readonly PaperFit[] {
  const fits: PaperFit[] = [];
  for (const fit of typed) fits.push(resolvedFit({ ...blank, fits: [...fits] }, fit, fits.length));
  return fits;
}

/** One fit of a template made from this blank. */
function resolvedFit(known: Blank, fit: TypedFit, index: number): PaperFit {
  const wall = fitStraightWall(known);
  const band = fit.band ?? flatBand(wall, known);
  refuseIfAny(fitProblems(fit, band, wall, index));
  const template = { radius: wall.radius, halfAngle: wall.halfAngle };
  const { foot, lip, climb, paper, reading } = fit;
  const made = { foot, lip, ...(climb === undefined ? {} : { climb }), band, paper, reading, template };
  return { ...made, replaces: hasMissed({ ...made, replaces: false }) };
}

function hasMissed(fit: PaperFit): boolean {
  const gaps = Math.max(Math.abs(fit.foot), Math.abs(fit.lip));
  return gaps > fit.reading || Math.abs(fit.climb ?? 0) > climbUncertainty(fit, 0);
}

function fitProblems(fit: TypedFit, band: Band, wall: StraightWall, index: number): readonly Finding[] {
  const key = `fits[${index}]`;
  if (band.to > wall.length + leastBand || band.to - band.from < leastBand)
    return [
      stop(
        'fit-band',
        { key: `${key}.band` },
        `${inMm(band.from)} to ${inMm(band.to)} is no band to fit paper to on a wall of ${inMm(wall.length)}; give one on the wall, ${inMm(leastBand)} wide or more`,
      ),
    ];
  return (['foot', 'lip'] as const).flatMap((end) => {
    const girth = bareGirthAt(wall, end === 'foot' ? band.from : band.to);
    if (Math.abs(fit[end]) <= mostMiss * girth) return [];
    const says = `${inMm(fit[end])} is over a tenth of the girth there, ${inMm(girth)}: that paper was made for another vessel; read the stations again`;
    return [stop('fit-too-far', { key: `${key}.${end}` }, says)];
  });
}

/** A wall's figures that a paper fit moves: girths at its corners and lengths in mm. */
export interface WallFigures {
  readonly footGirth: number;
  readonly lipGirth: number;
  /** Radians. */
  readonly halfAngle: number;
  readonly height: number;
  readonly along: number;
}

const figuresOf = (wall: StraightWall): WallFigures => ({
  footGirth: bareGirthAt(wall, 0),
  lipGirth: bareGirthAt(wall, wall.length),
  halfAngle: wall.halfAngle,
  height: heightAt(wall, wall.length),
  along: wall.length,
});

/** The wall before all fits and after each of them. */
export const fittedSteps = (blank: Blank): readonly WallFigures[] => {
  const fits = blank.fits ?? [];
  return [0, ...fits.map((_, i) => i + 1)].map((count) =>
    figuresOf(fitStraightWall({ ...blank, fits: fits.slice(0, count) })),
  );
};

// Paper templates wrapped around the blank: each corrects the wall that it was made from.
import { type Finding, Refused, refuseIfAny, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Blank } from './blank.ts';
import { coneAlong } from './curved-fit.ts';
import type { Band } from './flat-band.ts';
import { type Cone, climbUncertainty, type PaperFit, paperMiss } from './paper-miss.ts';
import { straightedgeGap } from './straightedge.ts';
import {
  closePlaces,
  flatBandsOfWall,
  longestBand,
  meanLean,
  type Wall,
  wallAt,
  wallGirthAt,
  wallLength,
  wallOf,
} from './wall.ts';

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

/** The cone that paper so thick is cut as for a band of this wall. */
export type PaperCone = (wall: Wall, band: Band, paper: number) => Cone;

/**
 * The fits in order, each with the template it was made from: the wall as known before it, over its flat band unless
 * it names another. A fit that missed by more than its reading replaces every reading before it; one that missed by no
 * more counts as one reading more.
 * @throws Refused, rules `fit-too-far`, `fit-band`, and those of `wallOf` and `flatBandsOfWall`.
 */
export function resolveFits(
  blank: Blank,
  typed: readonly TypedFit[],
  paperCone: PaperCone,
): readonly PaperFit[] {
  const fits: PaperFit[] = [];
  for (const fit of typed) fits.push(resolvedFit({ ...blank, fits: [...fits] }, fit, fits.length, paperCone));
  return fits;
}

/** One fit of a template made from this blank. */
function resolvedFit(known: Blank, fit: TypedFit, index: number, paperCone: PaperCone): PaperFit {
  const { wall } = wallOf(known);
  const band = fit.band ?? longestBand(flatBandsOfWall(wall, known));
  if (!band) throw new Refused([fitNotFlat(`fits[${index}]`, 'this wall bends everywhere')]);
  refuseIfAny(fitProblems(fit, band, wall, known, index));
  const template = paperCone(wall, band, fit.paper);
  const { foot, lip, climb, paper, reading } = fit;
  const made = { foot, lip, ...(climb === undefined ? {} : { climb }), band, paper, reading, template };
  return { ...made, replaces: hasMissed({ ...made, replaces: false }, wall) };
}

/** By more than its reading, beside what paper that cannot give misses by where the wall is only nearly flat. */
function hasMissed(fit: PaperFit, wall: Wall): boolean {
  const due =
    wall.kind === 'straight'
      ? { foot: 0, lip: 0, climb: 0 }
      : paperMiss(fit, coneAlong(wall.curved.profile, fit.band));
  const gaps = Math.max(Math.abs(fit.foot - due.foot), Math.abs(fit.lip - due.lip));
  return gaps > fit.reading || Math.abs((fit.climb ?? due.climb) - due.climb) > climbUncertainty(fit, 0);
}

function fitProblems(
  fit: TypedFit,
  band: Band,
  wall: Wall,
  { flatGap }: Blank,
  index: number,
): readonly Finding[] {
  const key = `fits[${index}]`;
  const length = wallLength(wall);
  if (band.to > length + leastBand || band.to - band.from < leastBand)
    return [
      stop(
        'fit-band',
        { key: `${key}.band` },
        `${inMm(band.from)} to ${inMm(band.to)} is no band to fit paper to on a wall of ${inMm(length)}; give one on the wall, ${inMm(leastBand)} wide or more`,
      ),
    ];
  if (wall.kind === 'curved' && gapOnBand(wall, band) > flatGap + rounding)
    return [fitNotFlat(`${key}.band`, `the wall bends from ${inMm(band.from)} to ${inMm(band.to)}`)];
  return (['foot', 'lip'] as const).flatMap((end) => {
    const girth = wallGirthAt(wall, end === 'foot' ? band.from : band.to);
    if (Math.abs(fit[end]) <= mostMiss * girth) return [];
    const says = `${inMm(fit[end])} is over a tenth of the girth there, ${inMm(girth)}: that paper was made for another vessel; read the stations again`;
    return [stop('fit-too-far', { key: `${key}.${end}` }, says)];
  });
}

/** A band found by the straightedge ends where the gap is reached: places between its close ones may leave a little more. */
const rounding = 1e-3;

const gapOnBand = (wall: Wall, band: Band): number =>
  straightedgeGap(closePlaces(wall, band).map((along) => ({ along, ...wallAt(wall, along) })));

const fitNotFlat = (key: string, why: string): Finding =>
  stop(
    'fit-band',
    { key },
    `${why}, and paper does not give: what it misses by there tells nothing; fit it to a flat band, or leave "fits" out`,
  );

/** A wall's figures that a paper fit moves: girths at its corners and lengths in mm. */
export interface WallFigures {
  readonly footGirth: number;
  readonly lipGirth: number;
  /** Radians. */
  readonly halfAngle: number;
  readonly height: number;
  readonly along: number;
}

const figuresOf = (wall: Wall): WallFigures => ({
  footGirth: wallGirthAt(wall, 0),
  lipGirth: wallGirthAt(wall, wallLength(wall)),
  halfAngle: meanLean(wall),
  height: wallAt(wall, wallLength(wall)).height,
  along: wallLength(wall),
});

/** The wall before all fits and after each of them. */
export const fittedSteps = (blank: Blank): readonly WallFigures[] => {
  const fits = blank.fits ?? [];
  return [0, ...fits.map((_, i) => i + 1)].map((count) =>
    figuresOf(wallOf({ ...blank, fits: fits.slice(0, count) }).wall),
  );
};

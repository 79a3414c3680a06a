// How sure the figures are that a wrap stands on: sweep, where its ends meet, flat limits; and the overlap for that.
import type { Blank } from './blank.ts';
import { type Band, flatBand } from './flat-band.ts';
import { type Figure, halfMillimetre, uncertaintiesOf } from './propagate.ts';
import { bareGirthAt, type StraightWall } from './straight-wall.ts';

/** Standard uncertainties: of the sweep in radians, of all else in mm. */
export interface Sureness {
  /** Sweep of one whole turn laid flat, radians, positive when wider at the lip. */
  readonly sweep: { readonly value: number; readonly u: number };
  /** Where film lies flat from and to, along the wall. */
  readonly flat: { readonly from: number; readonly to: number };
  /** By how much the finish of a wrap made from these readings may miss its start, at the ends of a band. */
  readonly seam: { readonly foot: number; readonly lip: number };
}

/** Half-width of a 95 % interval in standard uncertainties. Source: NIST TN 1297, 6.2: k = 2. */
export const coverage = 2;

/**
 * The least overlap that still holds once two ends are stuck, mm, where the maker has set none.
 * Common practice, no source.
 */
export const leastHold = 3;

const sweepOf = ({ halfAngle }: StraightWall): number => 2 * Math.PI * Math.sin(halfAngle);

/**
 * How sure a wall's figures are, by the law of propagation. The seam is that of a band held at its place along the
 * wall, as a template is laid: the true girth there less the one it was made for.
 */
export function sureness(blank: Blank, wall: StraightWall, band: Band): Sureness {
  const flats: Figure[] = [(moved) => flatBand(moved, blank).from, (moved) => flatBand(moved, blank).to];
  const [u = 0, from = 0, to = 0, foot = 0, lip = 0] = uncertaintiesOf(blank, [
    sweepOf,
    ...flats,
    ...girthsOf(band),
  ]);
  return { sweep: { value: sweepOf(wall), u }, flat: { from, to }, seam: { foot, lip } };
}

const girthsOf = ({ from, to }: Band): readonly Figure[] => [
  (wall) => bareGirthAt(wall, from),
  (wall) => bareGirthAt(wall, to),
];

export interface Overlap {
  /** coversAt95 and what has to be left to hold, mm. */
  readonly recommended: number;
  /** The overlap of which something is left 19 times in 20, mm: 2 u of the girth at the band's worse end. */
  readonly coversAt95: number;
}

/** The overlap to give a wrap whose seam is so sure: 2 u at its worse end, and `hold` mm to stick on (JCGM 100, k = 2). */
export function recommendedOverlap({ foot, lip }: Sureness['seam'], hold: number = leastHold): Overlap {
  const coversAt95 = coverage * Math.max(foot, lip);
  return { recommended: coversAt95 + hold, coversAt95 };
}

/** What half a mm more of one reading does to the girth at the ends of a band, mm: of the reading that does most. */
export interface HalfMillimetre {
  readonly station: number;
  readonly foot: number;
  readonly lip: number;
}

export function halfMillimetreAtSeam(blank: Blank, band: Band): HalfMillimetre | undefined {
  const effects = halfMillimetre(blank, girthsOf(band)).map(([foot = 0, lip = 0], station) => ({
    station,
    foot,
    lip,
  }));
  const most = ({ foot: a, lip: b }: HalfMillimetre): number => Math.max(Math.abs(a), Math.abs(b));
  return effects.reduce<HalfMillimetre | undefined>(
    (best, effect) => (best === undefined || most(effect) > most(best) ? effect : best),
    undefined,
  );
}

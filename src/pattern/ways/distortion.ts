// What a lay does to a motif's shape and size where it does so most: one figure for each, in closed form.
import type { Closing } from '../lattice/closing.ts';
import type { MotifLay } from '../rigid/motif.ts';

export interface Distortion {
  /** Largest change of a motif's proportions, around against up: a share, 0 where none changes. */
  readonly proportions: number;
  /** Largest change of any angle drawn on it, radians. */
  readonly angle: number;
  /** Largest change of its size, the mean of around and up, against its size in the middle of the band: a share. */
  readonly size: number;
}

/** Girths of the sheet, mm: in the middle of the band, where the pattern has its size, and at the band's two ends. */
export interface DistortionGround {
  readonly girth: number;
  readonly ends: { readonly foot: number; readonly lip: number };
}

/**
 * Every lay keeps level lines level and uprights upright, so the two scales of Tissot's ellipse are those around and up:
 * the largest change of an angle is 2 asin(|a - b| / (a + b)). Around, an even and a conformal lay grow with the girth;
 * up, a conformal lay does too and an even one stays. All are monotone between the ends of a straight wall.
 * Source: J. P. Snyder, Map Projections: A Working Manual (USGS PP 1395, 1987), p. 23, equation 4-8, from memory.
 */
export function distortionOf(
  lay: MotifLay,
  { scaleAcross, scaleUp }: Pick<Closing, 'scaleAcross' | 'scaleUp'>,
  { girth, ends }: DistortionGround,
): Distortion {
  if (lay === 'rigid') return { proportions: 0, angle: 0, size: 0 };
  const grown = [1, ends.foot / girth, ends.lip / girth];
  const isConformal = lay === 'conformal';
  const ratios = grown.map((by) => ((isConformal ? 1 : by) * scaleAcross) / scaleUp);
  return {
    proportions: Math.max(...ratios.map((ratio) => Math.abs(ratio - 1))),
    angle: Math.max(...ratios.map((ratio) => 2 * Math.asin(Math.abs(ratio - 1) / (ratio + 1)))),
    size: Math.max(...grown.map((by) => Math.abs((isConformal ? by : Math.sqrt(by)) - 1))),
  };
}

/** How far motifs of a rigid lay stand from one another, as a share of what was drawn: around at both ends, and up. */
export interface Spacing {
  readonly foot: number;
  readonly lip: number;
  readonly up: number;
}

export const spacingOf = (
  { scaleAcross, scaleUp }: Pick<Closing, 'scaleAcross' | 'scaleUp'>,
  { girth, ends }: DistortionGround,
): Spacing => ({
  foot: (scaleAcross * ends.foot) / girth,
  lip: (scaleAcross * ends.lip) / girth,
  up: scaleUp,
});

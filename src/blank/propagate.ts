// How sure any figure of a blank is, by the law of propagation of uncertainty.
import type { Blank } from './blank.ts';
import { type Input, inputsOf, sizeMoved, withStation } from './inputs.ts';
import { type StraightWall, solveWall } from './straight-wall.ts';

/** A figure of the wall, in its own unit. */
export type Figure = (wall: StraightWall) => number;

/**
 * Standard uncertainties of figures of the fitted wall, each in its own unit: the root of the sum of squares of what
 * each reading's own standard uncertainty moves it by, with the wall fitted anew. Readings are taken as independent.
 * Source: JCGM 100:2008, 5.1.2, equation (10), with the sensitivities of 5.1.4 found by trying rather than by formula.
 */
export function uncertaintiesOf(blank: Blank, figures: readonly Figure[]): readonly number[] {
  const changes = inputsOf(blank).map(({ uncertainty, moved }) => changesOf(moved, uncertainty, figures));
  return figures.map((_, i) => Math.hypot(...changes.map((change) => change[i] ?? 0)));
}

/** By how much half a mm more of each station's reading moves the figures, in the order of the stations. */
export const halfMillimetre = (blank: Blank, figures: readonly Figure[]): readonly (readonly number[])[] =>
  blank.stations.map((_, i) => changesOf((by) => withStation(blank, i, sizeMoved(by)), 0.5, figures));

/**
 * The part of an uncertainty that is tried: small, so that the figures are as good as straight over it and no wall near
 * the limits is moved past them.
 */
const tried = 1e-3;

/** Least step tried, mm: far over what a fit settles to. */
const leastStep = 1e-6;

/** What a change of so much in one reading changes each figure by: central differences over a small part of it. */
function changesOf(moved: Input['moved'], change: number, figures: readonly Figure[]): readonly number[] {
  const step = Math.max(leastStep, tried * change);
  const at = (by: number): readonly number[] => {
    const wall = solveWall(moved(by));
    return figures.map((figure) => figure(wall));
  };
  const [more, less] = [at(step), at(-step)];
  return more.map((value, i) => ((value - (less[i] ?? value)) / (2 * step)) * change);
}

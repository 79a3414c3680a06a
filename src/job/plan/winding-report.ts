// What the report tells of a seam that winds.
import type { FilmCut } from '../../pattern/seam/film-crossed.ts';

/** A winding seam in the report: mm, and turns. */
export interface WindingReport extends FilmCut {
  /** The straight seam that would cut the least of the pattern. */
  readonly straight: FilmCut;
  /** The least radius the line turns on, mm; null where it is straight. */
  readonly radius: number | null;
  /** Between which turns it winds. */
  readonly turns: { readonly from: number; readonly to: number };
}

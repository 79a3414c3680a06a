// A piece of film as it is counted.
import type { Contour } from '../../geometry/contour.ts';

/** A piece by its cut outline, and how many of it one vessel takes. */
export interface FilmPiece {
  readonly outline: Contour;
  readonly count: number;
}

/** Film to cut: a wrap, a panel, a piece of a stack, gores, a strip. */
export interface SheetPiece {
  readonly says: string;
  readonly file: string;
  readonly where: string;
  readonly size: string;
  /** What is cut of it for one vessel. */
  readonly film: readonly FilmPiece[];
  /** Left out: film. */
  readonly material?: 'paper';
}

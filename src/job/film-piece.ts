// A piece of film as it is counted.
import type { Contour } from '../geometry/contour.ts';

/** A piece by its cut outline, and how many of it one vessel takes. */
export interface FilmPiece {
  readonly outline: Contour;
  readonly count: number;
}

// Words as outlines: what a drawing needs of a font.
import type { Contour } from '../geometry/contour.ts';

export interface DrawWords {
  /** One line of words as closed contours: its height in mm is the font's em, baseline at y 0 from x 0, y down. */
  (text: string, em: number): readonly Contour[];
  /** How far such a line reaches to the right, mm, where that is known without drawing it; 0 where nothing is drawn. */
  readonly reach?: (text: string, em: number) => number;
}

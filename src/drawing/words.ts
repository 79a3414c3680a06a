// Words as outlines: what a drawing needs of a font.
import type { Contour } from '../geometry/contour.ts';

/** One line of words as closed contours: its height in mm is the font's em, baseline at y 0 from x 0, y down. */
export type DrawWords = (text: string, em: number) => readonly Contour[];

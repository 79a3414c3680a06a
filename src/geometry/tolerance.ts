// Every tolerance of the project, once, by name, with its reason. All in mm, but for shares.

/** What the finished files promise from end to end: a hundredth, finer than any hobby cutter steps. */
export const precision = 0.01;

/** How far a curve laid on a taper may stray from its exact image: half the precision, the rest is for what follows. */
export const fitTolerance = 0.005;

/** A straight line that bends by less than this on the sheet stays a straight line: a fifth of what a fit may stray. */
export const straightTolerance = 0.001;

/**
 * Sagitta of the chords that stand in for curves while areas are combined; the curves themselves come back after, and
 * crossings are solved on them. Well under the sliver width, so that one edge drawn twice with other nodes leaves none.
 */
export const chordTolerance = 0.003;

/**
 * A step this small where two copies of a tile meet is the drawing program's rounding, not the artist's wish:
 * files are commonly written with two decimals of a px (0.0026 mm). It is closed; anything larger is reported.
 */
export const joinTolerance = 0.02;

/** A sliver whose mean width is under this is what rounding leaves between touching edges, not film. */
export const sliverWidth = precision;

/**
 * A part of a curve shorter than this, left between two crossings where one edge is drawn twice, is rounding: its ends are
 * known only to the chords' tolerance, so that it runs any way. The curve before it goes on to where it ends.
 */
export const shortestPart = 0.005;

/** An area smaller than a limit by less than this share is as large: the numbers of drawings are read to seven digits. */
export const areaRounding = 1e-3;

/** Below this sag over the whole sheet a level arc is a straight line for every purpose, and the sector a rectangle. */
export const rectangleSag = 1e-6;

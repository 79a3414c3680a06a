// The narrow places of a pattern, against opening it by offsets.
import { narrowPlaces } from '../../src/cut/checks/local-width.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { type Comparison, compare } from './harness.ts';
import { clipperCombined, clipperGrown, toClipper } from './libraries.ts';
import { rowsOfBlobs } from './shapes.ts';

/**
 * The narrow places of 400 blobs, against opening them by offsets: in by half the limit, out again, and what is left. Both
 * within 0.01 mm, twice the sagitta of their chords.
 */
export function widthComparisons(): Comparison[] {
  const limit = 1;
  const sagitta = 0.005;
  const contours = rowsOfBlobs(20, 20, 5);
  const shapes = contours.map((contour) => ({ contours: [contour] }));
  const rings = toClipper(contours.map((contour) => chordPoints(contour, sagitta)));
  const ours = () => narrowPlaces(shapes, { side: 'film', limit, tolerance: sagitta }).length + 1;
  const opened = () => {
    const open = clipperGrown(clipperGrown(rings, -limit / 2, sagitta), limit / 2, sagitta);
    return clipperCombined('difference', rings, open).length + 1;
  };
  return [
    compare('local width of 400 blobs, against opening by offsets (clipper-lib)', ours, opened, {
      rounds: 3,
      warmUp: 1,
    }),
  ];
}

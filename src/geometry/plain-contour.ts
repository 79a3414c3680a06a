// Contours that cross nothing, themselves included: an area already, with no combining.
import { chorded } from './chords.ts';
import type { Contour, Shape } from './contour.ts';
import { directed, signedArea, spanOf } from './measure.ts';
import { chordTolerance, sliverWidth } from './tolerance.ts';

/** A contour of more chords than this is combined like any other: each is held against each. */
const mostChords = 256;

/** A side shorter than this, in tolerances, may vanish in rounding. */
const leastSide = 0.01;

/**
 * The area of a single closed contour whose chords neither cross nor touch each other, whatever the fill rule: the contour itself,
 * node for node. Undefined where it is none such, or it is not quickly told.
 */
export function plainShape(contours: readonly Contour[], tolerance: number): Shape | undefined {
  const [contour] = contours;
  if (contours.length !== 1 || !contour?.closed || contour.segments.length > mostChords) return undefined;
  const { x, y } = chorded(contour, tolerance);
  if (x.length < 3 || x.length > mostChords || !isPlain(x, y, leastSide * tolerance)) return undefined;
  const isFilm =
    2 * Math.abs(signedArea(contour)) > ((sliverWidth * tolerance) / chordTolerance) * spanOf(contour);
  return isFilm ? { contours: directed({ contours }) } : undefined;
}

function isPlain(x: Float64Array, y: Float64Array, least: number): boolean {
  const count = x.length;
  const at = (k: number) => k % count;
  for (let i = 0; i < count; i++) {
    const ax = x[i] ?? 0;
    const ay = y[i] ?? 0;
    const bx = x[at(i + 1)] ?? 0;
    const by = y[at(i + 1)] ?? 0;
    if (Math.abs(bx - ax) + Math.abs(by - ay) < least) return false;
    const minX = Math.min(ax, bx);
    const maxX = Math.max(ax, bx);
    const minY = Math.min(ay, by);
    const maxY = Math.max(ay, by);
    const side = (px: number, py: number) => (bx - ax) * (py - ay) - (by - ay) * (px - ax);
    // The next chord begins where this one ends: it may not run straight back.
    for (let j = i + 1; j < count; j++) {
      const cx = x[j] ?? 0;
      const next = j + 1 === count ? 0 : j + 1;
      const dx = x[next] ?? 0;
      if ((cx < minX && dx < minX) || (cx > maxX && dx > maxX)) continue;
      const cy = y[j] ?? 0;
      const dy = y[next] ?? 0;
      if ((cy < minY && dy < minY) || (cy > maxY && dy > maxY)) continue;
      const isNext = j === i + 1 || (i === 0 && j === count - 1);
      if (isNext) {
        if (side(j === i + 1 ? dx : cx, j === i + 1 ? dy : cy) === 0) return false;
        continue;
      }
      const one = side(cx, cy);
      const other = side(dx, dy);
      const across = (px: number, py: number) => (dx - cx) * (py - cy) - (dy - cy) * (px - cx);
      if (one * other <= 0 && across(ax, ay) * across(bx, by) <= 0) return false;
    }
  }
  return true;
}

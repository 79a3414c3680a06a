// How thickly edges lie: found before widths are looked for among them, which takes as long as there are pairs near each other.
import type { Contour } from './contour.ts';
import { distance } from './point.ts';

/** More edges than this to a square millimetre, each counted once a millimetre, are finer than a blade is thick. */
export const mostToSquareMm = 80;

/** Most pairs of edges in such square millimetres: as many take some six seconds to look over. */
const mostPairs = 3e6;

/** Of lines as they are drawn, which are only held against those that run along them, ten times as many. */
export const mostPairsOfLines = 10 * mostPairs;

/** Columns of the squares that are told apart: far more than a drawing is wide. */
const columns = 2 ** 24;

/** The square millimetres, in all, where edges lie too thickly to be looked over; 0 where there are few enough. Contours in mm. */
export function crowdedSquares(contours: readonly Contour[], most = mostPairs): number {
  const counts = new Map<number, number>();
  for (const { segments } of contours)
    for (const { from, to } of segments) {
      const steps = Math.max(1, Math.ceil(distance(from, to)));
      for (let i = 0; i < steps; i++) {
        const t = (i + 0.5) / steps;
        const square =
          Math.floor(from.y + t * (to.y - from.y)) * columns + Math.floor(from.x + t * (to.x - from.x));
        counts.set(square, (counts.get(square) ?? 0) + 1);
      }
    }
  let [pairs, squares] = [0, 0];
  for (const count of counts.values())
    if (count > mostToSquareMm) {
      pairs += count * count;
      squares += 1;
    }
  return pairs > most ? squares : 0;
}

// Lengths on the drawing of a gore.
import type { Contour, Segment } from '../../src/geometry/contour.ts';
import { pointAt } from '../../src/geometry/segment.ts';

/** The first point of a run of segments at which a function changes sign. */
function whereZero(segments: readonly Segment[], f: (p: { x: number; y: number }) => number) {
  for (const s of segments) {
    for (let i = 0; i < 8; i++) {
      let [low, high] = [i / 8, (i + 1) / 8];
      const atLow = f(pointAt(s, low));
      if (atLow === 0) return pointAt(s, low);
      if (atLow * f(pointAt(s, high)) > 0) continue;
      for (let round = 0; round < 50; round++) {
        const middle = (low + high) / 2;
        if (f(pointAt(s, middle)) * atLow > 0) low = middle;
        else high = middle;
      }
      return pointAt(s, low);
    }
  }
  throw new Error('nowhere');
}

/**
 * Length of a gore's level line at a place, from edge to edge: along the circle about the apex of the cone that touches
 * the wall there (level lines in arcs), or straight across.
 */
export function levelLength(gore: Contour, middleX: number, y: number, slant: number | undefined): number {
  const [foot, ...rest] = gore.segments;
  if (!foot) throw new Error('no gore');
  const apex = slant === undefined ? 0 : y + slant;
  const f = (p: { x: number; y: number }) =>
    slant === undefined ? p.y - y : Math.hypot(p.x - middleX, p.y - apex) - Math.abs(slant);
  const half = rest.length / 2;
  const right = whereZero(rest.slice(0, Math.floor(half)), f);
  const left = whereZero(rest.slice(Math.ceil(half)), f);
  if (slant === undefined) return right.x - left.x;
  const angleOf = (p: { x: number; y: number }) => Math.atan2(p.x - middleX, Math.abs(apex - p.y));
  return Math.abs(slant) * (angleOf(right) - angleOf(left));
}

/** Where a gore's middle line is, and the y of its foot end: the middle of its lowest segment. */
export function middleOf(gore: Contour): { x: number; y: number } {
  const [foot] = gore.segments;
  if (!foot) throw new Error('no gore');
  return pointAt(foot, 0.5);
}

/** Length of a run of segments, by 64 chords each. */
export const lengthOf = (segments: readonly Segment[]): number =>
  segments.reduce((sum, s) => {
    let length = 0;
    for (let i = 0; i < 64; i++) {
      const [a, b] = [pointAt(s, i / 64), pointAt(s, (i + 1) / 64)];
      length += Math.hypot(b.x - a.x, b.y - a.y);
    }
    return sum + length;
  }, 0);

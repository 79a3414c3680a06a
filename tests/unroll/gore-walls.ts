// Walls for gores whose radius, slope and curvature are closed forms, and how far a point is from a drawn edge.
import type { Segment } from '../../src/geometry/contour.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import type { GoreWall } from '../../src/unroll/gores.ts';

export interface CurvedGoreWall extends GoreWall {
  /** Gaussian curvature, 1/mm². */
  readonly curvature: (along: number) => number;
}

/** A ball from its south pole up. */
export const ball = (radius: number): CurvedGoreWall => ({
  at: (along) => ({ radius: radius * Math.sin(along / radius), slope: Math.cos(along / radius) }),
  curvature: () => 1 / radius ** 2,
});

/** A barrel (1) or waist (-1) of a meridian radius, so wide at its middle, which is so far up. */
export const barrel = (middle: number, meridian: number, up: number, way: 1 | -1): CurvedGoreWall => {
  const at = (along: number) => {
    const angle = (along - up) / meridian;
    return { radius: middle - way * meridian * (1 - Math.cos(angle)), slope: -way * Math.sin(angle) };
  };
  return {
    at,
    curvature: (along) => (way * Math.cos((along - up) / meridian)) / (meridian * at(along).radius),
  };
};

export const cone = (radius: number, sine: number): CurvedGoreWall => ({
  at: (along) => ({ radius: radius + sine * along, slope: sine }),
  curvature: () => 0,
});

/** Distance of a point from the nearest segment, by close places on each and a search between the nearest two. */
export function nearestOn(segments: readonly Segment[], p: Point): number {
  let least = Infinity;
  for (const s of segments) {
    let [low, high] = [0, 1];
    for (let round = 0; round < 14; round++) {
      const tries = Array.from({ length: 13 }, (_, i) => low + ((high - low) * i) / 12);
      const offs = tries.map((t) => distance(pointAt(s, t), p));
      const best = offs.indexOf(Math.min(...offs));
      least = Math.min(least, offs[best] ?? Infinity);
      [low, high] = [tries[Math.max(0, best - 1)] ?? 0, tries[Math.min(12, best + 1)] ?? 1];
    }
  }
  return least;
}

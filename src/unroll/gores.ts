// Gores: lens-shaped pieces that together follow a wall one flat piece can't.
import { type Contour, cubic, type Segment } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';

/** The wall under the gores: radius and its slope by distance along, on the surface the film lies on. */
export interface GoreWall {
  readonly at: (along: number) => {
    readonly radius: number /** d radius / d along */;
    readonly slope: number;
  };
}

export interface GoreOptions {
  readonly count: number;
  readonly band: { readonly from: number; readonly to: number };
  /** Closest spacing of the nodes up the edge, mm. */
  readonly spacing: number;
}

/** Half the width of a gore at a place: its share of the girth. Source: equal gores of a globe, (pi R / N) cos(lat). */
export const halfWidth = (radius: number, count: number): number => (Math.PI * radius) / count;

/**
 * The outline of one gore, flat, mm: its middle line is the y axis at true length, y down, the band's foot end at y 0;
 * its width at every height is its share of the girth there. Edges are cubics with the edge's own directions. Closed;
 * where the wall ends in a point so does the gore.
 */
export function goreOutline(wall: GoreWall, { count, band, spacing }: GoreOptions): Contour {
  const steps = Math.max(2, Math.ceil((band.to - band.from) / spacing));
  const step = (band.to - band.from) / steps;
  const node = (i: number, side: 1 | -1): { at: Point; up: Point } => {
    const along = band.from + i * step;
    const { radius, slope } = wall.at(along);
    return {
      at: { x: side * halfWidth(radius, count), y: band.from - along },
      up: { x: side * halfWidth(slope, count), y: -1 },
    };
  };
  const edge = (side: 1 | -1): Segment[] =>
    Array.from({ length: steps }, (_, i) => {
      const [a, b] = [node(i, side), node(i + 1, side)];
      const third = step / 3;
      return cubic(
        a.at,
        { x: a.at.x + third * a.up.x, y: a.at.y + third * a.up.y },
        { x: b.at.x - third * b.up.x, y: b.at.y - third * b.up.y },
        b.at,
      );
    });
  const right = edge(1);
  const left = edge(-1)
    .map((s) => (s.kind === 'cubic' ? cubic(s.to, s.c2, s.c1, s.from) : s))
    .reverse();
  const bottom = { kind: 'line' as const, from: node(0, -1).at, to: node(0, 1).at };
  const top = { kind: 'line' as const, from: node(steps, 1).at, to: node(steps, -1).at };
  const drawn = [bottom, ...right, top, ...left];
  return {
    closed: true,
    segments: drawn.filter((s) => Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) > 1e-9),
  };
}

/**
 * The strain left in a gore: its edge is longer than the wall's own line by the slant of the edge, and film across it
 * is stretched by the wall's curvature. The larger of the two over the band.
 * Source: the edge by plane geometry; the curvature term K w²/24, for a strip of width w in no net tension, from the
 * geodesic-strip metric 1 - K y²/2 (derived; references, 11).
 */
export function goreStrain(
  wall: GoreWall,
  curvature: (along: number) => number,
  count: number,
  places: readonly number[],
): number {
  return Math.max(
    ...places.map((along) => {
      const { radius, slope } = wall.at(along);
      const edge = Math.hypot(1, halfWidth(slope, count)) - 1;
      const width = 2 * halfWidth(radius, count);
      return Math.max(edge, (Math.abs(curvature(along)) * width * width) / 24);
    }),
  );
}

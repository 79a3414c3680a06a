// Vessels and films to roll, built by hand: no artwork, no pattern.
import type { Drawing, DrawnPath } from '../../src/drawing/drawing.ts';
import { parsePathData } from '../../src/drawing/path-data.ts';
import { type Contour, polygon } from '../../src/geometry/contour.ts';
import { add, type Point } from '../../src/geometry/point.ts';
import type { RolledVessel } from '../../src/prove/rolled-vessel.ts';
import { flatWall, toFlat } from '../../src/unroll/flat-wall.ts';
import { templateOf } from '../../src/unroll/template.ts';

export interface Sizes {
  readonly footRadius: number;
  readonly halfAngle: number;
  /** Of the wall, mm along. */
  readonly length: number;
  readonly band: { readonly from: number; readonly to: number };
  readonly handle?: number;
}

/** A bare vessel with a film of no thickness: the sheet's radius is the wall's. */
export function aVessel({ footRadius, halfAngle, length, band, handle }: Sizes): RolledVessel {
  const sine = Math.sin(halfAngle);
  const middle = (band.from + band.to) / 2;
  const wall = flatWall(footRadius + middle * sine, sine, middle);
  const clear = handle === undefined ? {} : { clear: handle / 2 };
  const { seam, overlap } = templateOf(wall, { band, trim: { lip: 3, foot: 3 }, overlap: 6, ...clear });
  return {
    wall,
    origin: { x: 150, y: 90 },
    profile: { footRadius, lipRadius: footRadius + length * sine, length, halfAngle },
    band,
    seam,
    overlap,
    footRound: 0,
    lipRound: 0,
    ...(handle === undefined ? {} : { handleSpan: handle }),
  };
}

/** What turns from one to another and heights from one to another cover, as it lies in the drawing. */
export function patch(
  vessel: RolledVessel,
  turns: readonly [number, number],
  heights: readonly [number, number],
): Contour {
  const steps = 240;
  const at = (turn: number, along: number): Point => add(toFlat(vessel.wall, { turn, along }), vessel.origin);
  const level = (along: number) =>
    Array.from({ length: steps + 1 }, (_, i) => at(turns[0] + ((turns[1] - turns[0]) * i) / steps, along));
  return polygon([...level(heights[0]), ...level(heights[1]).reverse()]);
}

/** A square of film, its sides level and upright, around a place on the wall. */
export function square(vessel: RolledVessel, turn: number, along: number, side: number): Contour {
  const middle = add(toFlat(vessel.wall, { turn, along }), vessel.origin);
  const lean = 2 * Math.PI * vessel.wall.sine * (turn - 0.5);
  const [cos, sin] = [Math.cos(lean), Math.sin(lean)];
  const corner = (x: number, y: number): Point => ({
    x: middle.x + ((cos * x - sin * y) * side) / 2,
    y: middle.y + ((sin * x + cos * y) * side) / 2,
  });
  return polygon([corner(-1, 1), corner(1, 1), corner(1, -1), corner(-1, -1)]);
}

export const film = (
  paths: readonly (readonly Contour[])[],
  colour = '#c02020',
  layer = 'film',
): Drawing => ({
  width: 300,
  height: 180,
  groups: [{ role: 'artwork', layer, colour, paths: paths.map((contours): DrawnPath => ({ contours })) }],
});

export type View = 'front' | 'left' | 'right' | 'seam';

/** The pieces of film in a view, as path data was written, mm from the foot's centre. */
export function shown(picture: string, view: View, layer = 'film'): Contour[][] {
  const group = picture.split('<g data-view=').find((part) => part.startsWith(`"${view}"`)) ?? '';
  const film = group.split(`<g data-layer="${layer}"`)[1]?.split('</g>')[0] ?? '';
  return [...film.matchAll(/<path d="([^"]*)"/g)].map(([, data]) => parsePathData(data ?? ''));
}

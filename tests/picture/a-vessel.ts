// Vessels and films to roll, built by hand: no artwork, no pattern.
import { smoothProfile, steppedProfile } from '../../src/blank/profile.ts';
import type { Wall } from '../../src/blank/wall.ts';
import type { Drawing, DrawnPath } from '../../src/drawing/drawing.ts';
import { parsePathData } from '../../src/drawing/path-data.ts';
import { type Contour, polygon } from '../../src/geometry/contour.ts';
import { add, type Point } from '../../src/geometry/point.ts';
import { wallRings } from '../../src/picture/rolled/rolled-rings.ts';
import type { RolledVessel } from '../../src/picture/rolled/rolled-vessel.ts';
import { flatWall, toFlat } from '../../src/unroll/flat-wall.ts';
import { sheetOnWall } from '../../src/unroll/sheet-wall.ts';
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
    profile: [
      { along: 0, radius: footRadius, height: 0, lean: halfAngle },
      {
        along: length,
        radius: footRadius + length * sine,
        height: length * Math.cos(halfAngle),
        lean: halfAngle,
      },
    ],
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

/** Two layers: a chequered film with a hole in every square, and a dot in every square left free. */
export function chequered(vessel: RolledVessel): Drawing {
  const { from, to } = vessel.band;
  const [rows, around] = [6, 16];
  const rise = (to - from) / rows;
  const cells = (odd: number) =>
    Array.from({ length: rows * around }, (_, i) => ({ row: Math.floor(i / around), column: i % around }))
      .filter(({ row, column }) => (row + column) % 2 === odd)
      .map(({ row, column }) => ({ turn: (column + 0.5) / around, along: from + (row + 0.5) * rise }));
  const tiles = cells(0).map(({ turn, along }) => [
    patch(vessel, [turn - 0.5 / around, turn + 0.5 / around], [along - rise / 2, along + rise / 2]),
    patch(vessel, [turn - 0.2 / around, turn + 0.2 / around], [along - rise / 5, along + rise / 5]),
  ]);
  const dots = cells(1).map(({ turn, along }) => [square(vessel, turn, along, rise / 3)]);
  return {
    ...film([]),
    groups: [...film(tiles, '#20506b', 'tiles').groups, ...film(dots, '#c8552b', 'dots').groups],
  };
}

export type View = 'front' | 'left' | 'right' | 'seam';

/** The pieces of film in a view, as path data was written, mm from the foot's centre. */
export function shown(picture: string, view: View, layer = 'film'): Contour[][] {
  const group = picture.split('<g data-view=').find((part) => part.startsWith(`"${view}"`)) ?? '';
  const film = group.split(`<g data-layer="${layer}"`)[1]?.split('</g>')[0] ?? '';
  return [...film.matchAll(/<path d="([^"]*)"/g)].map(([, data]) => parsePathData(data ?? ''));
}

/** A bare vessel with a wall that bends, its film laid as the sheet that asks the least stretch. */
export function aBentVessel(
  wall: Wall,
  band: { readonly from: number; readonly to: number },
  rounds: { readonly footRound: number; readonly lipRound: number } = { footRound: 0, lipRound: 0 },
): RolledVessel {
  const { flat } = sheetOnWall(wall, { coats: 0, film: 0, gather: 0 }, band);
  const { seam, overlap } = templateOf(flat, { band, trim: { lip: 3, foot: 3 }, overlap: 6 });
  return {
    wall: flat,
    origin: { x: 150, y: 90 },
    profile: wallRings(wall, 0),
    band,
    seam,
    overlap,
    ...rounds,
  };
}

/** A wall straight between corners: heights and radii, mm. */
export const aSteppedWall = (corners: readonly (readonly [number, number])[]): Wall => ({
  kind: 'curved',
  curved: {
    profile: steppedProfile(corners.map(([at, radius]) => ({ kind: 'height', at, radius }))),
    residuals: [],
    rows: [],
    moved: [],
  },
});

/** A smooth wall through readings by height, mm. */
export const aSmoothWall = (readings: readonly (readonly [number, number])[]): Wall => ({
  kind: 'curved',
  curved: {
    profile: smoothProfile(readings.map(([at, radius]) => ({ kind: 'height', at, radius }))),
    residuals: [],
    rows: [],
    moved: [],
  },
});

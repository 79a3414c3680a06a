// One period of a wrap's film, with enough of its neighbours that what is measured in it is measured whole.
import { type Box, boxesMeet, grow, hullBox } from '../../geometry/box.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { atHand } from '../../geometry/kept-contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import { girthAt, toWall, type WallPoint } from '../../unroll/flat-wall.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import { patchOutline } from '../guide/wall-patch.ts';
import type { FilmLayer } from './art-faults.ts';

export interface WrapFilm {
  readonly template: Template;
  /** Merged areas on the sheet, in the flat wall's frame, closed `runOff` mm past the piece. */
  readonly layers: readonly FilmLayer[];
  readonly runOff: number;
  /** How many times the pattern repeats exactly around the wall. */
  readonly parts: number;
}

export interface PeriodFilm {
  readonly layers: readonly FilmLayer[];
  /** The stretch of the wall that was taken, and its outline on the sheet. */
  readonly turns: { readonly from: number; readonly to: number };
  readonly outline: Contour;
  /** Whether a place lies in what was taken. */
  readonly isNear: (p: Point) => boolean;
  /** Whether what is found at a place is to be told: it lies in the period itself, or goes on for more than a period, mm. */
  readonly isOwn: (at: WallPoint, length: number) => boolean;
}

/** What lies on the border of a period is found in it and in its neighbour, mm. */
const borderReach = 0.3;

/**
 * The film of the period opposite the seam, `reach` mm more of it at each side. Contours that do not come near are left
 * out, but a shape that has any left keeps its outer one.
 */
export function periodFilm({ template, layers, runOff, parts }: WrapFilm, reach: number): PeriodFilm {
  const { wall, piece } = template;
  const [foot, lip] = [piece.from - runOff, piece.to + runOff];
  const more = parts === 1 ? 0 : reach / Math.min(girthAt(wall, foot), girthAt(wall, lip));
  const turns = { from: 0.5 - 0.5 / parts - more, to: 0.5 + 0.5 / parts + more };
  const outline = patchOutline(template, turns.from, turns.to, { from: foot, to: lip });
  const box = grow(tightBox([outline]), reach);
  return {
    layers: layers.map((layer) => ({
      ...layer,
      shapes: layer.shapes.flatMap((shape) => nearBox(shape, box)),
    })),
    turns,
    outline,
    isOwn: ({ turn, along }, length) => {
      const girth = girthAt(wall, along);
      return length > girth / parts || Math.abs(turn - 0.5) <= 0.5 / parts + borderReach / girth;
    },
    isNear: (p) => {
      const { turn, along } = toWall(wall, p);
      return turn >= turns.from && turn <= turns.to && along >= foot && along <= lip;
    },
  };
}

function nearBox({ contours }: Shape, box: Box): Shape[] {
  const meets = (contour: Contour) => boxesMeet(hullBox([contour]), box);
  const [outer, ...holes] = contours;
  return outer && meets(outer) ? [{ contours: [outer, ...holes.filter(meets)].map(atHand) }] : [];
}

/** Whether a shape lies on the piece whole, so that no edge of the piece cuts through it; `turns`: and within those. */
export function isWhole(
  { contours }: Shape,
  { wall, piece, left, right }: Template,
  turns: { readonly from: number; readonly to: number } = { from: -Infinity, to: Infinity },
): boolean {
  return contours.every(({ segments }) =>
    segments.every(({ from }) => {
      const { turn, along } = toWall(wall, from);
      const first = Math.max(turnOfEdge(wall, left, along), turns.from);
      const last = Math.min(turnOfEdge(wall, right, along), turns.to);
      const beside = precision / girthAt(wall, along);
      return along > piece.from && along < piece.to && turn > first + beside && turn < last - beside;
    }),
  );
}

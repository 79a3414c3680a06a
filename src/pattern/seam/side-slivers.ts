// What the sides of a piece leave of motifs that is too small to hold.
import type { Shape } from '../../geometry/contour.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { outlinesOf, shapesWithin } from '../../geometry/near-outlines.ts';
import { girthAt, toWall, type WallPoint, wallBox } from '../../unroll/flat-wall.ts';
import { outline, sideTurns, type Template } from '../../unroll/template.ts';
import { type FilmLimits, isTooSmall } from '../lay/edge-slivers.ts';

/** A piece of film that a side leaves: its middle, mm² and mm around the wall. */
export interface SideSliver {
  readonly side: 'start' | 'finish';
  readonly at: WallPoint;
  readonly area: number;
  readonly width: number;
}

/** A node this near to a side lies on it, mm. */
const onSide = 0.02;

/** What the two sides of a template leave of shapes that go on past them, of those in its finished band, from the foot up. */
export function sideSlivers(
  shapes: readonly Shape[],
  template: Template,
  film: FilmLimits,
): readonly SideSliver[] {
  if (!(film.minWidth > 0)) return [];
  const { wall, band } = template;
  const piece = outlinesOf([outline(template)]);
  const onWall = ({ contours }: Shape): readonly WallPoint[] =>
    contours.flatMap(({ segments }) => segments.map(({ from }) => toWall(wall, from)));
  /** How far a place is from a side, mm, positive on the piece. */
  const inside = ({ turn, along }: WallPoint): readonly [number, number] => {
    const [left, right] = sideTurns(template, along);
    const girth = girthAt(wall, along);
    return [(turn - left) * girth, (right - turn) * girth];
  };
  const isPast = (shape: Shape): boolean => {
    const places = onWall(shape).map(inside);
    return places.some(([left, right]) => Math.min(left, right) < -onSide);
  };
  return shapes
    .filter(isPast)
    .flatMap((shape) => shapesWithin(piece, [shape]))
    .flatMap((part): SideSliver[] => {
      const places = onWall(part);
      const { minX, maxX, minY, maxY } = wallBox(places);
      const at = { turn: (minX + maxX) / 2, along: (minY + maxY) / 2 };
      const [area, width] = [shapeArea(part), (maxX - minX) * girthAt(wall, at.along)];
      const sides = places.map(inside);
      const isAtStart = sides.some(([left]) => Math.abs(left) <= onSide);
      const isCut = isAtStart || sides.some(([, right]) => Math.abs(right) <= onSide);
      const isIn = at.along >= band.from && at.along <= band.to;
      return isCut && isIn && isTooSmall(film, area, width)
        ? [{ side: isAtStart ? 'start' : 'finish', at, area, width }]
        : [];
    })
    .sort((p, q) => p.at.along - q.at.along);
}

// The pattern taken away around motifs, and what of it that would leave too small to hold.
import { boxesMeet, grow, hullBox } from '../../geometry/box.ts';
import { chorded } from '../../geometry/chords.ts';
import type { Shape } from '../../geometry/contour.ts';
import { shapeArea, tightBox } from '../../geometry/measure.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { toWall, type WallPoint } from '../../unroll/flat-wall.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import { windingTurn } from '../../unroll/winding.ts';
import { type FilmLimits, isTooSmall } from '../lay/edge-slivers.ts';

/** What is cleared around a motif, on the sheet, with the motif's name. */
export interface ClearedArea {
  readonly name: string;
  readonly shape: Shape;
}

/** A piece of the pattern that was left out around a motif: the motif's name, mm² on the sheet, and places along its edge. */
export interface ClearSliver {
  readonly name: string;
  readonly area: number;
  readonly places: readonly WallPoint[];
}

export interface PatternLeft {
  readonly shapes: readonly Shape[];
  readonly leftOut: readonly ClearSliver[];
}

/** How near a piece comes to the area it was cut by, mm. */
const beside = 0.05;

/**
 * Shapes of a pattern less what is cleared; those that nothing cleared comes near stay as they are. Pieces that are then smaller
 * than `film` holds are left out, but for those that a side or a finished edge of the piece goes through: the other end, or the
 * panel beside, shows the rest of them.
 */
export function withoutCleared(
  shapes: readonly Shape[],
  cleared: readonly ClearedArea[],
  template: Template,
  film?: FilmLimits,
): PatternLeft {
  if (cleared.length === 0) return { shapes, leftOut: [] };
  const areas = cleared.map((area) => ({ ...area, box: hullBox(area.shape.contours) }));
  const leftOut: ClearSliver[] = [];
  const left = shapes.flatMap((shape) => {
    const near = areas.filter(({ box }) => boxesMeet(box, hullBox(shape.contours)));
    if (near.length === 0) return [shape];
    const taken = near.map(({ shape: area }) => area);
    const parts = clippedShapes([shape], taken, 'difference', chordTolerance);
    return parts.filter((part) => {
      const box = grow(tightBox(part.contours), beside);
      const by = near.find((area) => boxesMeet(area.box, box));
      if (!film || !by || !isSliver(part, film) || shapeArea(shape) - shapeArea(part) < leastTaken)
        return true;
      const places = placesOn(part, template);
      if (isParted(places, template)) return true;
      leftOut.push({ name: by.name, area: shapeArea(part), places });
      return false;
    });
  });
  return { shapes: left, leftOut };
}

/** Along the edge of a piece, as near as chords are: between two nodes it may go far past both. */
const placesOn = ({ contours }: Shape, { wall }: Template): readonly WallPoint[] =>
  contours.flatMap((contour) => {
    const { x, y } = chorded(contour, chordTolerance);
    return x.map((at, i) => toWall(wall, { x: at, y: y[i] ?? 0 }));
  });

/** A shape that lost less than this was not cut, mm². */
const leastTaken = 1e-3;

function isSliver(part: Shape, film: FilmLimits): boolean {
  const { minX, maxX, minY, maxY } = tightBox(part.contours);
  return film.minWidth > 0 && isTooSmall(film, shapeArea(part), Math.min(maxX - minX, maxY - minY));
}

/** Whether one of the lines that a piece ends at goes through places of the wall. */
function isParted(places: readonly WallPoint[], { wall, seam, band, winding }: Template): boolean {
  const turnsAt = (along: number): readonly [number, number] => {
    if (!winding) return [turnOfEdge(wall, seam.start, along), turnOfEdge(wall, seam.finish, along)];
    const turn = windingTurn(winding, along);
    return [turn, turn + 1];
  };
  const past: readonly ((place: WallPoint) => boolean)[] = [
    ({ turn, along }) => turn > turnsAt(along)[0],
    ({ turn, along }) => turn > turnsAt(along)[1],
    ({ along }) => along > band.from,
    ({ along }) => along > band.to,
  ];
  return past.some((isPast) => new Set(places.map(isPast)).size > 1);
}

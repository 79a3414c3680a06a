// Bridges: what an opening of a stencil would let fall out is tied to the film around it, so that the stencil holds together.

import { contourLength } from '../../geometry/arc-length.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { polygon } from '../../geometry/contour.ts';
import { least, most } from '../../geometry/extremes.ts';
import { tightBox } from '../../geometry/measure.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { add, distance, type Point, scale, subtract, unit } from '../../geometry/point.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { pointAt } from '../../geometry/segment.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { unitedShapes } from '../checks/film-layers.ts';

/** Openings with bridges across them. */
export interface BridgedShapes {
  readonly shapes: readonly Shape[];
  /** Islands that were tied, and by how many bridges. */
  readonly islands: number;
  readonly bridges: number;
}

/** Places on each segment of an island's edge where a bridge may begin. */
const places = 8;

/** Gaps that differ by less are alike, mm: then the place furthest up counts, so that islands alike are tied alike. */
const alike = 0.01;

/** The second bridge of an island begins at least this share of its edge away from the first. Common practice, no source. */
const apart = 0.3;

/** Islands tied to one another may be an island still; more rounds than this no drawing asks for. */
const rounds = 6;

/** Openings whose islands are tied by two bridges each, so wide, mm, where the opening is narrowest. Areas may overlap. */
export function bridgedShapes(openings: readonly Shape[], width: number): BridgedShapes {
  let shapes: readonly Shape[] = unitedShapes(openings);
  let [islands, bridges] = [0, 0];
  for (let i = 0; i < rounds; i++) {
    const ties = shapes.map((shape) => tiesOf(shape, width));
    if (ties.every(({ length }) => length === 0)) break;
    islands += shapes.reduce((sum, { contours }) => sum + contours.length - 1, 0);
    bridges += ties.flat().length;
    shapes = shapes.flatMap((shape, k) => {
      const own = (ties[k] ?? []).map((tie): Shape => ({ contours: [tie] }));
      return own.length === 0
        ? [shape]
        : clippedShapes([shape], unitedShapes(own), 'difference', chordTolerance);
    });
  }
  return { shapes, islands, bridges };
}

const tiesOf = ({ contours }: Shape, width: number): readonly Contour[] =>
  contours.slice(1).flatMap((island) =>
    tiesOfIsland(
      island,
      contours.filter((one) => one !== island),
      width,
    ),
  );

interface Gap {
  readonly from: Point;
  readonly to: Point;
  readonly size: number;
  /** Where along the island's edge, as a share of it. */
  readonly share: number;
}

function tiesOfIsland(island: Contour, others: readonly Contour[], width: number): Contour[] {
  const finder = new NearestFinder(others);
  const { minX, minY, maxX, maxY } = tightBox(others);
  const reach = Math.hypot(maxX - minX, maxY - minY);
  const length = contourLength(island);
  let gone = 0;
  const gaps = island.segments.flatMap((s) => {
    const here = gone;
    const long = contourLength({ closed: false, segments: [s] });
    gone += long;
    // At a corner a bridge would stand half beside the island, and hold it by half its width.
    const room = Math.min(1 / 2, width / 2 / long);
    return Array.from({ length: places }, (_, i): Gap[] => {
      const t = room + (1 - 2 * room) * ((i + 1 / 2) / places);
      const from = pointAt(s, t);
      const to = nearest(finder, from, width, reach);
      return to ? [{ from, to, size: distance(from, to), share: (here + long * t) / length }] : [];
    }).flat();
  });
  const first = narrowest(gaps);
  if (!first) return [];
  const away = ({ share }: Gap) => Math.min(Math.abs(share - first.share), 1 - Math.abs(share - first.share));
  const second = narrowest(gaps.filter((gap) => away(gap) >= apart));
  return [first, ...(second ? [second] : [])].map((gap) => tie(gap, width));
}

/** The nearest place of other edges, looked for further and further away. */
function nearest(finder: NearestFinder, p: Point, from: number, most: number): Point | undefined {
  for (let reach = 2 * from; ; reach *= 3) {
    const place = finder.find(p, reach);
    if (place) return pointAt(place.segment, place.t);
    if (reach > most) return undefined;
  }
}

/**
 * Of the gaps alike the narrowest the one furthest up, and of those the one furthest left: one place, whichever way a drawing's lines
 * run. Held against the narrowest, not against one another: else a gap that widens little by little would count as alike all along.
 */
function narrowest(gaps: readonly Gap[]): Gap | undefined {
  const size = least(gaps.map((gap) => gap.size));
  const narrow = gaps.filter((gap) => gap.size <= size + alike);
  const top = most(narrow.map(({ from }) => from.y));
  const level = narrow.filter(({ from }) => from.y >= top - alike);
  const left = least(level.map(({ from }) => from.x));
  return level.find(({ from }) => from.x === left);
}

/** A bridge over a gap: straight, and half its width into the film at either end. */
function tie({ from, to }: Gap, width: number): Contour {
  const along = scale(unit(subtract(to, from)), width / 2);
  const across = { x: -along.y, y: along.x };
  const [a, b] = [subtract(from, along), add(to, along)];
  return polygon([subtract(a, across), subtract(b, across), add(b, across), add(a, across)]);
}

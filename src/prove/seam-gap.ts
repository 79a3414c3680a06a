// The seam gap: what the two ends of a delivered wrap miss each other by once rolled onto the wall.
import type { Drawing } from '../drawing/drawing.ts';
import { moveContour, movePoint, translation } from '../geometry/affine.ts';
import type { Contour } from '../geometry/contour.ts';
import { lineCrossings } from '../geometry/crossings.ts';
import { NearestFinder } from '../geometry/nearest.ts';
import { cross, dot, type Point, subtract } from '../geometry/point.ts';
import { directionAt, pointAt } from '../geometry/segment.ts';
import { degrees } from '../lengths/angle.ts';
import { toFlat, toWall, turnMotion } from '../unroll/flat-wall.ts';
import type { Template } from '../unroll/template.ts';
import { groupsOf } from './locate.ts';

export interface SeamGap {
  /** Largest distance between an edge of the art at one end and the same edge at the other, mm. */
  readonly position: number;
  /** Largest angle between the two, degrees. */
  readonly tangentDeg: number;
  /** Edges of the art that cross the seam, counted at both ends. */
  readonly crossings: number;
}

/** How far away the other end's edge is looked for, mm; where none is found, the gap is reported as this. */
const reach = 25;

/** Curves this close to an edge's place are candidates for going on as it, mm: twice the gap allowed. */
const nodeReach = 0.02;

interface Edge {
  readonly at: Point;
  readonly direction: Point;
}

/** Where the art's edges cross the line up the wall at a turn, inside the finished band. Flat frame. */
function edgesAt(contours: readonly Contour[], template: Template, turn: number): Edge[] {
  const { wall, band } = template;
  const foot = toFlat(wall, { turn, along: band.from });
  const up = subtract(toFlat(wall, { turn, along: band.to }), foot);
  return contours.flatMap(({ segments }) =>
    segments.flatMap((s) =>
      lineCrossings(s, foot, up)
        .map((t) => ({ at: pointAt(s, t), direction: directionAt(s, t) }))
        .filter(({ at }) => {
          const share = dot(subtract(at, foot), up) / dot(up, up);
          return share >= 0 && share <= 1 && Math.abs(toWall(wall, at).turn - turn) < 0.25;
        }),
    ),
  );
}

const degreesBetween = (a: Point, b: Point): number =>
  degrees(Math.atan2(Math.abs(cross(a, b)), Math.abs(dot(a, b))));

interface Miss {
  readonly position: number;
  readonly tangentDeg: number;
}

/**
 * What one edge misses the other end's art by. At a node, which may be a corner, several curves meet: an edge is held
 * against the one of them it goes on as.
 */
function missOf(edge: Edge, others: NearestFinder): Miss {
  const close = others.within(edge.at, nodeReach);
  const places = close.length > 0 ? close : [others.find(edge.at, 1) ?? others.find(edge.at, reach)];
  const found = places.filter((place) => place !== undefined);
  if (found.length === 0) return { position: reach, tangentDeg: 90 };
  return {
    position: Math.min(...found.map((place) => place.distance)),
    tangentDeg: Math.min(
      ...found.map(({ segment, t }) => degreesBetween(edge.direction, directionAt(segment, t))),
    ),
  };
}

/**
 * Roll a delivered cut drawing back onto the wall and compare its two ends, layer by layer. `origin` is where the flat
 * wall's origin lies in the drawing. Undefined for a piece that stops at a handle: it has no seam.
 */
export function seamGap(cut: Drawing, template: Template, origin: Point): SeamGap | undefined {
  if (template.seam.finish.offset !== 0) return undefined;
  const home = translation(-origin.x, -origin.y);
  const onward = turnMotion(template.wall, 1);
  const back = turnMotion(template.wall, -1);
  let position = 0;
  let tangentDeg = 0;
  let crossings = 0;
  for (const group of groupsOf(cut, 'artwork')) {
    const contours = group.paths.flatMap((path) =>
      path.contours.map((contour) => moveContour(home, contour)),
    );
    const finder = new NearestFinder(contours);
    const ends = [
      { edges: edgesAt(contours, template, 0), motion: onward },
      { edges: edgesAt(contours, template, 1), motion: back },
    ];
    for (const { edges, motion } of ends)
      for (const { at, direction } of edges) {
        const turned = {
          x: motion.a * direction.x + motion.c * direction.y,
          y: motion.b * direction.x + motion.d * direction.y,
        };
        const miss = missOf({ at: movePoint(motion, at), direction: turned }, finder);
        position = Math.max(position, miss.position);
        tangentDeg = Math.max(tangentDeg, miss.tangentDeg);
        crossings += 1;
      }
  }
  return { position, tangentDeg, crossings };
}

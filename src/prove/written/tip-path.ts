// Where the tip of a drag knife goes when its axis follows a line: reckoned chord by chord, each exactly.
import type { Contour } from '../../geometry/contour.ts';
import { cross, dot, type Point, subtract } from '../../geometry/point.ts';
import { chordCount, pointAt } from '../../geometry/segment.ts';

/** Sagitta of the chords of the axis, mm, and their length as a share of the offset. */
const chordTolerance = 2e-4;
const longestChord = 0.125;

/** The way of the tip over one stroke, and how the blade points at its end: from tip to axis, of length one. */
export interface TipStroke {
  readonly points: readonly Point[];
  readonly heading: Point;
}

/** The axis as points close together. */
function axisPoints({ segments }: Contour, offset: number): Point[] {
  const [first] = segments;
  if (!first) return [];
  return [
    first.from,
    ...segments.flatMap((s) => {
      const reach =
        s.kind === 'line'
          ? 0
          : Math.hypot(s.c1.x - s.from.x, s.c1.y - s.from.y) +
            Math.hypot(s.c2.x - s.c1.x, s.c2.y - s.c1.y) +
            Math.hypot(s.to.x - s.c2.x, s.to.y - s.c2.y);
      // A straight line is reckoned exactly however long; it is parted only so that the tip's bend shows.
      const length = s.kind === 'line' ? Math.hypot(s.to.x - s.from.x, s.to.y - s.from.y) : reach;
      const count = Math.max(
        chordCount(s, chordTolerance),
        Math.min(s.kind === 'line' ? 60 : 4000, Math.ceil(length / (longestChord * offset))),
      );
      return Array.from({ length: count }, (_, i) => pointAt(s, (i + 1) / count));
    }),
  ];
}

/**
 * The tip while the axis follows a stroke, the blade coming down with a heading. While the axis moves along a straight
 * line by s, the angle between blade and line shrinks as tan(angle / 2) does by e^(-s / offset): the pull curve, a
 * tractrix with a straight base (C. Huygens 1692; any text on curves).
 */
function tipStroke(stroke: Contour, offset: number, heading: Point): TipStroke {
  const axis = axisPoints(stroke, offset);
  let at = heading;
  const tip = (p: Point): Point => ({ x: p.x - offset * at.x, y: p.y - offset * at.y });
  const points = axis.slice(0, 1).map(tip);
  for (const [i, to] of axis.slice(1).entries()) {
    const step = subtract(to, axis[i] ?? to);
    const length = Math.hypot(step.x, step.y);
    if (length === 0) continue;
    const way = { x: step.x / length, y: step.y / length };
    const angle = Math.atan2(cross(way, at), dot(way, at));
    const left = 2 * Math.atan(Math.tan(angle / 2) * Math.exp(-length / offset));
    const [cos, sin] = [Math.cos(left), Math.sin(left)];
    at = { x: way.x * cos - way.y * sin, y: way.x * sin + way.y * cos };
    points.push(tip(to));
  }
  return { points, heading: at };
}

/** The ways of the tip over strokes in their order, the blade keeping its heading between them. */
export function tipStrokes(
  strokes: readonly Contour[],
  offset: number,
  heading: Point,
): readonly TipStroke[] {
  let at = heading;
  return strokes.map((stroke) => {
    const tip = tipStroke(stroke, offset, at);
    at = tip.heading;
    return tip;
  });
}

// Shapes of a period that are cut: at the tile's border, or at the window of one period.
import { type Box, boxesMeet } from '../../geometry/box.ts';
import { chorded } from '../../geometry/chords.ts';
import { combine } from '../../geometry/combine.ts';
import type { Contour, Segment, Shape } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import { add, dot, type Point, scale, subtract } from '../../geometry/point.ts';
import { isSliver, ringSegments, segmentsOf } from '../../geometry/rebuild.ts';
import { withEnds } from '../../geometry/segment.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';

/** A contour of the period. Edges that only the tile's border made are marked: no film ends there by design. */
export interface PeriodContour {
  readonly contour: Contour;
  readonly borders: ReadonlySet<number>;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface BoxedShape {
  readonly shape: Shape;
  readonly box: Box;
}

/** A shape past the border by less than rounding is still inside. */
export const rounding = 1e-3;

/** Whether a box lies inside a tile, so far from its border. */
export const isInside = (box: Box, { width, height }: Size, margin = -rounding): boolean =>
  box.minX >= margin && box.minY >= margin && box.maxX <= width - margin && box.maxY <= height - margin;

/** Shapes cut at a window's border, each with the border's own stretches marked. */
export function shapesCutBy(shapes: readonly BoxedShape[], viewport: Contour): PeriodContour[] {
  const reach = tightBox([viewport]);
  return shapes
    .filter(({ box }) => boxesMeet(box, reach))
    .flatMap(({ shape }) => {
      const by = { x: 0, y: 0 };
      const drawn = shape.contours.map((contour) => ({ chords: chorded(contour, chordTolerance), by }));
      const border = drawn.length;
      const window = { chords: chorded(viewport, chordTolerance), by, isEdge: () => true };
      const regions = combine(drawn, [window], {
        operation: 'intersection',
        fill: 'nonzero',
        tolerance: chordTolerance,
      });
      const segmentOf = segmentsOf([...drawn, window]);
      return regions
        .flatMap(({ outer, holes }) => [outer, ...holes])
        .filter((ring) => !isSliver(ring))
        .map((ring) => {
          const rebuilt = ringSegments(ring.runs, segmentOf);
          const sides = rebuilt.map(({ run }) => (run.source === border ? segmentOf(run) : undefined));
          return {
            contour: {
              closed: true,
              segments: heldOn(
                sides,
                rebuilt.map(({ segment }) => segment),
              ),
            },
            borders: new Set(sides.flatMap((side, i) => (side ? [i] : []))),
          };
        });
    });
}

/**
 * A ring whose stretches of border lie on the border: art that ends beside it would draw them to its own node, and copies that
 * overlap by a hair there would no longer. `sides`: the side of the window that each segment runs along, if it is one.
 */
function heldOn(sides: readonly (Segment | undefined)[], ring: readonly Segment[]): Segment[] {
  const count = ring.length;
  const nodes = ring.map(({ from }, i) => {
    const [before, after] = [sides[(i + count - 1) % count], sides[i]];
    if (before && after) return before === after ? footOn(after, from) : after.from;
    const side = before ?? after;
    return side ? footOn(side, from) : from;
  });
  return ring.map((s, i) => withEnds(s, nodes[i] ?? s.from, nodes[(i + 1) % count] ?? s.to));
}

/** The foot of the perpendicular from a point to a straight side. */
function footOn({ from, to }: Segment, p: Point): Point {
  const along = subtract(to, from);
  return add(from, scale(along, dot(subtract(p, from), along) / dot(along, along)));
}

// Does the art go on from gore to gore? Its edges at each gore's border, held against the next one's art.

import { hullBox } from '../../geometry/box.ts';
import type { Segment } from '../../geometry/contour.ts';
import { least, most } from '../../geometry/extremes.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { type Point, subtract } from '../../geometry/point.ts';
import { directionAt, pointAt } from '../../geometry/segment.ts';
import type { AskedGores } from '../asked-gores.ts';
import type { ProvedGore } from '../written/gore-pieces.ts';
import { halfShare, layGore, rollGore } from '../written/rolled-gore.ts';
import { type Edge, missOf, type SeamGap, touching } from './seam-gap.ts';

/** Parts of a segment in each of which it crosses a border once or not at all. */
const parts = 8;
const halvings = 50;

/** Step along an edge that tells which way it runs on the neighbour, mm. */
const step = 1e-3;

/** How far a place of a segment is past a gore's border, mm. */
const pastBorder =
  ({ surface, band }: AskedGores, side: 1 | -1, segment: Segment) =>
  (t: number): number => {
    const { aside, on } = rollGore(surface, band.from, pointAt(segment, t));
    return side * aside - halfShare(surface, on);
  };

/** Where a segment crosses a gore's border, 1 its right one and -1 its left, as parameters. */
function crossingsOf(asked: AskedGores, side: 1 | -1, segment: Segment, nearest: number): number[] {
  const { minX, maxX } = hullBox([{ closed: false, segments: [segment] }]);
  if ((side > 0 ? maxX : -minX) < nearest) return [];
  const beyond = pastBorder(asked, side, segment);
  const values = Array.from({ length: parts + 1 }, (_, i) => beyond(i / parts));
  return values.slice(1).flatMap((value, i) => {
    const before = values[i] ?? value;
    if (before > 0 === value > 0) return [];
    let [low, high] = [i / parts, (i + 1) / parts];
    for (let round = 0; round < halvings; round++) {
      const middle = (low + high) / 2;
      if (beyond(middle) > 0 === before > 0) low = middle;
      else high = middle;
    }
    return [(low + high) / 2];
  });
}

/** Whether an outline lies on one side of a border but for what no eye sees. */
function onlyTouches(asked: AskedGores, side: 1 | -1, segments: readonly Segment[]): boolean {
  const past = segments.flatMap((segment) => {
    const beyond = pastBorder(asked, side, segment);
    return Array.from({ length: parts + 1 }, (_, i) => beyond(i / parts));
  });
  return most(past, -Infinity) <= touching || least(past, Infinity) >= -touching;
}

/** An edge of a gore's art as it should go on in the gore beside it, on that gore's drawing. */
function onNeighbour(asked: AskedGores, side: 1 | -1, segment: Segment, t: number): Edge {
  const { surface, band } = asked;
  const moved = (p: Point): Point => {
    const { aside, on } = rollGore(surface, band.from, p);
    return layGore(surface, band.from, { aside: aside - side * 2 * halfShare(surface, on), on });
  };
  const at = pointAt(segment, t);
  const direction = directionAt(segment, t);
  const [behind, ahead] = [-step, step].map((by) =>
    moved({ x: at.x + direction.x * by, y: at.y + direction.y * by }),
  );
  if (!behind || !ahead) throw new Error('a step has two ends');
  return { at: moved(at), direction: subtract(ahead, behind) };
}

/** What the art of neighbours misses each other by, at every border between gores, the seam among them. */
export function goreSeamGap(asked: AskedGores, gores: readonly ProvedGore[]): SeamGap | undefined {
  const { surface, band } = asked;
  // No border comes nearer to a middle line than this, on its level line bent to a half circle at most.
  const heights = Array.from({ length: 101 }, (_, i) => band.from + ((band.to - band.from) * i) / 100);
  const nearest = (Math.min(...heights.map((on) => halfShare(surface, on))) * 2) / Math.PI - 1;
  const names = [...new Set(gores.flatMap(({ layers }) => layers.map(({ name }) => name)))];
  const misses = names.flatMap((name) => {
    const art = gores.map(({ layers }) =>
      layers.filter((layer) => layer.name === name).flatMap(({ shapes }) => shapes.flat()),
    );
    const finders = art.map((contours) => new NearestFinder(contours));
    return art.flatMap((contours, i) =>
      ([1, -1] as const).flatMap((side) => {
        const finder = finders[(i + side + gores.length) % gores.length];
        if (!finder) return [];
        return contours.flatMap(({ segments }) => {
          const crossed = segments.flatMap((segment) =>
            crossingsOf(asked, side, segment, nearest)
              .filter((t) => {
                const { on } = rollGore(surface, band.from, pointAt(segment, t));
                return on >= band.from && on <= band.to;
              })
              .map((t) => ({ segment, t })),
          );
          if (crossed.length === 0 || onlyTouches(asked, side, segments)) return [];
          return crossed.map(({ segment, t }) => missOf(onNeighbour(asked, side, segment, t), finder));
        });
      }),
    );
  });
  if (names.length === 0) return undefined;
  return {
    position: most(
      misses.map(({ position }) => position),
      0,
    ),
    tangentDeg: most(
      misses.map(({ tangentDeg }) => tangentDeg),
      0,
    ),
    crossings: misses.length,
  };
}

// A line drawn with a pen as the area it covers. Source: SVG 2, 13.7 'Computing the shape of an element's stroke':
// what is swept along each segment, with joins between segments and caps at ends.
import { arcAbout } from './arc.ts';
import { type Contour, line, polygon, type Segment, type Shape } from './contour.ts';
import { leftOf, normalAt } from './curve-beside.ts';
import { type Dashes, dashed } from './dashes.ts';
import { add, cross, distance, dot, type Point, scale, subtract, unit } from './point.ts';
import { filledShapes } from './regions.ts';
import { directionAt } from './segment.ts';
import { disc, type EndNormals, type Sweep, strips, turnedLeft } from './stroke-strips.ts';

export type Cap = 'butt' | 'round' | 'square';
export type Join = 'miter' | 'round' | 'bevel';

/** How a line is drawn. Lengths are in the line's own unit. */
export interface Pen {
  readonly width: number;
  readonly cap: Cap;
  readonly join: Join;
  /** Longest miter over the width; a longer one becomes a bevel. */
  readonly miterLimit: number;
  readonly dashes?: Dashes;
}

/**
 * The areas that a pen covers along contours, in their own unit. Curves come out as curves within the tolerance; where a
 * curve bends more tightly than the pen is wide, its inner side may come out in chords within it.
 */
export function strokedShapes(contours: readonly Contour[], pen: Pen, tolerance: number): Shape[] {
  const drawn = contours.flatMap((contour) =>
    pen.dashes ? dashed(contour, pen.dashes, pen.width) : [contour],
  );
  const sweep = { half: pen.width / 2, tolerance };
  return filledShapes(
    drawn.flatMap((contour) => swept(contour, pen, sweep)),
    'nonzero',
    tolerance,
  );
}

const hasLength = (s: Segment): boolean =>
  distance(s.from, s.to) > 0 || (s.kind === 'cubic' && distance(s.from, s.c1) + distance(s.from, s.c2) > 0);

function swept({ closed, segments: all }: Contour, pen: Pen, sweep: Sweep): Contour[] {
  const segments = all.filter(hasLength);
  const at = all[0]?.from;
  if (segments.length === 0) return at ? dotted(at, pen.cap, sweep.half) : [];
  const normals = sharedNormals(segments, closed, sweep);
  const along = segments.flatMap((s, i) => {
    const ends = normals[i];
    return ends ? strips(s, ends, sweep) : [];
  });
  const joins = segments.flatMap((s, i) => {
    const next = segments[i + 1] ?? (closed ? segments[0] : undefined);
    return next ? joined(s, next, pen, sweep) : [];
  });
  return [...along, ...joins, ...(closed ? [] : caps(segments, pen.cap, sweep.half))];
}

/** A line of no length: a dot by its caps, lying as the axes do. Source: SVG 2, 13.5.3 'stroke-linecap'. */
function dotted(at: Point, cap: Cap, half: number): Contour[] {
  if (cap === 'butt') return [];
  if (cap === 'round') return [disc(at, half)];
  const corner = (x: number, y: number): Point => ({ x: at.x + x * half, y: at.y + y * half });
  return [polygon([corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)])];
}

/** The angle by which the way turns from one segment to the next. */
function turnBetween(before: Segment, after: Segment): number {
  const [u, v] = [directionAt(before, 1), directionAt(after, 0)];
  return Math.atan2(cross(u, v), dot(u, v));
}

/** A turn that opens less than a tenth of the tolerance at the pen's edge is rounding, not a corner. */
const isSmooth = (turn: number, { half, tolerance }: Sweep): boolean =>
  Math.abs(turn) * half < tolerance / 10;

/** Normals at the ends of each segment; two that go on smoothly share the mean of theirs, so that no step shows. */
function sharedNormals(segments: readonly Segment[], closed: boolean, sweep: Sweep): EndNormals[] {
  const shared = (before: Segment | undefined, after: Segment | undefined): Point | undefined =>
    before && after && isSmooth(turnBetween(before, after), sweep)
      ? unit(add(normalAt(before, 1), normalAt(after, 0)))
      : undefined;
  return segments.map((s, i) => ({
    start: shared(segments[i - 1] ?? (closed ? segments.at(-1) : undefined), s) ?? normalAt(s, 0),
    end: shared(s, segments[i + 1] ?? (closed ? segments[0] : undefined)) ?? normalAt(s, 1),
  }));
}

/** What fills the outer side of the corner between two segments. */
function joined(before: Segment, after: Segment, pen: Pen, sweep: Sweep): Contour[] {
  const turn = turnBetween(before, after);
  if (isSmooth(turn, sweep)) return [];
  const { half } = sweep;
  const at = before.to;
  // The outer side is to the right of a way that turns left.
  const side = turn > 0 ? -half : half;
  const [a, b] = [normalAt(before, 1), normalAt(after, 0)].map((n) => add(at, scale(n, side)));
  if (!a || !b) return [];
  if (pen.join === 'round') {
    return [
      turnedLeft({
        closed: true,
        segments: [line(at, a), ...ending(arcAbout(at, a, turn), a, b), line(b, at)],
      }),
    ];
  }
  // Source: SVG 2, 13.5.5 'stroke-miterlimit': miter length over width is 1 / sin(half the angle between the segments).
  const ratio = 1 / Math.cos(turn / 2);
  const tip = add(at, scale(unit(subtract(add(a, b), scale(at, 2))), half * ratio));
  const isMitered = pen.join === 'miter' && ratio > 0 && ratio <= pen.miterLimit;
  return [turnedLeft(polygon(isMitered ? [at, a, tip, b] : [at, a, b]))];
}

/** The same curves with their first and last place exactly where they meet what is beside them. */
const ending = (curves: readonly Segment[], from: Point, to: Point): Segment[] =>
  curves.map((s, i) => ({
    ...s,
    from: i === 0 ? from : s.from,
    to: i === curves.length - 1 ? to : s.to,
  }));

function caps(segments: readonly Segment[], cap: Cap, half: number): Contour[] {
  const [first, last] = [segments[0], segments.at(-1)];
  if (cap === 'butt' || !first || !last) return [];
  return [
    capAt(first.from, scale(unit(directionAt(first, 0)), -1), cap, half),
    capAt(last.to, unit(directionAt(last, 1)), cap, half),
  ];
}

/** The cap past an end, `out` being the direction it looks. */
function capAt(at: Point, out: Point, cap: Cap, half: number): Contour {
  const [side, ahead] = [scale(leftOf(out), half), scale(out, half)];
  const [a, b] = [subtract(at, side), add(at, side)];
  if (cap === 'square') return polygon([a, add(a, ahead), add(b, ahead), b]);
  return { closed: true, segments: [...ending(arcAbout(at, a, Math.PI), a, b), line(b, a)] };
}

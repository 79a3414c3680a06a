// A side that winds: a smooth line from foot to lip that departs from the line up the wall, the same at both ends of a piece.
import { moveContour } from '../geometry/affine.ts';
import { type Contour, cubic, line, reverseContour } from '../geometry/contour.ts';
import { mapSegment } from '../geometry/fit.ts';
import { dot, type Point, subtract } from '../geometry/point.ts';
import { partOf } from '../geometry/segment.ts';
import { fitTolerance } from '../geometry/tolerance.ts';
import { type FlatWall, girthAt, levelAngle, toFlat, turnMotion } from './flat-wall.ts';

/**
 * A winding line as a uniform cubic B-spline over the height: control turns at even steps up the wall. It never runs level
 * or back down, goes on straight past its ends, and its second derivative is nowhere more than the largest second
 * difference of the control turns (C. de Boor, A Practical Guide to Splines, 1978, ch. IX-X, from memory).
 */
export interface Winding {
  /** Height of the first control turn, mm along the wall, and the step to the next. */
  readonly from: number;
  readonly step: number;
  readonly turns: readonly number[];
  /** How far the piece goes on past this line one turn on, in turns: the overlap. */
  readonly lap: number;
}

/** Control turn `k`; past the ends the line goes on straight. */
function control({ turns }: Winding, k: number): number {
  const last = turns.length - 1;
  const [first, second = first] = turns as readonly [number, number?];
  if (k < 0) return first + k * (second - first);
  if (k <= last) return turns[k] ?? first;
  const end = turns[last] ?? first;
  return end + (k - last) * (end - (turns[last - 1] ?? end));
}

/** The four turns that make the cubic between control heights `k` and `k + 1` (its Bézier ordinates). */
function ordinates(winding: Winding, k: number): readonly [number, number, number, number] {
  const [a, b, c, d] = [-1, 0, 1, 2].map((by) => control(winding, k + by)) as [
    number,
    number,
    number,
    number,
  ];
  return [(a + 4 * b + c) / 6, (2 * b + c) / 3, (b + 2 * c) / 3, (b + 4 * c + d) / 6];
}

/** The turn of a winding line at a height. */
export function windingTurn(winding: Winding, along: number): number {
  const at = (along - winding.from) / winding.step;
  const k = Math.floor(at);
  const t = at - k;
  const [p, q, r, s] = ordinates(winding, k);
  const u = 1 - t;
  return u * u * u * p + 3 * u * u * t * q + 3 * u * t * t * r + t * t * t * s;
}

/** A turn this small is no bend: a millionth of a mm. */
const level = 1e-11;

/** Runs of steps over which the line is one cubic: those that go straight on are one. */
function runsOf(winding: Winding, first: number, past: number): readonly (readonly [number, number])[] {
  const isBent = (k: number) =>
    Math.abs(control(winding, k - 1) - 2 * control(winding, k) + control(winding, k + 1)) > level;
  const runs: [number, number][] = [];
  for (let k = first; k < past; k++) {
    const before = runs.at(-1);
    // The cubic of a step hangs by the bends at both its ends, that before it by the one they share.
    if (before && ![k - 1, k, k + 1].some(isBent)) before[1] = k + 1;
    else runs.push([k, k + 1]);
  }
  return runs;
}

/** The line on the sheet, from one height up to another. */
export function windingLine(wall: FlatWall, winding: Winding, from: number, to: number): Contour {
  const around = girthAt(wall, wall.reference);
  const place = ({ x, y }: Point) => ({ turn: x / around, along: y });
  const map = {
    point: (p: Point) => toFlat(wall, place(p)),
    displacement: (at: Point, by: Point): Point => {
      const { turn, along } = place(at);
      const angle = levelAngle(wall, turn);
      const [across, up] = [(by.x * girthAt(wall, along)) / around, by.y];
      return {
        x: across * Math.cos(angle) + up * Math.sin(angle),
        y: across * Math.sin(angle) - up * Math.cos(angle),
      };
    },
  };
  const [first, last] = [from, to].map((along) => (along - winding.from) / winding.step) as [number, number];
  const point = (turn: number, at: number): Point => ({
    x: turn * around,
    y: winding.from + at * winding.step,
  });
  // A height within rounding of a control height is that one.
  const segments = runsOf(winding, Math.floor(first + 1e-9), Math.ceil(last - 1e-9)).map(([k, end]) => {
    const [p, q, r, s] = ordinates(winding, k);
    const whole =
      end > k + 1
        ? line(point(p, k), point(ordinates(winding, end - 1)[3], end))
        : cubic(point(p, k), point(q, k + 1 / 3), point(r, k + 2 / 3), point(s, k + 1));
    const part = (at: number) => Math.max(0, Math.min(1, (at - k) / (end - k)));
    const [t0, t1] = [part(first), part(last)];
    return t0 > 0 || t1 < 1 ? partOf(whole, t0, t1) : whole;
  });
  return { closed: false, segments: segments.flatMap((s) => mapSegment(map, s, fitTolerance).segments) };
}

/** Both sides of a piece that winds, from foot to lip: the same line, so that they interlock. */
export function windingSides(
  wall: FlatWall,
  winding: Winding,
  { from, to }: { readonly from: number; readonly to: number },
): { readonly left: Contour; readonly right: Contour } {
  const left = windingLine(wall, winding, from, to);
  return { left, right: moveContour(turnMotion(wall, 1 + winding.lap), left) };
}

/** The outline between winding sides and level ends: foot to the right, up the right side, back, and down the left. */
export const windingOutline = (
  { left, right }: ReturnType<typeof windingSides>,
  foot: Contour,
  lip: Contour,
): Contour => ({
  closed: true,
  segments: [...foot.segments, ...right.segments, ...lip.segments, ...reverseContour(left).segments],
});

/** A winding piece made wider by so much across at each side, where it is narrowest up the wall. */
export function widened(
  winding: Winding,
  wall: FlatWall,
  { from, to }: { readonly from: number; readonly to: number },
  by: number,
): Winding {
  const { turns, step } = winding;
  const least = Math.min(girthAt(wall, from), girthAt(wall, to));
  const most = Math.max(girthAt(wall, from), girthAt(wall, to));
  // Where the line leans, so much across is less beside it.
  const leans = turns.slice(1).map((turn, k) => ((turn - (turns[k] ?? turn)) * most) / step);
  const turn = (by * Math.hypot(1, Math.max(0, ...leans.map(Math.abs)))) / least;
  return { ...winding, turns: turns.map((at) => at - turn), lap: winding.lap + 2 * turn };
}

/** How far a contour lies to the right of the line up the wall at a turn, on the sheet, mm. */
export function reachFrom(
  wall: FlatWall,
  turn: number,
  contour: Contour,
): { readonly least: number; readonly most: number } {
  const angle = levelAngle(wall, turn);
  const right = { x: Math.cos(angle), y: Math.sin(angle) };
  const on = toFlat(wall, { turn, along: wall.reference });
  const points = contour.segments.flatMap((s) => [s.from, s.to, ...(s.kind === 'cubic' ? [s.c1, s.c2] : [])]);
  const away = points.map((p) => dot(right, subtract(p, on)));
  return { least: Math.min(...away), most: Math.max(...away) };
}

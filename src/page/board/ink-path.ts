// Path data in numbers drawn on a canvas. Every shape is led along on the canvas itself, filled and stroked in one go: paths kept as objects
// and filled all first took half as long again while they were new.
import { type Ink, inkCodes, pointsOf } from '../../job/view/ink.ts';

/** What a shape is to be filled and stroked with; a canvas, or what stands for one. */
export type InkPen = Pick<
  CanvasRenderingContext2D,
  'beginPath' | 'moveTo' | 'lineTo' | 'bezierCurveTo' | 'fill' | 'stroke'
>;

export interface InkStyle {
  readonly filled: boolean;
  readonly stroked: boolean;
  /** How far what is drawn may be from a curve, mm. */
  readonly within: number;
}

/** Lines go back to where they began instead of being closed: a browser measures the whole path each time one is closed. */
export function drawInk(pen: InkPen, ink: Ink, style: InkStyle): void {
  const { codes, shapes } = ink;
  const place = new Float64Array(2);
  let next = 0;
  for (let i = 0; i < shapes.length; i++) {
    pen.beginPath();
    const codesOfShape = { from: shapes[i] ?? 0, to: shapes[i + 1] ?? codes.length };
    next = leadAlong(pen, ink, { ...codesOfShape, next, within: style.within, place });
    if (style.filled) pen.fill('evenodd');
    if (style.stroked) pen.stroke();
  }
}

/** All shapes of an ink as one path, neither filled nor stroked. */
export function traceInk(pen: InkPen, ink: Ink, within: number): void {
  leadAlong(pen, ink, { from: 0, to: ink.codes.length, next: 0, within, place: new Float64Array(2) });
}

interface Stretch {
  /** Of the commands. */
  readonly from: number;
  readonly to: number;
  /** Where in the points their own begin. */
  readonly next: number;
  readonly within: number;
  /** Room for a point. */
  readonly place: Float64Array;
}

/** Leads the pen along commands; gives where their points end. */
function leadAlong(
  pen: InkPen,
  { codes, points }: Ink,
  { from, to, next: first, within, place }: Stretch,
): number {
  let next = first;
  let start = first;
  for (let i = from; i < to; i++) {
    const code = codes[i] ?? 0;
    if (code === inkCodes.cubic) drawCubic(pen, points, next, within, place);
    else if (code === inkCodes.line) pen.lineTo(points[next] ?? 0, points[next + 1] ?? 0);
    else if (code === inkCodes.close) pen.lineTo(points[start] ?? 0, points[start + 1] ?? 0);
    else {
      start = next;
      pen.moveTo(points[next] ?? 0, points[next + 1] ?? 0);
    }
    next += 2 * (pointsOf[code] ?? 0);
  }
  return next;
}

/** Up to so many chords a canvas draws in two thirds of the time that the curve takes it. */
const mostChords = 8;

/** The curve by chords, or itself where many are asked for. Its points begin at `next`, after the one that it starts from. */
function drawCubic(
  pen: InkPen,
  points: Ink['points'],
  next: number,
  within: number,
  place: Float64Array,
): void {
  const [toX, toY] = [points[next + 4] ?? 0, points[next + 5] ?? 0];
  const count = chordsAsked(points, next, within);
  if (count > mostChords) {
    const [bx, by, cx, cy] = points.subarray(next, next + 4);
    pen.bezierCurveTo(bx ?? 0, by ?? 0, cx ?? 0, cy ?? 0, toX, toY);
    return;
  }
  for (let i = 1; i < count; i++) {
    putOnCubic(points, next, i, count, place, 0);
    pen.lineTo(place[0] ?? 0, place[1] ?? 0);
  }
  pen.lineTo(toX, toY);
}

/**
 * How many chords between places of a cubic at even steps of its parameter are asked for so that none is further from it than `within`. None is
 * further than an eighth of the greatest second derivative times the step squared; that derivative is at most six times the larger second
 * difference of its points. Source: the error of linear interpolation, any text on numerical analysis; from memory.
 */
export function chordsAsked(points: Ink['points'], next: number, within: number): number {
  const bx = points[next] ?? 0;
  const by = points[next + 1] ?? 0;
  const cx = points[next + 2] ?? 0;
  const cy = points[next + 3] ?? 0;
  const ux = (points[next - 2] ?? 0) - 2 * bx + cx;
  const uy = (points[next - 1] ?? 0) - 2 * by + cy;
  const vx = bx - 2 * cx + (points[next + 4] ?? 0);
  const vy = by - 2 * cy + (points[next + 5] ?? 0);
  const bend = Math.sqrt(Math.max(ux * ux + uy * uy, vx * vx + vy * vy));
  return Math.ceil(Math.sqrt((0.75 * bend) / within));
}

/** Puts the place after `i` of `count` even steps of a cubic's parameter at `at` of `to`. All are whole numbers: any other would be made an object of. */
export function putOnCubic(
  points: Ink['points'],
  next: number,
  i: number,
  count: number,
  to: Float64Array,
  at: number,
): void {
  const t = i / count;
  const u = 1 - t;
  const a = u * u * u;
  const b = 3 * u * u * t;
  const c = 3 * u * t * t;
  const d = t * t * t;
  for (let k = 0; k < 2; k++)
    to[at + k] =
      a * (points[next + k - 2] ?? 0) +
      b * (points[next + k] ?? 0) +
      c * (points[next + k + 2] ?? 0) +
      d * (points[next + k + 4] ?? 0);
}

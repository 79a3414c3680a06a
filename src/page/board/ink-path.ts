// Path data in numbers drawn on a canvas. Every shape is led along on the canvas itself, filled and stroked in one go: paths kept as objects
// and filled all first took half as long again while they were new.
import { type Ink, inkCodes, pointsOf } from '../../job/ink.ts';

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
export function drawInk(pen: InkPen, { codes, points, shapes }: Ink, style: InkStyle): void {
  let next = 0;
  for (const [i, from] of shapes.entries()) {
    const to = shapes[i + 1] ?? codes.length;
    pen.beginPath();
    next = leadAlong(pen, codes.subarray(from, to), points, { next, within: style.within });
    if (style.filled) pen.fill('evenodd');
    if (style.stroked) pen.stroke();
  }
}

/** All shapes of an ink as one path, neither filled nor stroked. */
export function traceInk(pen: InkPen, { codes, points }: Ink, within: number): void {
  leadAlong(pen, codes, points, { next: 0, within });
}

/** Leads the pen along commands whose points begin at `next`; gives where those end. */
function leadAlong(
  pen: InkPen,
  codes: Ink['codes'],
  points: Ink['points'],
  { next: first, within }: { readonly next: number; readonly within: number },
): number {
  let next = first;
  let [startX, startY] = [0, 0];
  let [x, y] = [0, 0];
  const of = (i: number): number => points[next + i] ?? 0;
  for (const code of codes) {
    if (code === inkCodes.cubic) drawCubic(pen, [x, y, of(0), of(1), of(2), of(3), of(4), of(5)], within);
    const taken = 2 * (pointsOf[code] ?? 0);
    if (code === inkCodes.close) [x, y] = [startX, startY];
    else [x, y] = [of(taken - 2), of(taken - 1)];
    if (code === inkCodes.move) {
      [startX, startY] = [x, y];
      pen.moveTo(x, y);
    } else if (code !== inkCodes.cubic) pen.lineTo(x, y);
    next += taken;
  }
  return next;
}

type Cubic = readonly [number, number, number, number, number, number, number, number];

/** Up to so many chords a canvas draws in two thirds of the time that the curve takes it. */
const mostChords = 8;

/**
 * Chords between places of a cubic at even steps of its parameter, or the curve itself where many are asked for. None is further from it than an
 * eighth of the greatest second derivative times the step squared; that derivative is at most six times the larger second difference of its
 * points. Source: the error of linear interpolation, any text on numerical analysis; from memory.
 */
function drawCubic(pen: InkPen, [ax, ay, bx, by, cx, cy, dx, dy]: Cubic, within: number): void {
  const [ux, uy, vx, vy] = [ax - 2 * bx + cx, ay - 2 * by + cy, bx - 2 * cx + dx, by - 2 * cy + dy];
  const bend = Math.sqrt(Math.max(ux * ux + uy * uy, vx * vx + vy * vy));
  const count = Math.ceil(Math.sqrt((0.75 * bend) / within));
  if (count > mostChords) {
    pen.bezierCurveTo(bx, by, cx, cy, dx, dy);
    return;
  }
  for (let i = 1; i < count; i++) {
    const t = i / count;
    const u = 1 - t;
    const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    pen.lineTo(a * ax + b * bx + c * cx + d * dx, a * ay + b * by + c * cy + d * dy);
  }
  pen.lineTo(dx, dy);
}

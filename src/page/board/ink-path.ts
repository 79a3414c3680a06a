// Path data in numbers as paths of the canvas.
import { betweenShapes, type Ink, inkCodes, pointsOf } from '../../job/ink.ts';

/** What is drawn of a group: the edges of all its shapes at once, and the shapes one by one, which a canvas fills in half the time. */
export interface InkPaths {
  readonly lines: Path2D;
  readonly shapes: readonly Path2D[];
}

/** Path data as it stands, its shapes parted as those of a flat group are. */
export const dataPaths = (data: string): InkPaths =>
  together(data.split(betweenShapes).map((d) => new Path2D(d)));

function together(shapes: readonly Path2D[]): InkPaths {
  const [only] = shapes;
  if (only && shapes.length === 1) return { lines: only, shapes };
  const lines = new Path2D();
  for (const shape of shapes) lines.addPath(shape);
  return { lines, shapes };
}

/**
 * Curves are followed by chords `within` mm, which a canvas fills and strokes in two thirds of the time. Lines go back to where they began
 * instead of being closed: a browser measures the whole path each time one is closed.
 */
export function inkPaths({ codes, points, shapes }: Ink, within: number): InkPaths {
  let next = 0;
  const drawn = Array.from(shapes, (from, i) => {
    const path = new Path2D();
    next = drawCommands(path, codes.subarray(from, shapes[i + 1]), points, { next, within });
    return path;
  });
  return together(drawn);
}

/** Draws commands whose points begin at `next`; gives where those end. */
function drawCommands(
  path: Path2D,
  codes: Ink['codes'],
  points: Ink['points'],
  { next: first, within }: { readonly next: number; readonly within: number },
): number {
  let next = first;
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
  return next;
}

type Cubic = readonly [number, number, number, number, number, number, number, number];

/**
 * Chords between places of a cubic at even steps of its parameter. None is further from it than an eighth of the greatest second
 * derivative times the step squared; that derivative is at most six times the larger second difference of its points. Source: the error
 * of linear interpolation, any text on numerical analysis; from memory.
 */
function drawChords(path: Path2D, [ax, ay, bx, by, cx, cy, dx, dy]: Cubic, within: number): void {
  const bend = Math.max(
    Math.hypot(ax - 2 * bx + cx, ay - 2 * by + cy),
    Math.hypot(bx - 2 * cx + dx, by - 2 * cy + dy),
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

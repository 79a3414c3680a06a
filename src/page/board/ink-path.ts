// Path data in numbers as a path of the canvas.
import { type Ink, inkCodes } from '../../job/ink.ts';

/** Lines go back to where they began instead of being closed: a browser measures the whole path each time one is closed. */
export function inkPath({ codes, points }: Ink): Path2D {
  const path = new Path2D();
  let next = 0;
  let [startX, startY] = [0, 0];
  const number = (): number => points[next++] ?? 0;
  for (const code of codes) {
    if (code === inkCodes.cubic)
      path.bezierCurveTo(number(), number(), number(), number(), number(), number());
    else if (code === inkCodes.line) path.lineTo(number(), number());
    else if (code === inkCodes.close) path.lineTo(startX, startY);
    else {
      [startX, startY] = [number(), number()];
      path.moveTo(startX, startY);
    }
  }
  return path;
}

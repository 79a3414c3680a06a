// Path data in numbers as a path of the canvas.
import { type Ink, inkCodes } from '../../job/ink.ts';

export function inkPath({ codes, points }: Ink): Path2D {
  const path = new Path2D();
  let next = 0;
  const number = (): number => points[next++] ?? 0;
  for (const code of codes) {
    if (code === inkCodes.cubic)
      path.bezierCurveTo(number(), number(), number(), number(), number(), number());
    else if (code === inkCodes.line) path.lineTo(number(), number());
    else if (code === inkCodes.move) path.moveTo(number(), number());
    else path.closePath();
  }
  return path;
}

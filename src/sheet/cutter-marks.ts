// Printed marks that a cutter finds its place by: one at each corner of the page.
import type { DrawnGroup } from '../drawing/drawing.ts';
import { type Contour, polyline } from '../geometry/contour.ts';

/** Length of an arm, mm; distance of the marks from the page's edges where no margin gives it. Common practice, no source. */
const arm = { corners: 8, crosses: 3 } as const;
const inset = 4;

/** At the corner of a page: `right` and `down` lead into it. */
interface Corner {
  readonly x: number;
  readonly y: number;
  readonly right: 1 | -1;
  readonly down: 1 | -1;
}

const strokesAt = ({ x, y, right, down }: Corner, kind: 'corners' | 'crosses'): Contour[] => {
  const length = arm[kind];
  if (kind === 'corners')
    return [
      polyline([
        { x: x + right * length, y },
        { x, y },
        { x, y: y + down * length },
      ]),
    ];
  return [
    polyline([
      { x: x - length, y },
      { x: x + length, y },
    ]),
    polyline([
      { x, y: y - length },
      { x, y: y + length },
    ]),
  ];
};

/** The marks on a page of so many mm, in the strip along its edges that the cutter keeps clear. */
export function cutterMarks(
  kind: 'none' | 'crosses' | 'corners',
  { width, height }: { readonly width: number; readonly height: number },
  margin: number,
): readonly DrawnGroup[] {
  if (kind === 'none') return [];
  const at = Math.max(margin / 2, inset);
  const corners: readonly Corner[] = [
    { x: at, y: at, right: 1, down: 1 },
    { x: width - at, y: at, right: -1, down: 1 },
    { x: width - at, y: height - at, right: -1, down: -1 },
    { x: at, y: height - at, right: 1, down: -1 },
  ];
  return [
    {
      role: 'register',
      paths: corners.flatMap((corner, i) =>
        strokesAt(corner, kind).map((stroke, k) => ({
          id: `cutter-mark-${i + 1}${k === 0 ? '' : `-${k + 1}`}`,
          contours: [stroke],
        })),
      ),
    },
  ];
}

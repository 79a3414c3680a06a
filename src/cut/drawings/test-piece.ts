// The test piece of a machine: a square and two scales, to be measured with a steel rule.
import type { DrawWords } from '../../drawing/words.ts';
import { shifted } from '../../geometry/affine.ts';
import { boxCorners } from '../../geometry/box.ts';
import { type Contour, polygon, polyline } from '../../geometry/contour.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { type GuideSheet, guideSheet } from '../guide/guide-sheet.ts';
import { wordSize } from '../guide/marks.ts';

/** Side of the square, mm. */
const side = 100;

/** Distance of ticks, of long ones, and their lengths, mm. */
const ticks = { every: 10, longEvery: 50, short: 4, long: 8 };

/** Room for words beside the scales, and bare border, mm. */
const room = 16;
const margin = 6;

/** A level scale of so many mm from a point on, its ticks above it. */
function scaleAcross({ x, y }: Point, length: number): Contour[] {
  const count = Math.round(length / ticks.every);
  return [
    polyline([
      { x, y },
      { x: x + length, y },
    ]),
    ...Array.from({ length: count + 1 }, (_, i) => {
      const at = x + i * ticks.every;
      const high = (i * ticks.every) % ticks.longEvery === 0 ? ticks.long : ticks.short;
      return polyline([
        { x: at, y },
        { x: at, y: y - high },
      ]);
    }),
  ];
}

const upright = (contour: Contour): Contour => {
  const swap = ({ x, y }: Point): Point => ({ x: y, y: x });
  return polyline(
    [contour.segments[0]?.from, ...contour.segments.map(({ to }) => to)].flatMap((p) => (p ? [swap(p)] : [])),
  );
};

/** Figures at the long ticks, beside the scales. */
function figures(length: number, words: DrawWords): (readonly Contour[])[] {
  const at = Array.from({ length: Math.floor(length / ticks.longEvery) + 1 }, (_, i) => i * ticks.longEvery);
  const above = -ticks.long - 1.5;
  return at.flatMap((mm) => {
    const drawn = words(String(mm), wordSize);
    const width = drawn.length === 0 ? 0 : tightBox(drawn).maxX;
    return [
      shifted(drawn, { x: mm - width / 2, y: above }),
      ...(mm === 0 ? [] : [shifted(drawn, { x: above - width, y: mm + wordSize / 3 })]),
    ];
  });
}

/** What is cut of it, and the same with figures and words; scales of `length`, mm. */
export function testPiece(length: number, notes: readonly string[], words: DrawWords): GuideSheet {
  const across = scaleAcross({ x: 0, y: 0 }, length);
  const up = across.map(upright);
  const square = polygon(boxCorners({ minX: 12, minY: 12, maxX: 12 + side, maxY: 12 + side }));
  const path = (contour: Contour) => ({ contours: [contour] });
  return guideSheet({
    blade: [
      { role: 'artwork', layer: 'scales', paths: [...across, ...up].map(path) },
      { role: 'outline', paths: [{ id: 'square', contours: [square] }] },
    ],
    guide: [
      {
        role: 'note',
        paths: figures(length, words)
          .filter((contours) => contours.length > 0)
          .map((contours) => ({ contours })),
      },
    ],
    room: { minX: -room, minY: -room, maxX: length + margin, maxY: length + margin },
    margin,
    notes,
    meanings: [{ role: 'outline', says: `square of ${side} mm` }],
    words,
  });
}

// The handle beside the piece: its own width to turn 0, at the distance that is kept bare.
import { describe, expect, test } from 'vitest';
import { handleHalves } from '../../../src/cut/guide/handle-mark.ts';
import { tightBox } from '../../../src/geometry/measure.ts';
import { flatWall, girthAt, toWall } from '../../../src/unroll/flat-wall.ts';
import { templateOf } from '../../../src/unroll/template.ts';
import { expectWithin } from '../../closeness.ts';

const [spans, keepOff] = [28, 6];
const pieceOn = (sine: number) =>
  templateOf(flatWall(41, sine, 45), {
    band: { from: 4, to: 93 },
    trim: { lip: 3, foot: 3 },
    overlap: 6,
    clear: spans / 2 + keepOff,
  });

test('on an upright wall it is two rectangles, half the handle wide, what is kept bare away from the piece', () => {
  const girth = 2 * Math.PI * 41;
  const boxes = handleHalves(pieceOn(0), spans).map(({ contours }) => tightBox(contours));
  const [left, right] = boxes;
  expectWithin(left?.minX ?? 0, -girth / 2, 1e-9);
  expectWithin(left?.maxX ?? 0, -girth / 2 + spans / 2, 1e-9);
  expectWithin(right?.minX ?? 0, girth / 2 - spans / 2, 1e-9);
  expectWithin(right?.maxX ?? 0, girth / 2, 1e-9);
  // The reference height is at y 0; the piece runs 3 mm past its band at either end.
  expectWithin(left?.minY ?? 0, 45 - 96, 1e-9);
  expectWithin(left?.maxY ?? 0, 45 - 1, 1e-9);
});

describe('on a taper', () => {
  test.each([0.08, -0.15])('of sine %d its middle is turn 0, its side half its width away', (sine) => {
    const template = pieceOn(sine);
    const [left, right] = handleHalves(template, spans);
    for (const [shape, middle, sign] of [
      [left, 0, 1],
      [right, 1, -1],
    ] as const) {
      const corners = (shape?.contours[0]?.segments ?? []).map(({ from }) => toWall(template.wall, from));
      const onMiddle = corners.filter(({ turn }) => Math.abs(turn - middle) < 1e-9);
      expect(onMiddle.length).toBe(2);
      const ends = corners.filter(({ turn }) => sign * (turn - middle) > 0.03);
      expect(ends.length).toBeGreaterThanOrEqual(2);
      for (const { turn, along } of ends)
        expectWithin(Math.abs(turn - middle) * girthAt(template.wall, along), spans / 2, 0.06);
    }
  });
});

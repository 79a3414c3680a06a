// Numbers beside marks that lie close together.
import { expect, test } from 'vitest';
import { type Box, boxesMeet, grow } from '../../src/geometry/box.ts';
import { marksText } from '../../src/picture/marks.ts';

test('two numbers never stand so close that they are read as one', () => {
  // A number as wide as six tenths of its height a digit.
  const put = (text: string, { x, y }: { readonly x: number; readonly y: number }) => ({
    text: `[${text} ${x} ${y}]`,
    box: { minX: x - 0.3 * text.length, maxX: x + 0.3 * text.length, minY: y - 0.7, maxY: y },
  });
  const marks = [3, 4, 5].map((number) => ({
    number,
    at: { x: number < 5 ? 10.8 : 10, y: 10 },
    rule: 'sharp',
  }));
  const placed = [...marksText(marks, put, 1).matchAll(/\[(\d) (\S+) (\S+)\]/g)].map(
    ([, text = '', x, y]): Box => put(text, { x: Number(x), y: Number(y) }).box,
  );
  expect(placed).toHaveLength(3);
  placed.forEach((one, i) => {
    for (const other of placed.slice(i + 1)) expect(boxesMeet(grow(one, 0.49), other)).toBe(false);
  });
});

import { expect, test } from 'vitest';
import { marksApart } from '../../src/page/board/marks-apart.ts';

const at = (of: string, x: number, y = 0) => ({ of, at: { x, y } });

test('marks that lie clear of one another stay as they are', () => {
  const marks = [at('a', 0), at('b', 31), at('c', 0, 31)];
  expect(marksApart(marks, 30)).toEqual(marks.map((mark) => ({ ...mark, more: 0 })));
});

test('the first of those that lie on one another stands for all, each counted once and with the nearest', () => {
  const shown = marksApart([at('a', 0), at('b', 10), at('c', 60), at('d', 40), at('e', 30)], 30);
  expect(shown).toEqual([
    { ...at('a', 0), more: 2 },
    { ...at('c', 60), more: 1 },
  ]);
  expect(marksApart([], 30)).toEqual([]);
});

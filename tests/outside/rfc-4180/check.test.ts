import { expect, test } from 'vitest';
import { readList } from '../../../src/job/typed/read-list.ts';
import examples from './values.json' with { type: 'json' };

test.each(examples)('rule $rule: its example gives its cells', ({ text, rows }) => {
  const list = readList(`one,two,three\r\n${text}`, 'list.csv');
  expect(list.rows.map(({ cells }) => cells)).toEqual(rows);
  expect(list.refused).toEqual([]);
});

test("rule 3: a header that names three columns alike is refused, for it can't be filled from", () => {
  expect(() => readList('field_name,field_name,field_name\r\naaa,bbb,ccc\r\n', 'list.csv')).toThrow(
    'list.csv:1: "field_name" names two columns',
  );
});

test('rule 4: spaces are part of a cell', () => {
  expect(readList('one,two\r\n aaa , bbb\r\n', 'list.csv').rows[0]?.cells).toEqual([' aaa ', ' bbb']);
});

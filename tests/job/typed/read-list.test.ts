import { describe, expect, test } from 'vitest';
import { readList } from '../../../src/job/typed/read-list.ts';

const cellsOf = (text: string) => readList(text, 'list.csv').rows.map(({ cells }) => cells);

describe('a list as spreadsheets save it', () => {
  test('has a byte order mark, Windows line ends, semicolons and empty lines', () => {
    const text = '\uFEFFname;girth\r\nAnna;"270,2"\r\n;;\r\n\r\nBo;269\r\n';
    const list = readList(text, 'list.csv');
    expect(list.columns).toEqual(['name', 'girth']);
    expect(list.rows).toEqual([
      { line: 2, cells: ['Anna', '270,2'] },
      { line: 5, cells: ['Bo', '269'] },
    ]);
    expect(list.hasDecimalComma).toBe(true);
  });

  test('tells by its first line what sets cells apart, whatever stands in quotes there', () => {
    expect(cellsOf('a\tb\n1;2,3\t4')).toEqual([['1;2,3', '4']]);
    expect(cellsOf('"a;b;c;d",e\n1,2')).toEqual([['1', '2']]);
    expect(cellsOf('sep=|\r\na|b\r\n1|2')).toEqual([['1', '2']]);
  });

  test('may have one column, and old line ends', () => {
    expect(cellsOf('name\rAnna\rBo')).toEqual([['Anna'], ['Bo']]);
  });

  test('counts lines past a cell of several', () => {
    const { rows } = readList('name,girth\r\n"Anna\r\nand\r\nBo",270\r\nCy,269\r\n', 'list.csv');
    expect(rows.map(({ line }) => line)).toEqual([2, 5]);
  });

  test('may have empty cells past its columns', () => {
    expect(cellsOf('name,girth,,\nAnna,270,,\n')).toEqual([['Anna', '270']]);
  });
});

describe('what is wrong with a list', () => {
  test('a row with too many or too few cells is left out by its line, the others stay', () => {
    const list = readList('name,girth\nAnna,270,5\nBo,269\nCy\n', 'list.csv');
    expect(list.rows.map(({ line }) => line)).toEqual([3]);
    expect(list.refused.map(({ line }) => line)).toEqual([2, 4]);
    expect(list.refused[0]?.says).toMatch(/^has 3 cells, and the list has 2 columns; /);
  });

  test.each([
    [
      'a quote that is not closed',
      'a,b\n1,2\n3,"4\n5,6\n',
      /^list\.csv:3: a cell begins with a double quote/,
    ],
    ['words after a closing quote', 'a,b\n"1"2,3\n', /^list\.csv:2: a cell begins with a double quote/],
    ['nothing', '', /^list\.csv:1: has no columns/],
    ['a column named twice', 'a,b, a\n1,2,3\n', /^list\.csv:1: "a" names two columns/],
    ['more rows than are made', `a\n${'x\n'.repeat(10_001)}`, /^list\.csv: has more than 10000 rows/],
    [
      'more columns than are read',
      `${Array.from({ length: 201 }, (_, i) => `c${i}`).join(',')}\n`,
      /^list\.csv:1: has 201 columns/,
    ],
  ])('%s is refused', (_, text, says) => {
    expect(() => readList(text, 'list.csv')).toThrow(says);
  });
});

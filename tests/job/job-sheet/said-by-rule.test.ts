// Many findings on paper: counts by hand.
import { expect, test } from 'vitest';
import { look, note } from '../../../src/finding.ts';
import { saidByRule } from '../../../src/job/job-sheet/said-by-rule.ts';

const gaps = (count: number) =>
  Array.from({ length: count }, (_, i) => look('thin-gap', { x: i, y: 0 }, `gap ${i + 1}`));

test('of one rule eight are told, and how many more there are; others stand after them whole', () => {
  const said = saidByRule([...gaps(9), note('layers', {}, 'two colours'), ...gaps(3)]);
  expect(said).toHaveLength(8 + 1 + 1);
  expect(said.slice(0, 2)).toEqual(['look: gap 1', 'look: gap 2']);
  expect(said.slice(8)).toEqual(['4 more like these are in report.json', 'note: two colours']);
});

test('what a sentence is about stands before it, but for the names of the job and its blank', () => {
  const said = saidByRule([
    note('layers', { file: '/bench/wave.svg' }, 'has 3 colours'),
    note('panels', { file: '/bench/pot.job.json', key: 'sheet' }, 'holds 198 mm'),
    look('sharp', {}, 'a point'),
  ]);
  // What wants an eye is told first, wherever it was found.
  expect(said).toEqual(['look: a point', 'note: wave.svg: has 3 colours', 'note: sheet: holds 198 mm']);
});

test('a few are told one by one, and of none nothing is said', () => {
  expect(saidByRule(gaps(8))).toHaveLength(8);
  expect(saidByRule([])).toEqual([]);
});

// What long work is at, told at a terminal.
import { expect, test } from 'vitest';
import { stepWords } from '../../src/cli/step-words.ts';

function saidAt(isTTY: boolean, times: readonly number[]): readonly string[] {
  const said: string[] = [];
  let time = 0;
  const says = stepWords('make', { isTTY, write: (text) => said.push(text) }, () => time);
  for (const at of times) {
    time = at;
    says(`step at ${at}`);
  }
  return said;
}

test('is said where the start, or the last word, was two seconds ago and more, and to nobody but a person', () => {
  const times = [300, 1999, 2000, 3500, 4100, 9000];
  expect(saidAt(true, times)).toEqual([
    'make: step at 2000\n',
    'make: step at 4100\n',
    'make: step at 9000\n',
  ]);
  expect(saidAt(false, times)).toEqual([]);
});

// The files that the page's threads keep: what is on the bench, and no more of what was than there is room for.
import { expect, test } from 'vitest';
import { HandedFiles } from '../../src/page/handed-files.ts';

const file = (size: number) => new Uint8Array(size);

test('a file is handed over once, and is not let go while it lies on the bench', () => {
  const handed = new HandedFiles(0);
  const files = { 'a.svg': file(9), 'b.svg': file(9) };
  const first = handed.hand(files);
  expect(first.keep.map(({ bytes }) => bytes)).toEqual(Object.values(files));
  expect(handed.hand(files)).toEqual({ marks: first.marks, keep: [], letGo: [] });
});

test('of a thousand files dropped one after the other a thread keeps as much as there is room for', () => {
  const handed = new HandedFiles(25);
  const kept = new Set<number>();
  for (let i = 0; i < 1000; i++) {
    const { marks, keep, letGo } = handed.hand({ 'a.svg': file(10) });
    for (const { mark } of keep) {
      // Never a mark that was given to another file.
      expect(mark).toBe(i + 1);
      kept.add(mark);
    }
    for (const mark of letGo) kept.delete(mark);
    expect(kept.has(marks['a.svg'] ?? 0)).toBe(true);
  }
  expect(kept.size).toBe(3);
});

test('what comes back to the bench is at hand, or handed over again', () => {
  const handed = new HandedFiles(10);
  const [old, middle] = [file(10), file(10)];
  handed.hand({ 'a.svg': old });
  handed.hand({ 'a.svg': middle });
  expect(handed.hand({ 'a.svg': old }).keep).toEqual([]);
  // The other one was asked for last but one, and goes first.
  handed.hand({ 'a.svg': file(10) });
  expect(handed.hand({ 'a.svg': middle }).keep).toHaveLength(1);
});

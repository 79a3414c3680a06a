import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainName, rowFolders } from '../../../src/job/list/row-folders.ts';

const foldersOf = (...labels: readonly string[]) =>
  rowFolders(labels.map((label, i) => ({ line: i + 2, label })));

describe('folders of rows', () => {
  test.each([
    ['../x', 'x'],
    ['C:\\cups\\Bo', 'c-cups-bo'],
    ['Zoë Ørsted', 'zoe-orsted'],
    ['  Straße 5. ', 'strasse-5'],
    ['ﬁn ②', 'fin-2'],
    ['a\u0000b\nc', 'a-b-c'],
    ['.hidden', 'hidden'],
    ['🐚 שלום', ''],
  ])('%j is plainly %j', (label, plain) => expect(plainName(label)).toBe(plain));

  test('no two are alike, where some file systems tell no capitals, and one is called as another was numbered', () => {
    expect(foldersOf('Pebble', 'pebble', 'Pebble 2', 'PEBBLE')).toEqual([
      'pebble',
      'pebble-2',
      'pebble-2-2',
      'pebble-3',
    ]);
  });

  test('a label without a plain letter is called by its line', () => {
    expect(foldersOf('🐚', 'שחף', '')).toEqual(['line-2', 'line-3', 'line-4']);
  });

  // Microsoft, "Naming Files, Paths, and Namespaces": reserved names, in any case and with any ending. From memory.
  test.each(['CON', 'prn', 'Aux', 'NUL', 'COM1', 'com²', 'LPT9'])('%s is no name on Windows', (label) => {
    expect(foldersOf(label)[0]).toMatch(/^name-/);
  });

  test('whatever the labels, folders are safe and no two alike', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 300 }), { maxLength: 30 }), (labels) => {
        const folders = foldersOf(...labels);
        expect(new Set(folders).size).toBe(labels.length);
        for (const folder of folders) expect(folder).toMatch(/^[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?$/);
      }),
      { seed: 4180, numRuns: 300 },
    );
  });
});

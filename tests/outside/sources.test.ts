// Every outside source is whole: what it is, its numbers, and a check that reads them.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const here = dirname(fileURLToPath(import.meta.url));
const files = readdirSync(here, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => join(entry.parentPath, entry.name));
const folders = readdirSync(here, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

/** Data files among these that no test imports or names by its path. */
function unread(
  data: readonly string[],
  tests: readonly { readonly path: string; readonly text: string }[],
): string[] {
  const read = new Set(
    tests.flatMap(({ path, text }) =>
      [...text.matchAll(/['"`](\.{1,2}\/[^'"`]+)['"`]/g)].map(([, name = '']) =>
        resolve(dirname(path), name),
      ),
    ),
  );
  return data.filter((file) => !read.has(file));
}

const tests = files
  .filter((file) => file.endsWith('.test.ts'))
  .map((path) => ({ path, text: readFileSync(path, 'utf8') }));
const data = files.filter((file) => !/\.(ts|md)$/.test(file));

describe('outside sources', () => {
  test('are there', () => {
    expect(folders.length).toBeGreaterThan(5);
    expect(data.length).toBeGreaterThanOrEqual(folders.length);
  });

  test.each(folders)('%s says what it is and has a check beside its numbers', (folder) => {
    const of = (name: string) => files.includes(join(here, folder, name));
    expect({ source: of('source.md'), values: of('values.json'), check: of('check.test.ts') }).toEqual({
      source: true,
      values: true,
      check: true,
    });
    const source = readFileSync(join(here, folder, 'source.md'), 'utf8');
    expect(source).toMatch(/^# /);
    expect(source).toMatch(/seen|from memory/i);
  });

  test('have no data file that no test reads', () => {
    expect(unread(data, tests).map((file) => relative(here, file))).toEqual([]);
  });

  test('a data file that no test reads is found', () => {
    const text = "import values from './values.json'";
    expect(unread(['/a/values.json', '/a/more.csv'], [{ path: '/a/check.test.ts', text }])).toEqual([
      '/a/more.csv',
    ]);
    expect(unread(['/b/values.json'], [{ path: '/a/check.test.ts', text }])).toEqual(['/b/values.json']);
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { jobKeys } from '../../src/job/typed/read-job.ts';
import type { Keys } from '../../src/job/typed/schema.ts';

const text = readFileSync(join(import.meta.dirname, '../../docs/job-file.md'), 'utf8');
/** What stands in backticks or in an indented example: only there is a word a key. */
const code = [...text.matchAll(/`[^`]+`/g), ...text.matchAll(/^ {4}.*$/gm)].map(([part]) => part).join('\n');

function pathsOf(keys: Keys, before: string): string[] {
  return Object.entries(keys).flatMap(([name, { inside }]) => [
    `${before}${name}`,
    ...(inside ? pathsOf(inside.keys, `${before}${name}.`) : []),
  ]);
}

test('every key of a job and of a blank is told of in the guide to them', () => {
  const paths = pathsOf(jobKeys, '');
  expect(paths.length).toBeGreaterThan(100);
  const untold = paths.filter((path) => !new RegExp(`\\b${path.split('.').at(-1)}\\b`).test(code));
  expect(untold).toEqual([]);
});

// Files that many rows name: each read once, and no more of them kept than there is room for.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { KeptFiles } from '../../src/cli/files.ts';

const folder = mkdtempSync(join(tmpdir(), 'kept-'));
afterAll(() => rmSync(folder, { recursive: true }));
const write = (file: string, text: string) => writeFileSync(join(folder, file), text);

test('a file is read once while there is room, the one least lately asked for goes first', async () => {
  const kept = new KeptFiles((file) => join(folder, file), 't.job.json', 10);
  const text = (file: string) => kept.text(file, 'artwork.file');
  for (const file of ['a', 'b']) write(file, `${file}1234`);
  expect([await text('a'), await text('b')]).toEqual(['a1234', 'b1234']);
  // What is read anew shows the change; what is kept does not.
  for (const file of ['a', 'b']) write(file, `${file}9999`);
  expect([await text('b'), await text('a')]).toEqual(['b1234', 'a1234']);
  write('c', 'c1234');
  expect(await text('c')).toBe('c1234');
  expect(await text('a')).toBe('a1234');
  expect(await text('b')).toBe('b9999');
  // One larger than all the room is given, and nothing else is kept beside it.
  write('large', 'x'.repeat(20));
  expect((await text('large')).length).toBe(20);
  expect(await text('a')).toBe('a9999');
});

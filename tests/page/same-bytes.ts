// What the page made, beside what the command makes of the job that the page saved with it.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import { expect } from 'vitest';
import { run } from '../cli/run.ts';

/** Unpacks the page's archive of `my.job.json` in a folder, and expects of the command the same files to the byte. */
export async function expectCommandsBytes(
  archive: Uint8Array,
  folder: string,
  flags: readonly string[] = [],
): Promise<void> {
  const files = unzipSync(archive);
  for (const [name, bytes] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), bytes);
  }
  expect(Object.keys(files)).toContain('my.job.json');
  const made = await run(['make', 'my.job.json', ...flags, '--out', 'again'], { cwd: folder });
  // 1: done, with something to look at.
  expect([0, 1], made.lines.join('\n')).toContain(made.status);
  const again = readdirSync(join(folder, 'again')).sort();
  expect(again).toEqual(readdirSync(join(folder, 'out')).sort());
  for (const name of again)
    expect(
      readFileSync(join(folder, 'out', name)).equals(readFileSync(join(folder, 'again', name))),
      name,
    ).toBe(true);
}

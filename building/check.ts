// Types, lint and format, as many at once as the machine has cores: one after another they take twice as long.
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');

/** Each a program of a package, with its words; the longest first. */
const checks: readonly (readonly [program: string, ...words: string[]])[] = [
  ['typescript/bin/tsc', '-p', 'tsconfig.tests.json'],
  ['typescript/bin/tsc', '-p', 'src/page'],
  ['typescript/bin/tsc', '-p', 'tests/page'],
  ['typescript/bin/tsc', '-p', 'src/page/worker'],
  ['typescript/bin/tsc', '-p', 'tsconfig.json', '--noEmit'],
  ['@biomejs/biome/bin/biome', 'check'],
];

const isPassed = ([program, ...words]: (typeof checks)[number]): Promise<boolean> =>
  new Promise((resolve) => {
    const path = join(root, 'node_modules', program);
    const child = spawn(process.execPath, [path, ...words], { cwd: root, stdio: 'inherit' });
    child.on('error', () => resolve(false));
    child.on('close', (code) => resolve(code === 0));
  });

const left = [...checks];
async function runLeft(): Promise<boolean> {
  let passed = true;
  for (let next = left.shift(); next; next = left.shift()) passed = (await isPassed(next)) && passed;
  return passed;
}

const all = await Promise.all(Array.from({ length: availableParallelism() }, runLeft));
process.exitCode = all.every(Boolean) ? 0 : 1;

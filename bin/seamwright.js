#!/usr/bin/env node
// Starts the built command; builds it first where an install ran without its own scripts.
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const main = new URL('../dist/cli/main.js', import.meta.url);
if (!existsSync(main)) {
  const { spawnSync } = await import('node:child_process');
  const home = fileURLToPath(new URL('..', import.meta.url));
  const builder = fileURLToPath(new URL('../node_modules/vite/bin/vite.js', import.meta.url));
  const words = [builder, 'build', '--config', 'building/command.ts'];
  spawnSync(process.execPath, words, { cwd: home, stdio: 'ignore' });
}
if (existsSync(main)) await import(main.href);
else {
  process.stderr.write('seamwright is not built yet: run "npm ci", then "npm run build", in its folder\n');
  process.exitCode = 70;
}

// Builds the command before the tests that start it, where its sources are newer than what was built.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const main = `${root}dist/cli/main.js`;

/** The page is built by itself, where a test needs it. */
const isOfCommand = (name: string): boolean => !name.startsWith('page/');

const newestIn = (folder: string, ending: string): number =>
  Math.max(
    0,
    ...readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith(ending) && isOfCommand(name.replaceAll('\\', '/')))
      .map((name) => statSync(`${folder}/${name}`).mtimeMs),
  );

export default function build(): void {
  if (existsSync(main) && newestIn(`${root}dist`, '.js') > newestIn(`${root}src`, '.ts')) return;
  const compiler = `${root}node_modules/typescript/bin/tsc`;
  const { stdout } = spawnSync(process.execPath, [compiler, '-p', `${root}tsconfig.build.json`], {
    encoding: 'utf8',
  });
  // A type error is told by `npm run check`; here it only matters that there is something to start.
  if (!existsSync(main)) throw new Error(`nothing was built: ${stdout}`);
}

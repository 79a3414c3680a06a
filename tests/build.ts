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
  if (!existsSync(`${root}dist/index.d.ts`))
    spawnSync(process.execPath, [
      `${root}node_modules/typescript/bin/tsc`,
      '-p',
      `${root}tsconfig.build.json`,
    ]);
  if (existsSync(main) && newestIn(`${root}dist`, '.js') > newestIn(`${root}src`, '.ts')) return;
  const builder = `${root}node_modules/vite/bin/vite.js`;
  const words = [builder, 'build', '--config', 'building/command.ts'];
  // Types are told of by `npm run check`, and built with the package; here it only matters that there is something to start.
  const { status, stderr } = spawnSync(process.execPath, words, { cwd: root, encoding: 'utf8' });
  if (status !== 0) throw new Error(`nothing was built: ${stderr}`);
}

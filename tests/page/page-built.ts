// Builds the page where its sources are newer than what was built.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { projectFolder } from '../cli/run.ts';
import { alone } from './alone.ts';

const newestIn = (folder: string): number =>
  Math.max(
    0,
    ...readdirSync(`${projectFolder}${folder}`, { recursive: true, encoding: 'utf8' })
      .map((name) => statSync(`${projectFolder}${folder}/${name}`))
      .filter((stat) => stat.isFile())
      .map(({ mtimeMs }) => mtimeMs),
  );

const isBuilt = (): boolean =>
  existsSync(`${projectFolder}dist/page/index.html`) && newestIn('dist/page') > newestIn('src');

/** @throws Error with what the bundler said, where it can't be built. */
export const pageBuilt = (): Promise<void> =>
  alone('page-build', async () => {
    if (isBuilt()) return;
    const bundler = `${projectFolder}node_modules/vite/bin/vite.js`;
    const options = { cwd: projectFolder, encoding: 'utf8' } as const;
    const { status, stdout, stderr } = spawnSync(process.execPath, [bundler, 'build'], options);
    if (status !== 0) throw new Error(`the page could not be built: ${stdout}${stderr}`);
  });

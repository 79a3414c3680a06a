// A real headless Chromium: the machine's own where one is named, else the one that comes as a package.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { type Browser, chromium, type LaunchOptions } from 'playwright-core';
import { alone } from './alone.ts';

function onPath(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders.map((folder) => join(folder, 'chromium')).find((file) => existsSync(file));
}

/** Where the package unpacks the libraries that a bare machine lacks. */
const libraries = join(tmpdir(), 'al2023', 'lib');
/** It does so only where this says that it runs on such a machine. */
const toldBy = 'AWS_EXECUTION_ENV';

/** Unpacks the package's browser, its libraries with it; they are used where the machine's own do not start it. */
async function packaged(): Promise<LaunchOptions> {
  const { default: pack } = await import('@sparticuz/chromium');
  const before = process.env[toldBy];
  process.env[toldBy] = 'nodejs20.x';
  const executablePath = await pack.executablePath().finally(() => {
    if (before === undefined) delete process.env[toldBy];
    else process.env[toldBy] = before;
  });
  const startsAlone = spawnSync(executablePath, ['--version']).status === 0;
  return startsAlone
    ? { executablePath }
    : { executablePath, env: { ...process.env, LD_LIBRARY_PATH: libraries } };
}

async function found(): Promise<LaunchOptions> {
  const own = process.env.CHROMIUM_PATH ?? onPath();
  return own === undefined ? alone('browser', packaged) : { executablePath: own };
}

/** 3D without a graphics card: the browser's own software stands in for one. */
const softwareGraphics = '--enable-unsafe-swiftshader';

/** Letters keep their own shape and step, whatever the machine's settings for fonts say: a page is as wide on all of them. */
const lettersAsDrawn = '--font-render-hinting=none';

/**
 * Code that runs for a second is not worth the second optimiser's time, which was most of what tests of the page took: each of three
 * threads had its own five hundred functions compiled by it. Code runs, and is seen, as it does with it.
 */
const sparingCode = '--js-flags=--no-turbofan --invocation-count-for-maglev=4000 --liftoff-only';

/** Where the processor draws, smooth edges of what is drawn in 3D cost as much as all the rest of it. */
const sparingGraphics = '--webgl-antialiasing-mode=none';

/** As makers have it, or sparing of the processor. */
export type Manner = 'as made' | 'sparing';

export const launch = async (manner: Manner = 'as made'): Promise<Browser> =>
  chromium.launch({
    ...(await found()),
    args: [
      '--no-sandbox',
      softwareGraphics,
      lettersAsDrawn,
      ...(manner === 'sparing' ? [sparingCode, sparingGraphics] : []),
    ],
  });

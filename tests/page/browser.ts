// A real headless Chromium: the machine's own where one is named, else the one that comes as a package.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { alone } from './alone.ts';

function onPath(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return folders.map((folder) => join(folder, 'chromium')).find((file) => existsSync(file));
}

async function executable(): Promise<string> {
  const own = process.env.CHROMIUM_PATH ?? onPath();
  if (own !== undefined) return own;
  return alone('browser', async () => (await import('@sparticuz/chromium')).default.executablePath());
}

/** 3D without a graphics card: the browser's own software stands in for one. */
const softwareGraphics = '--enable-unsafe-swiftshader';

export const launch = async (): Promise<Browser> =>
  chromium.launch({ executablePath: await executable(), args: ['--no-sandbox', softwareGraphics] });

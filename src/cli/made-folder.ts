// A folder made where there is none yet, and those it lies in.
import { existsSync, statSync } from 'node:fs';
import { mkdir, stat } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { codeOf } from './staging.ts';

/**
 * Make a folder, and what it lies in; one that is there will do. Node's own way of making them all tries without end where a
 * folder that is there holds none, as the system's own under /proc do.
 */
export async function madeFolder(folder: string): Promise<void> {
  const path = resolve(folder);
  try {
    await mkdir(path);
  } catch (fault) {
    if (isFolder(path)) return;
    // Of a link that leads nowhere it is told why.
    if (codeOf(fault) === 'EEXIST') await stat(path);
    const holder = dirname(path);
    if (existsSync(holder) || holder === path || codeOf(fault) !== 'ENOENT') throw fault;
    await madeFolder(holder);
    await madeFolder(path);
  }
}

const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

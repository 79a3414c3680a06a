// One process at a time: test files run side by side, and some work must not.
import { mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';

/** Work that one process at a time may do, such as unpacking the browser: others wait for it. */
export async function alone<T>(name: string, work: () => Promise<T>): Promise<T> {
  const lock = join(tmpdir(), `seamwright-${name}.lock`);
  for (let tries = 0; ; tries++) {
    try {
      mkdirSync(lock);
      break;
    } catch {
      // A run that died leaves its lock behind; no work under one takes as long as this.
      if (tries === 600) rmSync(lock, { recursive: true, force: true });
      await wait(200);
    }
  }
  try {
    return await work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

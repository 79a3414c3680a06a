import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { pictureFault } from './compare.ts';

const square = (x: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20" viewBox="0 0 40 20"><rect x="${x}" y="5" width="10" height="10" fill="#124"/></svg>`;

describe('comparing a picture with its reference', () => {
  let folder = '';
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pictures-'));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true });
  });
  const options = (update: boolean, widthPx = 80) =>
    ({ name: 'square', widthPx, tolerance: 0, folder, update }) as const;

  it('fails where there is no reference', async () => {
    expect(await pictureFault(square(5), options(false))).toMatch(/missing/);
  });

  it('passes for the picture that was written, and fails for one that is a mm off', async () => {
    await pictureFault(square(5), options(true));
    expect(await pictureFault(square(5), options(false))).toBeUndefined();
    // The two squares differ in a column of 1 by 10 mm on either side: 2 times 2 by 20 px.
    expect(await pictureFault(square(6), options(false))).toMatch(/^80 pixels/);
  });

  it('saves expected, difference and got side by side when it fails', async () => {
    await pictureFault(square(5), options(true));
    await pictureFault(square(20), options(false));
    const saved = PNG.sync.read(readFileSync(join(folder, 'failed', 'square.png')));
    expect([saved.width, saved.height]).toEqual([240, 40]);
  });

  it('saves nothing when it passes', async () => {
    await pictureFault(square(5), options(true));
    await pictureFault(square(5), options(false));
    expect(existsSync(join(folder, 'failed'))).toBe(false);
  });

  it('fails for a picture of another size', async () => {
    await pictureFault(square(5), options(true));
    expect(await pictureFault(square(5), options(false, 60))).toMatch(/80 x 40 px, the picture 60 x 30/);
  });
});

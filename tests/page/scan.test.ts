// A scan that does not say how large it is: the maker is asked for its width where the drawing is, and taken there.
import { PNG } from 'pngjs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, field, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

/** Leaves in a square of pixels, four by four. */
function scan(): Buffer {
  const size = 240;
  const picture = new PNG({ width: size, height: size });
  for (let i = 0; i < size * size; i++) {
    const [x, y] = [(i % size) % 60, Math.floor(i / size) % 60];
    const isLeaf = Math.hypot((x - 30) / 20, (y - 30) / 11) < 1;
    picture.data.set(isLeaf ? [30, 80, 60, 255] : [244, 240, 228, 255], 4 * i);
  }
  return PNG.sync.write(picture);
}

test(
  'a picture without a size is asked for its width beside it; a check leads to the field',
  patience,
  async () => {
    const { page, wrong } = await bench.open({ reducedMotion: 'reduce' });
    await field(page, 'blank:stations[0].across').fill('92');
    await field(page, 'blank:stations[1].height').fill('110');
    await field(page, 'blank:stations[1].girth').fill('380');
    await openStep(page, 2);
    await page
      .locator('#art-file')
      .setInputFiles({ name: 'leaves.png', mimeType: 'image/png', buffer: scan() });
    await settled(page);
    const says = 'does not say how large one is; give its width by “Drawing across”';
    expect(await page.locator('#step-2-body').getByText(says).count()).toBe(1);
    await openStep(page, 4);
    await page.locator('#step-4-body .finding-stop').filter({ hasText: says }).click();
    const across = field(page, 'job:artwork.across');
    await expect.poll(() => across.evaluate((input) => input === document.activeElement)).toBe(true);
    await across.fill('60');
    await page.locator('#flat-figures').filter({ hasText: 'Cut piece' }).waitFor();
    await settled(page);
    expect(await page.locator('.drop-says').textContent()).toBe('leaves.png is laid.');
    expect(await page.locator('#step-2-body').getByText(says).count()).toBe(0);
    expect(wrong).toEqual([]);
  },
);

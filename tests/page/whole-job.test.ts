// A maker's whole job by mouse, as the first-time guide asks, from an empty bench to proved files: the same bytes as the command's.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience, run, Workshop } from '../cli/run.ts';
import { type Bench, bytesOf, field, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
const shop = new Workshop();
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => {
  shop.clear();
  return bench.end();
});

async function saved(page: Page, button: string): Promise<Uint8Array> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return bytesOf(download);
}

/** Writes an archive's files below a folder. */
function unpack(archive: Uint8Array, folder: string): readonly string[] {
  const files = unzipSync(archive);
  for (const [name, bytes] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), bytes);
  }
  return Object.keys(files);
}

const guideSays = (page: Page): Promise<string | null> => page.locator('.guide-count').textContent();

/** What the first-time guide asks for, in its order. */
const asked = (page: Page): readonly (() => Promise<unknown>)[] => [
  () => field(page, 'blank:stations[0].across').fill('62'),
  () => field(page, 'blank:stations[1].height').fill('150'),
  () => field(page, 'blank:stations[1].girth').fill('270'),
  () => field(page, 'blank:footRound').fill('6'),
  async () => {
    await openStep(page, 2);
    await page.getByRole('button', { name: 'Fish scales', exact: true }).click();
  },
  () => page.getByRole('tab', { name: 'Vessel' }).click(),
  async () => {
    await openStep(page, 3);
    await page.getByRole('button', { name: 'Add a coat by thickness' }).click();
    await field(page, 'job:coats[0].thickness').fill('0.4');
  },
  async () => {
    await openStep(page, 4);
    await settled(page);
    await page.locator('.finding-look').first().click();
  },
  async () => {
    await openStep(page, 3);
    await field(page, 'job:band.to').fill('130');
  },
  () => field(page, 'job:band.from').fill('6'),
  async () => {
    await openStep(page, 5);
    await page.getByRole('button', { name: 'Make the files' }).click();
  },
];

test(
  'the lighthouse cup by the first-time guide: every step is done by doing it; its files are the command’s to the byte, and hold',
  patience,
  async () => {
    const { page, wrong } = await bench.open();
    await page.getByRole('button', { name: 'Two minutes with the lighthouse cup' }).click();
    const steps = asked(page);
    for (const [i, step] of steps.entries()) {
      await expect.poll(() => guideSays(page)).toBe(`Lighthouse cup: ${i + 1} of ${steps.length}`);
      await step();
    }
    await expect.poll(() => guideSays(page), { timeout: 120_000 }).toBe('Lighthouse cup: done');
    await page.getByText('Proved: the files').waitFor();
    const archive = await saved(page, 'Save all as one zip');

    // The browser is closed in the middle of the work, and nothing is lost.
    await page.reload();
    await openStep(page, 3);
    expect(await field(page, 'job:band.to').inputValue()).toBe('130');
    expect(await field(page, 'job:coats[0].thickness').inputValue()).toBe('0.4');
    await openStep(page, 2);
    await page.locator('.drop strong', { hasText: 'scales.svg' }).waitFor();
    expect(wrong).toEqual([]);

    const { folder } = shop;
    const names = unpack(archive, folder);
    expect(names).toContain('my.job.json');
    const made = await run(['make', 'my.job.json', '--print', '--out', 'again'], { cwd: folder });
    // 1: done, with something to look at. The scales leave small pieces.
    expect([0, 1], made.lines.join('\n')).toContain(made.status);
    const again = readdirSync(join(folder, 'again')).sort();
    expect(again).toEqual(readdirSync(join(folder, 'out')).sort());
    for (const name of again)
      expect(
        readFileSync(join(folder, 'out', name)).equals(readFileSync(join(folder, 'again', name))),
        name,
      ).toBe(true);
    expect((await run(['prove', 'out'], { cwd: folder })).status).toBe(0);
  },
);

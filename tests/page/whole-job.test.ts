// A maker's whole job by mouse, as the first-time guide asks, from an empty bench to proved files: the same bytes as the command's.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience, run, Workshop } from '../cli/run.ts';
import { type Bench, bytesOf, field, openStep, settled, startBench } from './a-page.ts';
import { expectCommandsBytes } from './same-bytes.ts';

let bench: Bench;
const shop = new Workshop();
beforeAll(async () => {
  bench = await startBench('as made');
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
    // A band that has no beginning yet is one to finish, not a fault.
    await page.getByText('still to give', { exact: true }).waitFor();
    expect(await page.locator('.says-stop').count()).toBe(0);
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
    // Its engine would lay the job once more beside the command.
    await page.close();

    await expectCommandsBytes(archive, shop.folder, ['--print']);
    expect((await run(['prove', 'out'], { cwd: shop.folder })).status).toBe(0);
  },
);

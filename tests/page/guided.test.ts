// The first-time guide, done to its end as it asks; the views of a laid job before the accessibility engine, wide and narrow.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, field, openStep, settled, startBench } from './a-page.ts';
import { barriers } from './barriers.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

const count = (page: Page): Promise<string | null> => page.locator('.guide-count').textContent();

test(
  'the lighthouse cup by the guide alone: every step is done by doing what it says',
  patience,
  async () => {
    const { page, wrong } = await bench.open();
    await page.getByRole('button', { name: 'Two minutes with the lighthouse cup' }).click();
    const doing: readonly (() => Promise<unknown>)[] = [
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
    for (const [i, step] of doing.entries()) {
      await expect.poll(() => count(page)).toBe(`Lighthouse cup: ${i + 1} of ${doing.length}`);
      await step();
    }
    await expect.poll(() => count(page), { timeout: 120_000 }).toBe('Lighthouse cup: done');
    await page.getByText('Proved: the files').waitFor();
    expect(wrong).toEqual([]);
  },
);

const widths = {
  desk: { viewport: { width: 1280, height: 860 } },
  phone: { viewport: { width: 390, height: 800 }, hasTouch: true, isMobile: true },
} as const;

test.each(Object.keys(widths) as (keyof typeof widths)[])(
  '%s: both views, the seam, the colours and every step stand before the accessibility engine',
  patience,
  async (width) => {
    const { page, wrong } = await bench.open({ ...widths[width], reducedMotion: 'reduce' });
    await page.getByRole('button', { name: /Fish-scale cup/ }).click();
    await settled(page);
    const views = width === 'desk' ? ['Seam', 'Both'] : ['Seam', 'Vessel'];
    for (const name of views) {
      await page.getByRole('tab', { name }).click();
      await settled(page);
      expect(await barriers(page), name).toEqual([]);
    }
    await page.locator('.solid-canvas[data-ready="yes"]').waitFor({ timeout: 60_000 });
    // The colours too are behind a word to press.
    for (const step of [1, 2, 3, 4, 5]) await openStep(page, step);
    await page.locator('details:not([open]) > summary').evaluateAll((all) => {
      for (const summary of all) (summary as HTMLElement).click();
    });
    await settled(page);
    expect(await barriers(page), 'colours and steps').toEqual([]);
    const across = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(across).toBeLessThanOrEqual(widths[width].viewport.width);
    expect(wrong).toEqual([]);
  },
);

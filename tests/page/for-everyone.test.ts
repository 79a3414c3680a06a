// Every state of the page before an accessibility engine, and beside its picture; wide, narrow, by day and by night.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { fieldWords } from '../../src/page/model/field-words.ts';
import { patience } from '../cli/run.ts';
import { wordsOfPdf } from '../deliver/rendered-pdf.ts';
import { type Bench, field, madeFiles, openStep, settled, startBench } from './a-page.ts';
import { barriers } from './barriers.ts';
import { expectLook } from './looks.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

/** Looks at a state: with the engine, and beside its picture. */
async function looked(page: Page, name: string): Promise<void> {
  await settled(page);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  expect(await barriers(page), name).toEqual([]);
  await page.mouse.move(2, 2);
  await expectLook(page, name);
}

const laidFlat = (page: Page): Promise<void> =>
  page.locator('#flat-figures').filter({ hasText: 'Cut piece' }).waitFor();

test('wide, by day: empty, in work, checked, its seam, and made, with both views', patience, async () => {
  const { page } = await bench.open({ colorScheme: 'light', reducedMotion: 'reduce' });
  await looked(page, 'empty');
  await field(page, 'blank:stations[0].across').fill('nothing');
  await looked(page, 'refused');
  await page.getByRole('button', { name: 'New' }).click();
  await page.getByRole('button', { name: /Fish-scale cup/ }).click();
  await laidFlat(page);
  await page.getByRole('button', { name: 'How to: Foot round' }).click();
  await looked(page, 'flat');
  await page.getByRole('button', { name: 'How to: Foot round' }).click();
  await page.locator('#step-1 button').click();
  await openStep(page, 2);
  // Each way is drawn on the vessel once it is in sight.
  const way = page.locator('.way-card').first();
  await way.scrollIntoViewIfNeeded();
  await expect
    .poll(() => way.locator('img').evaluate((image) => (image as HTMLImageElement).naturalWidth))
    .toBeGreaterThan(100);
  await page.locator('#step-2').scrollIntoViewIfNeeded();
  await page.getByRole('tab', { name: 'Artwork' }).click();
  await looked(page, 'artwork');
  await page.locator('#step-2 button').click();
  await openStep(page, 3);
  await field(page, 'job:band.to').fill('');
  await field(page, 'job:band.from').fill('');
  await page.getByRole('tab', { name: 'Flat' }).click();
  await page.locator('#step-3 button').click();
  await openStep(page, 4);
  // Findings that come anew let go of the one that was chosen.
  await settled(page);
  await page.locator('.finding-look').first().click();
  await looked(page, 'checks');
  await page.locator('#step-4 button').click();
  await page.getByRole('tab', { name: 'Seam' }).click();
  await looked(page, 'seam');
  await madeFiles(page);
  await page.getByRole('tab', { name: 'Both' }).click();
  await page.locator('.solid-canvas[data-ready="yes"]').waitFor();
  await looked(page, 'both');
  // On paper what is drawn in 3D stands as a picture: a canvas of it would print as blank.
  const both = await wordsOfPdf(await page.pdf());
  expect(both.join()).toContain('Cut piece');
  expect(await coloursOn(page, '.solid-paper')).toBeGreaterThan(50);
  await page.getByRole('button', { name: 'Read the job sheet' }).click();
  expect(await barriers(page), 'job sheet').toEqual([]);
  // All of the sheet and nothing else: it once lay in what is hidden on paper.
  const sheet = await wordsOfPdf(await page.pdf({ format: 'A4' }));
  expect(sheet[0]).toMatch(/^Job sheet: Fish-scale cup/);
  expect(sheet.at(-1)).toContain('Caution');
  expect(sheet.join()).not.toMatch(/Make the files|wrap\.guide\.svgfor/);
});

/** How large the smallest letters of the wall's drawing are shown, px. */
const smallestLetters = (page: Page): Promise<number> =>
  page.locator('.wall-picture text').evaluateAll((all) => {
    const sizes = all.map((text) => {
      const shown = (text as SVGTextElement).getScreenCTM()?.a ?? 0;
      return Number(text.getAttribute('font-size')) * shown;
    });
    return Math.min(...sizes);
  });

/** How many colours a canvas shows. */
const coloursOn = (page: Page, canvas: string): Promise<number> =>
  page.locator(canvas).evaluate((shown) => {
    const { width, height } = shown as HTMLCanvasElement;
    const { data } = (shown as HTMLCanvasElement).getContext('2d')?.getImageData(0, 0, width, height) ?? {
      data: new Uint8ClampedArray(),
    };
    return new Set(new Uint32Array(data.buffer)).size;
  });

/** What fields are called on the page, by their keys without places in lists; machines and names aside. */
async function labelsByKey(page: Page): Promise<Readonly<Record<string, string>>> {
  const shown = await page.locator('[data-path]').evaluateAll((fields) =>
    fields.map((field) => {
      const input = field as HTMLInputElement;
      const around =
        input.type === 'radio' ? input.closest('fieldset')?.querySelector('legend') : input.labels?.[0];
      const words = [...(around?.childNodes ?? [])].find(({ nodeType }) => nodeType === Node.TEXT_NODE);
      return [input.dataset.path ?? '', words?.textContent?.trim() ?? ''] as const;
    }),
  );
  const named = shown.map(
    ([path, label]) => [path.replace(/^\w+:/, '').replace(/\[\d+\]/g, '[]'), label] as const,
  );
  return Object.fromEntries(
    named.filter(([key]) => !/^name$|measured|^film$|^sheet$|^cutter$|^panels\.joints\[/.test(key)),
  );
}

/** Every step and everything behind a word to press is open. */
async function opened(page: Page): Promise<void> {
  for (const step of [1, 2, 3, 4, 5]) await openStep(page, step);
  await page.locator('details:not([open]) > summary').evaluateAll((all) => {
    for (const summary of all) (summary as HTMLElement).click();
  });
  const colours = page.getByRole('button', { name: 'Colours', exact: true });
  if ((await colours.getAttribute('aria-expanded')) === 'false') await colours.click();
  await settled(page);
}

test('tablet, by night, with all that can be opened', patience, async () => {
  const { page, wrong } = await bench.open({
    colorScheme: 'dark',
    viewport: { width: 820, height: 1100 },
  });
  await page.getByRole('button', { name: /Tern pot/ }).click();
  await laidFlat(page);
  await looked(page, 'tablet');
  await page.getByRole('tab', { name: 'Vessel' }).click();
  await page.locator('.solid-canvas[data-ready="yes"]').waitFor();
  await opened(page);
  await page.locator('#step-3').scrollIntoViewIfNeeded();
  expect(await barriers(page), 'colours and steps').toEqual([]);
  // Sentences of the engine name fields by these words.
  const labels = await labelsByKey(page);
  expect(Object.keys(labels).length).toBeGreaterThan(40);
  for (const [key, label] of Object.entries(labels)) expect(fieldWords[key]?.label, key).toBe(label);
  expect(wrong).toEqual([]);
});

test(
  'phone, with the guide open; then every step, the seam, the vessel and its colours',
  patience,
  async () => {
    const { page, wrong } = await bench.open({
      viewport: { width: 390, height: 800 },
      hasTouch: true,
      isMobile: true,
      reducedMotion: 'reduce',
    });
    await page.getByRole('button', { name: 'Guide' }).click();
    await field(page, 'blank:stations[0].across').fill('62');
    await page.getByText('It is 150 mm high').waitFor();
    await looked(page, 'phone');
    await page.getByRole('button', { name: 'Leave the guide' }).click();
    await field(page, 'blank:stations[1].height').fill('90');
    await field(page, 'blank:stations[1].girth').fill('200');
    await page.getByRole('tab', { name: 'Wall' }).click();
    await expect.poll(() => smallestLetters(page)).toBeGreaterThan(10.9);
    await page.getByRole('tab', { name: 'Seam' }).click();
    await settled(page);
    expect(await barriers(page), 'seam').toEqual([]);
    await page.getByRole('tab', { name: 'Vessel' }).click();
    await page.locator('.solid-canvas[data-ready="yes"]').waitFor();
    await opened(page);
    await looked(page, 'phone-colours');
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width).toBeLessThanOrEqual(390);
    expect(wrong).toEqual([]);
  },
);

// A pattern taken off, or changed for one of other colours: what was said of the colours before stands at its field, and can be taken back.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, field, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

async function draw(page: Page, name: string, colours: readonly string[]): Promise<void> {
  const dots = colours.map((colour, i) => `<circle cx="${9 + 12 * i}" cy="15" r="5" fill="${colour}"/>`);
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">${dots.join('')}</svg>`;
  const buffer = Buffer.from(drawing);
  await page.locator('#art-file').setInputFiles({ name, mimeType: 'image/svg+xml', buffer });
  await settled(page);
}

test('colours of an order that no drawing has are told in it, and taken out of it', patience, async () => {
  const { page, wrong } = await bench.open();
  await field(page, 'blank:stations[0].across').fill('70');
  await field(page, 'blank:stations[1].height').fill('50');
  await field(page, 'blank:stations[1].girth').fill('240');
  await openStep(page, 2);
  await draw(page, 'two.svg', ['#d03030', '#3030d0']);
  await page.locator('summary', { hasText: 'Layers of film' }).click();
  await page.getByRole('button', { name: 'Over the next , #d03030' }).click();
  await draw(page, 'one.svg', ['#d03030']);

  const order = page.locator('.layer-order');
  const takeOut = (colour: string) =>
    page.getByRole('button', { name: `Take it out of the order, ${colour}` });
  await takeOut('#3030d0').waitFor();
  expect(await takeOut('#d03030').count()).toBe(0);
  expect(await order.textContent()).toContain('"#3030d0" is no colour of this job\'s drawings');
  await openStep(page, 4);
  const finding = page.locator('.finding-stop');
  expect(await finding.textContent()).toContain('Step 2: Layer 1');

  // Without artwork what is left of it does not stand against the job unseen.
  await openStep(page, 2);
  await page.getByRole('button', { name: 'No artwork' }).click();
  await settled(page);
  await takeOut('#3030d0').click();
  await settled(page);
  await takeOut('#d03030').click();
  await settled(page);
  await expect.poll(() => order.count()).toBe(0);
  await openStep(page, 4);
  expect(await finding.count()).toBe(0);
  expect(wrong).toEqual([]);
});

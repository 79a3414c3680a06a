// Two tabs of the page in one browser, which keeps one job: neither writes over the other unasked, and nothing of them is mixed.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, field, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

const name = (page: Page) => field(page, 'blank:name');
const across = (page: Page) => field(page, 'blank:stations[0].across');
const told = (page: Page) => page.getByText('The job was changed in another tab');

async function another(page: Page): Promise<Page> {
  const tab = await page.context().newPage();
  await tab.goto(bench.address);
  await tab.locator('#step-1').waitFor();
  return tab;
}

/** Longer than the pause after which what was typed is kept. */
const kept = (page: Page) => page.waitForTimeout(600);

test(
  'what is typed in a second tab is not written over by the first, nor the other way round, until the maker chooses',
  patience,
  async () => {
    const { page, wrong } = await bench.open();
    await name(page).fill('lamp glass');
    await across(page).fill('60');
    await kept(page);
    const second = await another(page);
    expect(await name(second).inputValue()).toBe('lamp glass');
    await name(second).fill('tide bowl');
    await kept(second);
    expect(await told(second).count()).toBe(0);

    // The first tab still shows its own; it is told, and what is kept stays the second one's.
    await across(page).fill('61');
    await told(page).waitFor();
    await kept(page);
    await expect.poll(() => keptName(second)).toBe('tide bowl');

    await page.getByRole('button', { name: 'Keep this one' }).click();
    await told(page).waitFor({ state: 'detached' });
    await expect.poll(() => keptName(page)).toBe('lamp glass');

    // Now the second is the other one; the job it takes is one step, and its own is a step back.
    await across(second).fill('62');
    await told(second).waitFor();
    await second.getByRole('button', { name: 'Go on with the other tab’s job' }).click();
    await expect.poll(() => name(second).inputValue()).toBe('lamp glass');
    expect(await across(second).inputValue()).toBe('61');
    await settled(second);
    await second.keyboard.press('Control+z');
    await expect.poll(() => name(second).inputValue()).toBe('tide bowl');
    expect(await across(second).inputValue()).toBe('62');
    expect(wrong).toEqual([]);
  },
);

const keptName = async (page: Page): Promise<string> => {
  const tab = await another(page);
  const value = await name(tab).inputValue();
  await tab.close();
  return value;
};

test('on a phone, whose top scrolls away, it is told where the maker is', patience, async () => {
  const { page } = await bench.open({ viewport: { width: 390, height: 844 } });
  await name(page).fill('lamp glass');
  await kept(page);
  const second = await another(page);
  await name(second).fill('tide bowl');
  await kept(second);
  await page.bringToFront();
  await field(page, 'blank:lipRound').fill('2');
  await told(page).waitFor();
  const button = await page.getByRole('button', { name: 'Keep this one' }).boundingBox();
  if (!button) throw new Error('the button has no place on the page');
  expect(button.y).toBeGreaterThan(422);
  expect(button.y + button.height).toBeLessThanOrEqual(844);
  expect(button.x + button.width).toBeLessThanOrEqual(390);
});

test(
  'where what is kept was cleared meanwhile, the next change keeps all: job, list and colours',
  patience,
  async () => {
    const { page } = await bench.open();
    await name(page).fill('lamp glass');
    await openStep(page, 5);
    await page.getByText('A list of names: a vessel a row').click();
    await page.locator('#names-text').fill('name\nPebble');
    await kept(page);
    const other = await another(page);
    await other.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.deleteDatabase('seamwright');
          request.onsuccess = () => resolve();
          request.onerror = () => reject(request.error);
        }),
    );
    await other.close();
    await openStep(page, 1);
    await across(page).fill('60');
    await kept(page);
    await page.reload();
    expect(await name(page).inputValue()).toBe('lamp glass');
    expect(await across(page).inputValue()).toBe('60');
    await openStep(page, 5);
    expect(await page.locator('#names-text').inputValue()).toBe('name\nPebble');
  },
);

test('Back, and Forward again at once, loses no key', patience, async () => {
  const { page } = await bench.open();
  await name(page).fill('lamp glass');
  await page.goto('about:blank');
  await page.goBack();
  await page.locator('#step-1').waitFor();
  expect(await name(page).inputValue()).toBe('lamp glass');
  await across(page).fill('63');
  await page.reload();
  await page.locator('#step-1').waitFor();
  expect(await across(page).inputValue()).toBe('63');
  expect(await told(page).count()).toBe(0);
});

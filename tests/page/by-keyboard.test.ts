// The whole job with the keyboard alone, and what a screen reader is told on the way.
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience, Workshop } from '../cli/run.ts';
import { type Bench, bytesOf, field, type OpenPage, openStep, settled, startBench } from './a-page.ts';
import { expectCommandsBytes } from './same-bytes.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

/** What has the focus, as it is called. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { activeElement } = document;
    if (!(activeElement instanceof HTMLElement)) return '';
    const label = activeElement instanceof HTMLInputElement ? activeElement.labels?.[0]?.textContent : '';
    return `${activeElement.dataset.path ?? ''} ${activeElement.getAttribute('aria-label') ?? ''} ${label ?? ''} ${activeElement.textContent ?? ''}`;
  });

/** Presses Tab until something of this name has the focus. */
async function tabTo(page: Page, name: string | RegExp, key = 'Tab'): Promise<void> {
  for (let presses = 0; presses < 150; presses++) {
    await page.keyboard.press(key);
    const called = await focused(page);
    if (typeof name === 'string' ? called.includes(name) : name.test(called)) return;
  }
  throw new Error(`Tab never came to ${name}`);
}

async function type(page: Page, path: string, text: string): Promise<void> {
  await tabTo(page, path);
  await page.keyboard.type(text);
}

test('a canister in inches, from readings to proved files', patience, async () => {
  const { page, wrong } = await bench.open();
  await page.getByRole('radio', { name: 'mm' }).focus();
  await page.keyboard.press('ArrowRight');
  await type(page, 'blank:stations[0].across', '1 7/8');
  await type(page, 'blank:stations[1].height', '2');
  await type(page, 'blank:stations[1].girth', '5.9in');
  await tabTo(page, /2Artwork/);
  await page.keyboard.press('Enter');
  await tabTo(page, 'Ropes');
  await page.keyboard.press('Enter');
  await page.locator('.drop strong').waitFor();

  // The drawing is moved, zoomed and measured on without a pointer.
  await page.getByRole('tab', { name: 'Flat' }).focus();
  await tabTo(page, 'Flat template. Arrow keys');
  // There is nothing to measure on before it is laid.
  await page.locator('#flat-figures').filter({ hasText: 'Cut piece' }).waitFor();
  await settled(page);
  for (const key of ['+', 'ArrowLeft', 'm', 'Enter', 'ArrowLeft', 'Enter']) await page.keyboard.press(key);
  await expect.poll(() => page.locator('#flat-figures').textContent()).toContain('in on the flat sheet');

  await tabTo(page, /5Files/);
  await page.keyboard.press('Enter');
  await tabTo(page, 'Make the files');
  await page.keyboard.press('Enter');
  await page.getByText('Proved: the files').waitFor();
  await page
    .getByRole('status')
    .filter({ hasText: /^\d+ files are made, and proved$/ })
    .waitFor();
  // The keyboard is where it was: it once began again at the page's top.
  expect(await focused(page)).toContain('Make the files');
  await tabTo(page, 'Save all as one zip');
  const [download] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
  expect(download.suggestedFilename()).toBe('my-job.zip');
  const shop = new Workshop();
  await expectCommandsBytes(await bytesOf(download), shop.folder, ['--print', '--paper-size', 'letter']);
  shop.clear();

  // From among many files to the step's head, to others, and to the drawing.
  await page.keyboard.press('Escape');
  expect(await focused(page)).toMatch(/^\s*5Files/);
  await page.keyboard.press('Home');
  expect(await focused(page)).toMatch(/^\s*1Vessel/);
  await page.keyboard.press('ArrowDown');
  expect(await focused(page)).toMatch(/^\s*2Artwork/);
  await page.keyboard.press('Escape');
  expect(await focused(page)).toContain('Flat template. Arrow keys');

  // Undo and redo by their keys.
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.locator('.drop strong').count()).toBe(0);
  await page.keyboard.press('Control+Shift+z');
  await page.locator('.drop strong').waitFor();
  expect(wrong).toEqual([]);
});

test('a reading that cannot be is told at its field, in words', patience, async () => {
  const { page } = await bench.open();
  await type(page, 'blank:stations[0].across', '62,5');
  const across = page.locator('input[data-path="blank:stations[0].across"]');
  await expect.poll(() => across.getAttribute('aria-invalid')).toBe('true');
  const described = (await across.getAttribute('aria-describedby'))?.split(' ') ?? [];
  const says = await Promise.all(described.map((id) => page.locator(`[id="${id}"]`).textContent()));
  expect(says[0]).toBe('mm');
  expect(says[1]).toContain('has a comma in it; write a decimal point');
  // It is read out too, once the maker rests; and a step back leaves the keyboard where it was.
  await page
    .getByRole('status')
    .filter({ hasText: /^Checks: 1 stop\. .*has a comma/ })
    .waitFor();
  await page.keyboard.press('Control+z');
  expect(await across.inputValue()).toBe('');
  expect(await focused(page)).toContain('blank:stations[0].across');
  // Another kind of reading is typed where it stands; and where a step back takes the field away, the keyboard stays near it.
  await tabTo(page, 'I read the girth');
  await page.keyboard.press('Enter');
  await expect.poll(() => focused(page)).toContain('blank:stations[0].girth');
  await page.keyboard.press('Control+z');
  await expect.poll(() => focused(page)).toContain('blank:stations[0].across');
  await page.getByRole('button', { name: 'Add a reading between' }).press('Enter');
  await page.getByRole('button', { name: 'Remove the reading Lip' }).focus();
  await page.keyboard.press('Control+z');
  await expect.poll(() => focused(page)).toContain('Add a reading between');
});

/** How much of what has the keyboard lies behind the drawing, px. */
const hidden = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const board = document.querySelector('#drawing')?.getBoundingClientRect();
    const on = document.activeElement?.getBoundingClientRect();
    return board && on && on.bottom > board.top ? Math.max(0, board.bottom - on.top) : 0;
  });

test('on a narrow page no field that is come back to lies behind the drawing', patience, async () => {
  const { page } = await bench.open({ viewport: { width: 500, height: 800 } });
  await field(page, 'blank:stations[0].across').fill('62');
  await page.locator('#step-3 button').focus();
  for (let presses = 0; presses < 20; presses++) {
    await page.keyboard.press('Shift+Tab');
    expect(await hidden(page), await focused(page)).toBe(0);
  }
  // Enlarged four times the drawing is left its own height, and scrolls away.
  await page.setViewportSize({ width: 320, height: 256 });
  await field(page, 'blank:footRound').focus();
  expect(await hidden(page)).toBe(0);
  const board = await page.locator('#drawing').boundingBox();
  expect(board?.height).toBeGreaterThan(230);
});

test(
  'what is heard of the page: each reading by its place, groups by their names, nothing twice',
  patience,
  async () => {
    const { page } = await bench.open();
    await openStep(page, 2);
    const heard = await page.locator('body').ariaSnapshot();
    const foot = page.getByRole('group', { name: 'Foot, the reading', exact: true });
    expect(await foot.getByRole('textbox', { name: 'Height' }).count()).toBe(1);
    for (const told of ['region "Vessel"', 'group "Its wall"', 'group "Lip, the reading"'])
      expect(heard).toContain(`- ${told}:`);
    // What takes a file is opened by the button beside it, and what is busy is seen alone.
    expect(heard).not.toMatch(/Files to open|How to: [^"]*" \[expanded\]|drawing…|Samples:/);
    // Who begins with a sample goes on where it is drawn.
    await page.getByRole('button', { name: /Rope canister/ }).press('Enter');
    await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('tab-flat');
    // Its figures are read out once it is laid, not at every key.
    const figures = page.locator('#flat-figures');
    await expect.poll(() => figures.getAttribute('aria-busy'), { timeout: 60_000 }).toBe('false');
    const becomesBusy = await page.getByRole('textbox', { name: 'Foot round' }).evaluate((input) => {
      const figures = document.querySelector('#flat-figures');
      const busy = new Promise((seen) => {
        const watch = new MutationObserver(() => figures?.ariaBusy === 'true' && seen(true));
        watch.observe(figures ?? document, { attributeFilter: ['aria-busy'] });
      });
      (input as HTMLInputElement).value = '0.2in';
      input.dispatchEvent(new Event('input', { bubbles: true }));
      return busy;
    });
    expect(becomesBusy).toBe(true);
    // What is added has the keyboard, and once it is gone again what stands beside it.
    await page.locator('#step-3 button').press('Enter');
    await page.getByRole('button', { name: 'Add a coat by thickness' }).press('Enter');
    await expect.poll(() => focused(page)).toContain('job:coats[1].thickness');
    await page.getByRole('button', { name: 'Remove coat 2' }).press('Enter');
    await expect.poll(() => focused(page)).toContain('Add a coat by thickness');
  },
);

/** The mug of two tests: the second goes on with it as the first leaves it. */
let mug: OpenPage;

test(
  'each field is one stop, its help a key away; ways to close are gone through by arrows',
  patience,
  async () => {
    mug = await bench.open({ reducedMotion: 'reduce' });
    const { page, wrong } = mug;
    await page.getByRole('button', { name: /Shore mug/ }).press('Enter');
    // How the checks stand is read out once the maker rests: it would take the place of the help below.
    await page
      .getByRole('status')
      .filter({ hasText: /^Checks: / })
      .waitFor();
    await field(page, 'blank:stations[0].height').focus();
    await page.keyboard.press('Tab');
    expect(await focused(page)).toMatch(/^blank:stations\[0\]\.(across|girth)/);
    await page.keyboard.press('F1');
    const help = page.locator('.help-panel:visible');
    await expect.poll(() => help.count()).toBe(1);
    const says = (await help.textContent()) ?? '';
    await page.getByRole('status').filter({ hasText: says }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => help.count()).toBe(0);
    expect(await focused(page)).toMatch(/^blank:stations\[0\]\.(across|girth)/);

    await openStep(page, 2);
    const ways = page.getByRole('group', { name: 'Ways it can close' });
    await ways.getByRole('radio').first().waitFor();
    await settled(page);
    await ways.getByRole('radio', { checked: true }).focus();
    // A picture that is still drawn says so until it is there.
    const way = async () => (await focused(page)).replace('drawing…', '').trim();
    const before = await way();
    await page.keyboard.press('ArrowDown');
    const picked = await way();
    expect(picked).toMatch(/\d+ around/);
    expect(picked).not.toBe(before);
    // Laid, and listed anew, it is the same that has the keyboard, and is picked; one more press leaves them all.
    await settled(page);
    expect(await way()).toBe(picked);
    expect(await page.evaluate(() => document.activeElement?.matches(':checked'))).toBe(true);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.matches('[name="way"]'))).toBe(false);
    expect(wrong).toEqual([]);
  },
);

test('while a reading is typed nothing is read out; then how it stands, once', patience, async () => {
  const { page } = mug;
  await openStep(page, 1);
  await settled(page);
  await page.waitForTimeout(1000);
  await page.evaluate(() => {
    const told: string[] = [];
    Object.assign(globalThis, { told });
    const status = document.querySelector('.page > [role="status"]');
    new MutationObserver(() => told.push(status?.textContent ?? '')).observe(status ?? document, {
      characterData: true,
      childList: true,
      subtree: true,
    });
  });
  const girth = field(page, 'blank:stations[1].girth');
  await girth.press('Control+a');
  await page.keyboard.type('27,04', { delay: 60 });
  await settled(page);
  await page
    .getByRole('status')
    .filter({ hasText: /^Checks: .*has a comma/ })
    .waitFor();
  await page.waitForTimeout(1000);
  const told = await page.evaluate(() => (globalThis as unknown as { told: string[] }).told);
  expect(told).toHaveLength(1);
});

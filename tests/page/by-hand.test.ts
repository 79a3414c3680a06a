// A motif dragged; what is left when storage, the engine's thread or the page itself gives way.
import type { BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, field, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

/** For what is drawn in 3D: software draws every dot here. */
const small = { viewport: { width: 1000, height: 640 }, reducedMotion: 'reduce' } as const;

async function vesselTyped(page: Page): Promise<void> {
  await field(page, 'blank:stations[0].across').fill('60');
  await field(page, 'blank:stations[1].height').fill('80');
  await field(page, 'blank:stations[1].girth').fill('200');
}

test(
  'a text is dragged: figures go with it, it stays in the band, and one step back undoes it',
  patience,
  async () => {
    const { page, wrong } = await bench.open(small);
    await vesselTyped(page);
    // A text begins on the middle of the band, once it is known.
    await settled(page);
    await openStep(page, 2);
    await page.getByRole('button', { name: 'Add a text' }).click();
    await settled(page);
    await page.getByRole('tab', { name: 'Flat' }).click();
    const [turn, along] = ['turn', 'along'].map((key) => field(page, `job:lettering[0].at.${key}`));
    expect(await turn?.inputValue()).toBe('0.5');

    const figures = page.locator('#flat-figures');
    const middle = Number(await along?.inputValue());
    const from = await pointedAt(page, 'Flat template', figures, middle);
    await page.mouse.down();
    await page.mouse.move(from.x + 80, from.y, { steps: 4 });
    await expect.poll(() => figures.textContent()).toContain('Its middle may go from');
    await page.mouse.move(from.x + 80, from.y - 2000, { steps: 4 });
    await expect.poll(() => figures.textContent()).toContain('no further, the band ends there');
    await page.mouse.up();
    expect(Number(await turn?.inputValue())).toBeGreaterThan(0.52);
    // Half of the text's height, 12 mm capitals at the most, stays below the lip edge of the band, 80 mm up.
    const high = Number(await along?.inputValue());
    expect(high).toBeGreaterThan(70);
    expect(high).toBeLessThan(80);
    await page.keyboard.press('Control+z');
    await expect.poll(() => turn?.inputValue()).toBe('0.5');

    await draggedInSpace(page, turn, along);
    await stopped(page);
    expect(wrong).toEqual([]);
  },
);

/** Moves the pointer down the middle of a view until its figures say that it is so high up the wall, mm. */
async function pointedAt(page: Page, name: string, figures: Locator, middle: number) {
  const view = await page.getByRole('application', { name }).boundingBox();
  if (!view) throw new Error(`${name} has no place on the page`);
  const x = view.x + view.width / 2;
  const isThere = async () => {
    const [, along] = /([\d.]+) mm along/.exec((await figures.textContent()) ?? '') ?? [];
    return Math.abs(Number(along) - middle) <= 4;
  };
  for (let y = view.y + view.height / 4; y < view.y + view.height; y += 12) {
    await page.mouse.move(x, y);
    if (!(await isThere())) continue;
    // On a busy machine the figures may still be those of the place before: so told two frames on, they are of this one.
    await page.evaluate(
      () => new Promise<void>((told) => requestAnimationFrame(() => requestAnimationFrame(() => told()))),
    );
    if (await isThere()) return { x, y };
  }
  throw new Error('the pointer never came to the place');
}

/** The same text dragged on the vessel: it faces the maker, its middle up the wall where the field says. */
async function draggedInSpace(page: Page, turn?: Locator, along?: Locator): Promise<void> {
  await page.getByRole('tab', { name: 'Vessel' }).click();
  await page.locator('.solid-canvas[data-ready="yes"]').waitFor();
  await settled(page);
  const figures = page.locator('#solid-figures');
  const middle = Number(await along?.inputValue());
  const { x, y } = await pointedAt(page, 'The finished vessel', figures, middle);
  await page.mouse.down();
  await page.mouse.move(x - 40, y - 20, { steps: 4 });
  await expect.poll(() => figures.textContent()).toContain('Its middle may go from');
  // To the left on the vessel's front is to a smaller turn, and up is up; the view stays as it was.
  await expect.poll(() => turn?.inputValue().then(Number)).toBeLessThan(0.48);
  expect(Number(await along?.inputValue())).toBeGreaterThan(middle + 2);
  await page.mouse.up();
  expect(await figures.textContent()).toContain('Turn 0.500 faces you');
  await page.keyboard.press('Control+z');
  await expect.poll(() => turn?.inputValue()).toBe('0.5');

  // By keys: what lies in the middle is marked and moved, and all of its way is one step back.
  await settled(page);
  const view = page.getByRole('application', { name: 'The finished vessel' });
  await view.focus();
  // Seen from a little above, the middle of the window is higher up the wall than the text.
  const keys = ['ArrowDown', 'ArrowDown', 'Enter', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Shift+ArrowUp'];
  for (const key of keys) await view.press(key);
  await expect.poll(() => turn?.inputValue().then(Number)).toBeCloseTo(0.5 + 2 / 360, 3);
  expect(Number(await along?.inputValue())).toBeCloseTo(middle + 1, 1);
  await page.keyboard.press('Control+z');
  await expect.poll(() => turn?.inputValue()).toBe('0.5');
}

/** Long work is stopped, as it waits and as it runs: nothing is left of it, and it can be begun again. */
async function stopped(page: Page): Promise<void> {
  await openStep(page, 2);
  await page.getByRole('button', { name: 'Fish scales', exact: true }).click();
  await openStep(page, 5);
  const make = page.getByRole('button', { name: 'Make the files' });
  for (const isRunning of [false, true]) {
    await make.click();
    if (isRunning) await page.getByText('laying and cutting…').waitFor();
    expect(await make.isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => make.isEnabled()).toBe(true);
    expect(await page.getByRole('progressbar').count()).toBe(0);
    expect(await page.locator('.file-list').count()).toBe(0);
  }
  // What is typed after it is answered as before.
  await field(page, 'blank:stations[1].girth').fill('271');
  await expect.poll(() => page.locator('.told').first().textContent()).toContain('271');
}

/** Does something to the page before any of it runs. */
async function openedAfter(script: () => void): Promise<Page> {
  const { page } = await bench.open();
  await page.addInitScript(script);
  await page.reload();
  await page.locator('#step-1').waitFor();
  return page;
}

test('storage that is full is told of, and the work goes on', patience, async () => {
  const page = await openedAfter(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await vesselTyped(page);
  await page.getByText('the browser has no room left to keep this job; save it as a file').waitFor();
  await page.getByRole('img', { name: 'The wall in section' }).waitFor();
});

test('storage that is denied is told of, and the work goes on', patience, async () => {
  const page = await openedAfter(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('denied', 'SecurityError');
    };
  });
  await page.getByText('the browser keeps nothing here').waitFor();
  await vesselTyped(page);
  await page.getByRole('img', { name: 'The wall in section' }).waitFor();
});

test(
  'an engine whose thread dies, aloud or without a word, is started anew by what is asked next',
  patience,
  async () => {
    const page = await openedAfter(() => {
      const threads: Worker[] = [];
      const Plain = Worker;
      class Watched extends Plain {
        constructor(url: string | URL, options?: WorkerOptions) {
          super(url, options);
          threads.push(this);
        }
      }
      Object.assign(globalThis, { Worker: Watched, threads });
    });
    const threads = (work: 'aloud' | 'silently') =>
      page.evaluate((how) => {
        for (const thread of (globalThis as unknown as { threads: Worker[] }).threads) {
          thread.terminate();
          if (how === 'aloud') thread.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }));
        }
      }, work);
    const make = page.getByRole('button', { name: 'Make the files' });
    const proved = page.getByText('Proved: the files');
    const says = () => page.locator('.told').textContent();
    await vesselTyped(page);
    await page.getByRole('img', { name: 'The wall in section' }).waitFor();
    await settled(page);
    await openStep(page, 5);
    await page.getByLabel('Print the guide on').selectOption('');
    await make.click();
    await proved.waitFor();
    for (const [how, girth] of [
      ['aloud', '210'],
      ['silently', '220'],
    ] as const) {
      await threads(how);
      await openStep(page, 1);
      await field(page, 'blank:stations[1].girth').fill('205');
      await field(page, 'blank:stations[1].girth').fill(girth);
      // The wall is drawn on the page's own thread; files are made by none but the engine's.
      await expect.poll(says).toContain(girth);
      await openStep(page, 5);
      await page.getByText('The job was changed since these were made').waitFor();
      await make.click();
      if (how === 'silently') {
        await page.getByRole('button', { name: 'Stop' }).click();
        await make.click();
      }
      await page.getByText('The job was changed since these were made').waitFor({ state: 'detached' });
      await proved.waitFor();
    }
  },
);

test('a tab that is closed while it saves leaves a whole job behind', patience, async () => {
  const { page } = await bench.open();
  const context: BrowserContext = page.context();
  await vesselTyped(page);
  const light = page.getByRole('button', { name: /^Light:/ });
  await light.click();
  await light.click();
  await settled(page);
  for (const [i, closing] of ['201', '202', '203'].entries()) {
    const open = i === 0 ? page : await reopened(context);
    await field(open, 'blank:stations[1].girth').fill(closing);
    await open.waitForTimeout(180 + 15 * i);
    await open.close({ runBeforeUnload: true });
    const after = await reopened(context);
    expect(['200', '201', '202', '203']).toContain(
      await field(after, 'blank:stations[1].girth').inputValue(),
    );
    expect(await field(after, 'blank:stations[0].across').inputValue()).toBe('60');
    await after.getByRole('button', { name: 'Light: night' }).waitFor();
    expect(await after.locator('html').getAttribute('data-light')).toBe('dark');
    await after.close();
  }
});

async function reopened(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(bench.address);
  await page.locator('#step-1').waitFor();
  return page;
}

test(
  'of two things opened, the one chosen last lies on the bench, however late the other comes',
  patience,
  async () => {
    const { page, wrong } = await bench.open();
    await page.route(/cup\.(job|blank)|scales/, async (route) => {
      await page.waitForTimeout(1500);
      await route.continue();
    });
    await page.getByRole('button', { name: /Fish-scale cup/ }).click();
    await openStep(page, 2);
    const buffer = Buffer.from(
      '<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="40mm"><circle cx="20mm" cy="20mm" r="9mm"/></svg>',
    );
    await page
      .locator('#art-file')
      .setInputFiles({ name: 'chosen-last.svg', mimeType: 'image/svg+xml', buffer });
    await settled(page);
    expect(await page.getByRole('region', { name: 'Artwork file' }).textContent()).toContain(
      'chosen-last.svg is laid',
    );
    expect(wrong).toEqual([]);
  },
);

test('the guide is in mm on a bench in inches, and begins where the keys are', patience, async () => {
  const { page } = await bench.open();
  const units = (name: string) => page.getByRole('radio', { name, exact: true });
  await units('in').check({ force: true });
  await page.getByRole('button', { name: 'Two minutes with the lighthouse cup' }).click();
  await expect.poll(() => units('mm').isChecked()).toBe(true);
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Show me where');
  await page.keyboard.press('Enter');
  await expect
    .poll(() => page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.path))
    .toBe('blank:stations[0].across');
  await page.keyboard.type('62');
  await expect.poll(() => page.locator('.guide-count').textContent()).toBe('Lighthouse cup: 2 of 11');
  await expect.poll(() => field(page, 'blank:stations[0].across').inputValue()).toBe('62');
});

test(
  'a reading still to give leaves the vessel in 3D; a finding selected from it is gone to on the flat sheet, once',
  patience,
  async () => {
    const { page, wrong } = await bench.open(small);
    await vesselTyped(page);
    await openStep(page, 3);
    await field(page, 'job:band.from').fill('2');
    await field(page, 'job:band.to').fill('80');
    await page.getByRole('tab', { name: 'Vessel' }).click();
    await page.locator('.solid-canvas[data-ready="yes"]').waitFor();
    await page.getByRole('button', { name: 'Add a coat by thickness' }).click();
    await page.getByText('This is how it was before the last change').waitFor();
    expect(await page.locator('.solid-canvas').count()).toBe(1);
    await field(page, 'job:coats[0].thickness').fill('0.1');
    await settled(page);
    await expect.poll(() => page.getByText('This is how it was before the last change').count()).toBe(0);

    await openStep(page, 4);
    await page.locator('.finding-look', { hasText: 'lip-and-rim' }).click();
    const middle = async () => {
      const [mark, view] = await Promise.all(
        ['.mark-selected', '.flat-canvas'].map((one) => page.locator(one).boundingBox()),
      );
      return mark && view ? Math.abs(mark.y + mark.height / 2 - (view.y + view.height / 2)) : Infinity;
    };
    // Of a whole sheet its upper third would be looked at, not this place.
    await expect.poll(middle).toBeLessThan(40);
    expect(wrong).toEqual([]);
  },
);

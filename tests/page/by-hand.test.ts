// A motif dragged; what is left when storage, the engine's thread or the page itself gives way.
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, field, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

async function vesselTyped(page: Page): Promise<void> {
  await field(page, 'blank:stations[0].across').fill('60');
  await field(page, 'blank:stations[1].height').fill('80');
  await field(page, 'blank:stations[1].girth').fill('200');
}

test(
  'a text is dragged: figures go with it, it stays in the band, and one step back undoes it',
  patience,
  async () => {
    const { page, wrong } = await bench.open({ reducedMotion: 'reduce' });
    await page.getByRole('button', { name: /Fish-scale cup/ }).click();
    await page.locator('#flat-figures').filter({ hasText: 'Cut piece' }).waitFor();
    await openStep(page, 2);
    await page.getByRole('button', { name: 'Add a text' }).click();
    await settled(page);
    await page.getByRole('tab', { name: 'Flat' }).click();
    const [turn, along] = ['turn', 'along'].map((key) => field(page, `job:lettering[0].at.${key}`));
    expect(await turn?.inputValue()).toBe('0.5');

    // The marks of findings lie on the drawing too; the text is taken beside them.
    const figures = page.locator('#flat-figures');
    const flat = await page.getByRole('application', { name: 'Flat template' }).boundingBox();
    if (!flat) throw new Error('the drawing has no place on the page');
    const from = { x: flat.x + flat.width * 0.5, y: flat.y + flat.height * 0.51 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 80, from.y, { steps: 4 });
    await expect.poll(() => figures.textContent()).toContain('Its middle may go from');
    await page.mouse.move(from.x + 80, from.y - 2000, { steps: 4 });
    await expect.poll(() => figures.textContent()).toContain('no further, the band ends there');
    await page.mouse.up();
    expect(Number(await turn?.inputValue())).toBeGreaterThan(0.52);
    // Half of the text's height, 12 mm capitals at the most, stays below the lip edge of the band.
    const high = Number(await along?.inputValue());
    expect(high).toBeGreaterThan(110);
    expect(high).toBeLessThan(126);
    await page.keyboard.press('Control+z');
    await expect.poll(() => turn?.inputValue()).toBe('0.5');

    expect(wrong).toEqual([]);
  },
);

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
  'an engine whose thread dies, aloud or without a word, is started anew by what is typed next',
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
    const says = () => page.locator('.told').textContent();
    await vesselTyped(page);
    await page.getByRole('img', { name: 'The wall in section' }).waitFor();
    await settled(page);
    for (const [how, girth, told] of [
      ['aloud', '210', '210'],
      ['silently', '220', '220'],
    ] as const) {
      await threads(how);
      await field(page, 'blank:stations[1].girth').fill('205');
      await field(page, 'blank:stations[1].girth').fill(girth);
      await expect.poll(says).toContain(told);
    }
  },
);

test('a tab that is closed while it saves leaves a whole job behind', patience, async () => {
  const { page } = await bench.open();
  const context: BrowserContext = page.context();
  await vesselTyped(page);
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
    await after.close();
  }
});

async function reopened(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(bench.address);
  await page.locator('#step-1').waitFor();
  return page;
}

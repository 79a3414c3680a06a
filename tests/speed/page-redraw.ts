// How long a changed reading takes to be seen on the page: in a real browser, from the change to the frame after the one that draws it. The other side is the budget: what a hand does not feel, and what typing on a large pattern may take.
import type { Page } from 'playwright-core';
import { type Bench, field, openStep, startBench } from '../page/a-page.ts';
import type { Comparison } from './harness.ts';

/** With forty the worst two would be all that is told of the slowest in twenty. */
const changes = 120;
const warmUp = 5;
/** ms */
const budgets = { sample: 50, large: 250 } as const;

/** The value that this share of all lie below. */
const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;

/** What the page is told before each change: when it is made. */
const typedMark = 'typed';

/**
 * Makes changes one after the other, each with the mark; gives how long each took from there to the frame after the one that
 * draws it, ms. What is drawn of an older change does not count.
 */
async function times(page: Page, name: string, make: (i: number) => Promise<unknown>): Promise<number[]> {
  const taken: number[] = [];
  for (let i = 0; i < changes + warmUp; i++) {
    await make(i);
    const handle = await page.waitForFunction(
      ([of, mark]) => {
        const typed = performance.getEntriesByName(mark).at(-1)?.startTime ?? Number.POSITIVE_INFINITY;
        const drawn = performance.getEntriesByName(of).at(-1);
        return drawn && drawn.startTime >= typed && drawn.startTime + drawn.duration - typed;
      },
      [name, typedMark] as const,
      { polling: 20, timeout: 60_000 },
    );
    if (i >= warmUp) taken.push(Number(await handle.jsonValue()));
  }
  return taken.sort((a, b) => a - b);
}

/** Waits until the slower answers are in too, so that typing is measured and not the opening. */
async function quiet(page: Page): Promise<void> {
  await page.waitForTimeout(1000);
  await page.locator('main[data-busy="false"]').waitFor({ timeout: 60_000 });
}

function row(name: string, taken: readonly number[], budget: number): Comparison {
  const ours = quantile(taken, 0.95);
  const spread = (quantile(taken, 0.75) - quantile(taken, 0.25)) / 2 / quantile(taken, 0.5);
  return { name, ours, other: budget, unit: 'ms', ratio: ours / budget, spread };
}

/** A tile of blobs, 8 curves each: laid 5 by 5 times, with its copies it makes some 20,000 curves. */
function largeTile(): string {
  const blob = (x: number, y: number) => {
    const corners = Array.from({ length: 9 }, (_, i) => {
      const angle = (Math.PI * i) / 4;
      return [x + 1.6 * Math.cos(angle), y + 1.6 * Math.sin(angle)] as const;
    });
    const [start, ...rest] = corners;
    const curves = rest.map(([px, py], i) => {
      const [fx, fy] = corners[i] ?? [0, 0];
      const out = 1.06;
      return `C${x + (fx - x) * out + (px - fx) / 3} ${y + (fy - y) * out + (py - fy) / 3} ${x + (px - x) * out - (px - fx) / 3} ${y + (py - y) * out - (py - fy) / 3} ${px} ${py}`;
    });
    return `M${start?.[0]} ${start?.[1]}${curves.join('')}Z`;
  };
  const blobs = Array.from({ length: 100 }, (_, i) => blob(2.5 + 5 * (i % 10), 2.5 + 5 * Math.floor(i / 10)));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="50mm" height="50mm" viewBox="0 0 50 50"><path fill="#17566b" d="${blobs.join('')}"/></svg>`;
}

/** Types another girth; the field is not focused, for that would bring the wall's drawing to the front. */
const typeGirth = (page: Page) => (i: number) =>
  page.evaluate(`{
    const typed = document.querySelector('input[data-path="blank:stations[1].girth"]');
    typed.value = '${270 + (i % 2 === 0 ? 0.1 : 0) + i / 100}';
    performance.clearMarks('${typedMark}');
    performance.mark('${typedMark}');
    typed.dispatchEvent(new Event('input', { bubbles: true }));
  }`);

/** By key, in the field that a maker types in: then the wall is in front. */
const pressDigit = (page: Page) => async (i: number) => {
  await page.evaluate(`{
    performance.clearMarks('${typedMark}');
    const mark = ({ timeStamp }) => performance.mark('${typedMark}', { startTime: timeStamp });
    addEventListener('input', mark, { once: true, capture: true });
  }`);
  await page.keyboard.press(i % 2 === 0 ? String(1 + ((i / 2) % 9)) : 'Backspace');
};

async function wallRow(bench: Bench): Promise<Comparison> {
  const { page } = await bench.open({ reducedMotion: 'reduce' });
  await page.getByRole('button', { name: /Fish-scale cup/ }).click();
  await page.locator('#flat-figures').filter({ hasText: 'Cut piece' }).waitFor();
  const girth = field(page, 'blank:stations[1].girth');
  await girth.fill('270.1');
  await girth.press('End');
  await quiet(page);
  const typed = await times(page, 'wall redraw', pressDigit(page));
  await page.context().close();
  return row('page: a reading typed to its wall redrawn, p95 against 50 ms', typed, budgets.sample);
}

async function sampleRow(bench: Bench): Promise<Comparison> {
  const { page } = await bench.open({ reducedMotion: 'reduce' });
  await page.getByRole('button', { name: /Fish-scale cup/ }).click();
  await page.locator('#flat-figures').filter({ hasText: 'Cut piece' }).waitFor();
  await quiet(page);
  const typed = await times(page, 'flat redraw', typeGirth(page));
  await page.context().close();
  return row('page: a reading of the sample cup to its redraw, p95 against 50 ms', typed, budgets.sample);
}

async function largeRow(bench: Bench): Promise<Comparison> {
  const { page } = await bench.open();
  await page.getByRole('button', { name: /Fish-scale cup/ }).click();
  await openStep(page, 2);
  await page.locator('#art-file').setInputFiles({
    name: 'blobs.svg',
    mimeType: 'image/svg+xml',
    buffer: Buffer.from(largeTile()),
  });
  await page.locator('#flat-figures').filter({ hasText: 'Cut piece' }).waitFor();
  await quiet(page);
  const taken = await times(page, 'flat redraw', typeGirth(page));
  await page.context().close();
  return row(
    'page: a reading under a pattern of 20,000 curves to its redraw, p95 against 250 ms',
    taken,
    budgets.large,
  );
}

export async function pageComparisons(): Promise<Comparison[]> {
  const bench = await startBench('as made');
  try {
    return [await wallRow(bench), await sampleRow(bench), await largeRow(bench)];
  } finally {
    await bench.end();
  }
}

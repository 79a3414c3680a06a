// How long the page's own thread is held up while a reading is typed, by processor time, so that a busy machine tells the same: no task of it may be felt.
import type { CDPSession, Page } from 'playwright-core';
import { type Bench, openStep, settled, startBench } from '../page/a-page.ts';
import type { Comparison } from './harness.ts';

/** ms: what a hand does not feel. Longer tasks of a page are called long: W3C, Long Tasks API, section 1 (seen from memory). */
const felt = 50;

/** Keys, and how long a maker takes to the next, ms; every so many a pause, in which all is laid anew. */
const typing = { keys: 16, between: 150, pausesEvery: 8 } as const;

/** What is looked at here of what a browser tells of its work: times in µs. */
interface Traced {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Of its thread's processor time. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

const samples = ['Fish-scale cup', 'Rope canister', 'Tern pot', 'Shore mug'] as const;

async function tracedWhile(page: Page, work: () => Promise<void>): Promise<readonly Traced[]> {
  const session: CDPSession = await page.context().newCDPSession(page);
  const told: Traced[] = [];
  session.on('Tracing.dataCollected', ({ value }) => told.push(...(value as unknown as Traced[])));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: {
      includedCategories: ['toplevel', 'disabled-by-default-devtools.timeline', 'devtools.timeline'],
    },
  });
  await work();
  const whole = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await whole;
  await session.detach();
  return told;
}

/** Processor time of each task of the page's own thread, ms, the longest first. */
function tasksOf(told: readonly Traced[]): readonly number[] {
  const threads = told.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain');
  const own = threads.map(({ pid, tid }) =>
    told.filter((one) => one.pid === pid && one.tid === tid && one.name === 'RunTask' && one.ph === 'X'),
  );
  // The page is the one that does most: others have just been opened, or are about to end.
  const [most = []] = own.sort((a, b) => b.length - a.length);
  return most.map(({ tdur = 0 }) => tdur / 1000).sort((a, b) => b - a);
}

/** The longest task while a sample is typed at under a view, ms. */
async function longestTask({ open }: Bench, sample: string, view: 'flat' | 'both'): Promise<number> {
  const { page } = await open({ reducedMotion: 'reduce' });
  await page.getByRole('button', { name: new RegExp(sample) }).click();
  await settled(page);
  await openStep(page, 1);
  const reading = page.locator('#card input[data-path^="blank:stations"]').last();
  await reading.focus();
  await page.locator(`#tab-${view}`).evaluate((tab: { click: () => void }) => tab.click());
  await settled(page);
  await reading.press('End');
  const told = await tracedWhile(page, async () => {
    for (let i = 0; i < typing.keys; i++) {
      await page.keyboard.press(i % 2 === 0 ? String(1 + (i % 3)) : 'Backspace');
      await page.waitForTimeout(typing.between);
      if (i % typing.pausesEvery === typing.pausesEvery - 1) await settled(page);
    }
  });
  await page.context().close();
  const [longest = Number.NaN] = tasksOf(told);
  return longest;
}

/** One row a view: the longest task of all samples. */
async function taskRows(bench: Bench): Promise<Comparison[]> {
  const rows: Comparison[] = [];
  for (const view of ['flat', 'both'] as const) {
    const longest: number[] = [];
    for (const sample of samples) longest.push(await longestTask(bench, sample, view));
    const ours = Math.max(...longest);
    const of = view === 'flat' ? 'the flat drawing' : 'both drawings';
    rows.push({
      name: `page: longest task while typing under ${of}, four samples, processor time against ${felt} ms`,
      ours,
      other: felt,
      unit: 'ms',
      ratio: ours / felt,
      spread: (ours - Math.min(...longest)) / 2 / ours,
    });
  }
  return rows;
}

export async function taskComparisons(): Promise<Comparison[]> {
  const bench = await startBench('as made');
  try {
    return await taskRows(bench);
  } finally {
    await bench.end();
  }
}

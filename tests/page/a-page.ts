// The page as a maker has it open: served by the command, in a real browser that may reach nothing else.
import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import type { Browser, BrowserContextOptions, Download, Page } from 'playwright-core';
import { command, patience } from '../cli/run.ts';
import { launch, type Manner } from './browser.ts';
import { pageBuilt } from './page-built.ts';

export interface Bench {
  readonly address: string;
  readonly browser: Browser;
  /**
   * The page, open. Whatever the browser complains of, or asks of another machine, is gathered in `wrong`. What was opened before is
   * closed: its threads would go on working beside the next test.
   */
  readonly open: (options?: BrowserContextOptions) => Promise<OpenPage>;
  readonly end: () => Promise<void>;
}

export interface OpenPage {
  readonly page: Page;
  readonly wrong: string[];
}

/** Software graphics remark that reading a picture back is slow there, and the driver that it keeps no copy: no faults of the page. */
const isOfDriver = (says: string): boolean =>
  says.includes('GPU stall due to ReadPixels') || says.startsWith('Service Worker registration blocked by');

/**
 * Starts the command's server and a browser. A sparing one keeps no copy of the page for later either: what that is for is tested with
 * the browser as it is made.
 */
export async function startBench(manner: Manner = 'sparing'): Promise<Bench> {
  await pageBuilt();
  const server: ChildProcess = spawn(process.execPath, [command, 'bench', '--no-open']);
  const first = await new Promise<string>((resolve) => {
    server.stdout?.once('data', (part: Buffer) => resolve(part.toString()));
  });
  const address = first.split('\n')[0] ?? '';
  const browser = await launch(manner);
  const open = async (options: BrowserContextOptions = {}): Promise<OpenPage> => {
    for (const before of browser.contexts()) await before.close();
    const context = await browser.newContext({
      viewport: { width: 1280, height: 860 },
      serviceWorkers: manner === 'sparing' ? 'block' : 'allow',
      ...options,
    });
    const page = await context.newPage();
    // Half as long as a test may take: a step that never ends is told by its line.
    page.setDefaultTimeout(patience.timeout / 2);
    const wrong: string[] = [];
    page.on('pageerror', ({ message }) => wrong.push(message));
    page.on('console', (message) => {
      const says = message.text();
      if (['error', 'warning'].includes(message.type()) && !isOfDriver(says)) wrong.push(says);
    });
    context.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(address) && !url.startsWith('blob:')) wrong.push(`asked for ${url}`);
    });
    await page.goto(address);
    await page.locator('#step-1').waitFor();
    return { page, wrong };
  };
  const end = async () => {
    await browser.close();
    server.kill();
  };
  return { address, browser, open, end };
}

/** Makes the files, without the print that takes longest, and waits until they are proved. */
export async function madeFiles(page: Page): Promise<void> {
  await openStep(page, 5);
  await page.getByLabel('Print the guide on').selectOption('');
  await page.getByRole('button', { name: 'Make the files' }).click();
  await page.getByText('Proved: the files').waitFor();
}

/** The step of the card, opened. */
export async function openStep(page: Page, number: number): Promise<void> {
  const button = page.locator(`#step-${number} button`);
  if ((await button.getAttribute('aria-expanded')) === 'false') await button.click();
}

/** The field of a key, such as `blank:stations[0].across`. */
export const field = (page: Page, path: string) => page.locator(`input[data-path="${path}"]`);

/** Waits until everything that was asked of the engine, or is to be asked after a pause in typing, has been answered. */
export async function settled(page: Page): Promise<void> {
  const busy = () => page.locator('main').getAttribute('data-busy');
  for (let quiet = 0; quiet < 2; ) {
    await page.locator('main[data-busy="false"]').waitFor();
    // What an answer brings up may ask again.
    await page.waitForTimeout(80);
    quiet = (await busy()) === 'false' ? quiet + 1 : 0;
  }
}

export const bytesOf = async (download: Download): Promise<Uint8Array> =>
  new Uint8Array(readFileSync(await download.path()));

// Hostile artwork does nothing; the page works without a network, and from any folder server; it is small at first.
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience, projectFolder } from '../cli/run.ts';
import { type Bench, madeFiles, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench('as made');
}, patience.timeout);
afterAll(() => bench.end());

const elsewhere = 'https://seamwright.example';

/** Everything that has ever run or reached out from an SVG. The tile itself could be cut. */
const hostile = `<?xml version="1.0"?>
<?xml-stylesheet href="${elsewhere}/style.css"?>
<!DOCTYPE svg [<!ENTITY far SYSTEM "${elsewhere}/entity">]>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="40mm" height="40mm" viewBox="0 0 40 40" onload="hit=1">
  <script>hit = 1; fetch('${elsewhere}/script')</script>
  <style>@import url(${elsewhere}/import.css); circle { fill: url(${elsewhere}/fill.svg#a) }</style>
  <image href="${elsewhere}/image.png" width="9" height="9" onerror="hit=1"/>
  <foreignObject width="9" height="9"><iframe xmlns="http://www.w3.org/1999/xhtml" src="${elsewhere}/frame"/></foreignObject>
  <use xlink:href="${elsewhere}/use.svg#a"/>
  <a href="javascript:hit=1"><circle cx="20" cy="20" r="9" onclick="hit=1"/></a>
  <animate attributeName="href" to="javascript:hit=1" begin="0s"/>
</svg>`;

test(
  'a hostile SVG runs nothing and reaches nothing, whole or cut down to what is read',
  patience,
  async () => {
    const { page, wrong } = await bench.open();
    page.on('dialog', (dialog) => wrong.push(`dialog ${dialog.message()}`));
    await page.getByRole('button', { name: /Fish-scale cup/ }).click();
    await openStep(page, 2);
    const plain = hostile.replace(
      /<\?xml-style.*\n|<!DOCTYPE.*\n|<image.*\n|<foreign.*\n|<use.*\n|<style.*\n/g,
      '',
    );
    for (const [name, text] of [
      ['hostile.svg', hostile],
      ['"><img src=x onerror=hit=1>.svg', plain],
    ] as const) {
      await page
        .locator('#art-file')
        .setInputFiles({ name, mimeType: 'image/svg+xml', buffer: Buffer.from(text) });
      await page.getByText(name).first().waitFor();
      for (const tab of ['Artwork', 'Flat', 'Vessel']) {
        await page.getByRole('tab', { name: tab }).click();
        await settled(page);
      }
    }
    await openStep(page, 4);
    expect(await page.evaluate('typeof hit')).toBe('undefined');
    expect(await page.locator('script:not([src])').count()).toBe(0);
    expect(wrong).toEqual([]);
  },
);

test('once opened it works without a network: a job is loaded, laid and made', patience, async () => {
  const { page, wrong } = await bench.open();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect.poll(() => page.evaluate(() => Boolean(navigator.serviceWorker.controller))).toBe(true);
  await page.context().setOffline(true);
  await page.reload();
  await page.getByRole('button', { name: /Tern pot/ }).click();
  await madeFiles(page);
  expect(wrong).toEqual([]);
});

/** The most a first view may weigh, compressed, bytes, everything counted that is asked for before anything is typed. */
const mostAtFirst = 300_000;

test(
  'from a folder server, below any path, the first view is light and keeps to its own files',
  patience,
  async () => {
    const types: Readonly<Record<string, string>> = {
      '.js': 'text/javascript',
      '.css': 'text/css',
      '.html': 'text/html',
      '.wasm': 'application/wasm',
    };
    const asked: string[] = [];
    const server: Server = createServer((request, response) => {
      const path = (request.url ?? '').replace(/^\/shop\/page\//, '').split('?')[0] || 'index.html';
      asked.push(path);
      try {
        const bytes = readFileSync(join(projectFolder, 'dist/page', path));
        response.writeHead(200, { 'content-type': types[extname(path)] ?? 'application/octet-stream' });
        response.end(bytes);
      } catch {
        response.writeHead(404);
        response.end();
      }
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const bound = server.address();
    const port = typeof bound === 'object' && bound ? bound.port : 0;
    const context = await bench.browser.newContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    const wrong: string[] = [];
    page.on('console', (message) => message.type() === 'error' && wrong.push(message.text()));
    await page.goto(`http://127.0.0.1:${port}/shop/page/`);
    await page.getByRole('heading', { name: 'A flat file that fits' }).waitFor();
    await page.waitForLoadState('networkidle');
    const first = [...new Set(asked)];
    const weighs = first.map((path) => gzipSync(readFileSync(join(projectFolder, 'dist/page', path))).length);
    expect(
      weighs.reduce((sum, bytes) => sum + bytes, 0),
      first.join(', '),
    ).toBeLessThan(mostAtFirst);
    await page.getByRole('button', { name: /Fish-scale cup/ }).click();
    await expect
      .poll(() => page.locator('#flat-figures').textContent(), { timeout: 60_000 })
      .toContain('Cut piece');
    expect(wrong).toEqual([]);
    await context.close();
    server.close();
  },
);

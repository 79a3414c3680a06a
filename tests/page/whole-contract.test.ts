// What a job can hold beyond its pattern, chosen on the page: single motifs, lettering, seams, sheets, gores.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience, run, Workshop } from '../cli/run.ts';
import { type Bench, bytesOf, field, madeFiles, openStep, settled, startBench } from './a-page.ts';
import { barriers } from './barriers.ts';
import { expectLook } from './looks.ts';
import { expectCommandsBytes } from './same-bytes.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

/** The job as the page saves it. */
async function savedJob(page: Page): Promise<unknown> {
  await page.getByText('Save', { exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /Only the job/ }).click(),
  ]);
  return JSON.parse(new TextDecoder().decode(await bytesOf(download)));
}

/** The tick that begins a part of the job. */
const box = (page: Page, path: string) => page.locator(`input[type="checkbox"][data-path="${path}"]`);

/** As large as the tile of the terns; its colour is one of theirs. */
const moon = `<svg xmlns="http://www.w3.org/2000/svg" width="56mm" height="60mm" viewBox="0 0 56 60"><circle cx="14" cy="45" r="6" fill="#d4532f"/></svg>`;

const dot = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="20mm" viewBox="0 0 20 20"><circle cx="10" cy="10" r="9" fill="#17566b"/></svg>`;

test(
  'a text and a motif under a cover strip, a mask along them, collars, on A4: saved in the contract’s words, proved, the command’s bytes',
  patience,
  async () => {
    const { page, wrong } = await bench.open();
    await field(page, 'blank:stations[0].across').fill('60');
    await field(page, 'blank:stations[1].height').fill('80');
    await field(page, 'blank:stations[1].girth').fill('200');
    await page.getByText('No', { exact: true }).click();
    // Motifs begin on the middle of the band, once it is known.
    await settled(page);
    await openStep(page, 2);
    await page.locator('input[data-file="items"]').setInputFiles({
      name: 'dot.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(dot),
    });
    await field(page, 'job:items[0].at.turn').fill('0.25');
    await page.getByRole('button', { name: 'Add a text' }).click();
    await page.locator('textarea[data-path="job:lettering[0].text"]').fill('Harbour\nlight');
    await field(page, 'job:lettering[0].capHeight').fill('9');
    await openStep(page, 3);
    await page.getByText('Strip', { exact: true }).click();
    await field(page, 'job:seam.strip').fill('8');
    await field(page, 'job:film.measured.laid').fill('201');
    await page.getByText('All around it', { exact: true }).click();
    await box(page, 'job:stencil').check();
    await page.getByText('Fade', { exact: true }).click();
    await box(page, 'job:relief').check();
    await field(page, 'job:relief.every').fill('30');
    await box(page, 'job:mask').check();
    await page.getByText('Down to the foot', { exact: true }).click();
    await page.getByLabel('1: Harbour').uncheck();
    await field(page, 'job:mask.smooth').fill('3');
    await box(page, 'job:mask.window').check();
    await box(page, 'job:collars').check();
    await page.getByRole('button', { name: 'At a height of your own instead' }).click();
    await field(page, 'job:collars.at[0]').fill('20');
    await page.getByLabel('On it runs the paper’s').selectOption('upper');
    expect(await field(page, 'job:collars.at[0].along').inputValue()).toBe('20');
    // One step back, and forth again.
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await field(page, 'job:collars.at[0]').inputValue()).toBe('20');
    await page.getByRole('button', { name: 'Redo' }).click();
    await openStep(page, 5);
    await page.getByText('The sheet you cut from').click();
    await page.getByLabel('Sheet or roll').selectOption('a4.sheet.json');
    await field(page, 'job:batch').fill('2');
    await settled(page);

    expect(await savedJob(page)).toEqual({
      name: 'my job',
      units: 'mm',
      blank: 'my.blank.json',
      items: [{ file: 'dot.svg', across: 40, at: { turn: 0.25, along: 40.01 } }],
      lettering: [{ text: 'Harbour\nlight', capHeight: 9, at: { turn: 0.5, along: 40.01 } }],
      seam: { style: 'strip', strip: 8 },
      film: { measured: { laid: 201 }, use: 'mask' },
      stencil: { bridge: 1.2 },
      edges: 'fade',
      relief: { every: 30 },
      mask: { covers: 'foot', standOff: 2, smooth: 3, follows: ['item-1'], window: { grow: -0.5 } },
      collars: { width: 20, at: [{ along: 20, edge: 'upper' }] },
      sheet: 'a4.sheet.json',
      batch: 2,
    });
    await madeFiles(page);
    const names = await page.locator('.file-name').allTextContents();
    for (const name of ['strip.cut.svg', 'mask.cut.svg', 'window.cut.svg']) expect(names).toContain(name);
    expect(names.join(' ')).toMatch(/collar\S*\.svg/);
    expect(
      names.some((name) => /sheet.*\.cut\.svg/.test(name)),
      names.join(' '),
    ).toBe(true);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save all as one zip' }).click(),
    ]);
    const shop = new Workshop();
    await expectCommandsBytes(await bytesOf(download), shop.folder);
    shop.clear();
    expect(wrong).toEqual([]);
  },
);

test(
  'a paper fit, a dent, a lip zone, layers in order, mended: saved in the contract’s words',
  patience,
  async () => {
    const { page, wrong } = await bench.open();
    await page.getByRole('button', { name: /Tern pot/ }).click();
    await settled(page);
    await openStep(page, 1);
    await page.getByText('What to keep bare').click();
    await page.getByLabel('Add one').selectOption('dent');
    await field(page, 'blank:keepOut[0].along.from').fill('40');
    await field(page, 'blank:keepOut[0].along.to').fill('45');
    await field(page, 'blank:keepOut[0].turn.from').fill('0.2');
    await field(page, 'blank:keepOut[0].turn.to').fill('0.25');
    await field(page, 'blank:lipZone').fill('12');
    await page.getByText('What the paper missed by').click();
    await page.getByRole('button', { name: 'Add a paper fit' }).click();
    await field(page, 'blank:fits[0].foot').fill('1');
    await field(page, 'blank:fits[0].lip').fill('-0.5');
    await openStep(page, 2);
    await page.getByText('Drawings laid over it').click();
    await page.locator('input[data-file="over"]').setInputFiles({
      name: 'moon.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(moon),
    });
    // It has a colour of the pattern's: the page says so, in its own words.
    await page
      .getByText(/give it another colour: “Drawing: moon.svg”, “All in one colour: #/)
      .first()
      .waitFor();
    await page.getByLabel('All in one colour').check();
    await page.locator('input[data-path="job:artwork.over[0].colour"]').fill('#8a2f6b');
    await settled(page);
    // The ways are those of all drawings together: two colours of the terns, one of the moon.
    await expect.poll(() => page.locator('.ways .told').textContent()).toContain('3 colours');
    await page.getByLabel('Mend what can’t be cut').check();
    await page.getByText('Layers of film').click();
    await page
      .getByRole('button', { name: /^Over the next/ })
      .first()
      .click();
    await page.getByText('Knocked out', { exact: true }).click();
    await field(page, 'job:layers.spread').fill('0.2');
    await openStep(page, 3);
    await page.getByText('All around it', { exact: true }).click();
    await box(page, 'job:stencil').check();
    await page.getByLabel(/A backing with a smooth outline/).check();
    await openStep(page, 5);
    await page.getByText('The sheet you cut from').click();
    await field(page, 'job:panels.levels').fill('40, 2 1/2in');
    await settled(page);
    const job = (await savedJob(page)) as { readonly layers: { readonly order: readonly string[] } };
    expect(job).toMatchObject({
      artwork: { mend: true, over: [{ file: 'moon.svg', colour: '#8a2f6b' }] },
      film: { use: 'mask' },
      stencil: { bridge: 1.2 },
      panels: { levels: [40, '2 1/2in'] },
      layers: { style: 'knocked-out', spread: 0.2, backing: { grow: 2 } },
    });
    expect(job.layers.order).toHaveLength(3);
    const order = await page.locator('.layer-order li').allTextContents();
    expect(order.map((text) => text.slice(0, 7))).toEqual(job.layers.order);
    await page.getByText('Save', { exact: true }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: /Only the vessel/ }).click(),
    ]);
    expect(JSON.parse(new TextDecoder().decode(await bytesOf(download)))).toMatchObject({
      keepOut: [{ what: 'dent', along: { from: 40, to: 45 }, turn: { from: 0.2, to: 0.25 } }],
      lipZone: 12,
      fits: [{ foot: 1, lip: -0.5 }],
    });
    // The fit is at work: what moved is told with the readings.
    await expect.poll(() => page.locator('.told').first().textContent()).toMatch(/paper|fit/);
    expect(wrong).toEqual([]);
  },
);

test('another seam takes along only what it can have; a job in gores opens as gores', patience, async () => {
  const { page } = await bench.open();
  const barrel = {
    name: 'barrel',
    units: 'mm',
    blank: {
      name: 'barrel',
      use: 'other',
      wall: 'smooth',
      stations: [0, 30, 60, 90, 120].map((height, i) => ({ height, across: [84, 97, 101, 97, 84][i] })),
    },
    pieces: 'gores',
    gores: 8,
  };
  await page.locator('#open-files').setInputFiles({
    name: 'barrel.job.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(barrel)),
  });
  await page.getByRole('tab', { name: 'Flat' }).click();
  await expect
    .poll(() => page.locator('#flat-figures').textContent(), { timeout: 60_000 })
    .toContain('gores');
  await openStep(page, 3);
  expect(await field(page, 'job:gores').inputValue()).toBe('8');
  await page.getByText('Stacked', { exact: true }).click();
  await field(page, 'job:seam.overlap').fill('5');
  await page.getByText('Butt', { exact: true }).click();
  expect(await savedJob(page)).toMatchObject({ pieces: 'stacked', seam: { style: 'butt' } });
  expect(await savedJob(page)).not.toHaveProperty('gores');
  expect(await savedJob(page)).not.toHaveProperty('seam.overlap');
});

test(
  'a list of names: rows looked at line by line, one seen, all made to the command’s bytes',
  patience,
  async () => {
    const shop = new Workshop();
    const { page, wrong } = await bench.open();
    const job = {
      name: '{name}',
      units: 'mm',
      blank: 'pot.blank.json',
      lettering: [{ text: '{name}', capHeight: '{letters}', fit: 60, at: { turn: 0.5, along: 20 } }],
      // Shared by all of the list: the page once laid one a vessel.
      sheet: { across: 300, up: 200 },
    };
    const blank = {
      name: 'tasting pot (invented)',
      use: 'other',
      units: 'mm',
      stations: [
        { height: 0, across: 50 },
        { height: 40, across: 50 },
      ],
    };
    const list = 'name;letters\nSkerry;9,5\nTern;none\n"Ropes; knots";8\n';
    shop.write('names.job.json', JSON.stringify(job));
    shop.write('pot.blank.json', JSON.stringify(blank));
    shop.write('names.csv', list);
    await page
      .locator('#open-files')
      .setInputFiles(['names.job.json', 'pot.blank.json'].map((file) => join(shop.folder, file)));
    await openStep(page, 5);
    await page.getByLabel('Print the guide on').selectOption('');
    await page.getByText('A list of names: a vessel a row').click();
    await page.locator('#names-text').fill('name\nTern');
    await page.locator('input[data-file="names"]').setInputFiles(join(shop.folder, 'names.csv'));
    await page.getByText('names.csv', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.locator('#names-text').inputValue()).toBe('name\nTern');
    await page.getByRole('button', { name: 'Redo' }).click();
    await page.getByRole('button', { name: 'Look at the rows' }).click();
    await page.getByText('2 rows can be made; 1 left out').waitFor();
    const left = await page.getByRole('list', { name: 'Rows left out' }).textContent();
    expect(left).toMatch(/^Line 3: .*none/);
    await page.getByRole('img', { name: 'The vessel of line 2, Skerry' }).waitFor();
    await page.getByLabel('See the vessel of').selectOption('4');
    await page.getByRole('img', { name: 'The vessel of line 4, Ropes; knots' }).waitFor();
    expect(await barriers(page), 'list').toEqual([]);
    await page.setViewportSize({ width: 390, height: 800 });
    const names = page.getByRole('button', { name: 'Make all rows, as one zip' });
    await names.scrollIntoViewIfNeeded();
    expect(await barriers(page), 'list on a phone').toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.setViewportSize({ width: 1280, height: 860 });
    await expectLook(page.locator('.names'), 'names');
    const [download] = await Promise.all([page.waitForEvent('download'), names.click()]);
    const files = unzipSync(await bytesOf(download));
    // 1: done, with a row left out.
    expect(
      (await run(['names', 'names.job.json', 'names.csv', '--out', 'out'], { cwd: shop.folder })).status,
    ).toBe(1);
    const ofCommand = readdirSync(join(shop.folder, 'out'), { recursive: true, encoding: 'utf8' })
      // What a later run of the command looks at.
      .filter((name) => name.includes('.') && !name.endsWith('row.json'))
      .sort();
    expect(Object.keys(files).sort()).toEqual(ofCommand);
    expect(ofCommand).toContain('sheet-1.cut.svg');
    await page.getByText('They share one sheet, proved to hold every piece', { exact: true }).waitFor();
    for (const [name, bytes] of Object.entries(files))
      expect(readFileSync(join(shop.folder, 'out', name)).equals(bytes), name).toBe(true);
    await page.reload();
    await openStep(page, 5);
    expect(await page.locator('#names-text').inputValue()).toBe(list);
    await page.getByText('names.csv', { exact: true }).waitFor();
    expect(wrong).toEqual([]);
    shop.clear();
  },
);

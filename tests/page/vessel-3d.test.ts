// The finished vessel in 3D: turned, coloured, saved; kept in step with the flat view; and without WebGL, what stands in for it.
// The seam's close-up. A small window: software draws every dot here.

import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, bytesOf, field, type OpenPage, openStep, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

async function plainCup(page: Page): Promise<void> {
  await field(page, 'blank:stations[0].across').fill('62');
  await field(page, 'blank:stations[1].height').fill('150');
  await field(page, 'blank:stations[1].girth').fill('270');
}

async function fishScaleCup(page: Page): Promise<void> {
  await plainCup(page);
  await openStep(page, 2);
  await page.getByRole('button', { name: 'Fish scales' }).click();
  await settled(page);
  await page.getByRole('tab', { name: 'Vessel' }).click();
}

/** A window with room for both views, and no more dots than need be. */
const small = { viewport: { width: 1000, height: 640 }, reducedMotion: 'reduce' } as const;

/** What is on the picture that the page saves. */
async function savedPicture(page: Page): Promise<PNG> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save picture' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('vessel.png');
  return PNG.sync.read(Buffer.from(await bytesOf(download)));
}

/** The share of a picture's dots that one test holds for. */
function share({ data }: PNG, holds: (red: number, green: number, blue: number) => boolean): number {
  let count = 0;
  for (let i = 0; i < data.length; i += 4)
    if (data[i + 3] === 255 && holds(data[i] ?? 0, data[i + 1] ?? 0, data[i + 2] ?? 0)) count++;
  return count / (data.length / 4);
}

/** The rows of a picture between two shares of its height. */
function rowsOf({ width, height, data }: PNG, from: number, to: number): PNG {
  const [first, last] = [from, to].map((at) => Math.round(at * height));
  const rows = new PNG({ width, height: (last ?? 0) - (first ?? 0) });
  rows.data = data.subarray(4 * width * (first ?? 0), 4 * width * (last ?? 0));
  return rows;
}

const isReddish = (red: number, green: number, blue: number) => red > 1.6 * green && red > 1.6 * blue;

/** What keys bring is drawn at once, in lines; when they rest, the flat drawing is the one of the job laid afresh, dot for dot. */
async function drawnAsLaid(page: Page): Promise<void> {
  await page.getByRole('tab', { name: 'Flat' }).click();
  await settled(page);
  const drawn = (): Promise<unknown> => page.evaluate("document.querySelector('.flat-canvas').toDataURL()");
  const before = await drawn();
  // Without the field's focus, which would bring the wall to the front.
  await page.evaluate(`{
    const typed = document.querySelector('input[data-path="blank:stations[1].girth"]');
    typed.value = '271mm';
    typed.dispatchEvent(new Event('input', { bubbles: true }));
  }`);
  await expect.poll(drawn).not.toBe(before);
  await settled(page);
  const rested = await drawn();
  await page.reload();
  await page.locator('.flat-canvas').waitFor();
  await settled(page);
  expect((await drawn()) === rested).toBe(true);
}

/** The cup of the first three tests, which go on with it one after another: opened anew it would be laid and drawn anew each time. */
let cup: OpenPage;

test('the cup is turned by key and by hand, takes the maker’s colours, and is saved', patience, async () => {
  cup = await bench.open(small);
  const { page, wrong } = cup;
  await fishScaleCup(page);
  const view = page.getByRole('application', { name: 'The finished vessel' });
  await page.locator('.solid-canvas[data-ready="yes"]').waitFor();
  const figures = page.locator('#solid-figures');
  expect(await figures.textContent()).toContain('Turn 0.500 faces you');

  const before = await savedPicture(page);
  // The cup fills a good part of the window, and has no red on it yet.
  expect(share(before, () => true)).toBeGreaterThan(0.1);
  expect(share(before, isReddish)).toBe(0);

  await view.focus();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => figures.textContent()).toContain('Turn 0.528 faces you');
  const box = await view.boundingBox();
  if (!box) throw new Error('the view has no place on the page');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 - 70, box.y + box.height / 2, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => figures.textContent()).toContain('Turn 0.628 faces you');

  await page.getByText('Colours', { exact: true }).click();
  const ownColour = await page.getByLabel(/^Film/).inputValue();
  await page.getByLabel(/^Film/).fill('#cc1010');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await page.getByLabel(/^Film/).inputValue()).toBe(ownColour);
  await page.getByRole('button', { name: 'Redo' }).click();
  const red = await savedPicture(page);
  expect(share(red, isReddish)).toBeGreaterThan(0.03);

  // The line of the seam, seen from its side, comes and goes.
  await page.getByLabel(/^Film/).fill('#202020');
  await page.getByText('Colours', { exact: true }).click();
  await page.getByRole('button', { name: 'Seam side' }).click();
  const isSeam = (r: number, g: number, b: number) => r > 1.5 * g && b > 1.3 * g;
  expect(share(await savedPicture(page), isSeam)).toBeGreaterThan(0.0005);
  await page.getByRole('button', { name: 'Seam line' }).click();
  expect(share(await savedPicture(page), isSeam)).toBe(0);

  // Spray blended up the wall, through the mask; then with the layer left out.
  await page.getByText('Colours', { exact: true }).click();
  await page.getByLabel('Sprayed through a mask').check();
  await page.getByRole('button', { name: /Blend into another/ }).click();
  await page.getByLabel(/^and up the wall/).fill('#10cc10');
  await page.getByText('Colours', { exact: true }).click();
  const isGreenish = (r: number, g: number, b: number) => g > 1.5 * r && g > 1.5 * b;
  const pulled = share(await savedPicture(page), isGreenish);
  await page.getByRole('button', { name: 'Sprayed', exact: true }).click();
  const sprayed = share(await savedPicture(page), isGreenish);
  expect(pulled).toBeGreaterThan(0.005);
  expect(sprayed).toBeGreaterThan(1.2 * pulled);
  await page.getByRole('button', { name: 'Masked' }).click();
  expect(share(await savedPicture(page), isGreenish)).toBe(0);

  // On its lip, the wider end is below.
  const wide = (picture: PNG, from: number, to: number) => share(rowsOf(picture, from, to), () => true);
  const upright = await savedPicture(page);
  expect(wide(upright, 0, 0.5)).toBeGreaterThan(1.1 * wide(upright, 0.5, 1));
  await page.locator('input[data-path="job:shown"]').last().check();
  await settled(page);
  const turnedOver = await savedPicture(page);
  expect(wide(turnedOver, 0.5, 1)).toBeGreaterThan(1.1 * wide(turnedOver, 0, 0.5));

  const [turning] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save turning' }).click(),
  ]);
  const gif = Buffer.from(await bytesOf(turning));
  // Graphics Interchange Format, version 89a (CompuServe, 1990), from memory: the signature, the screen's size in the
  // next four bytes, and before each picture a graphic control extension that begins with these four bytes.
  expect(gif.toString('latin1', 0, 6)).toBe('GIF89a');
  expect([gif.readUInt16LE(6), gif.readUInt16LE(8)]).toEqual([320, 400]);
  expect(gif.toString('latin1').split('\x21\xf9\x04').length - 1).toBeGreaterThanOrEqual(24);

  await page.getByRole('button', { name: 'Four sides' }).click();
  await page.getByRole('img', { name: 'The finished vessel from four sides' }).waitFor();

  expect(wrong).toEqual([]);
});

test(
  'the flat drawing follows keys at once; opened anew, it and the colours are as they were',
  patience,
  async () => {
    const { page, wrong } = cup;
    await page.locator('input[data-path="job:shown"]').first().check();
    await drawnAsLaid(page);
    await page.getByRole('tab', { name: 'Vessel' }).click();
    await page.getByRole('button', { name: 'Colours' }).click();
    expect(await page.getByLabel(/^and up the wall/).inputValue()).toBe('#10cc10');
    await page.getByRole('button', { name: 'Colours', exact: true }).click();
    expect(wrong).toEqual([]);
  },
);

const inFigures = /([\d.]+)° around \(turn ([\d.]+)\), ([\d.]+) mm along/;

test('pointed at on one view, a place is shown on the other, in the same figures', patience, async () => {
  const { page, wrong } = cup;
  await page.setViewportSize({ width: 1280, height: 860 });
  await page.getByRole('tab', { name: 'Both' }).click();
  await page.locator('.solid-canvas[data-ready="yes"]').waitFor();
  await settled(page);
  const [flat, vessel] = [page.locator('#flat-figures'), page.locator('#solid-figures')];

  // The middle of the vessel's front: halfway around, within the band.
  const solid = await page.getByRole('application', { name: 'The finished vessel' }).boundingBox();
  if (!solid) throw new Error('the view has no place on the page');
  await page.mouse.click(solid.x + solid.width / 2, solid.y + solid.height / 2);
  await expect.poll(() => flat.textContent()).toMatch(inFigures);
  const onFlat = inFigures.exec((await flat.textContent()) ?? '') ?? [];
  expect(Number(onFlat[2])).toBeCloseTo(0.5, 2);
  expect(Number(onFlat[3])).toBeGreaterThan(40);
  expect(Number(onFlat[3])).toBeLessThan(110);
  expect(await vessel.textContent()).toContain(onFlat[0]);

  // And the other way round: a quarter from the left of the flat sheet is near a quarter of a turn.
  const sheet = await page.getByRole('application', { name: 'Flat template' }).boundingBox();
  if (!sheet) throw new Error('the view has no place on the page');
  await page.mouse.click(sheet.x + sheet.width * 0.45, sheet.y + sheet.height * 0.6);
  await page.mouse.move(5, 5);
  const onVessel = inFigures.exec((await vessel.textContent()) ?? '') ?? [];
  expect(Number(onVessel[2])).toBeGreaterThan(0.15);
  expect(Number(onVessel[2])).toBeLessThan(0.45);
  expect(await flat.textContent()).toContain(onVessel[0]);
  expect(wrong).toEqual([]);
});

test('without WebGL the four sides stay, and a line says why', patience, async () => {
  const { page, wrong } = await bench.open();
  await page.addInitScript(() => {
    const getContext = HTMLCanvasElement.prototype.getContext as (
      kind: string,
      ...rest: unknown[]
    ) => unknown;
    Object.assign(HTMLCanvasElement.prototype, {
      getContext(this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
        return kind.startsWith('webgl') ? null : getContext.call(this, kind, ...rest);
      },
    });
  });
  await page.reload();
  await page.locator('#step-1').waitFor();
  await plainCup(page);
  await page.getByRole('tab', { name: 'Vessel' }).click();
  await page.getByText('This browser shows no 3D').waitFor();
  const picture = page.getByRole('img', { name: 'The finished vessel from four sides' });
  await picture.waitFor();
  // A phone's: as high as there is room, where the row of four was 165 px; moved along by keys as by the hand.
  const size = async () => (await picture.boundingBox()) ?? { width: 0, height: 0 };
  await page.setViewportSize({ width: 390, height: 844 });
  await expect.poll(async () => (await size()).height).toBeGreaterThan(230);
  await page.getByRole('group', { name: 'Four sides: move along' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect
    .poll(() => page.locator('.sides').evaluate(({ scrollLeft }) => scrollLeft))
    .toBeGreaterThan(20);
  // One on its side has the steps beside the drawing, not below what is left of it (they were 22 px high).
  await page.setViewportSize({ width: 844, height: 390 });
  await expect.poll(async () => (await size()).height).toBeGreaterThan(100);
  // None of the views' names is cut by the steps.
  const [last, list] = await Promise.all(
    [page.getByRole('tab').last(), page.getByRole('tablist')].map((one) => one.boundingBox()),
  );
  expect((last?.x ?? 0) + (last?.width ?? Infinity)).toBeLessThanOrEqual((list?.x ?? 0) + (list?.width ?? 0));
  expect(wrong).toEqual([]);
});

test('the seam close up: both ends, and what they miss each other by on the cut file', patience, async () => {
  const { page, wrong } = await bench.open(small);
  // A sample brings its own view along; but a view chosen while it is still coming stays.
  let isSlow = true;
  await page.route(/fixtures|samples|assets|\.js$/, async (route) => {
    if (isSlow) await page.waitForTimeout(300);
    await route.continue();
  });
  await page.getByRole('button', { name: /Fish-scale cup/ }).click();
  await page.getByRole('tab', { name: 'Seam' }).click();
  await settled(page);
  isSlow = false;
  await expect.poll(() => page.getByRole('tab', { name: 'Seam' }).getAttribute('aria-selected')).toBe('true');
  const figures = page.locator('#seam-figures');
  await expect.poll(() => figures.textContent(), { timeout: 60_000 }).toContain('The ends meet ');
  const [, position, tangent] =
    /(?:within|than) ([\d.]+) mm and (?:to within|closer than) ([\d.]+)°/.exec(
      (await figures.textContent()) ?? '',
    ) ?? [];
  // What a proof asks of the seam: 0.01 mm and 0.1 degrees.
  expect(Number(position)).toBeLessThan(0.01);
  expect(Number(tangent)).toBeLessThan(0.1);
  await page.getByRole('application', { name: 'The seam' }).focus();
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => figures.textContent()).toMatch(/^72 mm along/);
  await page.getByRole('button', { name: 'Hold apart' }).click();
  await page.getByRole('radio', { name: 'in', exact: true }).check({ force: true });
  await expect
    .poll(() => figures.textContent(), { timeout: 60_000 })
    .toMatch(/meet (to within|closer than) 0\.\d{5} in and/);
  expect(wrong).toEqual([]);
});

test(
  'on a phone the colours lie over the steps only until they are done with, and the hand goes on where it was',
  patience,
  async () => {
    const { page, wrong } = await bench.open({ viewport: { width: 390, height: 844 }, hasTouch: true });
    await page.addInitScript(() => {
      const post = Worker.prototype.postMessage as (message: { kind: string }, ...rest: unknown[]) => void;
      const asked: string[] = [];
      Object.assign(window, { asked });
      Object.assign(Worker.prototype, {
        postMessage(this: Worker, message: { kind: string }, ...rest: unknown[]) {
          asked.push(message.kind);
          post.call(this, message, ...rest);
        },
      });
    });
    await page.reload();
    await page.locator('#step-1').waitFor();
    await plainCup(page);
    await page.getByRole('tab', { name: 'Vessel', exact: true }).click();
    await settled(page);
    // The four sides are drawn where they are looked at: the vessel in 3D needs none.
    const asked = () => page.evaluate('window.asked') as Promise<string[]>;
    expect(await asked()).toContain('rolled');
    expect(await asked()).not.toContain('sides');
    const colours = page.getByRole('button', { name: 'Colours', exact: true });
    const panel = page.getByRole('region', { name: 'Colours of the vessel' });
    for (const leave of [
      () => page.getByRole('button', { name: 'Done with colours' }).tap(),
      () => page.keyboard.press('Escape'),
    ]) {
      await colours.tap();
      await panel.getByRole('radio').first().focus();
      await leave();
      expect(await panel.count()).toBe(0);
      expect(await colours.evaluate((button) => button === document.activeElement)).toBe(true);
    }
    await page.getByRole('button', { name: 'Four sides' }).tap();
    await page.getByRole('img', { name: 'The finished vessel from four sides' }).waitFor();
    expect(await asked()).toContain('sides');
    expect(wrong).toEqual([]);
  },
);

// The two views kept in step, and the seam's close-up.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { patience } from '../cli/run.ts';
import { type Bench, settled, startBench } from './a-page.ts';

let bench: Bench;
beforeAll(async () => {
  bench = await startBench();
}, patience.timeout);
afterAll(() => bench.end());

const inFigures = /([\d.]+)° around \(turn ([\d.]+)\), ([\d.]+) mm along/;

test('pointed at on one view, a place is shown on the other, in the same figures', patience, async () => {
  const { page, wrong } = await bench.open({ reducedMotion: 'reduce' });
  await page.getByRole('button', { name: /Fish-scale cup/ }).click();
  await page.getByRole('tab', { name: 'Both' }).click();
  await page.locator('.solid-canvas[data-ready="yes"]').waitFor({ timeout: 60_000 });
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
  await page.mouse.click(sheet.x + sheet.width * 0.4, sheet.y + sheet.height * 0.6);
  await page.mouse.move(5, 5);
  const onVessel = inFigures.exec((await vessel.textContent()) ?? '') ?? [];
  expect(Number(onVessel[2])).toBeGreaterThan(0.15);
  expect(Number(onVessel[2])).toBeLessThan(0.45);
  expect(await flat.textContent()).toContain(onVessel[0]);
  expect(wrong).toEqual([]);
});

test('the seam close up: both ends, and what they miss each other by on the cut file', patience, async () => {
  const { page, wrong } = await bench.open();
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
  await expect.poll(() => figures.textContent(), { timeout: 60_000 }).toContain('the ends meet within');
  const [, position, tangent] =
    /within ([\d.]+) mm and ([\d.]+)°/.exec((await figures.textContent()) ?? '') ?? [];
  // What a proof asks of the seam: 0.01 mm and 0.1 degrees.
  expect(Number(position)).toBeLessThan(0.01);
  expect(Number(tangent)).toBeLessThan(0.1);
  await page.getByRole('application', { name: 'The seam' }).focus();
  await page.keyboard.press('ArrowUp');
  await expect.poll(() => figures.textContent()).toMatch(/^72 mm along/);
  await page.getByRole('button', { name: 'Hold apart' }).click();
  expect(wrong).toEqual([]);
});

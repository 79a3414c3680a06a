// Many drawings drawn by a browser on one sheet, and each cell of it compared.
import pixelmatch from 'pixelmatch';
import type { Page } from 'playwright-core';
import { PNG } from 'pngjs';

const side = 100;
const columns = 10;

/** Most drawings on one sheet. */
export const onOneSheet = columns * columns;

/** The page that a sheet is drawn on. */
export const sheetSize = { width: columns * side, height: columns * side };

/** A sheet of these drawings, what they leave open seen through. */
export async function contactSheet(page: Page, drawings: readonly string[]): Promise<PNG> {
  const source = (text: string) => `data:image/svg+xml;base64,${Buffer.from(text).toString('base64')}`;
  const style = `body{margin:0;font-size:0}img{width:${side}px;height:${side}px;object-fit:contain}`;
  const images = drawings.map((text) => `<img src="${source(text)}">`).join('');
  await page.setContent(`<style>${style}</style>${images}`);
  await page.evaluate('Promise.all([...document.images].map((image) => image.decode()))');
  return PNG.sync.read(await page.screenshot({ omitBackground: true }));
}

/** The cell on a ground of violet, in its colours or only in what it covers. */
function cell({ data, width }: PNG, i: number, by: 'colour' | 'cover'): Uint8Array {
  const ground = [230, 170, 255];
  const left = (i % columns) * side;
  const top = Math.floor(i / columns) * side;
  const out = new Uint8Array(side * side * 4).fill(255);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const from = ((top + y) * width + left + x) * 4;
      const to = (y * side + x) * 4;
      const alpha = (data[from + 3] ?? 0) / 255;
      for (const [channel, under] of ground.entries()) {
        const over = by === 'cover' ? 0 : (data[from + channel] ?? 0);
        out[to + channel] = Math.round(over * alpha + under * (1 - alpha));
      }
    }
  return out;
}

/** Share of a cell's pixels in which two sheets differ. */
export function shareThatDiffers(one: PNG, other: PNG, i: number, by: 'colour' | 'cover'): number {
  const [a, b] = [cell(one, i, by), cell(other, i, by)];
  return pixelmatch(a, b, undefined, side, side, { threshold: 0.1 }) / (side * side);
}

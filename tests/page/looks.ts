// The page, or a part of it, beside its picture.
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { expect } from 'vitest';
import { pixelsFault } from '../pictures/compare.ts';

/** Letters, and figures that the engine words anew, may differ; a part of the page that moved or went may not. */
const mostDiffering = 0.03;
/** Renderers smooth edges each in its own way; in OKLab. */
const sameShade = 0.1;

const folder = join(import.meta.dirname, 'pictures');

/** Expects what is shown to look like its picture. */
export async function expectLook(shown: Page | Locator, name: string): Promise<void> {
  const shot = await shown.screenshot({ animations: 'disabled', caret: 'hide' });
  const fault = pixelsFault(PNG.sync.read(shot), { name, folder, tolerance: mostDiffering }, sameShade);
  expect(fault, name).toBeUndefined();
}

// Drawings of packages from outside are read right, as Chromium draws them, or refused in words; how many is held.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readTile } from '../../../src/artwork/tile.ts';
import { Refused, toLine } from '../../../src/finding.ts';
import { tileAsSvg } from '../../artwork/tile-picture.ts';
import { launch } from '../../page/browser.ts';
import { pictureEngine } from '../../pictures/compare.ts';
import { contactSheet, onOneSheet, shareThatDiffers, sheetSize } from './contact-sheet.ts';
import { type Drawing, packages } from './packages.ts';
import values from './values.json' with { type: 'json' };

/** Share of pixels that may differ. */
const mostDiffering = 0.01;
/** Findings that say that paint is not shown as it was drawn. */
const unsolid: ReadonlySet<string> = new Set(['mean-colour', 'see-through']);

const { normalise } = await pictureEngine();
let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launch();
  page = await browser.newPage({ viewport: sheetSize });
}, 120_000);
afterAll(() => browser?.close());

interface Read {
  readonly name: string;
  readonly original: string;
  readonly ours: string;
  readonly by: 'colour' | 'cover';
}

/** As film shows it: covered or not. */
const opaque = (text: string): string =>
  text
    .replace(/(opacity)(\s*[:=]\s*"?)(?!0(?:\.0*)?["';\s}])[\d.]+%?/g, '$1$21')
    .replace(/stop-opacity(\s*[:=]\s*"?)[\d.]+%?/g, 'stop-opacity$11');

/** The tile as read, or the rules it was refused by. */
function read({ name, text }: Drawing): Read | readonly string[] {
  try {
    const { tile, findings } = readTile(text, name, normalise);
    const isSolid = !findings.some(({ rule }) => unsolid.has(rule));
    const original = isSolid ? text : opaque(text);
    return { name, original, ours: tileAsSvg(tile), by: isSolid ? 'colour' : 'cover' };
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    expect(fault.findings.map(toLine).every((line) => line.length > 40)).toBe(true);
    return [...new Set(fault.findings.map(({ rule }) => rule))];
  }
}

/** Those drawn otherwise than they were read, each with the share that differs. */
async function misread(reads: readonly Read[]): Promise<string[]> {
  const found: string[] = [];
  for (let from = 0; from < reads.length; from += onOneSheet) {
    const part = reads.slice(from, from + onOneSheet);
    const original = await contactSheet(
      page,
      part.map((one) => one.original),
    );
    const ours = await contactSheet(
      page,
      part.map((one) => one.ours),
    );
    for (const [i, { name, by }] of part.entries()) {
      const share = shareThatDiffers(original, ours, i, by);
      if (share > mostDiffering) found.push(`${name} ${(share * 100).toFixed(1)} % of ${by}`);
    }
  }
  return found;
}

test.each(Object.entries(values))('%s', { timeout: 120_000 }, async (name, { every, right, refused }) => {
  const drawings = (packages[name]?.() ?? []).filter((_, i) => i % every === 0);
  const answers = drawings.map(read);
  const reads = answers.filter((answer): answer is Read => 'ours' in answer);
  const rules: Record<string, number> = {};
  for (const answer of answers)
    for (const rule of 'ours' in answer ? [] : answer) rules[rule] = (rules[rule] ?? 0) + 1;
  expect(await misread(reads)).toEqual([]);
  expect({ right: reads.length, refused: rules }).toEqual({ right, refused });
});

test('and a drawing read half a millimetre off is seen', async () => {
  const [drawing] = packages.lucide?.() ?? [];
  const answer = drawing && read(drawing);
  if (!answer || !('ours' in answer)) throw new Error('no drawing to move');
  const moved = { ...answer, ours: answer.ours.replace('viewBox="0 0', 'viewBox="0.5 0') };
  expect(await misread([answer])).toEqual([]);
  expect(await misread([moved])).toHaveLength(1);
});

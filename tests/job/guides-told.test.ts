// Every guide of a job in inches is told in inches: of the wrap, its cover strip, gores, a motif apart and where it goes, a mask.
import { describe, expect, test } from 'vitest';
import { folderOf } from './a-folder.ts';
import type { Typed } from './a-job.ts';

const straight = {
  name: 'cup',
  units: 'in',
  stations: [
    { height: 0, across: 2.5 },
    { height: 6, across: 3.25 },
  ],
};
const barrel = {
  name: 'lantern',
  units: 'in',
  wall: 'smooth',
  stations: [
    { height: 0, across: 2.875 },
    { height: 3, across: 3.625 },
    { height: 6, across: 2.75 },
  ],
};
const tile =
  '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="24mm"><circle cx="15" cy="12" r="6"/></svg>';
const cases: Readonly<Record<string, Typed>> = {
  'a wrap under a cover strip': { blank: straight, tile, job: { seam: { style: 'strip', strip: 0.5 } } },
  'gores with an overlap': { blank: barrel, tile, job: { pieces: 'gores', seam: { overlap: 0.2 } } },
  'a motif apart, held by the foot': {
    blank: straight,
    job: { items: [{ file: 'm.svg', across: 1.1, apart: true, at: { turn: 0.4, along: 1.5 } }] },
    files: { 'm.svg': tile },
  },
  'a motif apart, held by a level line': {
    blank: barrel,
    job: {
      band: { from: 2.5, to: 3.5 },
      items: [{ file: 'm.svg', across: 0.5, apart: true, at: { turn: 0.4, along: 3 } }],
    },
    files: { 'm.svg': tile },
  },
  'a mask with its window': {
    blank: straight,
    job: {
      mask: { covers: 'lip', standOff: 0.1, window: { grow: 0.02 } },
      items: [{ file: 'm.svg', across: 1.1, at: { turn: 0.4, along: 2.5 } }],
    },
    files: { 'm.svg': tile },
  },
};

/** All that stands on the guides of a job in inches, and its folder. */
async function toldOf(typed: Typed) {
  const heard: string[] = [];
  const words = (text: string) => {
    heard.push(text);
    return [];
  };
  const folder = await folderOf({ ...typed, words, job: { units: 'in', ...typed.job } });
  return { heard, folder };
}

// 3/16 in is 4.7625 mm: of 4.76 mm it came out as 0.187 in on guides, and as 0.188 in on the job sheet.
describe('a length in sixteenths is told alike on guide and job sheet, rounded once', () => {
  const band = { from: 0.1875, to: 3.9375 };
  test.each<[string, Typed, readonly string[]]>([
    [
      'a wrap under a cover strip',
      { blank: straight, tile, job: { band, seam: { style: 'strip', strip: 0.1875 } } },
      ['0.188 in wide', 'a cover strip of 0.188 in'],
    ],
    ['gores', { blank: barrel, tile, job: { band, pieces: 'gores' } }, []],
    [
      'a motif apart',
      {
        blank: straight,
        job: {
          band,
          items: [{ file: 'm.svg', across: 0.6875, apart: true, at: { turn: 0.4, along: 2.1875 } }],
        },
        files: { 'm.svg': tile },
      },
      ['0.688 in across', 'level line 2.188 in up the wall'],
    ],
  ])('%s', async (_, typed, more) => {
    const { heard, folder } = await toldOf(typed);
    const guides = heard.join('\n');
    for (const says of ['band 0.188 in to 3.938 in along', ...more]) expect(guides).toContain(says);
    const sheet = folder.texts['job-sheet.html'];
    for (const says of ['0.188 in to 3.938 in', ...more.filter((one) => !one.startsWith('a '))])
      expect(sheet).toContain(says);
  });
});

describe('guides of a job in inches', () => {
  test.each(Object.entries(cases))('%s', async (_, typed) => {
    const { heard } = await toldOf(typed);
    const lengths = heard.filter((text) => /\d (mm|in)\b/.test(text) && text !== '25 mm');
    expect(lengths.filter((text) => / in\b/.test(text)).length).toBeGreaterThan(2);
    expect(lengths.filter((text) => /\d mm\b(?! and 1 in)/.test(text))).toEqual([]);
  });
});

import { expect, test } from 'vitest';
import { hours, timelineOf, workSequence } from '../../../src/job/job-sheet/work-sequence.ts';

const job = {
  seam: { style: 'overlap', overlap: 6 },
  trim: { lip: 3, foot: 3 },
  film: { use: 'decal' },
} as const;
const base = { name: 'base clear', thickness: 0.4, over: false, wait: 12 };
const top = { name: 'top clear', thickness: 0.5, over: true, wait: 72 };

const steps = (coats: readonly (typeof base)[]) =>
  workSequence({ job, coats, isWrapLaid: true, isWeeded: true, hasHandle: false, pieces: 1 });

test('coats under the film come before it is cut, coats over it last', () => {
  const does = steps([top, base]).map((step) => step.does);
  const at = (word: string) => does.findIndex((text) => text.includes(word));
  expect(at('base clear')).toBeLessThan(at('cut the film'));
  expect(at('top clear')).toBe(does.length - 1);
  expect(at('weed')).toBeGreaterThan(at('cut the film'));
});

test('the timeline is as long as the waits and the hand work between them', () => {
  const all = steps([base, top]);
  const spans = timelineOf(all) ?? [];
  expect(spans.at(-1)?.to).toBeCloseTo(12 + 72 + 0.5 * all.length, 9);
  for (const [i, span] of spans.entries()) expect(span.from).toBe(spans[i - 1]?.to ?? 0);
});

test('without waiting times no timeline is made up', () => {
  const coats = [{ name: 'clear', thickness: 0.4, over: false }] as const;
  expect(
    timelineOf(workSequence({ job, coats, isWrapLaid: true, isWeeded: false, hasHandle: false, pieces: 1 })),
  ).toBeUndefined();
});

test('hours are said as a person would', () => {
  expect([0.5, 12, 36, 72].map(hours)).toEqual(['30 min', '12 h', '36 h', '3 days']);
});

/** Where each of these words first stands in the steps. */
const places = (steps: readonly { readonly does: string }[], words: readonly string[]) =>
  words.map((word) => steps.findIndex(({ does }) => does.includes(word)));
const inOrder = (at: readonly number[]) =>
  at.every((place, i) => place >= 0 && (i === 0 || place > (at[i - 1] ?? 0)));

test('a mask along a decal is sprayed and pulled before its window is, and both before the motifs are laid', () => {
  const mask = { window: { grow: -0.4 } };
  const all = workSequence({
    job: { ...job, mask },
    coats: [],
    isWrapLaid: false,
    apart: 3,
    isWeeded: true,
    hasHandle: false,
    pieces: 1,
  });
  const words = [
    'weed',
    'lay the mask',
    'pull the mask',
    'lay the window',
    'pull the window',
    'lay the 3 motifs',
  ];
  expect(inOrder(places(all, words))).toBe(true);
  // The wrap is only a template here: nothing of it is laid, lapped or trimmed.
  expect(places(all, ['lay the film', 'lap', 'trim'])).toEqual([-1, -1, -1]);
});

test('film that is a mask itself is sprayed over and pulled, and what is laid last lies over the colour', () => {
  const all = workSequence({
    job: { ...job, film: { use: 'mask' } },
    coats: [top],
    isWrapLaid: true,
    isWeeded: true,
    hasHandle: false,
    pieces: 1,
  });
  expect(
    inOrder(places(all, ['lay the film', 'lap', 'trim', 'spray', 'pull the film', 'over the colour'])),
  ).toBe(true);
});

test.each([
  ['decal', 'lay, close and trim film b and film c over it'],
  ['mask', 'lay, close, trim, spray and pull film b and film c by the marks on the tape'],
] as const)('films of a %s are named from the lowest up', (use, says) => {
  const work = { coats: [], isWeeded: true, hasHandle: false, pieces: 1, films: ['a', 'b', 'c'] };
  const told = (isWrapLaid: boolean) =>
    workSequence({ ...work, job: { ...job, film: { use } }, isWrapLaid }).map(({ does }) => does);
  // What stands before the first stop is the step's name on the line of time.
  expect(told(true).at(-1)).toMatch(/^the next films: that was film a[,;]/);
  expect(told(true).at(-1)).toContain(says);
  expect(told(false).join()).not.toContain('that was film');
});

const mask = { ...job, film: { use: 'mask' } } as const;

test('what a mask leaves bare is covered and marked before it is sprayed, and every colour dries as its own sheet says', () => {
  const work = { coats: [top], isWrapLaid: true, isWeeded: true, hasHandle: false, pieces: 1 };
  const all = workSequence({ ...work, job: mask, films: ['a', 'b'] });
  const [cover = -1, pull = -1] = places(all, ['cover with tape', 'pull the film']);
  expect(cover).toBeGreaterThan(0);
  expect(cover).toBeLessThan(pull);
  expect(all[cover]?.does).toContain('mark on it where the seam line');
  expect(all.map(({ does }) => does).join()).not.toContain('past the edge of the film');
  expect(all.filter(({ dries }) => dries)).toHaveLength(3);
  expect(workSequence({ ...work, job: mask })[cover]?.does).not.toContain('mark on it');
});

test('beside a handle nothing is closed', () => {
  const told = (use: 'decal' | 'mask') =>
    workSequence({ ...twoFilms, hasHandle: true, job: { ...job, film: { use } } }).map(({ does }) => does);
  for (const use of ['decal', 'mask'] as const) expect(told(use).join()).not.toMatch(/\bclose/);
});

test('pieces are laid from the foot up, panels by their letters', () => {
  const work = { coats: [], isWrapLaid: true, isWeeded: true, hasHandle: false, pieces: 3, job };
  expect(places(workSequence({ ...work, joints: 2 }), ['one by one from the foot up'])[0]).toBeGreaterThan(0);
  expect(places(workSequence(work), ['in the order of their letters'])[0]).toBeGreaterThan(0);
});

const twoFilms = {
  coats: [],
  isWrapLaid: true,
  isWeeded: true,
  hasHandle: false,
  pieces: 1,
  films: ['a', 'b'],
};

test('a cover strip comes after all films', () => {
  const does = workSequence({
    ...twoFilms,
    job: { ...job, seam: { style: 'strip', overlap: 0, strip: 10 } },
  }).map((step) => step.does);
  const at = (word: string) => does.findIndex((text) => text.includes(word));
  expect(at('film b over it')).toBeGreaterThan(at('bring the finish up'));
  expect(at('cover strip')).toBeGreaterThan(at('film b over it'));
  expect(does.filter((text) => text.includes('film b'))).toHaveLength(1);
});

test('cover strips on borders are laid over all films, before what is sprayed', () => {
  const told = (use: 'decal' | 'mask', covers?: number) =>
    workSequence({
      ...twoFilms,
      job: { ...job, film: { use } },
      ...(covers === undefined ? {} : { covers }),
    }).map(({ does }) => does);
  const at = (does: readonly string[], word: string) => does.findIndex((text) => text.includes(word));
  const [decal, mask] = [told('decal', 5), told('mask', 1)];
  expect(at(decal, '5 cover strips')).toBeGreaterThan(at(decal, 'film b over it'));
  expect(at(mask, 'spray')).toBeGreaterThan(at(mask, 'cover strip of the border'));
  expect(at(told('decal'), 'cover strip')).toBe(-1);
  expect(decal.join()).not.toContain('one after another');
});

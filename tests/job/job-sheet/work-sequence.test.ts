import { expect, test } from 'vitest';
import { hours, timelineOf, workSequence } from '../../../src/job/job-sheet/work-sequence.ts';
import { helpWords } from '../../../src/page/parts/help-words.ts';

const job = {
  seam: { style: 'overlap', overlap: 6 },
  trim: { lip: 3, foot: 3 },
  film: { use: 'decal' },
} as const;
const band = { from: 12, to: 130 };
const base = { name: 'base clear', thickness: 0.4, over: false, wait: 12 };
const top = { name: 'top clear', thickness: 0.5, over: true, wait: 72 };

const steps = (coats: readonly (typeof base)[]) =>
  workSequence({ job, coats, isWrapLaid: true, isWeeded: true, hasHandle: false, pieces: 1, band });

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
    timelineOf(
      workSequence({ job, coats, isWrapLaid: true, isWeeded: false, hasHandle: false, pieces: 1, band }),
    ),
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
    band,
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
    band,
  });
  expect(
    inOrder(places(all, ['lay the film', 'lap', 'trim', 'spray', 'pull the film', 'over the colour'])),
  ).toBe(true);
});

test.each([
  ['decal', 'lay, close and trim film b and film c over it'],
  ['mask', 'lay, close, trim, spray and pull film b and film c by the marks on the tape'],
] as const)('films of a %s are named from the lowest up', (use, says) => {
  const work = { coats: [], isWeeded: true, hasHandle: false, pieces: 1, band, films: ['a', 'b', 'c'] };
  const told = (isWrapLaid: boolean) =>
    workSequence({ ...work, job: { ...job, film: { use } }, isWrapLaid }).map(({ does }) => does);
  // What stands before the first stop is the step's name on the line of time.
  expect(told(true).at(-1)).toMatch(/^the next films: that was film a[,;]/);
  expect(told(true).at(-1)).toContain(says);
  expect(told(false).join()).not.toContain('that was film');
});

const mask = { ...job, film: { use: 'mask' } } as const;

test('what a mask leaves bare is covered and marked before it is sprayed, and every colour dries as its own sheet says', () => {
  const work = { coats: [top], isWrapLaid: true, isWeeded: true, hasHandle: false, pieces: 1, band };
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
  const work = { coats: [], isWrapLaid: true, isWeeded: true, hasHandle: false, pieces: 3, band, job };
  expect(places(workSequence({ ...work, joints: 2 }), ['one by one from the foot up'])[0]).toBeGreaterThan(0);
  expect(places(workSequence(work), ['in the order of their letters'])[0]).toBeGreaterThan(0);
});

const twoFilms = {
  coats: [],
  isWrapLaid: true,
  isWeeded: true,
  hasHandle: false,
  pieces: 1,
  band,
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

test.each([
  ['decal', 1],
  ['mask', 1],
  ['decal', 3],
] as const)(
  'before %s film in %i pieces is closed and trimmed its backing and its carrier come off',
  (use, pieces) => {
    const work = { coats: [top], isWrapLaid: true, hasHandle: false, pieces, band };
    const told = (isWeeded: boolean, more: object = {}) =>
      workSequence({ ...work, job: { ...job, film: { use } }, isWeeded, ...more });
    const laid = [
      'take the backing off',
      'lift the carrier flat back',
      'trim',
      use === 'mask' ? 'spray' : 'top clear',
    ];
    expect(inOrder(places(told(true), ['lay the carrier on', ...laid]))).toBe(true);
    expect(inOrder(places(told(true, { isGores: true }), ['lay the carrier on', ...laid]))).toBe(true);
    // What was never weeded was never on a carrier.
    expect(places(told(false), laid).slice(0, 2)).toEqual([expect.any(Number), -1]);
  },
);

test('an end that is lapped loses its carrier before the other comes over it', () => {
  const work = { ...twoFilms, job };
  const carrier = (style: 'overlap' | 'butt', overlap: number) =>
    workSequence({ ...work, job: { ...job, seam: { style, overlap } } }).find(({ does }) =>
      does.startsWith('lift the carrier'),
    );
  expect(carrier('overlap', 6)?.does).toContain('before the other end comes over');
  expect(carrier('butt', 0)?.does).not.toContain('comes over');
});

test('a mask along a decal and its window are laid without their backing', () => {
  const all = workSequence({
    ...twoFilms,
    isWrapLaid: false,
    job: { ...job, mask: { window: { grow: 1 } } },
  });
  for (const [at = -1] of [places(all, ['lay the mask']), places(all, ['lay the window'])])
    expect(all[at]?.does).toContain('take the backing off');
});

test('film is laid by the collar that the job made; where it made none the sheet tells how to have one', () => {
  const collarOf = (more: object) => {
    const told = workSequence({ ...twoFilms, job, ...more });
    const [at = -1, lay = -1] = [/collars?\b/, /^lay the (?:film|gores)/].map((words) =>
      told.findIndex(({ does }) => words.test(does)),
    );
    expect(at).toBeLessThan(lay);
    return told[at]?.does;
  };
  const run = 'seamwright collar blank.json --along 12mm --along 130mm';
  expect(collarOf({})).toMatch(new RegExp(`^wrap a collar first.*${run}$`));
  expect(collarOf({ coats: [base, top] })).toMatch(new RegExp(`${run} --coat 0.4mm$`));
  // A job of gores refuses collars of its own.
  expect(collarOf({ isGores: true, pieces: 8 })).toMatch(new RegExp(`^(?!.*this job).*${run}$`));
  const standard = { width: 20, paper: 0.1, overlap: 10 };
  expect(collarOf({ job: { ...job, collars: standard } })).toBe('wrap the collars and tape them down');
  expect(collarOf({ job: { ...job, collars: { ...standard, at: [{ along: 20 }] } } })).toBe(
    'wrap the collar and tape it down',
  );
  expect(JSON.stringify(workSequence({ ...twoFilms, job }))).not.toContain('arc');
});

test('when a mask is pulled, the help beside its field says as the job sheet does', () => {
  const pull = workSequence({ ...twoFilms, job: mask }).find(({ does }) => does.startsWith('pull the film'));
  const [when = 'not told'] = /before the coat is hard/.exec(pull?.does ?? '') ?? [];
  expect(helpWords.mask).toContain(when);
});

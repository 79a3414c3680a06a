// Sentences of the engine as the page tells them: by its fields, not by keys of a file.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Refused } from '../../src/finding.ts';
import { notJoined } from '../../src/job/closing/way-words.ts';
import { unfilledColumn } from '../../src/job/motifs/lettering.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { fieldName, inPageWords, ownWords } from '../../src/page/model/page-words.ts';
import { freeStudyOf } from '../../src/pattern/study/repeat-study.ts';
import { waysToClose } from '../../src/pattern/ways/ways.ts';
import { box, circle } from '../geometry/drawn.ts';

const station = (index: number) => (index === 0 ? 'Foot' : 'Lip');
const told = (says: string, about = '') => inPageWords(says, station, { about });

/** What is said of a job or a blank that is refused, as the page tells it. */
function refusals(read: () => unknown): readonly string[] {
  try {
    read();
  } catch (fault) {
    if (fault instanceof Refused)
      return fault.findings.map(
        ({ where, says }) => `${fieldName(where.key ?? '', station)}: ${told(says, where.key)}`,
      );
    throw fault;
  }
  return [];
}

test('what is refused names fields and their choices', () => {
  const job = { name: 'a', blank: 'b.blank.json', gores: 8, lettering: [{ text: 'a', capHeight: 'none' }] };
  expect(refusals(() => readJob(job, 'a.job.json'))).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/^Text 1, Capitals: "none" is not a length/),
      expect.stringMatching(/^Text 1/),
    ]),
  );
  const { lettering: _, ...gores } = job;
  expect(refusals(() => readJob(gores, 'a.job.json'))).toEqual([
    'How many gores: 8 is for gores only; give “Pieces: Gores” with it, or leave it out',
  ]);
  const wound = { ...gores, pieces: 'gores', seam: { style: 'strip' } };
  expect(refusals(() => readJob(wound, 'a.job.json'))).toEqual([
    'How the ends meet: “Strip” is for wraps; gores meet at many edges, so give “Butt”, or “Overlap” for the last over the first',
  ]);
  const blank = { name: 'b', stations: [{ height: 0, across: 60 }, { height: 90 }] };
  expect(refusals(() => readBlank(blank, 'b.blank.json')).join()).toMatch(/^Lip: /);
});

test('a field that is a question keeps its mark, and its answer stands after it', () => {
  expect(told('give "use": "other" if nobody drinks from it', 'stations')).toBe(
    'give “Drunk from? No” if nobody drinks from it',
  );
});

test('what a command does is told by its step', () => {
  const finding = unfilledColumn('name', { file: 'a.job.json', key: 'lettering[0].text' });
  expect(told(finding.says)).toBe(
    '{name} is lettered as it stands here; “A list of names” in step 5 fills it from its column of that name',
  );
});

test('a key is the one within, beside or above what the sentence is about', () => {
  expect(told('too short for "hold"; give a larger "overlap"', 'seam.hold')).toBe(
    'too short for “Must hold on”; give a larger “Overlap”',
  );
  expect(told('give a larger "overlap"', 'collars')).toBe('give a larger “Tab past the seam”');
  expect(told('give its width by --art-across 60mm, or "across" in the job\'s artwork', 'artwork.file')).toBe(
    'give its width by “Drawing across”',
  );
  expect(told('give its file in "fonts" (repeat and inspect take it as --font), or draw it', 'artwork')).toBe(
    'give its file in “Fonts of texts in the drawings”, or draw it',
  );
  expect(told('give "panels": { "joints": [] }, or another seam', 'seam.style')).toBe(
    'give “A piece too large for it is parted: Never”, or another seam',
  );
  expect(told('below film.minWidth of stations[1].girth', 'items[0]')).toBe(
    'below Thinnest film of Lip, Girth',
  );
  // A command that lists is, on the page, the list.
  expect(told('was laid, as the way "period-8"; "repeat" lists the others', 'artwork')).toBe(
    'was laid, as the way "period-8"; “Ways it can close” lists the others',
  );
  expect(told('if it was drawn so, lay it by "way": "as-drawn"', 'artwork.way')).toBe(
    'if it was drawn so, lay it by “Ways it can close: as they are, with borders that do not meet”',
  );
  // Words of the maker's own, and names of files, stay.
  expect(told('"Harbour light" of tern.svg is 3.5 mm too wide', 'lettering[0]')).toBe(
    '"Harbour light" of tern.svg is 3.5 mm too wide',
  );
  expect(told('"a film.minWidth of 2" is 3.5 mm too wide', 'lettering[0]')).toBe(
    '"a film.minWidth of 2" is 3.5 mm too wide',
  );
  // Even where they are the same as a key.
  const own = ownWords({
    name: 'cup',
    lettering: [{ text: 'band', capHeight: 9 }],
    seam: { style: 'strip' },
  });
  expect([...own]).toEqual(['cup', 'band']);
  const says = '"band" is too wide for "fit"; give a larger "fit"';
  expect(inPageWords(says, station, { about: 'lettering[0].text', own })).toBe(
    '"band" is too wide for “Fit within”; give a larger “Fit within”',
  );
});

test('where only an eye can tell whether a tile joins, the page says so and how to lay it as drawn', () => {
  // Film that ends on the left border: a side drawn there, or a cut.
  const shapes = [{ contours: [box(0, 7.3, 9.1, 8)] }, { contours: [circle({ x: 27, y: 20.3 }, 5)] }];
  const tile = { width: 40, height: 30, layers: [{ name: 'ink', colour: '#123456', shapes }] };
  const study = freeStudyOf(tile, { a: { x: 40, y: 0 }, b: { x: 0, y: -30 } });
  expect(study.isDoubtful).toBe(true);
  const ground = {
    girth: 245,
    ends: { foot: 240, lip: 250 },
    patternHeight: 90,
    lay: 'even',
    scale: 'both',
  } as const;
  const ways = waysToClose(tile, study, { ...ground, wholeRows: false });
  const { says } = notJoined(study, ways, { job: 'a.job.json', art: 'a.svg' });
  const onPage = told(says, 'artwork.file');
  expect(onPage).toMatch(/^may not meet its own copy, which cannot be told from it alone/);
  expect(onPage).toContain('if it was drawn so, lay it by “');
  expect(onPage).not.toMatch(/"\w+":/);
});

/** Sentences with keys for a file that a page of fields has no words for: test pieces are read elsewhere, machines by their files. */
const forFiles = /test-piece\.ts|typed-at\.ts|repeat\.ts|stacked-tile\.ts|edge-findings\.ts/;

test('no remedy that the engine writes is told in the words of a file', () => {
  const root = join(import.meta.dirname, '../../src');
  const files = ['job', 'pattern', 'blank', 'artwork', 'cut', 'unroll'].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => join(root, folder, name)),
  );
  const remedies = files
    .filter((file) => !forFiles.test(file))
    .flatMap((file) => readFileSync(file, 'utf8').split('\n'))
    .filter((line) => !/^\s*(\/\/|\*|\/\*)/.test(line))
    .flatMap((line) => line.match(/"[a-zA-Z.]+": (?:\{[^}]*\}|"[^"`']*"|\[[^\]]*\])/g) ?? []);
  expect(remedies.length).toBeGreaterThan(5);
  for (const remedy of remedies) expect(told(remedy), remedy).not.toMatch(/"\w+":/);
});

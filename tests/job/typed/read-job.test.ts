import { describe, expect, test } from 'vitest';
import { toLine } from '../../../src/finding.ts';
import { standardCutter } from '../../../src/job/typed/material.ts';
import { readJob } from '../../../src/job/typed/read-job.ts';
import { refusalsOf } from '../../blank/a-blank.ts';

const full = {
  name: 'gift cup, terns',
  units: 'mm',
  blank: 'cup.blank.json',
  band: { from: 12, to: 130 },
  coats: [
    { name: 'base clear', thickness: 0.4 },
    { name: 'top clear', thickness: 0.3, over: true },
  ],
  film: { thickness: 0.08, stretch: 0.02, minWidth: 1, minGap: 0.4, minPiece: 4 },
  artwork: { file: 'scales.svg', repeat: { across: 60, up: 40, drop: 0, shift: 0 }, lay: 'even', around: 5 },
  edges: 'straight',
  pieces: 'one',
  seam: { style: 'overlap', overlap: 6 },
  trim: { lip: 3, foot: 3 },
  items: [],
  lettering: [],
  sheet: { across: '12in', up: '24in', margin: 6 },
};
/** The sharpest point: 20 degrees. */
const minAngle = Math.PI / 9;
const least = { name: 'plain', blank: 'cup.blank.json' };

const problemsOf = (value: unknown) => refusalsOf(() => readJob(value, 'cup.job.json'));
const placesOf = (value: unknown) => problemsOf(value).map(({ rule, where }) => [rule, where.key]);

describe('a job file', () => {
  test('gives the job of the contract, in mm', () => {
    expect(readJob(full, 'cup.job.json')).toEqual({
      name: 'gift cup, terns',
      units: 'mm',
      blank: { kind: 'file', file: 'cup.blank.json' },
      band: { from: 12, to: 130 },
      coats: [
        { name: 'base clear', thickness: 0.4, over: false },
        { name: 'top clear', thickness: 0.3, over: true },
      ],
      film: {
        thickness: 0.08,
        stretch: 0.02,
        gather: 0,
        minWidth: 1,
        minGap: 0.4,
        minPiece: 4,
        minAngle,
        use: 'decal',
      },
      cutter: standardCutter,
      artwork: {
        file: 'scales.svg',
        repeat: { kind: 'grid', across: 60, up: 40, drop: 0, shift: 0 },
        lay: 'even',
        around: 5,
        scale: 'both',
      },
      edges: 'straight',
      pieces: 'one',
      seam: { style: 'overlap', overlap: 6 },
      trim: { lip: 3, foot: 3 },
      sheet: { across: 304.8, up: 609.6, margin: 6, spacing: 2, mirror: false },
    });
  });

  test('needs no more than a name and a blank: the rest is as the contract says', () => {
    expect(readJob(least, 'cup.job.json')).toEqual({
      name: 'plain',
      units: 'mm',
      blank: { kind: 'file', file: 'cup.blank.json' },
      coats: [],
      film: {
        thickness: 0.08,
        stretch: 0,
        gather: 0,
        minWidth: 1,
        minGap: 0.4,
        minPiece: 4,
        minAngle,
        use: 'decal',
      },
      cutter: standardCutter,
      edges: 'straight',
      pieces: 'one',
      seam: { style: 'overlap', overlap: 6 },
      trim: { lip: 3, foot: 3 },
    });
  });

  test('keeps each standard of a group that is given in part', () => {
    const job = readJob(
      { ...least, film: { thickness: 0.1 }, trim: { lip: 0 }, seam: {}, artwork: { file: 'a.svg' } },
      'f',
    );
    expect(job.film).toEqual({
      thickness: 0.1,
      stretch: 0,
      gather: 0,
      minWidth: 1,
      minGap: 0.4,
      minPiece: 4,
      minAngle,
      use: 'decal',
    });
    expect(job.trim).toEqual({ lip: 0, foot: 3 });
    expect(job.seam).toEqual({ style: 'overlap', overlap: 6 });
    expect(job.artwork).toEqual({
      file: 'a.svg',
      repeat: { kind: 'grid', drop: 0, shift: 0 },
      lay: 'even',
      scale: 'both',
    });
  });

  test('a film and a cutter are read with their limits: degrees, seconds, lengths', () => {
    const film = { minAngle: 30, use: 'mask' };
    const cutter = { speed: '2in', lift: 0.5, passes: 2, knifeOffset: 0.25 };
    const job = readJob({ ...least, film, cutter }, 'f');
    expect(job.film.minAngle).toBe(Math.PI / 6);
    expect(job.film.use).toBe('mask');
    expect(job.cutter).toEqual({ ...standardCutter, speed: 50.8, lift: 0.5, passes: 2, knifeOffset: 0.25 });
    expect(placesOf({ ...least, film: { use: 'sticker' }, cutter: { speed: 0, passes: 1.5 } })).toEqual([
      ['not-a-choice', 'film.use'],
      ['not-a-length', 'cutter.speed'],
      ['not-a-number', 'cutter.passes'],
    ]);
  });

  test('a butt seam has no overlap', () => {
    expect(readJob({ ...least, seam: { style: 'butt' } }, 'f').seam).toEqual({ style: 'butt', overlap: 0 });
    expect(readJob({ ...least, seam: { style: 'butt', overlap: 0 } }, 'f').seam.overlap).toBe(0);
  });

  test('standards stay in mm in a file of inches, and its numbers are inches', () => {
    const job = readJob(
      { ...least, units: 'in', band: { from: 0.5, to: '130mm' }, seam: { overlap: '1/4in' } },
      'f',
    );
    expect(job.trim).toEqual({ lip: 3, foot: 3 });
    expect(job.band).toEqual({ from: 12.7, to: 130 });
    expect(job.seam.overlap).toBe(6.35);
  });

  test('a repeat may be half a drop, a brick, or a lattice with negative parts', () => {
    const repeatOf = (repeat: object) =>
      readJob({ ...least, artwork: { file: 'a.svg', repeat } }, 'f').artwork?.repeat;
    expect(repeatOf({ across: 60, up: 40, drop: -20 })).toEqual({
      kind: 'grid',
      across: 60,
      up: 40,
      drop: -20,
      shift: 0,
    });
    expect(repeatOf({ up: 40 })).toEqual({ kind: 'grid', up: 40, drop: 0, shift: 0 });
    expect(repeatOf({ a: ['1in', -10], b: [0, '-4cm'] })).toEqual({
      kind: 'lattice',
      a: { x: 25.4, y: -10 },
      b: { x: 0, y: -40 },
    });
  });

  test('a blank may stand in the job itself, in the units of the job unless it has its own', () => {
    const stations = [
      { height: 0, across: 3 },
      { height: 4, across: 3.5 },
    ];
    const { blank } = readJob({ name: 'a', units: 'in', blank: { stations } }, 'f');
    expect(blank.kind === 'here' && blank.blank.stations[0]?.reading.mm).toBeCloseTo(76.2, 12);
    const own = readJob({ name: 'a', units: 'in', blank: { units: 'mm', stations } }, 'f').blank;
    expect(own.kind === 'here' && own.blank.stations[0]?.reading.mm).toBe(3);
  });
});

describe('a job file that is refused', () => {
  test('names every problem at once, those of a blank in place among them', () => {
    const problems = problemsOf({
      units: 'mm',
      blank: {
        stations: [
          { height: 150, across: 86 },
          { height: 0, across: 62 },
        ],
      },
      coat: [],
      trim: { lip: '3 in ches' },
      artwork: { file: 'a.svg', around: 2.5 },
    });
    expect(problems.map(toLine)).toEqual([
      'cup.job.json: coat: unknown key "coat"; the nearest known one here is "coats"',
      'cup.job.json: name: is missing; add "name" (name)',
      'cup.job.json: blank.stations[1].height: 0 mm is lower than 150 mm listed before it; list the stations from the foot up',
      'cup.job.json: artwork.around: 2.5 will not do here; give a whole number from 1 to 10000',
      'cup.job.json: trim.lip: "3 in ches" ends in "in ches", which is no unit here; write mm, cm or in, such as "62mm" or "2 1/2in"',
    ]);
  });

  test.each([
    ['overlap', '"seam.overlap"'],
    ['Thickness', '"coats[0].thickness" or "film.thickness"'],
    ['keepoff', '"blank.handle.keepOff"'],
    ['drop', '"artwork.repeat.drop"'],
    ['bnd', 'here is "band"'],
    ['nothing like it', 'here is "printer"'],
  ])('a key that stands deeper, such as %s, is named with its way there', (key, nearest) => {
    const [problem, ...more] = problemsOf({ name: 'x', blank: 'b.json', [key]: 1 });
    expect(more).toEqual([]);
    expect(problem?.says).toMatch(/^unknown key /);
    expect(problem?.says).toContain(nearest);
  });

  test.each<[string, object, string, string]>([
    ['no blank', { blank: undefined }, 'not-text', 'blank'],
    ['an empty path', { blank: '' }, 'not-text', 'blank'],
    ['a band upside down', { band: { from: 130, to: 12 } }, 'upside-down', 'band'],
    ['a band of nothing', { band: { from: 12, to: 12 } }, 'upside-down', 'band'],
    ['half a band', { band: { from: 12 } }, 'missing-key', 'band.to'],
    ['a band below the foot', { band: { from: -1, to: 12 } }, 'not-a-length', 'band.from'],
    ['a coat without a thickness', { coats: [{ name: 'clear' }] }, 'missing-key', 'coats[0].thickness'],
    ['a negative coat', { coats: [{ thickness: -0.4 }] }, 'not-a-length', 'coats[0].thickness'],
    ['coats that are no list', { coats: {} }, 'not-a-list', 'coats'],
    [
      'over that is no yes or no',
      { coats: [{ thickness: 1, over: 'yes' }] },
      'not-yes-or-no',
      'coats[0].over',
    ],
    ['film that stretches backward', { film: { stretch: -0.1 } }, 'not-a-number', 'film.stretch'],
    ['an unknown key of the film', { film: { width: 1 } }, 'unknown-key', 'film.width'],
    ['artwork without a file', { artwork: {} }, 'missing-key', 'artwork.file'],
    ['artwork as bare text', { artwork: 'a.svg' }, 'not-an-object', 'artwork'],
    ['no repeat around', { artwork: { file: 'a', around: 0 } }, 'not-a-number', 'artwork.around'],
    [
      'a repeat of no width',
      { artwork: { file: 'a', repeat: { across: 0, up: 40 } } },
      'not-a-length',
      'artwork.repeat.across',
    ],
    [
      'a repeat whose ways are one way',
      { artwork: { file: 'a', repeat: { a: [10, 5], b: [20, 10] } } },
      'repeat-without-area',
      'artwork.repeat',
    ],
    [
      'a grid whose ways are one way',
      { artwork: { file: 'a', repeat: { across: 10, up: 10, drop: 10, shift: 10 } } },
      'repeat-without-area',
      'artwork.repeat',
    ],
    ['half a lattice', { artwork: { file: 'a', repeat: { a: [10, 5] } } }, 'missing-key', 'artwork.repeat.b'],
    [
      'a lattice and a grid',
      { artwork: { file: 'a', repeat: { a: [10, 0], b: [0, 9], across: 5 } } },
      'one-of-two',
      'artwork.repeat.across',
    ],
    [
      'a vector of three',
      { artwork: { file: 'a', repeat: { a: [1, 2, 3], b: [0, 9] } } },
      'not-a-vector',
      'artwork.repeat.a',
    ],
    [
      'a vector with a word',
      { artwork: { file: 'a', repeat: { a: [1, 'wide'], b: [0, 9] } } },
      'not-a-length',
      'artwork.repeat.a[1]',
    ],
    [
      'a way that is neither name nor number',
      { artwork: { file: 'a', way: [1] } },
      'not-a-number',
      'artwork.way',
    ],
    ['a way before the first', { artwork: { file: 'a', way: 0 } }, 'not-a-number', 'artwork.way'],
    [
      'a way beside a count',
      { artwork: { file: 'a', way: 'around-4', around: 5 } },
      'one-of-two',
      'artwork.around',
    ],
    ['a lay that is none', { artwork: { file: 'a', lay: 'flat' } }, 'not-a-choice', 'artwork.lay'],
    ['an overlap on a butt seam', { seam: { style: 'butt', overlap: 6 } }, 'butt-overlap', 'seam.overlap'],
    ['a negative trim', { trim: { foot: -3 } }, 'not-a-length', 'trim.foot'],
    ['an item without a size', { items: [{ file: 'tern.svg' }] }, 'missing-key', 'items[0].across'],
    ['lettering without a place', { lettering: [{ text: 'A' }] }, 'missing-key', 'lettering[0].at'],
    ['a sheet without a width', { sheet: { up: 300 } }, 'missing-key', 'sheet.across'],
    [
      'a sheet that is all margin',
      { sheet: { across: 300, up: 20, margin: 10 } },
      'margin-too-wide',
      'sheet.margin',
    ],
    ['an unknown unit', { units: 'inch' }, 'not-a-choice', 'units'],
  ])('%s', (_, change, rule, key) => {
    expect(placesOf({ ...least, ...change })).toContainEqual([rule, key]);
  });
});

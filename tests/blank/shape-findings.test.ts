// Readings that make no usual vessel are asked about, with the slip that would explain them; usual vessels are not.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/blank/blank.ts';
import { wallOf } from '../../src/blank/wall.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { projectFolder } from '../cli/run.ts';
import { aBlank } from './a-blank.ts';

const asked = (blank: Blank) => wallOf(blank).findings.filter(({ level }) => level === 'look');

/** A cup by its sizes: height, then foot and lip, both across or both around. */
const cup = (
  height: number,
  kind: 'across' | 'girth',
  foot: number,
  lip: number,
  rest: Partial<Blank> = {},
) =>
  aBlank(
    [
      { height: 0, [kind]: foot },
      { height, [kind]: lip },
    ],
    rest,
  );

describe('a slip at both ends', () => {
  // Cups as sold (sizes common, no source): each with its girths typed as diameters.
  test.each([
    ['a tapered cup of 590 ml', 150, 62, 86],
    ['a mug of 330 ml', 95, 82, 82],
    ['a glass of 200 ml', 100, 65, 65],
    ['an espresso cup', 60, 50, 60],
    ['a tumbler of 600 ml', 200, 65, 73],
  ])('the girths of %s, typed as diameters', (_, height, foot, lip) => {
    expect(asked(cup(height, 'across', foot, lip))).toEqual([]);
    const [found, ...more] = asked(cup(height, 'across', Math.PI * foot, Math.PI * lip));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ rule: 'odd-shape', where: { key: 'stations' } });
    expect(found?.says).toContain('give them as girths');
  });

  test.each([
    ['a tapered cup of 590 ml', 150, 62, 86],
    ['a mug of 330 ml', 95, 82, 82],
    ['a can', 120, 66, 66],
  ])('the diameters of %s, typed as girths', (_, height, foot, lip) => {
    const [found] = asked(cup(height, 'girth', foot, lip));
    expect(found).toMatchObject({ rule: 'odd-shape' });
    expect(found?.says).toContain('give them as diameters');
  });

  test('a flute is slender, and still holds what is drunk', () => {
    expect(asked(cup(170, 'across', 38, 50))).toEqual([]);
  });
});

describe('units mixed up', () => {
  test.each([
    ['the height in inches', 5.9, 62, 'the height is in inches and the sizes in mm'],
    ['the height in mm beside inches taken as such', 3810, 62, 'the height is in mm and the sizes in inches'],
    ['sizes in inches, still holdable', 2000, 180, 'the height is in mm and the sizes in inches'],
  ])('%s', (_, height, across, cause) => {
    const [found] = asked(cup(height, 'across', across, across));
    expect(found).toMatchObject({ rule: 'odd-shape' });
    expect(found?.says).toContain(cause);
  });

  test('a cup typed in inches as mm is asked about by its sizes alone', () => {
    expect(asked(cup(5.9, 'across', 2.44, 3.39)).map(({ rule }) => rule)).toEqual(['odd-size', 'odd-size']);
  });
});

test('one end typed as the other kind of size', () => {
  for (const [foot, lip] of [
    [62, Math.PI * 86],
    [82 * Math.PI, 82],
  ] as const) {
    const [found] = asked(cup(150, 'across', foot, lip));
    expect(found).toMatchObject({ rule: 'odd-shape' });
    expect(found?.says).toContain('one of its ends was read around');
  }
});

test('a bucket is asked about as long as nobody says what it is for', () => {
  const bucket = cup(220, 'across', 200, 300);
  expect(asked(bucket)[0]?.says).toMatch(/holds 10\.9 litres.* say so with the use "other"$/);
  expect(asked({ ...bucket, use: 'other' })).toEqual([]);
});

test('the blanks of the project, and common cups, are not asked about', () => {
  const folder = join(projectFolder, 'profiles/blanks');
  const files = readdirSync(folder);
  expect(files.length).toBeGreaterThan(10);
  for (const file of files)
    expect([file, asked(readBlank(JSON.parse(readFileSync(join(folder, file), 'utf8')), file))]).toEqual([
      file,
      [],
    ]);
  // A coupe, a jug, a large beer mug, a tall slim tumbler, a shot glass (sizes common, no source).
  const common = [
    cup(45, 'across', 40, 90),
    cup(250, 'across', 120, 110),
    cup(150, 'across', 105, 105),
    cup(230, 'across', 60, 70),
    cup(60, 'across', 35, 45),
  ];
  expect(common.map((blank) => asked(blank).map(({ says }) => says))).toEqual(common.map(() => []));
});

test.each(['stepped', 'smooth'] as const)('a %s wall of two stations is called straight', (wall) => {
  const blank = cup(150, 'across', 62, 86, { wall });
  const found = asked(blank);
  expect(found).toMatchObject([{ rule: 'wall-unsuited', where: { key: 'wall' } }]);
  expect(found[0]?.says).toContain('call the wall "straight"');
});

describe('readings typed at each other’s end', () => {
  const noted = (blank: Blank) => wallOf(blank).findings.filter(({ rule }) => rule === 'foot-wider');

  // Cups as sold (sizes common, no source), foot and lip exchanged.
  test.each([
    ['a tapered cup of 590 ml', 150, 62, 86],
    ['a mug', 95, 80, 84],
  ])('%s', (_, height, foot, lip) => {
    expect(noted(cup(height, 'across', foot, lip))).toEqual([]);
    expect(noted(cup(height, 'across', lip, foot))).toMatchObject([
      { level: 'note', where: { key: 'stations' } },
    ]);
    for (const wall of ['straight', 'smooth'] as const) {
      const [found] = noted(cup(height, 'girth', Math.PI * lip, Math.PI * foot, { wall }));
      expect(found?.says).toContain(`${(Math.PI * lip).toFixed(1).replace(/\.0$/, '')} mm around`);
    }
  });

  test('nothing is said of what nobody drinks from, nor of a difference that reading alone explains', () => {
    // A lantern glass, and a flask that is drunk from: told once, as a note, for no figure tells it from a slip.
    const lantern = cup(140, 'across', 90, 60, { use: 'other' });
    expect(noted(lantern)).toEqual([]);
    expect(noted({ ...lantern, use: 'drinking' })).toHaveLength(1);
    // Two diameters of 0.5 mm each: 2 x 0.5 x sqrt 2 = 1.4 mm.
    expect(noted(cup(95, 'across', 83.3, 82))).toEqual([]);
    expect(noted(cup(95, 'across', 83.6, 82))).toHaveLength(1);
    expect(noted(cup(95, 'across', 82.5, 82, { reading: 0 }))).toEqual([]);
  });
});

import { expect, it } from 'vitest';
import { profileOfBlankAlone } from '../../src/job/profile-picture.ts';
import { readBlank } from '../../src/job/read-blank.ts';

/** What is written on the picture of a blank. */
function written(blank: object, units: 'mm' | 'in'): readonly string[] {
  const asked: string[] = [];
  profileOfBlankAlone(readBlank(blank, 'a.blank.json'), units, (text) => {
    asked.push(text);
    return [];
  });
  return asked;
}

const stations = [
  { height: 0, across: 60 },
  { height: 100, girth: 251.2 },
];

it('names every reading as it was taken, and what each keep-out is', () => {
  const asked = written(
    {
      name: 'a cup',
      stations,
      footRound: 4,
      handle: { spans: 50, keepOff: 5 },
      keepOut: [{ what: 'dent', turn: { from: 0.4, to: 0.5 }, along: { from: 20, to: 30 } }],
    },
    'mm',
  );
  for (const text of [
    'a cup',
    '0 mm high: across 60 mm',
    '100 mm high: girth 251.2 mm',
    'common lip-and-rim zone:',
    'top 20 mm',
    'foot rounded 4 mm; thin lines show the sharp corners that all is measured from',
    'handle: takes 50 mm of girth, 5 mm kept off on either side',
    'a: dent, turn 0.4 to 0.5, 20 mm to 30 mm along',
  ])
    expect(asked).toContain(text);
});

it('goes by inches, and says the zone in both', () => {
  const asked = written(
    {
      name: 'a cup',
      units: 'in',
      stations: [
        { height: 0, across: 3 },
        { height: 4, across: 3.5 },
      ],
    },
    'in',
  );
  for (const text of ['4 in high: across 3.5 in', 'height, in', 'top 20 mm (0.7874 in)'])
    expect(asked).toContain(text);
});

it('has no lip zone on what is no drinking vessel', () => {
  expect(written({ name: 'a pot', stations, use: 'other' }, 'mm')).not.toContain('common lip-and-rim zone:');
});

// Several readings a station, keep-outs and paper fits: as typed, refused, and written again.
import { describe, expect, test } from 'vitest';
import type { Blank } from '../../src/blank/blank.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { blankContent } from '../../src/job/typed/write-job.ts';
import { refusalsOf } from '../blank/a-blank.ts';

const cup = {
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270 },
  ],
};

const problemsOf = (change: object) => refusalsOf(() => readBlank({ ...cup, ...change }, 'cup.blank.json'));
const placesOf = (change: object) => problemsOf(change).map(({ rule, where }) => [rule, where.key]);

/** What was assumed is written out, and so is named from then on. */
const asNamed = ({ isReadingAssumed: _, ...blank }: Blank): Blank => blank;

describe('a station with several readings', () => {
  const stations = [
    { height: 0, across: [62.4, '6.12cm'], girth: 195 },
    { height: 75, girth: [232, '232.4mm'] },
    { height: 150, along: 150.6, girth: 270 },
  ];

  test('is one reading each, which knows where it was typed', () => {
    const read = readBlank({ stations }, 'f').stations;
    expect(
      read.map(({ position, reading, typed }) => [position.mm, reading.kind, reading.mm, typed?.key]),
    ).toEqual([
      [0, 'across', expect.closeTo(61.8, 12), 'across'],
      [0, 'girth', 195, 'girth'],
      [75, 'girth', 232, 'girth[0]'],
      [75, 'girth', 232.4, 'girth[1]'],
      [150, 'girth', 270, 'girth'],
    ]);
    expect(read[0]?.reading.diameters).toEqual([62.4, 61.2]);
    expect(read.map(({ typed }) => typed?.station)).toEqual([0, 0, 1, 1, 2]);
    expect(read[4]?.position).toEqual({ kind: 'height', mm: 150, along: 150.6 });
  });

  test('counts in the unit of its file', () => {
    const read = readBlank(
      {
        units: 'in',
        stations: [
          { height: 0, across: [2, 2.1] },
          { height: 4, girth: [9] },
        ],
      },
      'f',
    );
    expect(read.stations[0]?.reading.diameters).toEqual([50.8, 53.34]);
    expect(read.stations[1]?.reading.mm).toBeCloseTo(228.6, 10);
  });

  test.each<[string, object, string, string]>([
    ['no reading in the list', { height: 0, across: [] }, 'not-a-list', 'stations[0].across'],
    ['a size that is none', { height: 0, girth: [195, 0] }, 'not-a-length', 'stations[0].girth[1]'],
    [
      'a diameter typed for a girth',
      { height: 0, across: 62, girth: 62 },
      'not-one-vessel',
      'stations[0].girth',
    ],
    [
      'more height than wall',
      { height: 90, along: 80, across: 62 },
      'height-over-along',
      'stations[0].height',
    ],
  ])('is refused for %s', (_, station, rule, key) => {
    expect(placesOf({ stations: [station, { height: 150, girth: 270 }] })).toEqual([[rule, key]]);
  });

  test('is written as it was typed', () => {
    const read = readBlank({ stations }, 'f');
    const written = blankContent(read);
    expect(written).toMatchObject({
      stations: [
        { height: 0, across: [62.4, 61.2], girth: 195 },
        { height: 75, girth: [232, 232.4] },
        { height: 150, along: 150.6, girth: 270 },
      ],
    });
    expect(readBlank(JSON.parse(JSON.stringify(written)), 'f')).toEqual(asNamed(read));
  });
});

describe('places to keep clear of', () => {
  const keepOut = [
    { what: 'weld line', turn: { from: 0.98, to: 0.02 } },
    { what: 'dent', turn: { from: 0.3, to: 0.35 }, along: { from: '4cm', to: 52 } },
    { what: 'thread', along: { from: 140, to: 160 } },
  ];

  test('are kept, in mm, and written again', () => {
    const read = readBlank({ ...cup, keepOut }, 'f');
    expect(read.keepOuts).toEqual([
      { what: 'weld line', turn: { from: 0.98, to: 0.02 } },
      { what: 'dent', turn: { from: 0.3, to: 0.35 }, along: { from: 40, to: 52 } },
      { what: 'thread', along: { from: 140, to: 160 } },
    ]);
    expect(readBlank(JSON.parse(JSON.stringify(blankContent(read))), 'f')).toEqual(asNamed(read));
  });

  test.each<[string, object, string, string]>([
    ['what they are is not said', { turn: { from: 0, to: 0.1 } }, 'missing-key', 'keepOut[0].what'],
    [
      'it is nothing we know',
      { what: 'scratch', turn: { from: 0, to: 0.1 } },
      'not-a-choice',
      'keepOut[0].what',
    ],
    ['they would keep all of it bare', { what: 'lid' }, 'keep-out-everywhere', 'keepOut[0]'],
    [
      'a turn is over 1',
      { what: 'dent', turn: { from: 0.5, to: 1.2 } },
      'not-a-number',
      'keepOut[0].turn.to',
    ],
    ['a turn has no width', { what: 'dent', turn: { from: 0.5, to: 0.5 } }, 'no-width', 'keepOut[0].turn'],
    ['they run downward', { what: 'dent', along: { from: 50, to: 40 } }, 'upside-down', 'keepOut[0].along'],
    [
      'they are past the lip',
      { what: 'lid', along: { from: 155, to: 170 } },
      'keep-out-outside',
      'keepOut[0].along.from',
    ],
  ])('are refused where %s', (_, given, rule, key) => {
    expect(placesOf({ keepOut: [given] })).toEqual([[rule, key]]);
  });
});

describe('paper fits', () => {
  test('are read with what is usual for the rest, and written again', () => {
    const fits = [
      { foot: '2mm', lip: -1, climb: 0 },
      { foot: 0.2, lip: 0, band: { from: 10, to: 120 }, paper: 0.2, reading: 0.3 },
    ];
    const read = readBlank({ ...cup, fits }, 'f');
    expect(read.fits?.[0]).toMatchObject({
      foot: 2,
      lip: -1,
      climb: 0,
      paper: 0.1,
      reading: 0.5,
      replaces: true,
    });
    expect(read.fits?.[1]).toMatchObject({
      band: { from: 10, to: 120 },
      paper: 0.2,
      reading: 0.3,
      replaces: false,
    });
    expect(read.fits?.[1]?.climb).toBeUndefined();
    // The second template was made from the wall that the first one left.
    expect(read.fits?.[1]?.template).not.toEqual(read.fits?.[0]?.template);
    expect(readBlank(JSON.parse(JSON.stringify(blankContent(read))), 'f')).toEqual(asNamed(read));
  });

  test.each<[string, object, string, string]>([
    ['one end is missing', { foot: 2 }, 'missing-key', 'fits[0].lip'],
    ['a key is misspelt', { foot: 2, lip: 1, clim: 1 }, 'unknown-key', 'fits[0].clim'],
    ['a gap is no length', { foot: 'wide', lip: 1 }, 'not-a-length', 'fits[0].foot'],
    ['the paper was of another vessel', { foot: 60, lip: 1 }, 'fit-too-far', 'fits[0].foot'],
  ])('are refused where %s', (_, given, rule, key) => {
    expect(placesOf({ fits: [given] })).toEqual([[rule, key]]);
  });

  test('are refused where a wall bends, for paper does not give', () => {
    const stations = [...cup.stations.slice(0, 1), { height: 70, across: 80 }, { height: 150, across: 82 }];
    const fits = [{ foot: 1, lip: 1, band: { from: 10, to: 140 } }];
    expect(placesOf({ stations, wall: 'stepped', fits })).toEqual([['fit-band', 'fits[0].band']]);
    // On the stretch above the corner, the longest that lies flat, it tells what it does on a cup.
    const { fits: kept } = readBlank({ ...cup, stations, wall: 'stepped', fits: [{ foot: 1, lip: 1 }] }, 'f');
    expect(kept?.[0]?.band.from).toBeGreaterThan(60);
  });
});

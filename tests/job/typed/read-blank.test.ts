import { describe, expect, test } from 'vitest';
import { toLine } from '../../../src/finding.ts';
import { readBlank } from '../../../src/job/typed/read-blank.ts';
import { refusalsOf } from '../../blank/a-blank.ts';

const cup = {
  name: 'tapered cup, 590 ml',
  units: 'mm',
  stations: [
    { height: 0, across: 62 },
    { height: 150, girth: 270.2 },
  ],
  footRound: 6,
  lipRound: 1.5,
  wall: 'straight',
  handle: { spans: 60, keepOff: 5 },
  reading: 0.5,
  tape: 0,
};

const problemsOf = (value: unknown) => refusalsOf(() => readBlank(value, 'cup.blank.json'));
const linesOf = (value: unknown): readonly string[] => problemsOf(value).map(toLine);
const placesOf = (value: unknown) => problemsOf(value).map(({ rule, where }) => [rule, where.key]);

describe('a blank file', () => {
  test('gives the blank of the contract, in mm', () => {
    expect(readBlank(cup, 'cup.blank.json')).toEqual({
      name: 'tapered cup, 590 ml',
      stations: [
        { position: { kind: 'height', mm: 0 }, reading: { kind: 'across', mm: 62 } },
        { position: { kind: 'height', mm: 150 }, reading: { kind: 'girth', mm: 270.2 } },
      ],
      footRound: 6,
      lipRound: 1.5,
      wall: 'straight',
      flatGap: 0.15,
      handle: { spans: 60, keepOff: 5 },
      reading: 0.5,
      heightReading: 0,
      tape: 0,
    });
  });

  test('needs no more than its stations', () => {
    const blank = readBlank(
      {
        stations: [
          { along: 0, across: 80 },
          { along: '12cm', girth: '10in' },
        ],
      },
      'cup.blank.json',
    );
    expect(blank).toEqual({
      name: 'unnamed blank',
      stations: [
        { position: { kind: 'along', mm: 0 }, reading: { kind: 'across', mm: 80 } },
        { position: { kind: 'along', mm: 120 }, reading: { kind: 'girth', mm: 254 } },
      ],
      isReadingAssumed: true,
      footRound: 0,
      lipRound: 0,
      wall: 'straight',
      flatGap: 0.15,
      reading: 0.5,
      heightReading: 0,
      tape: 0,
    });
  });

  test('takes bare numbers in its own units, else in those around it', () => {
    const stations = [
      { height: 0, across: 3.375 },
      { height: '4 3/8in', across: 3.375 },
    ];
    const own = readBlank({ units: 'in', stations, footRound: 0.25 }, 'can.blank.json');
    expect(own.stations[0]?.reading.mm).toBe(85.725);
    expect(own.footRound).toBe(6.35);
    expect(readBlank({ stations }, 'can.blank.json', 'in').stations[0]?.reading.mm).toBe(85.725);
    expect(readBlank({ units: 'mm', stations }, 'can.blank.json', 'in').stations[0]?.reading.mm).toBe(3.375);
  });

  test('the standard reading is half a mm in a file of inches too', () => {
    expect(
      readBlank(
        {
          units: 'in',
          stations: [
            { height: 0, across: 3 },
            { height: 4, across: 3 },
          ],
        },
        'f',
      ).reading,
    ).toBe(0.5);
  });
});

describe('a blank file that is refused', () => {
  test('names every problem at once, each with its file, its key and what would do', () => {
    expect(
      linesOf({
        ...cup,
        stations: [
          { height: 0, across: '0mm' },
          { height: '8,6cm', girth: 270.2, heigth: 3 },
        ],
        lipround: 1,
        footRound: -6,
      }),
    ).toEqual([
      'cup.blank.json: lipround: unknown key "lipround"; the nearest known one here is "lipRound"',
      'cup.blank.json: stations[0].across: "0mm" is no size; give more than 0, such as "62mm"',
      'cup.blank.json: stations[1].heigth: unknown key "heigth"; the nearest known one here is "height"',
      'cup.blank.json: stations[1].height: "8,6cm" has a comma in it; write a decimal point, "8.6cm"',
      'cup.blank.json: footRound: -6 is negative; give 0 or more, such as "62mm"',
    ]);
  });

  test.each<[string, object, string, string | undefined]>([
    ['no stations', { stations: undefined }, 'not-a-list', 'stations'],
    ['one station', { stations: [{ height: 0, across: 62 }] }, 'few-stations', 'stations'],
    ['stations that are no list', { stations: { height: 0 } }, 'not-a-list', 'stations'],
    [
      'a station that is no object',
      { stations: [62, { height: 9, across: 9 }] },
      'not-an-object',
      'stations[0]',
    ],
    [
      'neither across nor girth',
      { stations: [{ height: 0 }, { height: 9, across: 9 }] },
      'one-of-two',
      'stations[0]',
    ],
    [
      'neither height nor along',
      { stations: [{ across: 62 }, { height: 9, across: 9 }] },
      'one-of-two',
      'stations[0]',
    ],
    [
      'a negative girth',
      {
        stations: [
          { height: 0, girth: -5 },
          { height: 9, across: 9 },
        ],
      },
      'not-a-length',
      'stations[0].girth',
    ],
    [
      'null for a size',
      {
        stations: [
          { height: 0, girth: null },
          { height: 9, across: 9 },
        ],
      },
      'not-a-length',
      'stations[0].girth',
    ],
    ['text without a unit', { footRound: '6' }, 'not-a-length', 'footRound'],
    [
      'stations upside down',
      {
        stations: [
          { height: 150, across: 86 },
          { height: 0, across: 62 },
        ],
      },
      'upside-down',
      'stations[1].height',
    ],
    [
      'a plate',
      {
        stations: [
          { height: 0, across: 50 },
          { height: 1, across: 100 },
        ],
      },
      'too-steep',
      'stations',
    ],
    ['rounds that leave no wall', { footRound: 30, lipRound: 130 }, 'round-too-large', 'lipRound'],
    [
      'a handle wider than the foot',
      { handle: { spans: 190, keepOff: 5 } },
      'handle-too-wide',
      'handle.spans',
    ],
    ['a handle without a width', { handle: { keepOff: 5 } }, 'missing-key', 'handle.spans'],
    ['an unknown key in the handle', { handle: { spans: 60, keepoff: 5 } }, 'unknown-key', 'handle.keepoff'],
    ['a unit that is none of ours', { units: 'cm' }, 'not-a-choice', 'units'],
    ['a wall that is none', { wall: 'round' }, 'not-a-choice', 'wall'],
    ['a name that is no text', { name: 5 }, 'not-text', 'name'],
    ['a name of two lines', { name: 'a\nb' }, 'not-text', 'name'],
    ['a name that no XML can hold', { name: 'a\uffff' }, 'not-text', 'name'],
  ])('%s', (_, change, rule, key) => {
    expect(placesOf({ ...cup, ...change })).toContainEqual([rule, key]);
  });

  test('a missing key is named with what it is', () => {
    const { stations: _, ...rest } = cup;
    expect(linesOf(rest)).toEqual(['cup.blank.json: stations: is missing; add "stations" (stations)']);
  });

  test('anything but an object is refused', () => {
    for (const value of [null, 5, 'cup', [], undefined])
      expect(placesOf(value)).toEqual([['not-an-object', undefined]]);
  });

  test('a key that every object inherits is unknown like any other', () => {
    expect(placesOf({ ...cup, constructor: 1 })).toEqual([['unknown-key', 'constructor']]);
    expect(placesOf(JSON.parse('{"stations": [], "toString": 1}'))).toContainEqual([
      'unknown-key',
      'toString',
    ]);
  });

  test('an empty list of fits is no fault', () => {
    expect(readBlank({ ...cup, fits: [] }, 'f').name).toBe(cup.name);
  });
});

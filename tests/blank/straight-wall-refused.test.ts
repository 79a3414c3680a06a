import { describe, expect, test } from 'vitest';
import { bareRadiusAt, fitStraightWall, type StraightWall } from '../../src/blank/straight-wall.ts';
import { aBlank, refusalsOf } from './a-blank.ts';

/** Diameter at a height above the foot, by the wall that was fitted. */
const acrossAtHeight = (wall: StraightWall, height: number): number =>
  2 * bareRadiusAt(wall, height / Math.cos(wall.halfAngle));

describe('stations that are no wall', () => {
  const rules = (stations: Parameters<typeof aBlank>[0], rest = {}) =>
    refusalsOf(() => fitStraightWall(aBlank(stations, rest))).map(({ rule, where }) => [rule, where.key]);

  test.each([
    ['no station', [], 'few-stations', 'stations'],
    ['one station', [{ height: 0, across: 62 }], 'few-stations', 'stations'],
    [
      'one height',
      [
        { height: 40, across: 62 },
        { height: 40, across: 63 },
      ],
      'one-height',
      'stations',
    ],
    [
      'lip first',
      [
        { height: 150, across: 86 },
        { height: 0, across: 62 },
      ],
      'upside-down',
      'stations[1].height',
    ],
    [
      'a zero girth',
      [
        { height: 0, girth: 0 },
        { height: 9, girth: 9 },
      ],
      'not-a-length',
      'stations[0].girth',
    ],
    [
      'a negative diameter',
      [
        { height: 0, across: 9 },
        { height: 9, across: -9 },
      ],
      'not-a-length',
      'stations[1].across',
    ],
    [
      'a negative height',
      [
        { height: -1, across: 9 },
        { height: 9, across: 9 },
      ],
      'not-a-length',
      'stations[0].height',
    ],
    [
      'NaN',
      [
        { height: 0, across: Number.NaN },
        { height: 9, across: 9 },
      ],
      'not-a-length',
      'stations[0].across',
    ],
    [
      'a plate',
      [
        { height: 0, across: 50 },
        { height: 1, across: 100 },
      ],
      'too-steep',
      'stations',
    ],
    [
      'wider than the wall is long',
      [
        { along: 0, across: 50 },
        { along: 10, across: 71 },
      ],
      'too-steep',
      'stations',
    ],
    [
      'a point below the foot',
      [
        { height: 50, across: 10 },
        { height: 100, across: 60 },
      ],
      'meets-axis',
      'stations',
    ],
    [
      'one place by height and by along',
      [
        { height: 40, across: 60 },
        { along: 40, across: 61 },
      ],
      'one-height',
      'stations',
    ],
    [
      'no lean that suits',
      [
        { height: 16, across: 85.5 },
        { along: 16.4, across: 197 },
      ],
      'unsettled',
      'stations',
    ],
  ])('are refused: %s', (_, stations, rule, key) => {
    expect(rules(stations)).toContainEqual([rule, key]);
  });

  test('are refused when a height lies under an along once the lean is known', () => {
    const stations = [
      { height: 0, across: 60 },
      { along: 50, across: 62 },
      { height: 40, across: 61.6 },
      { height: 90, across: 64 },
    ];
    expect(rules(stations)).toEqual([['upside-down', 'stations[2].height']]);
  });

  test('are refused when the tape is thicker than what it read', () => {
    expect(
      rules(
        [
          { height: 0, girth: 3 },
          { height: 9, girth: 300 },
        ],
        { tape: 1 },
      ),
    ).toEqual([['tape-too-thick', 'stations[0].girth']]);
  });

  test('are refused all at once', () => {
    expect(
      rules([
        { height: 9, girth: 0 },
        { height: 5, across: -1 },
      ]),
    ).toEqual([
      ['not-a-length', 'stations[0].girth'],
      ['not-a-length', 'stations[1].across'],
      ['upside-down', 'stations[1].height'],
    ]);
  });

  test('two readings at one height are no fault beside a third elsewhere', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 0, across: 61 },
        { height: 0, across: 63 },
        { height: 80, across: 70 },
      ]),
    );
    expect(wall.radius).toBeCloseTo(31, 12);
  });

  test('a tall and far-off pair settles too', () => {
    const wall = fitStraightWall(
      aBlank([
        { height: 9990, across: 800 },
        { height: 9991, across: 800.01 },
      ]),
    );
    expect(acrossAtHeight(wall, 9990)).toBeCloseTo(800, 9);
  });
});

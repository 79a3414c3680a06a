// Words laid on a pattern: how much of them lies on its film, by another library; and what is told of them.
import { describe, expect, test } from 'vitest';
import { shareOn } from '../../../src/job/motifs/words-on-pattern.ts';
import { expectWithin } from '../../closeness.ts';
import { box, chordPoints, circle } from '../../geometry/drawn.ts';
import { clipperArea } from '../../geometry/libraries.ts';
import { madeOf } from '../a-job.ts';

describe('how much of a shape lies on others', () => {
  const square = [{ contours: [box(0, 0, 10, 10)] }];

  test('half of a square, none, and all of it', () => {
    expectWithin(shareOn(square, [{ contours: [box(5, -5, 20, 20)] }]), 0.5, 1e-9);
    expect(shareOn(square, [{ contours: [box(20, 0, 10, 10)] }])).toBe(0);
    expect(shareOn(square, [{ contours: [box(-1, -1, 12, 12)] }])).toBe(1);
  });

  test('two discs on a ring, as areas of Clipper 6', () => {
    const discs = [circle({ x: 0, y: 0 }, 5), circle({ x: 11, y: 2 }, 4)];
    const ring = [circle({ x: 3, y: 1 }, 6), circle({ x: 3, y: 1 }, 3)];
    const points = (contours: typeof discs) => contours.map((contour) => chordPoints(contour, 1e-4));
    const on = clipperArea('intersection', points(discs), points(ring), 'evenodd');
    const all = clipperArea('union', points(discs), [], 'nonzero');
    const share = shareOn(
      discs.map((disc) => ({ contours: [disc] })),
      [{ contours: ring }],
    );
    // Fifteen lines, each as good as the strip it is the middle of.
    expectWithin(share, on / all, 0.02);
  });
});

const blank = {
  use: 'other',
  stations: [
    { height: 0, across: 80 },
    { height: 90, across: 80 },
  ],
};

describe('what is told of words on words', () => {
  const told = async (along: number) => {
    const at = { turn: 0.5, along: 45 };
    const lettering = [
      { text: 'IIII', capHeight: 12, at },
      { text: 'HHHH', capHeight: 12, at: { ...at, along } },
      { text: 'IIII', capHeight: 12, at: { ...at, turn: 0 } },
    ];
    const { drafts } = await madeOf({ blank, job: { lettering } });
    return drafts.flatMap(({ findings }) => findings).filter(({ rule }) => rule === 'words-on-words');
  };

  test('of a pair that lies over one another, once; of letters that stand clear nothing', async () => {
    const [found, ...others] = await told(45);
    expect(others).toEqual([]);
    expect([found?.level, found?.where.key]).toEqual(['note', 'lettering[1]']);
    expect(found?.says).toMatch(/^"HHHH" lies over "IIII"/);
    // Its letters are 12 mm high: 13 mm up they stand clear.
    expect(await told(58)).toEqual([]);
  });
});

describe('what is told of words on a pattern', () => {
  /** Bars up the wall, as wide as the gaps between them. */
  const bars =
    '<svg xmlns="http://www.w3.org/2000/svg" width="8mm" height="8mm" viewBox="0 0 8 8"><path d="M2 0H6V8H2Z"/></svg>';
  const whole =
    '<svg xmlns="http://www.w3.org/2000/svg" width="8mm" height="8mm" viewBox="0 0 8 8"><path d="M0 0H8V8H0Z"/></svg>';
  const told = async (tile: string, more: object = {}) => {
    const lettering = [{ text: 'Skerry', capHeight: 12, at: { turn: 0.5, along: 45 }, ...more }];
    const { drafts } = await madeOf({ blank, tile, job: { lettering } });
    return drafts.flatMap(({ findings }) => findings).filter(({ rule }) => rule === 'words-on-pattern');
  };

  test('half on bars and half beside them: how much, and what to do', async () => {
    const [found, ...others] = await told(bars);
    expect(others).toEqual([]);
    expect(found?.level).toBe('note');
    expect(found?.where.key).toBe('lettering[0]');
    expect(found?.says).toMatch(/^"Skerry" lies half on the pattern .*"clear": 2 .*"backing"/);
    expect(found?.size).toBeGreaterThan(0.3);
    expect(found?.size).toBeLessThan(0.7);
  });

  test.each([
    ['wholly on film', whole, {}],
    ['with room around them', bars, { clear: 2 }],
    ['on a backing', bars, { backing: { grow: 3 } }],
    ['cut as a piece of their own', bars, { apart: true }],
  ])('nothing of words %s', async (_, tile, more) => {
    expect(await told(tile, more)).toEqual([]);
  });
});

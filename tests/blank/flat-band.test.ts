import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flatBand } from '../../src/blank/flat-band.ts';
import { fitStraightWall } from '../../src/blank/straight-wall.ts';
import { aBlank, refusalsOf } from './a-blank.ts';

/** A line of the plane as a point and a unit direction; the inside of the vessel lies to its left. */
interface Line {
  readonly px: number;
  readonly py: number;
  readonly dx: number;
  readonly dy: number;
}

/**
 * Where a circle of some radius on the inside of two lines touches the first: by general plane geometry, each line moved
 * inward by the radius, the two crossed (Cramer's rule), and the centre dropped onto the first. No half angles.
 */
function touch(first: Line, second: Line, radius: number): readonly [number, number] {
  const moved = [first, second].map((l) => ({ ...l, px: l.px - l.dy * radius, py: l.py + l.dx * radius }));
  const [a, b] = moved as [Line, Line];
  const det = a.dx * -b.dy + b.dx * a.dy;
  const t = ((b.px - a.px) * -b.dy + b.dx * (b.py - a.py)) / det;
  const [cx, cy] = [a.px + t * a.dx, a.py + t * a.dy];
  const drop = (cx - first.px) * first.dx + (cy - first.py) * first.dy;
  return [first.px + drop * first.dx, first.py + drop * first.dy];
}

describe('the flat band', () => {
  test('begins and ends where circles inside the corners touch the wall, by plane geometry alone', () => {
    const cups = fc.record({
      foot: fc.double({ min: 40, max: 120, noNaN: true }),
      lip: fc.double({ min: 40, max: 120, noNaN: true }),
      height: fc.double({ min: 60, max: 200, noNaN: true }),
      footRound: fc.double({ min: 0, max: 8, noNaN: true }),
      lipRound: fc.double({ min: 0, max: 8, noNaN: true }),
    });
    fc.assert(
      fc.property(cups, ({ foot, lip, height, footRound, lipRound }) => {
        const blank = aBlank(
          [
            { height: 0, across: foot },
            { height, across: lip },
          ],
          { footRound, lipRound },
        );
        const band = flatBand(fitStraightWall(blank), blank);
        // The right-hand profile, x from the axis: foot plane outward, wall upward, lip plane inward.
        const long = Math.hypot(lip / 2 - foot / 2, height);
        const wall = { px: foot / 2, py: 0, dx: (lip - foot) / 2 / long, dy: height / long };
        const footPlane = { px: 0, py: 0, dx: 1, dy: 0 };
        const lipPlane = { px: 0, py: height, dx: -1, dy: 0 };
        const [fx, fy] = touch(wall, footPlane, footRound);
        const [lx, ly] = touch(wall, lipPlane, lipRound);
        expect(Math.abs(band.from - Math.hypot(fx - foot / 2, fy))).toBeLessThan(1e-9);
        expect(Math.abs(band.to - (long - Math.hypot(lx - lip / 2, ly - height)))).toBeLessThan(1e-9);
      }),
      { seed: 21, numRuns: 1000 },
    );
  });

  test('is the whole wall when both edges are sharp', () => {
    const blank = aBlank([
      { height: 0, across: 80 },
      { height: 100, across: 80 },
    ]);
    expect(flatBand(fitStraightWall(blank), blank)).toEqual({ from: 0, to: 100 });
  });

  test('on an upright wall loses just the radius at either end', () => {
    const blank = aBlank(
      [
        { height: 0, across: 80 },
        { height: 100, across: 80 },
      ],
      { footRound: 6, lipRound: 1.5 },
    );
    const band = flatBand(fitStraightWall(blank), blank);
    expect(band.from).toBeCloseTo(6, 13);
    expect(band.to).toBeCloseTo(98.5, 12);
  });

  // A wall leaning 30° out meets the foot at 120° and the lip at 60°: q / tan 60° and q / tan 30°.
  test('loses less at a wide corner than at a narrow one', () => {
    const blank = aBlank(
      [
        { height: 0, across: 80 },
        { height: 90, across: 80 + 180 / Math.sqrt(3) },
      ],
      { footRound: 3, lipRound: 3 },
    );
    const wall = fitStraightWall(blank);
    const band = flatBand(wall, blank);
    expect(band.from).toBeCloseTo(Math.sqrt(3), 12);
    expect(wall.length - band.to).toBeCloseTo(3 * Math.sqrt(3), 12);
  });
});

describe('rounds that are too large', () => {
  const keysOf = (footRound: number, lipRound: number, height = 20) => {
    const blank = aBlank(
      [
        { height: 0, across: 80 },
        { height, across: 60 },
      ],
      { footRound, lipRound },
    );
    return refusalsOf(() => flatBand(fitStraightWall(blank), blank)).map(({ rule, where }) => [
      rule,
      where.key,
    ]);
  };

  test('leave no band, and the larger one is named', () => {
    expect(keysOf(14, 9)).toEqual([['round-too-large', 'footRound']]);
    expect(keysOf(6, 22)).toEqual([['round-too-large', 'lipRound']]);
  });

  test('need more of the foot or of the lip than there is', () => {
    expect(keysOf(50, 1, 200)).toEqual([['round-too-large', 'footRound']]);
    expect(keysOf(50, 40, 200)).toEqual([
      ['round-too-large', 'footRound'],
      ['round-too-large', 'lipRound'],
    ]);
  });
});

// Film that a line up the wall crosses, held against chords of circles and lengths of rectangles.
import { describe, test } from 'vitest';
import { artCrossed } from '../../../src/cut/checks/art-crossed.ts';
import { type Contour, cubic, line, polygon } from '../../../src/geometry/contour.ts';
import { flatWall, girthAt, toFlat } from '../../../src/unroll/flat-wall.ts';
import { edgePoint, templateOf } from '../../../src/unroll/template.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';

const options = { band: { from: 0, to: 100 }, trim: { lip: 3, foot: 3 }, overlap: 6 };
const mug = templateOf(flatWall(40, 0, 50), options);
const cup = templateOf(flatWall(40, 0.12, 50), options);

/** A circle of four cubics, 3e-4 of its radius off at the most. */
function circle(x: number, y: number, r: number): Contour {
  const k = 0.5522847498 * r;
  const p = (dx: number, dy: number) => ({ x: x + dx, y: y + dy });
  return {
    closed: true,
    segments: [
      cubic(p(r, 0), p(r, k), p(k, r), p(0, r)),
      cubic(p(0, r), p(-k, r), p(-r, k), p(-r, 0)),
      cubic(p(-r, 0), p(-r, -k), p(-k, -r), p(0, -r)),
      cubic(p(0, -r), p(k, -r), p(r, -k), p(r, 0)),
    ],
  };
}

const atTurn = (
  turn: number,
  offset: number,
  template: typeof mug,
  layers: readonly { shapes: { contours: Contour[] }[] }[],
) => artCrossed({ template, layers, first: turn, step: 0.1, count: 1, offset })[0] ?? Number.NaN;

describe('film crossed by a line up the wall', () => {
  test('is the chord of a disc, less that of its hole', () => {
    const middle = toFlat(mug.wall, { turn: 0.4, along: 50 });
    const layers = [
      { shapes: [{ contours: [circle(middle.x, middle.y, 20), circle(middle.x, middle.y, 8)] }] },
    ];
    for (const away of [0, 3, 6, 12, 18, 21]) {
      const wanted =
        2 * (Math.sqrt(Math.max(0, 400 - away * away)) - Math.sqrt(Math.max(0, 64 - away * away)));
      expectWithin(atTurn(0.4 + away / girthAt(mug.wall, 50), 0, mug, layers), wanted, 0.3);
      // The edge of an overlap is the same line shifted.
      expectWithin(atTurn(0.4 + (away - 6) / girthAt(mug.wall, 50), 6, mug, layers), wanted, 0.3);
    }
  });

  test('is never less than none, where an edge lies along the line and its corners miss one another by rounding', () => {
    const corner = (turn: number, along: number) => toFlat(mug.wall, { turn, along });
    for (const off of [-1e-14, 0, 1e-14])
      for (const way of [1, -1]) {
        const [p, q, r, s] = [
          corner(0.4, 20),
          corner(0.4 + off, 60),
          corner(0.3, 60),
          corner(0.3, 20),
        ] as const;
        const beside = { x: q.x + way * 1e-12, y: q.y };
        const film = { closed: true, segments: [line(p, q), line(beside, r), line(r, s), line(s, p)] };
        const cut = atTurn(0.4, 0, mug, [{ shapes: [{ contours: [film] }] }]);
        expectAtMost(-cut, 0, 'film missing');
      }
  });

  test('is counted in the finished band only, and once a layer', () => {
    const middle = toFlat(mug.wall, { turn: 0.5, along: 100 });
    const half = { shapes: [{ contours: [circle(middle.x, middle.y, 20)] }] };
    expectWithin(atTurn(0.5, 0, mug, [half]), 20, 0.1);
    expectWithin(atTurn(0.5, 0, mug, [half, half]), 40, 0.2);
  });

  test('is what lies along the shifted edge on a taper, where a line up the wall would miss it', () => {
    // A sliver of film a millimetre wide along the edge 6 mm to the right of turn 0.3.
    const edge = (offset: number, along: number) => edgePoint(cup.wall, { turn: 0.3, offset }, along);
    const sliver = polygon([edge(5.5, 10), edge(6.5, 10), edge(6.5, 90), edge(5.5, 90)]);
    const layers = [{ shapes: [{ contours: [sliver] }] }];
    expectWithin(atTurn(0.3, 6, cup, layers), 80, 0.2);
    expectWithin(atTurn(0.3, 0, cup, layers), 0, 0.2);
  });

  test('at a level is the share of the girth that art takes there, and the chord of a disc', () => {
    const middle = toFlat(mug.wall, { turn: 0.4, along: 50 });
    const disc = [{ shapes: [{ contours: [circle(middle.x, middle.y, 20)] }] }];
    const level = { way: 'level', step: 1, count: 1 } as const;
    const at = (template: typeof mug, layers: typeof disc, first: number, offset: number) =>
      artCrossed({ ...level, template, layers, first, offset })[0] ?? Number.NaN;
    for (const away of [-12, 0, 6, 21])
      expectWithin(at(mug, disc, 50 + away, 0), 2 * Math.sqrt(Math.max(0, 400 - away * away)), 0.3);
    expectWithin(at(mug, disc, 44, 12), 2 * Math.sqrt(400 - 36), 0.3);
    // On a taper: film from turn 0.2 to 0.5, its sides up the wall, its ends far above and below.
    const corner = (turn: number, along: number) => toFlat(cup.wall, { turn, along });
    const film = polygon([corner(0.2, 10), corner(0.5, 10), corner(0.5, 90), corner(0.2, 90)]);
    for (const along of [30, 70])
      expectWithin(
        at(cup, [{ shapes: [{ contours: [film] }] }], along, 0),
        0.3 * girthAt(cup.wall, along),
        0.1,
      );
  });
});

// The two ends at the seam: the motion that brings them together, against places rolled by the formulas of a cone.
import { expect, test } from 'vitest';
import { parsePathData } from '../../../src/drawing/path-data.ts';
import { compose, movePoint, rotation, translation } from '../../../src/geometry/affine.ts';
import { endsAtSeam } from '../../../src/job/view/flat-ends.ts';
import { onGuide } from '../../../src/job/view/flat-place.ts';
import type { FlatPiece } from '../../../src/job/view/flat-view.ts';
import { flatWall } from '../../../src/unroll/flat-wall.ts';
import { expectWithin } from '../../closeness.ts';
import { clipperHolds } from '../../geometry/libraries.ts';

const wall = flatWall(40, 0.12, 60);

const piece = (mark: string, ends: FlatPiece['ends'], turned: number): FlatPiece => ({
  mark,
  beside: 0,
  place: {
    wall,
    toFile: compose(rotation(turned), translation(10, 200)),
    band: { from: 10, to: 110 },
    piece: { from: 7, to: 113 },
    left: { turn: 0, offset: 0 },
    right: { turn: 1, offset: 6 },
  },
  ...(ends ? { ends } : {}),
  groups: [],
  box: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
});

test('turn 1 of the last panel comes to lie on turn 0 of the first, at every height, however each is turned in its file', () => {
  const [first, last] = [
    piece('a', { starts: true, finishes: false }, 0),
    piece('b', { starts: false, finishes: true }, 0.4),
  ];
  for (const along of [10, 37.5, 110]) {
    const ends = endsAtSeam({ pieces: [first, last] }, along);
    if (!ends?.finish.place || !ends.start.place) throw new Error('no ends');
    const end = movePoint(ends.motion, onGuide(ends.finish.place, { turn: 1, along }));
    const beginning = onGuide(ends.start.place, { turn: 0, along });
    expectWithin(end.x, beginning.x, 1e-9);
    expectWithin(end.y, beginning.y, 1e-9);
    // A cone's generator is a straight line, so the seam runs up by the same angle everywhere.
    expectWithin(ends.up, endsAtSeam({ pieces: [first, last] }, 60)?.up ?? 0, 1e-9);
  }
});

test('the beginning covers all right of the seam, and where that winds its own outline; clipper-lib tells the side', () => {
  const straight = endsAtSeam({ pieces: [piece('', { starts: true, finishes: true }, 0.4)] }, 60);
  if (!straight?.start.place) throw new Error('no ends');
  const [contour] = parsePathData(straight.covered);
  const covers = clipperHolds([contour?.segments.map(({ from }) => from) ?? []]);
  const { place } = straight.start;
  for (const along of [10, 60, 110])
    for (const turn of [-0.02, -1e-4, 1e-4, 0.02])
      expect(covers(onGuide(place, { turn, along }))).toBe(turn > 0);
  const outline = {
    role: 'outline',
    colour: '#000000',
    filled: false,
    isWords: false,
    dash: [],
    d: 'M0 0H5V9Z',
  };
  const wound = { ...piece('', { starts: true, finishes: true, winds: true }, 0), groups: [outline] };
  expect(endsAtSeam({ pieces: [wound] }, 60)?.covered).toBe(outline.d);
});

test('no ends are told of beside a handle, in gores, or past the band', () => {
  expect(endsAtSeam({ pieces: [piece('', undefined, 0)] }, 60)).toBeUndefined();
  expect(endsAtSeam({ pieces: [piece('', { starts: true, finishes: true }, 0)] }, 112)).toBeUndefined();
});

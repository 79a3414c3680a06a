import { expect, test } from 'vitest';
import { joinsPicture } from '../../../src/job/repeat/joins-picture.ts';
import { freeStudyOf } from '../../../src/pattern/study/repeat-study.ts';
import { box } from '../../geometry/drawn.ts';

test('art that goes far past its frame is drawn as far as the frame shows it', () => {
  // Bands of stripes half a metre long were drawn so in every copy: half a minute, and too large to be drawn at all.
  const shapes = [
    { contours: [box(6, -250, 8, 500)] },
    { contours: [box(20, 4, 5, 5)] },
    { contours: [box(90, 0, 5, 5)] },
  ];
  const tile = { width: 40, height: 30, layers: [{ name: '#17566b', colour: '#17566b', shapes }] };
  const study = freeStudyOf(tile, { a: { x: 40, y: 0 }, b: { x: 0, y: -30 } });
  const svg = joinsPicture({ tile, study }, 'deck.svg', () => [], 'mm');
  const places = [...svg.matchAll(/<path fill="#17566b"[^>]* d="([^"]+)"/g)].flatMap(([, d = '']) =>
    [...d.matchAll(/-?[\d.]+/g)].map(([number]) => Number(number)),
  );
  // The band and the box, among their copies and by themselves.
  expect(places.length).toBeGreaterThanOrEqual(4 * 8);
  expect(Math.min(...places)).toBeGreaterThanOrEqual(-0.4);
  expect(Math.max(...places)).toBeLessThanOrEqual(30.4);
});

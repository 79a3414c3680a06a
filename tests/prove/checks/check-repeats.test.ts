// What a repeat misses the next one by, where it is known from how the lines were laid, and how much is measured to tell it.
import { expect, test, vi } from 'vitest';
import { type Contour, line } from '../../../src/geometry/contour.ts';
import { NearestFinder } from '../../../src/geometry/nearest.ts';
import { repeatMiss } from '../../../src/prove/checks/check-repeats.ts';
import { asIs, type ProvedPiece } from '../../../src/prove/written/piece.ts';
import type { RowLayer } from '../../../src/prove/written/row.ts';
import { expectWithin } from '../../closeness.ts';
import { randomFrom } from '../../geometry/drawn.ts';

const [girth, height] = [120, 60];
const none = { name: '', units: { across: 1, up: 1 }, perUnit: { across: 1, up: 1 }, groups: [], faults: [] };

/** One layer of a plain wrap on a cylinder, so that the wall lies on the sheet as it is. */
function layerOf(contours: readonly Contour[]): RowLayer {
  const cone = { from: 0, radius: girth / (2 * Math.PI), sine: 0, middle: 0.5 };
  const band = { from: 0, to: height };
  const piece: ProvedPiece = {
    ...{ cut: none, guide: none, place: asIs, outline: [], layers: [], faults: [], number: 1 },
    ...{ turns: { from: 0, to: 1 }, cone, band, trim: { lip: 0, foot: 0 }, shift: { x: 0, y: 0 } },
    ...{ beside: { start: 0, finish: 0 }, before: 0, overlap: 0 },
  };
  return {
    row: { panels: [piece], cone, band, trim: piece.trim },
    name: 'art',
    arts: [{ panel: piece, contours }],
    contours,
    finder: new NearestFinder(contours),
  };
}

const level = (x: number, y: number): Contour => ({
  closed: false,
  segments: [line({ x, y }, { x: x + 10, y })],
});

test('it is how far the copy that lies worst is from its like', () => {
  const even = [0, 1, 2, 3].map((i) => level(5 + 30 * i, 20));
  expectWithin(repeatMiss(layerOf(even), 4), 0, 1e-9);
  const off = [...even, ...[0, 1, 2, 3].map((i) => level(5 + 30 * i, i === 2 ? 40.3 : 40))];
  expectWithin(repeatMiss(layerOf(off), 4), 0.3, 1e-9);
});

// Each place was measured against all lines over it: of 4,000 lines at random that took 29 s.
test('of lines at random the nearest is measured for a few places only', () => {
  const random = randomFrom(7);
  const place = () => ({ x: girth * random(), y: height * random() });
  const lines = Array.from(
    { length: 400 },
    (): Contour => ({ closed: false, segments: [line(place(), place())] }),
  );
  const measured = vi.spyOn(NearestFinder.prototype, 'find');
  const miss = repeatMiss(layerOf(lines), 4);
  const count = measured.mock.calls.length;
  measured.mockRestore();
  expect(miss).toBeGreaterThan(0.3);
  expect(count).toBeLessThan(60);
});

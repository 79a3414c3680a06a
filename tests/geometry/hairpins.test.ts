// Rings that turn back on one level: what they enclose, and that the polygon engine comes to an end with them; by winding numbers, for
// Clipper 6 loses parts of rings on so coarse a grid.
import { expect, test } from 'vitest';
import { type GridRing, ringArea } from '../../src/geometry/grid-ring.ts';
import { ridOfHairpins, withoutHairpins } from '../../src/geometry/hairpins.ts';
import { clipPolygons } from '../../src/geometry/polygon-clip.ts';
import { randomFrom } from './drawn.ts';

const ringOf = (...corners: readonly (readonly [number, number])[]): GridRing =>
  corners.map(([x, y]) => ({ x, y }));

const areaOf = (rings: readonly GridRing[], fill: 'nonzero' | 'evenodd'): number =>
  clipPolygons('union', rings, [], fill).reduce(
    (sum, { outer, holes }) => sum + ringArea(outer) + holes.reduce((less, hole) => less + ringArea(hole), 0),
    0,
  );

test('a ring with none is given as it is', () => {
  const stairs = ringOf([0, 0], [4, 0], [9, 0], [9, 2], [4, 2], [4, 5], [0, 5]);
  expect(withoutHairpins(stairs)).toBe(stairs);
});

test('turns back and corners that stand twice are taken away, wherever the ring begins', () => {
  const spiked = [
    [0, 0],
    [2, 0],
    [7, 0],
    [3, 0],
    [3, 0],
    [5, 0],
    [5, 3],
    [0, 3],
  ] as const;
  for (let begin = 0; begin < spiked.length; begin++) {
    const left = withoutHairpins(ringOf(...spiked.slice(begin), ...spiked.slice(0, begin)));
    expect(ringArea(left)).toBe(15);
    expect(new Set(left.map(({ x, y }) => `${x} ${y}`)).size).toBe(left.length);
    expect(left.some(({ x }) => x === 7)).toBe(false);
  }
  expect(withoutHairpins(ringOf([0, 0], [5, 0], [2, 0], [9, 0]))).toEqual([]);
});

test('a ring that the engine went around for ever comes to an end', () => {
  // From a drawing found by chance: an icon whose edge goes back and forth along one level.
  const ring = ringOf([798409, 590183], [786432, 589824], [65536, 589824], [0, 589824], [1310720, 589824]);
  expect(areaOf([ring], 'nonzero')).toBeCloseTo(((1310720 - 786432) * (590183 - 589824)) / 2, 0);
});

/** How often rings go around a place: the winding number by crossings of a line to its right. */
const windingAt = (rings: readonly GridRing[], x: number, y: number): number =>
  rings.reduce(
    (sum, ring) =>
      sum +
      ring.reduce((own, p, i) => {
        const q = ring[(i + 1) % ring.length] ?? p;
        if (p.y <= y === q.y <= y) return own;
        return p.x + ((y - p.y) * (q.x - p.x)) / (q.y - p.y) > x ? own + (q.y > p.y ? 1 : -1) : own;
      }, 0),
    0,
  );

/** Of places in a frame from 0, the share that film covers. */
function coveredShare(rings: readonly GridRing[], fill: 'nonzero' | 'evenodd', size: number): number {
  const count = 60;
  let covered = 0;
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) {
      const winding = windingAt(rings, ((i + 0.5) * size) / count, ((j + 0.41) * size) / count);
      if (fill === 'nonzero' ? winding !== 0 : winding % 2 !== 0) covered++;
    }
  return covered / count ** 2;
}

test('rings on a coarse grid, one in two thousand of which it went around for ever: without hairpins they cover what they went around', () => {
  const next = randomFrom(20261130);
  const upTo = (count: number) => Math.floor(next() * count);
  for (let i = 0; i < 6000; i++) {
    const cells = 2 + upTo(6);
    const rings = Array.from({ length: 1 + upTo(3) }, () =>
      Array.from({ length: 3 + upTo(9) }, () => ({ x: 1e4 * upTo(cells), y: 1e4 * upTo(cells) })),
    );
    const fill = next() < 0.5 ? 'nonzero' : 'evenodd';
    areaOf(rings, fill);
    // Every eighth is sampled: that takes longer.
    if (i % 8 > 0) continue;
    const area = areaOf(ridOfHairpins(rings), fill);
    const size = 1e4 * (cells - 1);
    expect(Math.abs(area / size ** 2 - coveredShare(rings, fill, size)), JSON.stringify(rings)).toBeLessThan(
      0.02,
    );
  }
});

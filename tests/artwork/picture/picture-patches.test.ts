// Patches of a picture, counted; and noise, refused before its edges are followed.
import { PNG } from 'pngjs';
import { expect, test, vi } from 'vitest';
import { patchesOf, pixelsBetweenEdges } from '../../../src/artwork/picture/picture-patches.ts';
import { BorderRows } from '../../../src/artwork/picture/picture-rows.ts';
import { tracedPicture } from '../../../src/artwork/picture/traced-picture.ts';
import { Refused } from '../../../src/finding.ts';

const labelsOf = (...rows: readonly string[]) => Uint8Array.from(rows.join(''), Number);

test('patches hang together by sides, around bends and not by corners', () => {
  // By hand: a ring of 12, the 4 within it, and a tail of 4 beside it.
  const ring = labelsOf('111100', '100101', '100101', '111101');
  expect(patchesOf(6, ring, 2, 1)).toEqual({ large: [2, 2], all: 4 });
  expect(patchesOf(6, ring, 2, 4)).toEqual({ large: [2, 1], all: 4 });
  const board = labelsOf('0101', '1010', '0101');
  expect(patchesOf(4, board, 2, 1)).toEqual({ large: [6, 6], all: 12 });
  // Two arms that meet only at the foot are one patch, as a row does not go on in the next at its end.
  expect(patchesOf(3, labelsOf('101', '101', '111'), 2, 1)).toEqual({ large: [1, 1], all: 2 });
  expect(patchesOf(2, labelsOf('01', '10'), 2, 1).all).toBe(4);
});

/** Marsaglia's xorshift: seeded noise. */
function noise(): () => number {
  let seed = 2463534242;
  return () => {
    seed ^= seed << 13;
    seed ^= seed >>> 17;
    seed ^= seed << 5;
    return seed >>> 0;
  };
}

const side = 480;

function pictureOf(colourAt: (x: number, y: number) => number): Uint8Array {
  const png = new PNG({ width: side, height: side });
  for (let i = 0; i < side * side; i++)
    png.data.writeUInt32BE((colourAt(i % side, Math.floor(i / side)) | 0xff) >>> 0, 4 * i);
  return PNG.sync.write(png);
}

const refusalOf = (bytes: Uint8Array): string | undefined => {
  try {
    tracedPicture(bytes, 'spray.png', { across: 60 });
  } catch (fault) {
    if (fault instanceof Refused) return fault.findings[0]?.rule;
    throw fault;
  }
  return undefined;
};

test('noise of any colours is refused', () => {
  const next = noise();
  expect(refusalOf(pictureOf(() => next()))).toBe('too-busy');
  expect(refusalOf(pictureOf(() => (next() % 2 === 0 ? 0x17566bff : 0xffffffff)))).toBe('too-busy');
});

// Along the border of noise every pixel is an edge, to be met on the other side: that took most of its time.
test('noise is refused before it is held against its copies', () => {
  const next = noise();
  const followed = vi.spyOn(BorderRows.prototype, 'slopeOf');
  const rule = refusalOf(pictureOf(() => (next() % 2 === 0 ? 0x17566bff : 0xffffffff)));
  const count = followed.mock.calls.length;
  followed.mockRestore();
  expect([rule, count]).toEqual(['too-busy', 0]);
});

test('edges are so many pixels apart on the mean', () => {
  // By hand: 9 sides between unlike pixels among 12; 2 among 8; none.
  expect(pixelsBetweenEdges(4, labelsOf('0101', '0101', '0101'))).toBe(12 / 9);
  expect(pixelsBetweenEdges(4, labelsOf('0011', '0011'))).toBe(4);
  expect(pixelsBetweenEdges(2, labelsOf('11', '11'))).toBe(Infinity);
});

test.each([
  [1, 'no-area'],
  [3, undefined],
])('stripes of %i px all over give %s', (wide, rule) => {
  const colourAt = (x: number) => (Math.floor(x / wide) % 2 === 0 ? 0x17566bff : 0xffffffff);
  expect(refusalOf(pictureOf(colourAt))).toBe(rule);
});

test('a drawing with stray pixels is not', () => {
  const next = noise();
  const isStray = () => next() % 200 === 0;
  const disc = (x: number, y: number) => Math.hypot(x - 240.3, y - 239.6) < 120;
  expect(
    refusalOf(pictureOf((x, y) => (disc(x, y) !== isStray() ? 0x17566bff : 0xffffffff))),
  ).toBeUndefined();
});

/** A speckled texture: noise smoothed over a few px each way, which it goes on by across its borders. */
function speckled(): Uint8Array {
  const next = noise();
  const over = 2;
  const grey = Array.from({ length: side * side }, () => next() % 256);
  const at = (x: number, y: number): number => {
    let sum = 0;
    for (let v = -over; v <= over; v++)
      for (let u = -over; u <= over; u++)
        sum += grey[((y + v + side) % side) * side + ((x + u + side) % side)] ?? 0;
    const level = Math.max(0, Math.min(255, 128 + 4 * (sum / (2 * over + 1) ** 2 - 128)));
    return Math.round(level);
  };
  return pictureOf((x, y) => at(x, y) * 0x01010100);
}

test('a texture too busy in all its shades is traced in two, and that is told; not where more are asked for', () => {
  const bytes = speckled();
  const { layers, findings } = tracedPicture(bytes, 'spray.png', { across: 60 });
  expect([layers.length, findings.map(({ rule }) => rule)]).toEqual([1, ['traced', 'two-colours']]);
  expect(() => tracedPicture(bytes, 'spray.png', { across: 60, colours: 8 })).toThrow(Refused);
});

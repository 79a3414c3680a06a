// A picture of a seamless tile joins as its drawing does; a crop of it does not.
import { PNG } from 'pngjs';
import { expect, test } from 'vitest';
import { readTile, type Tile } from '../../../src/artwork/tile.ts';
import { boxCorners } from '../../../src/geometry/box.ts';
import { polygon } from '../../../src/geometry/contour.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import { clippedShapes } from '../../../src/geometry/regions.ts';
import { joinsOf } from '../../../src/pattern/joins/joins.ts';
import { type Lattice, step } from '../../../src/pattern/lattice/lattice.ts';
import { randomFrom } from '../../geometry/drawn.ts';
import { drawn, pictureEngine } from '../../pictures/compare.ts';

const { normalise } = await pictureEngine();

/** Dots of which one stands over a corner of the tile and one over its side, and a leaf over its lower border. */
const motifs = [
  '<circle cx="0" cy="0" r="5"/>',
  '<circle cx="40" cy="17" r="4"/>',
  '<path d="M14 26Q24 30 14 36Q9 30 14 26Z"/>',
];

const square = { a: { x: 40, y: 0 }, b: { x: 0, y: -30 } };

async function tileOf(
  width: number,
  height: number,
  art: readonly string[] = motifs,
  options: object = {},
): Promise<Tile> {
  const copies = [-1, 0, 1].flatMap((i) =>
    [-1, 0, 1].map((j) => `<g transform="translate(${40 * i} ${30 * j})">${art.join('')}</g>`),
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><rect width="100%" height="100%" fill="#fff"/><g fill="#17566b">${copies.join('')}</g></svg>`;
  const bytes = PNG.sync.write(await drawn(svg, width * 5));
  return readTile(new Uint8Array(bytes), 'dots.png', normalise, { across: width, ...options }).tile;
}

test('a seamless tile made of pixels joins, its motifs whole across its borders', async () => {
  const tile = await tileOf(40, 30);
  expect([tile.width, tile.height, tile.pixels]).toEqual([40, 30, undefined]);
  const joins = joinsOf(tile, square);
  expect(joins.joins).toBe(true);
  expect(joins.crossings).toBeGreaterThan(8);
  // Copies of one tracing meet, whatever a pixel of 0.2 mm leaves open; they are looked at a hair beside the border.
  expect(joins.mismatch).toBeLessThan(1e-4);
});

/** Film that goes on for ever, with its area in a tile of 40 by 30 mm, mm². */
const nets: readonly (readonly [string, readonly string[], number])[] = [
  [
    'a net of slanting bands that cross',
    ['<path d="M-2 -1.5L42 31.5M-2 31.5L42 -1.5" stroke="#17566b" stroke-width="3" fill="none"/>'],
    // Two bands as long as the diagonal, less the rhombs in which they cross, in the middle and at the corners.
    2 * 50 * 3 - (2 * 9) / 0.96,
  ],
  [
    'bands that climb once around, each once across the tile',
    ['<path d="M-4 33L44 -3" stroke="#17566b" stroke-width="4" fill="none"/>'],
    50 * 4,
  ],
  [
    'film all over, with holes over its border and its corner',
    ['<path fill-rule="evenodd" d="M-20 -15H20V15H-20ZM-20 0A5 5 0 1 1 -20 0.01ZM4 0A4 4 0 1 1 4 -0.01Z"/>'],
    0,
  ],
  [
    'waves',
    ['<path d="M-40 8Q-30 -4 -20 8T0 8T20 8T40 8T60 8V14Q50 2 40 14T20 14T0 14T-20 14T-40 14Z"/>'],
    0,
  ],
];

test.each(nets)('%s joins, and is as large as it was drawn', async (_, art, area) => {
  const tile = await tileOf(40, 30, art);
  const joins = joinsOf(tile, square);
  expect(joins.open).toEqual([]);
  expect(joins.crossings).toBeGreaterThan(1);
  // Curve goes on from curve: what a hair beside the border shows of a slant, and no more.
  expect(joins.mismatch).toBeLessThan(1e-3);
  expect(joins.kinks).toEqual([]);
  const film = tile.layers.flatMap(({ shapes }) => shapes).reduce((sum, shape) => sum + shapeArea(shape), 0);
  if (area > 0) expect(Math.abs(film - area)).toBeLessThan(0.01 * area);
});

test('a crop of it is seen to be none, and keeps its pixels', async () => {
  const tile = await tileOf(34, 26);
  expect(tile.pixels).toMatchObject({ width: 170, height: 130, pixel: { x: 0.2, y: 0.2 } });
  expect(joinsOf(tile, { a: { x: 34, y: 0 }, b: { x: 0, y: -26 } }).joins).toBe(false);
});

test('one that is said to go on across its borders is traced so', async () => {
  const tile = await tileOf(34, 26, motifs, { goesOn: true });
  expect(tile.pixels).toBeUndefined();
  // What was cut ends on the border along its whole length; all else is met curve for curve.
  const { open } = joinsOf(tile, { a: { x: 34, y: 0 }, b: { x: 0, y: -26 } });
  expect(open.every(({ ends }) => ends)).toBe(true);
});

/** Dots of which two stand over each border of a tile. */
const crossing = [
  [0, 3, 2],
  [0, 12, 1.4],
  [8, 0, 2],
  [15, 0, 1.4],
  [22, 17, 4],
].map(([x, y, r]) => `<circle cx="${x}" cy="${y}" r="${r}"/>`);

/** They by a lattice, seen through the tile of 40 by 30 mm. */
const stepped = (a: Lattice['a'], b: Lattice['b']): string => {
  const copies = [-2, -1, 0, 1, 2].flatMap((i) =>
    [-2, -1, 0, 1, 2].map((j) => {
      const at = step({ a, b }, i, j);
      return `<g transform="translate(${at.x} ${at.y})">${crossing.join('')}</g>`;
    }),
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30" viewBox="0 0 40 30"><rect width="100%" height="100%" fill="#fff"/><g fill="#17566b">${copies.join('')}</g></svg>`;
};

test.each([
  ['half drop', { a: { x: 40, y: 15 }, b: { x: 0, y: -30 } }, [80, 30]],
  ['drop of a third', { a: { x: 40, y: 10 }, b: { x: 0, y: -30 } }, [120, 30]],
  ['brick', { a: { x: 40, y: 0 }, b: { x: 20, y: -30 } }, [40, 60]],
] as const)(
  'a picture of a tile drawn for a %s is taken with as many copies as go on straight',
  async (_, lattice, size) => {
    const bytes = new Uint8Array(PNG.sync.write(await drawn(stepped(lattice.a, lattice.b), 240)));
    const { tile, findings } = readTile(bytes, 'dots.png', normalise, { across: 40, mayStep: true });
    expect([tile.width, tile.height, tile.pixels]).toEqual([...size, undefined]);
    expect(findings[0]?.says).toMatch(/goes on in its copy by a (?:drop|shift) of/);
    const { joins, crossings } = joinsOf(tile, { a: { x: size[0], y: 0 }, b: { x: 0, y: -size[1] } });
    expect([joins, crossings > 8]).toEqual([true, true]);
    // Five rounds to the tile as drawn, those over its borders on both sides.
    const frame = { contours: [polygon(boxCorners({ minX: 0, minY: 0, maxX: size[0], maxY: size[1] }))] };
    const film = tile.layers
      .flatMap(({ shapes }) => clippedShapes(shapes, [frame], 'intersection', 0.001))
      .reduce((sum, shape) => sum + shapeArea(shape), 0);
    const drawnArea = Math.PI * (2 * 2 ** 2 + 2 * 1.4 ** 2 + 4 ** 2) * ((size[0] * size[1]) / 1200);
    expect(Math.abs(film - drawnArea)).toBeLessThan(0.01 * drawnArea);
    // Where the maker says how it repeats, it is left as it is.
    expect(readTile(bytes, 'dots.png', normalise, { across: 40 }).tile.width).toBe(40);
  },
);

// Sums of waves that run through a whole number of times are periodic by their formula; a crop of them is not.
test.each([2, 7, 11])('a texture joins where its formula does, and its crop does not, case %i', (seed) => {
  const random = randomFrom(seed);
  const waves = [...Array(40)].map(() => ({
    i: Math.round(60 * (random() - 0.5)),
    j: Math.round(60 * (random() - 0.5)),
    phase: 2 * Math.PI * random(),
  }));
  const size = 200;
  const textureOf = (width: number, height: number) => {
    const png = new PNG({ width, height });
    for (let p = 0; p < width * height; p++) {
      const [x, y] = [p % width, Math.floor(p / width)];
      const sum = waves.reduce(
        (all, { i, j, phase }) => all + Math.cos((2 * Math.PI * (i * x + j * y)) / size + phase),
        0,
      );
      png.data.fill(Math.max(0, Math.min(255, 128 + 24 * sum)), 4 * p, 4 * p + 3);
      png.data[4 * p + 3] = 255;
    }
    return readTile(new Uint8Array(PNG.sync.write(png)), 'sand.png', normalise, { across: 60, colours: 2 })
      .tile;
  };
  const whole = textureOf(size, size);
  expect(whole.goesOn).toBe(true);
  expect(joinsOf(whole, { a: { x: 60, y: 0 }, b: { x: 0, y: -whole.height } }).joins).toBe(true);
  for (const [width, height] of [
    [size - 9, size],
    [size, size - 7],
    [size + 31, size],
  ] as const)
    expect(textureOf(width, height).goesOn).toBeUndefined();
});

test('a crop of a fine hatch, whose every line stands near another at its border, is traced as a crop', async () => {
  // Lines 8 px apart each way, cut off it: led on from one to the next, each ran through more than twenty copies, and memory ran out.
  const lines = Array.from({ length: 100 }, (_, i) => 8 * (i - 50)).map(
    (at) => `M${at - 400} -400L${at + 400} 400M${at + 400} -400L${at - 400} 400`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="195" height="185" viewBox="7.3 4.6 195 185"><rect x="-99" y="-99" width="999" height="999" fill="#fff"/><path d="${lines.join('')}" stroke="#123456" stroke-width="1.2" fill="none"/></svg>`;
  const bytes = new Uint8Array(PNG.sync.write(await drawn(svg, 195)));
  const { tile } = readTile(bytes, 'hatch.png', normalise, { across: 90 });
  expect(tile.pixels).toBeDefined();
  expect(tile.goesOn).toBeUndefined();
});

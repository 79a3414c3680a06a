// The tiles of the package as drawings, and crops of the patterns that they make.
import { createRequire } from 'node:module';
import { readTile, type Tile } from '../../../src/artwork/tile.ts';
import { shifted } from '../../../src/geometry/affine.ts';
import { boxCorners } from '../../../src/geometry/box.ts';
import { polygon, type Shape } from '../../../src/geometry/contour.ts';
import { shapeArea } from '../../../src/geometry/measure.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { clippedShapes, filledShapes } from '../../../src/geometry/regions.ts';
import { chordTolerance } from '../../../src/geometry/tolerance.ts';
import { pictureEngine } from '../../pictures/compare.ts';

const packed: unknown = createRequire(import.meta.url)('tailwind-heropatterns/patterns.js');
const engine = await pictureEngine();

/** A pattern of the package is the text of an address with an SVG in it, its colour left open. */
function tileNamed(name: string, address: string): Tile {
  const [, coded = ''] = /url\("data:image\/svg\+xml,(.*)"\)/s.exec(address) ?? [];
  const svg = decodeURIComponent(coded)
    .replaceAll('FILLCOLOR', '#123456')
    .replaceAll("fill-opacity='FILLOPACITY'", '');
  return readTile(svg, name, engine.normalise).tile;
}

/** Those tiles of the package whose name is asked for, drawn in one colour. */
export const boughtTiles = (isAsked: (name: string) => boolean) =>
  Object.entries(packed as Readonly<Record<string, string>>)
    .filter(([name]) => isAsked(name))
    .map(([name, address]) => ({ name, tile: tileNamed(name, address) }));

const frame = (width: number, height: number): Shape => ({
  contours: [polygon(boxCorners({ minX: 0, minY: 0, maxX: width, maxY: height }))],
});

const shown = (shapes: readonly Shape[], width: number, height: number): Shape[] =>
  clippedShapes(shapes, [frame(width, height)], 'intersection', chordTolerance);

/** The pattern as a renderer lays it out, seen through a window at a place. */
export function seen(
  tile: Tile,
  at: Point,
  width: number,
  height: number,
  isMerged: boolean,
): { shapes: Shape[] }[] {
  return tile.layers.map(({ shapes }) => {
    const cut = shown(shapes, tile.width, tile.height);
    const copies: Shape[] = [];
    for (let x = -at.x; x < width; x += tile.width)
      for (let y = -at.y; y < height; y += tile.height)
        for (const { contours } of cut) copies.push({ contours: shifted(contours, { x, y }) });
    if (!isMerged) return { shapes: copies.flatMap((copy) => shown([copy], width, height)) };
    const contours = copies.flatMap((copy) => copy.contours);
    return { shapes: shown(filledShapes(contours, 'nonzero', chordTolerance), width, height) };
  });
}

const areaOf = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

/** The share of a tile's film that differs once the pattern is moved by a step. */
export function differsBy(tile: Tile, by: Point): number {
  const home = (value: number, size: number) => value - Math.floor(value / size) * size;
  const [one, other] = [
    { x: 0, y: 0 },
    { x: home(by.x, tile.width), y: home(by.y, tile.height) },
  ].map((at) => seen(tile, at, tile.width, tile.height, true));
  const odd = (one ?? []).map(({ shapes }, i) => {
    const moved = other?.[i]?.shapes ?? [];
    const apart = (p: readonly Shape[], q: readonly Shape[]) =>
      areaOf(clippedShapes(p, q, 'difference', chordTolerance));
    return (apart(shapes, moved) + apart(moved, shapes)) / areaOf(shapes);
  });
  return Math.max(...odd);
}

// A pattern replicated around a cylinder, merged, grown and clipped to its band: ours once a period, other libraries for every copy.
import { createRequire } from 'node:module';
import { moveContour, translation } from '../../src/geometry/affine.ts';
import { boxCorners } from '../../src/geometry/box.ts';
import { polygon, type Shape } from '../../src/geometry/contour.ts';
import { shapeArea } from '../../src/geometry/measure.ts';
import { offsetShapes } from '../../src/geometry/offset.ts';
import { chordTolerance, fitTolerance } from '../../src/geometry/tolerance.ts';
import { layLayer } from '../../src/pattern/lay/layered.ts';
import { periodOfLayer } from '../../src/pattern/period/period.ts';
import { workedTile } from '../../src/pattern/period/worked-tile.ts';
import { layPeriod } from '../../src/pattern/tile/cell.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { exactData } from '../geometry/libraries.ts';
import { type Comparison, compare } from './harness.ts';
import { clipperArea, clipperCombined, clipperGrown, type PaperPath, paper, toClipper } from './libraries.ts';
import { blobs } from './shapes.ts';

type Pair = [number, number];
type Rings = Pair[][];

interface PolygonClipping {
  union(first: Rings[], ...others: Rings[][]): Rings[];
  intersection(first: Rings[], ...others: Rings[][]): Rings[];
}

const load = createRequire(import.meta.url);
const polygonClipping = load('polygon-clipping') as PolygonClipping;

const repeats = 12;
const [width, height, grown] = [22, 110, 0.3];
/** The piece, mm: its ends where no drawing has a node. */
const band = { minX: 0.31, minY: 10, maxX: 0.31 + repeats * width, maxY: 100 };
const contours = blobs(60, width, height, 3);
const lattice = { a: { x: width, y: 0 }, b: { x: 0, y: 4 * height } };
const shapes = contours.map((contour): Shape => ({ contours: [contour] }));
/** Taken whole where they cross the tile's border: each is drawn once a period. */
const period = contours.map((contour) => ({ contour, borders: new Set<number>() }));
const drawing = { name: 'blobs', colour: '#000000', shapes, period };

/** Our areas, mm²: the copies as curves on the sheet, as they are cut. */
function ours(by: number): number {
  const tile = { width, height: 4 * height, layers: [drawing] };
  const toSize = translation(0, 0);
  const worked =
    by === 0
      ? tile
      : workedTile(tile, lattice, {
          toSize,
          reach: by,
          work: (layers) => layers.map((layer) => ({ ...layer, shapes: offsetShapes(layer.shapes, by) })),
        });
  const piece = { foot: band.minY, lip: band.maxY, left: () => band.minX, right: () => band.maxX };
  return worked.layers
    .flatMap(
      (layer) =>
        layLayer(layPeriod(periodOfLayer(layer, worked, lattice), lattice, toSize), {
          piece,
          cut: piece,
          map: { point: (p) => p, displacement: (_, step) => step },
          tolerance: fitTolerance,
          period: { width, steps: { i: 1, j: 0 }, motion: (periods) => translation(periods * width, 0) },
        }).shapes,
    )
    .reduce((sum, shape) => sum + shapeArea(shape), 0);
}

/** Every copy that reaches into the piece, each as the chords of its contours. */
const copies = Array.from({ length: repeats + 2 }, (_, i) =>
  contours.map((contour) => moveContour(translation(width * (i - 1), 0), contour)),
);
const chords = copies.map((copy) => copy.map((contour) => chordPoints(contour, chordTolerance)));
const frame = boxCorners(band);

function clipper(by: number, isOneRun: boolean): number {
  const rings = chords.map(toClipper);
  const whole = isOneRun
    ? clipperCombined('union', rings.flat())
    : rings.reduce((sum, copy) => clipperCombined('union', sum.concat(copy)), []);
  const larger = by === 0 ? whole : clipperGrown(whole, by, chordTolerance);
  return clipperArea(clipperCombined('intersection', larger, toClipper([frame])));
}

function paperUnited(): number {
  const [first, ...others] = copies.map((copy) => {
    const path = new paper.CompoundPath(exactData(copy));
    path.fillRule = 'nonzero';
    return path;
  });
  const quiet = { insert: false };
  const whole = others.reduce<PaperPath | undefined>((sum, path) => sum?.unite(path, quiet), first);
  const area = whole?.intersect(new paper.CompoundPath(exactData([polygon(frame)])), quiet).area ?? 0;
  paper.project.clear();
  return Math.abs(area);
}

function polygonsClipped(): number {
  const pairs = chords.map((copy) => copy.map((ring): Rings => [ring.map(({ x, y }): Pair => [x, y])]));
  const [first = [], ...others] = pairs.flat().map((ring) => [ring]);
  const merged = polygonClipping.union(first, ...others);
  const clipped = polygonClipping.intersection(merged, [[frame.map(({ x, y }): Pair => [x, y])]]);
  return clipped.flat().reduce((sum, ring) => sum + ringArea(ring), 0);
}

/** Twice counted where a ring is closed by its first corner again: that step adds nothing. mm², by the shoelace formula. */
const ringArea = (ring: readonly Pair[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length] ?? [x, y];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

/** Holds two areas against one another, as closely as chords inside curves allow. @throws where they differ */
function agreeing(a: number, b: number): void {
  if (Math.abs(a - b) > 1e-3 * b) throw new Error(`areas differ: ${a} and ${b} mm²`);
}

/** Ours takes a fifth of a second, and is not compiled for good before its third time; theirs takes seconds and is from its first. */
const oursBefore = 3;

export function replicatingComparisons(): Comparison[] {
  const work = `12 repeats of ${contours.length} blobs`;
  const ways = [
    { name: `merge and clip ${work}, copy by copy (clipper-lib)`, by: 0, other: () => clipper(0, false) },
    { name: `merge and clip ${work}, all at once (clipper-lib)`, by: 0, other: () => clipper(0, true) },
    { name: `merge and clip ${work}, all at once (polygon-clipping)`, by: 0, other: polygonsClipped },
    { name: `merge and clip ${work}, copy by copy (paper)`, by: 0, other: paperUnited, rounds: 1 },
    {
      name: `merge, grow and clip ${work}, copy by copy (clipper-lib)`,
      by: grown,
      other: () => clipper(grown, false),
    },
    {
      name: `merge, grow and clip ${work}, all at once (clipper-lib)`,
      by: grown,
      other: () => clipper(grown, true),
    },
  ];
  return ways.map(({ name, by, other, rounds = 3 }) =>
    compare(name, () => ours(by), other, { rounds, warmUp: 0, oursBefore, agreeing }),
  );
}

// Wraps to test with, and the slow, independent way to what they ought to hold.
import { createRequire } from 'node:module';
import type { Tile } from '../../src/artwork/tile.ts';
import { movePoint } from '../../src/geometry/affine.ts';
import { type Contour, polygon, reverseContour, type Shape } from '../../src/geometry/contour.ts';
import { shapeArea } from '../../src/geometry/measure.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { straightTolerance } from '../../src/geometry/tolerance.ts';
import { type Closing, closingOf, layOut } from '../../src/pattern/lattice/closing.ts';
import { type Lattice, latticeOf, stepsIn } from '../../src/pattern/lattice/lattice.ts';
import type { EdgeOptions } from '../../src/pattern/lay/band-edges.ts';
import { conformalLay, evenLay, type Lay, toSheet } from '../../src/pattern/lay/lay.ts';
import { laidPiece } from '../../src/pattern/lay/windows.ts';
import { type Wrap, wrapPattern } from '../../src/pattern/lay/wrap.ts';
import type { MotifLay } from '../../src/pattern/rigid/motif.ts';
import { rigidWrap } from '../../src/pattern/rigid/rigid.ts';
import { flatWall, girthAt } from '../../src/unroll/flat-wall.ts';
import { type Template, templateOf } from '../../src/unroll/template.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';

export interface WrapCase {
  readonly shapes: readonly Shape[];
  readonly width: number;
  readonly height: number;
  /** Left out, the tile's own size. */
  readonly lattice?: Lattice;
  readonly drop?: number;
  readonly shift?: number;
  /** Radius at the middle of the band, mm, and sine of the half angle. */
  readonly radius?: number;
  readonly sine?: number;
  readonly band?: { readonly from: number; readonly to: number };
  readonly lay?: MotifLay;
  readonly around?: number;
  readonly scale?: 'both' | 'across';
  readonly wholeRows?: boolean;
  readonly overlap?: number;
  readonly clear?: number;
  readonly edges?: EdgeOptions;
}

export interface MadeWrap {
  readonly wrap: Wrap;
  readonly tile: Tile;
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly lay: Lay;
  readonly template: Template;
  /** All contours of the first layer. */
  readonly contours: readonly Contour[];
}

export const runOff = 1;

export function makeWrap(given: WrapCase): MadeWrap {
  const { shapes, width, height, radius = 40, sine = 0, overlap = 6, clear } = given;
  const band = given.band ?? { from: 10, to: 70 };
  const wall = flatWall(radius, sine, (band.from + band.to) / 2);
  const lattice =
    given.lattice ?? latticeOf({ across: width, up: height, drop: given.drop ?? 0, shift: given.shift ?? 0 });
  const closing = closingOf(lattice, {
    girth: girthAt(wall, wall.reference),
    patternHeight: band.to - band.from,
    scale: given.scale ?? 'both',
    wholeRows: given.wholeRows ?? false,
    ...(given.around === undefined ? {} : { around: given.around }),
  });
  if (!closing) throw new Error('this case does not close');
  const lay = (given.lay === 'conformal' ? conformalLay : evenLay)(wall, band.from);
  const template = templateOf(wall, {
    band,
    trim: { lip: 3, foot: 3 },
    overlap,
    ...(clear === undefined ? {} : { clear }),
  });
  const tile: Tile = { width, height, layers: [{ name: 'film', colour: '#000000', shapes }] };
  const options = {
    tile,
    lattice,
    closing,
    lay,
    template,
    runOff,
    ...(given.edges ? { edges: given.edges } : {}),
  };
  const wrap = given.lay === 'rigid' ? rigidWrap(options) : wrapPattern(options);
  if (typeof wrap === 'string') throw new Error('this case has no motifs');
  const contours = (wrap.layers[0]?.shapes ?? []).flatMap((shape) => shape.contours);
  return { wrap, tile, lattice, closing, lay, template, contours };
}

interface ClipperPoint {
  readonly X: number;
  readonly Y: number;
}
type Rings = ClipperPoint[][];
interface ClipperEngine {
  AddPaths(paths: Rings, type: number, closed: boolean): boolean;
  Execute(operation: number, solution: Rings, subjectFill: number, clipFill: number): boolean;
}
interface ClipperLib {
  readonly Clipper: { new (): ClipperEngine; Area(path: ClipperPoint[]): number };
}
const clipper = createRequire(import.meta.url)('clipper-lib') as ClipperLib;

/** Grid units per mm: products stay exact in clipper-lib up to 400 mm. */
const units = 1e5;
const operations = { intersection: 0, union: 1 } as const;
const fills = { evenodd: 0, nonzero: 1 } as const;

export const toRing = (points: readonly Point[]): ClipperPoint[] =>
  points.map(({ x, y }) => ({ X: Math.round(x * units), Y: Math.round(y * units) }));

export function combineRings(
  operation: keyof typeof operations,
  a: Rings,
  b: Rings,
  fill: keyof typeof fills = 'nonzero',
): Rings {
  const engine = new clipper.Clipper();
  engine.AddPaths(a, 0, true);
  engine.AddPaths(b, 1, true);
  const solution: Rings = [];
  engine.Execute(operations[operation], solution, fills[fill], fills[fill]);
  return solution;
}

export const ringsArea = (rings: Rings): number =>
  rings.reduce((sum, ring) => sum + clipper.Clipper.Area(ring), 0) / units ** 2;

/** Points on a contour, 160 in all or 40 a curve, and on straight lines no more than `step` apart. */
export const dense = (contour: Contour, step: number): Point[] =>
  contour.segments.flatMap((s) => {
    const curved = Math.max(40, Math.ceil(160 / contour.segments.length));
    const count = s.kind === 'cubic' ? curved : Math.max(1, Math.ceil(distance(s.from, s.to) / step));
    return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
  });

/** The cut piece, `grown` past its outline, as a fine polygon on the sheet. */
export function pieceRing({ template, lay }: MadeWrap, grown: number): Rings {
  const piece = laidPiece(template, lay, grown);
  const share = Array.from({ length: 401 }, (_, i) => i / 400);
  const heightAt = (t: number) => piece.foot + (piece.lip - piece.foot) * t;
  const level = (y: number) =>
    share.map((t) => ({ x: piece.left(y) + (piece.right(y) - piece.left(y)) * t, y }));
  const laid = [
    ...level(piece.foot),
    ...share.map((t) => ({ x: piece.right(heightAt(t)), y: heightAt(t) })),
    ...level(piece.lip).reverse(),
    ...share.map((t) => ({ x: piece.left(heightAt(1 - t)), y: heightAt(1 - t) })),
  ];
  return [toRing(laid.map((p) => toSheet(lay, p)))];
}

/** What a renderer would show of every copy of the tile, as fine polygons on the sheet; clipper-lib does the combining. */
export function expectedRings(made: MadeWrap): Rings {
  const { tile, lattice, closing, lay, template } = made;
  const viewport = polygon([
    { x: 0, y: 0 },
    { x: tile.width, y: 0 },
    { x: tile.width, y: tile.height },
    { x: 0, y: tile.height },
  ]);
  const m = layOut(closing, tile.height);
  const piece = laidPiece(template, lay, 0);
  const seen = tile.layers.flatMap(({ shapes }) =>
    combineRings(
      'intersection',
      shapes.flatMap((shape) => shape.contours.map((contour) => toRing(dense(contour, 50)))),
      [toRing(dense(viewport, 50))],
    ),
  );
  const laid = seen.map((ring) => {
    const points = ring.map(({ X, Y }) => movePoint(m, { x: X / units, y: Y / units }));
    return dense(polygon(points), lay.wall.sine === 0 ? 1000 : 1);
  });
  const linear = (p: Point): Point => ({ x: m.a * p.x + m.c * p.y, y: m.b * p.x + m.d * p.y });
  const laidLattice = { a: linear(lattice.a), b: linear(lattice.b) };
  const rings: Rings = [];
  for (const points of laid) {
    const xs = points.map(({ x }) => x);
    const ys = points.map(({ y }) => y);
    const reach = {
      minX: Math.min(piece.left(piece.foot), piece.left(piece.lip)) - Math.max(...xs) - 1,
      maxX: Math.max(piece.right(piece.foot), piece.right(piece.lip)) - Math.min(...xs) + 1,
      minY: piece.foot - Math.max(...ys) - 1,
      maxY: piece.lip - Math.min(...ys) + 1,
    };
    for (const { at } of stepsIn(laidLattice, reach))
      rings.push(toRing(points.map((p) => toSheet(lay, { x: p.x + at.x, y: p.y + at.y }))));
  }
  return combineRings('intersection', rings, pieceRing(made, 0));
}

export const expectedArea = (made: MadeWrap): number => Math.abs(ringsArea(expectedRings(made)));

/** What was made, as fine polygons. */
export const madeRings = (made: MadeWrap): Rings =>
  made.contours.map((contour) => toRing(dense(contour, 50)));

/** Area of what was made inside the piece. */
export const madeArea = (made: MadeWrap): number =>
  Math.abs(ringsArea(combineRings('intersection', madeRings(made), pieceRing(made, 0), 'evenodd')));

/** Area on one side only, mm²: 0 where both are the same. */
export function differenceArea(made: MadeWrap): number {
  const ours = combineRings('intersection', madeRings(made), pieceRing(made, 0), 'evenodd');
  return Math.abs(ringsArea(combineRings('union', [...ours, ...expectedRings(made)], [], 'evenodd')));
}

/** Area by shapes: what the files would be filled with. */
export const shapesArea = (shapes: readonly Shape[]): number =>
  shapes.reduce((sum, shape) => sum + shapeArea(shape), 0);

export const reversedShape = (shape: Shape): Shape => ({ contours: shape.contours.map(reverseContour) });

/** The same area, and the same places, within 0.05 % and what the fit may stray along every edge. */
export function expectWrapArea(made: MadeWrap): void {
  const expected = expectedArea(made);
  const edge = made.contours.reduce(
    (sum, { segments }) => sum + segments.reduce((length, s) => length + distance(s.from, s.to), 0),
    0,
  );
  const stray = Math.max(made.wrap.fitError, straightTolerance, 1e-4) * edge;
  expectWithin(madeArea(made), expected, Math.max(5e-4 * expected, 0.5 * stray), 'area');
  expectAtMost(differenceArea(made), Math.max(1e-3 * expected, stray), 'area on one side only');
}

// Other people's geometry, to hold ours against: paper (MIT), clipper-lib (BSL-1.0), svg-path-properties (ISC).
import { createRequire } from 'node:module';
import { svgPathProperties } from 'svg-path-properties';
import type { Contour } from '../../src/geometry/contour.ts';
import type { Point } from '../../src/geometry/point.ts';

interface PaperItem {
  readonly area: number;
  readonly length: number;
  readonly bounds: {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  };
  fillRule: string;
  unite(other?: PaperItem, options?: { insert: boolean }): PaperItem;
  intersect(other: PaperItem, options?: { insert: boolean }): PaperItem;
  subtract(other: PaperItem, options?: { insert: boolean }): PaperItem;
  readonly contains: (point: unknown) => boolean;
}

interface Paper {
  setup(size: unknown): void;
  readonly Size: new (width: number, height: number) => unknown;
  readonly CompoundPath: new (data: string) => PaperItem;
}

interface ClipperPoint {
  readonly X: number;
  readonly Y: number;
}

interface ClipperEngine {
  AddPaths(paths: ClipperPoint[][], type: number, closed: boolean): boolean;
  Execute(operation: number, solution: ClipperPoint[][], subjectFill: number, clipFill: number): boolean;
}

interface ClipperOffset {
  AddPaths(paths: ClipperPoint[][], join: number, end: number): void;
  Execute(solution: ClipperPoint[][], delta: number): void;
}

interface ClipperLib {
  readonly Clipper: {
    new (): ClipperEngine;
    Area(path: ClipperPoint[]): number;
    PointInPolygon(point: ClipperPoint, path: ClipperPoint[]): number;
  };
  readonly ClipperOffset: new (miterLimit: number, arcTolerance: number) => ClipperOffset;
  readonly JoinType: { readonly jtRound: number };
  readonly EndType: { readonly etClosedPolygon: number; readonly etOpenRound: number };
  readonly PolyType: { readonly ptSubject: number; readonly ptClip: number };
  readonly ClipType: {
    readonly ctUnion: number;
    readonly ctIntersection: number;
    readonly ctDifference: number;
  };
  readonly PolyFillType: { readonly pftNonZero: number; readonly pftEvenOdd: number };
}

const load = createRequire(import.meta.url);
const paper = load('paper/dist/paper-core.js') as Paper;
paper.setup(new paper.Size(1, 1));
const clipper = load('clipper-lib') as ClipperLib;

/** Path data with every digit, unlike the writer under test. */
export const exactData = (contours: readonly Contour[]): string =>
  contours
    .map(({ segments, closed }) => {
      const first = segments[0];
      if (!first) return '';
      const drawn = segments.map((s) =>
        s.kind === 'line'
          ? `L${s.to.x} ${s.to.y}`
          : `C${s.c1.x} ${s.c1.y} ${s.c2.x} ${s.c2.y} ${s.to.x} ${s.to.y}`,
      );
      return `M${first.from.x} ${first.from.y}${drawn.join('')}${closed ? 'Z' : ''}`;
    })
    .join('');

export const paperPath = (
  contours: readonly Contour[],
  fill: 'nonzero' | 'evenodd' = 'nonzero',
): PaperItem => {
  const path = new paper.CompoundPath(exactData(contours));
  path.fillRule = fill;
  return path;
};

const quiet = { insert: false };

/** Area of a union, intersection or difference by paper's own curve booleans, mm². */
export function paperArea(
  operation: 'union' | 'intersection' | 'difference',
  a: readonly Contour[],
  b: readonly Contour[],
): number {
  const [one, other] = [paperPath(a), paperPath(b)];
  const result =
    operation === 'union'
      ? one.unite(other, quiet)
      : operation === 'intersection'
        ? one.intersect(other, quiet)
        : one.subtract(other, quiet);
  return Math.abs(result.area);
}

/** Length by svg-path-properties, mm. */
export const librarianLength = (data: string): number => new svgPathProperties(data).getTotalLength();

/** Area of all that lies within a distance of a line of chords, by Clipper 6 on a grid of 1e-4 mm, mm². */
export function clipperStrokeArea(chords: readonly Point[], half: number): number {
  const units = 1e4;
  const engine = new clipper.ClipperOffset(2, 0.001 * units);
  const path = chords.map(({ x, y }) => ({ X: Math.round(x * units), Y: Math.round(y * units) }));
  engine.AddPaths([path], clipper.JoinType.jtRound, clipper.EndType.etOpenRound);
  const solution: ClipperPoint[][] = [];
  engine.Execute(solution, half * units);
  return solution.reduce((sum, ring) => sum + clipper.Clipper.Area(ring), 0) / units ** 2;
}

/** Point at a fraction of the length by svg-path-properties. */
export function librarianPoint(data: string, fraction: number): Point {
  const path = new svgPathProperties(data);
  return path.getPointAtLength(path.getTotalLength() * fraction);
}

/** Area of polygons combined by Clipper 6 on a grid of 1e-5 mm: an engine of its own, and an older one than ours. */
export const clipperArea = (...combination: Combination): number =>
  solved(...combination).reduce((sum, ring) => sum + clipper.Clipper.Area(ring), 0) / units ** 2;

/** Polygons combined by Clipper 6 on that grid: outer rings counter-clockwise with y up, holes the other way. */
export const clipperCombined = (...combination: Combination): Point[][] =>
  solved(...combination).map(fromGrid);

type Combination = [
  operation: 'union' | 'intersection' | 'difference',
  a: readonly (readonly Point[])[],
  b: readonly (readonly Point[])[],
  fill: 'nonzero' | 'evenodd',
];

function solved(...[operation, a, b, fill]: Combination): ClipperPoint[][] {
  const engine = new clipper.Clipper();
  engine.AddPaths(a.map(toGrid), clipper.PolyType.ptSubject, true);
  engine.AddPaths(b.map(toGrid), clipper.PolyType.ptClip, true);
  const solution: ClipperPoint[][] = [];
  const rule = fill === 'nonzero' ? clipper.PolyFillType.pftNonZero : clipper.PolyFillType.pftEvenOdd;
  const operations = {
    union: clipper.ClipType.ctUnion,
    intersection: clipper.ClipType.ctIntersection,
    difference: clipper.ClipType.ctDifference,
  };
  engine.Execute(operations[operation], solution, rule, rule);
  return solution;
}

/** Grid units a mm. */
const units = 1e5;

const toGrid = (ring: readonly Point[]): ClipperPoint[] =>
  ring.map(({ x, y }) => ({ X: Math.round(x * units), Y: Math.round(y * units) }));

const fromGrid = (ring: readonly ClipperPoint[]): Point[] =>
  ring.map(({ X, Y }) => ({ x: X / units, y: Y / units }));

/** Rings moved outwards by `by` mm (inwards below 0), corners rounded, by Clipper 6. Outer rings must run counter-clockwise with y up. */
export function clipperOffset(
  rings: readonly (readonly Point[])[],
  by: number,
  tolerance: number,
): readonly (readonly Point[])[] {
  const offset = new clipper.ClipperOffset(2, tolerance * units);
  offset.AddPaths(rings.map(toGrid), clipper.JoinType.jtRound, clipper.EndType.etClosedPolygon);
  const solution: ClipperPoint[][] = [];
  offset.Execute(solution, by * units);
  return solution.map(fromGrid);
}

/** Tells whether a point lies inside rings that overlap nowhere, by Clipper 6: inside an odd number of them. */
export function clipperHolds(rings: readonly (readonly Point[])[]): (point: Point) => boolean {
  const paths = rings.map(toGrid);
  return (point) => {
    const [at] = toGrid([point]);
    return paths.filter((path) => at && clipper.Clipper.PointInPolygon(at, path) === 1).length % 2 === 1;
  };
}

// Kernels against general-purpose libraries at equal measured error.
import { createRequire } from 'node:module';
import { svgPathProperties } from 'svg-path-properties';
import { narrowPlaces } from '../../src/cut/local-width.ts';
import { writePathData } from '../../src/drawing/path-data.ts';
import { moveContour, translation } from '../../src/geometry/affine.ts';
import { type Contour, polygon } from '../../src/geometry/contour.ts';
import { mapSegment, type SmoothMap } from '../../src/geometry/fit.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { chordTolerance, fitTolerance } from '../../src/geometry/tolerance.ts';
import { cellOf, layPeriod } from '../../src/pattern/cell.ts';
import { evenLay, stepOnSheet, toSheet } from '../../src/pattern/lay.ts';
import { flatWall } from '../../src/unroll/flat-wall.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { type Comparison, compare, counted } from './harness.ts';
import { blobs, rowsOfBlobs } from './shapes.ts';

interface PaperPath {
  unite(other: PaperPath): PaperPath;
  readonly segments: readonly { point: Point }[];
  flatten(flatness: number): void;
  simplify(tolerance: number): void;
  remove(): void;
}

interface Paper {
  setup(size: unknown): void;
  readonly project: { clear(): void };
  readonly Size: new (width: number, height: number) => unknown;
  readonly Path: new (data: string) => PaperPath;
  readonly Point: new (x: number, y: number) => Point;
  readonly CompoundPath: new (data: string) => PaperPath;
}

interface ClipperLib {
  readonly Clipper: new () => {
    AddPaths(paths: unknown, type: number, closed: boolean): void;
    Execute(operation: number, solution: unknown[], subject: number, clip: number): void;
  };
  readonly PolyType: { readonly ptSubject: number; readonly ptClip: number };
  readonly ClipType: { readonly ctUnion: number; readonly ctDifference: number };
  readonly ClipperOffset: new (
    miterLimit: number,
    arcTolerance: number,
  ) => {
    AddPaths(paths: unknown, join: number, end: number): void;
    Execute(solution: unknown[], by: number): void;
  };
  readonly JoinType: { readonly jtRound: number };
  readonly EndType: { readonly etClosedPolygon: number };
}

const load = createRequire(import.meta.url);
const paper = load('paper/dist/paper-core.js') as Paper;
const clipperLib = load('clipper-lib') as ClipperLib;

const wall = flatWall(37, 0.08, 70);
const lay = evenLay(wall, 12);
const map: SmoothMap = { point: (p) => toSheet(lay, p), displacement: (at, by) => stepOnSheet(lay, at, by) };

/** Sampling by length: points at equal steps of arc length, mapped, joined by straight lines. */
function sampledByLength(data: readonly string[], step: number): number {
  let count = 0;
  for (const d of data) {
    const path = new svgPathProperties(d);
    const length = path.getTotalLength();
    const steps = Math.ceil(length / step);
    for (let i = 0; i < steps; i++) {
      map.point(path.getPointAtLength((i * length) / steps));
      count += 1;
    }
  }
  return count;
}

/** Flatten in paper, map the points, and fit them again with its own simplify. */
function flattenedAndSimplified(data: readonly string[], flatness: number, tolerance: number): number {
  let count = 0;
  for (const d of data) {
    const path = new paper.Path(d);
    path.flatten(flatness);
    for (const segment of path.segments) {
      const p = map.point(segment.point);
      segment.point = new paper.Point(p.x, p.y);
    }
    path.simplify(tolerance);
    count += path.segments.length;
    path.remove();
  }
  return count;
}

/** The step of arc length whose chords stay within the fit's tolerance on these curves, found by halving. */
function stepWithin(contours: readonly Contour[], tolerance: number): number {
  for (let step = 2; ; step /= Math.SQRT2) {
    const worst = Math.max(
      ...contours.slice(0, 40).flatMap((contour) => contour.segments.map((s) => sag(s, step))),
    );
    if (worst <= tolerance) return step;
  }
}

function sag(s: Contour['segments'][number], step: number): number {
  const count = Math.max(1, Math.ceil(distance(s.from, s.to) / step));
  let worst = 0;
  for (let i = 0; i < count; i++) {
    const [a, b] = [map.point(pointAt(s, i / count)), map.point(pointAt(s, (i + 1) / count))];
    const middle = map.point(pointAt(s, (i + 0.5) / count));
    worst = Math.max(worst, distance(middle, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }));
  }
  return worst;
}

function refitting(): Comparison[] {
  paper.setup(new paper.Size(1, 1));
  const contours = blobs(300, 230, 110, 4);
  const data = contours.map((contour) => writePathData([contour]));
  const ours = () =>
    contours.reduce(
      (sum, { segments }) =>
        sum + segments.reduce((n, s) => n + mapSegment(map, s, fitTolerance).segments.length, 0),
      0,
    );
  const step = stepWithin(contours, fitTolerance);
  const byLength = () => sampledByLength(data, step);
  const simplified = () => flattenedAndSimplified(data, fitTolerance / 4, fitTolerance);
  const rounds = { rounds: 7, warmUp: 1 };
  return [
    compare(
      'lay 300 blobs on a taper, against sampling by length (svg-path-properties)',
      ours,
      byLength,
      rounds,
    ),
    counted('segments of that, against sampling by length', ours(), byLength(), 'segments'),
    compare('lay 300 blobs on a taper, against flatten and simplify (paper)', ours, simplified, rounds),
    counted('segments of that, against flatten and simplify', ours(), simplified(), 'segments'),
  ];
}

/** Merge a pattern of overlapping blobs, 12 repeats around: ours once a period, the other library copy by copy. */
function merging(): Comparison[] {
  const repeats = 12;
  const contours = blobs(60, 22, 110, 3);
  const period = layPeriod(
    contours.map((contour) => ({ contour, borders: new Set<number>() })),
    { a: { x: 22, y: 0 }, b: { x: 0, y: 110 } },
    translation(0, 0),
  );
  const rectangle = (x: number) =>
    polygon([
      { x, y: 0 },
      { x: x + 22, y: 0 },
      { x: x + 22, y: 110 },
      { x, y: 110 },
    ]);
  const ours = () =>
    cellOf(period, { contour: rectangle(0.31), sides: ['end', 'right', 'end', 'left'] }).chains.length *
    repeats;
  const grid = 2 ** 15;
  const copies = Array.from({ length: repeats }, (_, i) =>
    contours.map((contour) =>
      chordPoints(contour, chordTolerance).map(({ x, y }) => ({
        X: Math.round((x + 22 * i) * grid),
        Y: Math.round(y * grid),
      })),
    ),
  ).flat();
  const other = () => {
    const clipper = new clipperLib.Clipper();
    clipper.AddPaths(copies, clipperLib.PolyType.ptSubject, true);
    const solution: unknown[] = [];
    clipper.Execute(clipperLib.ClipType.ctUnion, solution, 1, 1);
    return solution.length;
  };
  const data = Array.from({ length: repeats }, (_, i) =>
    writePathData(contours.map((contour) => moveContour(translation(22 * i, 0), contour))),
  );
  const united = () => {
    const paths = data.map((d) => new paper.CompoundPath(d));
    const merged = paths.reduce((whole, path) => whole.unite(path));
    paper.project.clear();
    return merged.segments?.length ?? 1;
  };
  return [
    compare('merge 12 repeats of 60 blobs, against copy by copy (clipper-lib)', ours, other, {
      rounds: 5,
      warmUp: 1,
    }),
    compare('merge 12 repeats of 60 blobs, against copy by copy (paper)', ours, united, {
      rounds: 3,
      warmUp: 0,
    }),
  ];
}

/**
 * The narrow places of 400 blobs, against opening them by offsets: in by half the limit, out again, and what is left. Both
 * within 0.01 mm, twice the sagitta of their chords.
 */
function widths(): Comparison[] {
  const limit = 1;
  const sagitta = 0.005;
  const contours = rowsOfBlobs(20, 20, 5);
  const shapes = contours.map((contour) => ({ contours: [contour] }));
  const grid = 2 ** 15;
  const rings = contours.map((contour) =>
    chordPoints(contour, sagitta).map(({ x, y }) => ({
      X: Math.round(x * grid),
      Y: Math.round(y * grid),
    })),
  );
  const ours = () => narrowPlaces(shapes, { side: 'film', limit, tolerance: sagitta }).length + 1;
  const offset = (paths: unknown, by: number): unknown[] => {
    const work = new clipperLib.ClipperOffset(2, sagitta * grid);
    work.AddPaths(paths, clipperLib.JoinType.jtRound, clipperLib.EndType.etClosedPolygon);
    const out: unknown[] = [];
    work.Execute(out, by * grid);
    return out;
  };
  const opened = () => {
    const open = offset(offset(rings, -limit / 2), limit / 2);
    const clipper = new clipperLib.Clipper();
    clipper.AddPaths(rings, clipperLib.PolyType.ptSubject, true);
    clipper.AddPaths(open, clipperLib.PolyType.ptClip, true);
    const left: unknown[] = [];
    clipper.Execute(clipperLib.ClipType.ctDifference, left, 1, 1);
    return left.length + 1;
  };
  return [
    compare('local width of 400 blobs, against opening by offsets (clipper-lib)', ours, opened, {
      rounds: 3,
      warmUp: 1,
    }),
  ];
}

export const kernelComparisons = (): Comparison[] => [...refitting(), ...merging(), ...widths()];

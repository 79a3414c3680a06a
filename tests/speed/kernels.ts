// Kernels against general-purpose libraries at equal measured error.
import { createRequire } from 'node:module';
import { svgPathProperties } from 'svg-path-properties';
import { writePathData } from '../../src/drawing/path-data.ts';
import { translation } from '../../src/geometry/affine.ts';
import { type Contour, cubic, polygon } from '../../src/geometry/contour.ts';
import { mapSegment, type SmoothMap } from '../../src/geometry/fit.ts';
import { distance, type Point } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { chordTolerance, fitTolerance } from '../../src/geometry/tolerance.ts';
import { cellOf, layPeriod } from '../../src/pattern/cell.ts';
import { evenLay, stepOnSheet, toSheet } from '../../src/pattern/lay.ts';
import { flatWall } from '../../src/unroll/flat-wall.ts';
import { chordPoints } from '../geometry/drawn.ts';
import { type Comparison, compare, counted } from './harness.ts';

interface PaperPath {
  readonly segments: readonly { point: Point }[];
  flatten(flatness: number): void;
  simplify(tolerance: number): void;
  remove(): void;
}

interface Paper {
  setup(size: unknown): void;
  readonly Size: new (width: number, height: number) => unknown;
  readonly Path: new (data: string) => PaperPath;
  readonly Point: new (x: number, y: number) => Point;
}

interface ClipperLib {
  readonly Clipper: new () => {
    AddPaths(paths: unknown, type: number, closed: boolean): void;
    Execute(operation: number, solution: unknown[], subject: number, clip: number): void;
  };
  readonly PolyType: { readonly ptSubject: number };
  readonly ClipType: { readonly ctUnion: number };
}

const load = createRequire(import.meta.url);
const paper = load('paper/dist/paper-core.js') as Paper;
const clipperLib = load('clipper-lib') as ClipperLib;

/** Seeded, so that every run has the same shapes. Source: mulberry32, public domain, from memory. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A round blob of eight cubics. */
function blob(x: number, y: number, size: number, next: () => number): Contour {
  const spokes = Array.from({ length: 8 }, (_, i) => {
    const angle = (i * Math.PI) / 4;
    const radius = size * (0.6 + 0.4 * next());
    return { at: { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) }, angle, radius };
  });
  const segments = spokes.map((a, i) => {
    const b = spokes[(i + 1) % 8] ?? a;
    const handle = (spoke: typeof a, sign: number): Point => ({
      x: spoke.at.x - sign * 0.265 * spoke.radius * Math.sin(spoke.angle),
      y: spoke.at.y + sign * 0.265 * spoke.radius * Math.cos(spoke.angle),
    });
    return cubic(a.at, handle(a, 1), handle(b, -1), b.at);
  });
  return { closed: true, segments };
}

const blobs = (count: number, across: number, up: number, size: number): Contour[] => {
  const next = random(20261125);
  return Array.from({ length: count }, () => blob(next() * across, next() * up, size, next));
};

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
  return [
    compare('merge 12 repeats of 60 blobs, against copy by copy (clipper-lib)', ours, other, {
      rounds: 5,
      warmUp: 1,
    }),
  ];
}

export const kernelComparisons = (): Comparison[] => [...refitting(), ...merging()];

// The other libraries of the bench: paper (MIT), clipper-lib (BSL-1.0), polygon-clipping (MIT).
import { createRequire } from 'node:module';
import type { Point } from '../../src/geometry/point.ts';

interface PaperSegment {
  point: Point;
  readonly handleIn: Point;
  readonly handleOut: Point;
}

export interface PaperPath {
  readonly segments: readonly PaperSegment[];
  readonly area: number;
  closed: boolean;
  add(point: Point): void;
  unite(other: PaperPath, options: { insert: boolean }): PaperPath;
  intersect(other: PaperPath, options: { insert: boolean }): PaperPath;
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
  readonly CompoundPath: new (data: string) => PaperPath & { fillRule: string };
}

export interface ClipperPoint {
  readonly X: number;
  readonly Y: number;
}

export type ClipperRings = readonly (readonly ClipperPoint[])[];

interface ClipperLib {
  readonly Clipper: {
    new (): {
      AddPaths(paths: ClipperRings, type: number, closed: boolean): void;
      Execute(operation: number, solution: ClipperPoint[][], subject: number, clip: number): void;
    };
    Area(ring: readonly ClipperPoint[]): number;
  };
  readonly PolyType: { readonly ptSubject: number; readonly ptClip: number };
  readonly ClipType: {
    readonly ctUnion: number;
    readonly ctIntersection: number;
    readonly ctDifference: number;
  };
  readonly ClipperOffset: new (
    miterLimit: number,
    arcTolerance: number,
  ) => {
    AddPaths(paths: ClipperRings, join: number, end: number): void;
    Execute(solution: ClipperPoint[][], by: number): void;
  };
  readonly JoinType: { readonly jtRound: number };
  readonly EndType: { readonly etClosedPolygon: number };
}

const load = createRequire(import.meta.url);
export const paper = load('paper/dist/paper-core.js') as Paper;
paper.setup(new paper.Size(1, 1));
const clipperLib = load('clipper-lib') as ClipperLib;

/** Units of Clipper's grid in a mm. */
export const clipperUnits = 2 ** 15;

export const toClipper = (rings: readonly (readonly Point[])[]): ClipperPoint[][] =>
  rings.map((ring) =>
    ring.map(({ x, y }) => ({ X: Math.round(x * clipperUnits), Y: Math.round(y * clipperUnits) })),
  );

/** Rings combined by Clipper 6, filled by winding number. */
export function clipperCombined(
  operation: 'union' | 'intersection' | 'difference',
  subject: ClipperRings,
  clip: ClipperRings = [],
): ClipperPoint[][] {
  const engine = new clipperLib.Clipper();
  engine.AddPaths(subject, clipperLib.PolyType.ptSubject, true);
  if (clip.length > 0) engine.AddPaths(clip, clipperLib.PolyType.ptClip, true);
  const { ctUnion, ctIntersection, ctDifference } = clipperLib.ClipType;
  const operations = { union: ctUnion, intersection: ctIntersection, difference: ctDifference };
  const solution: ClipperPoint[][] = [];
  engine.Execute(operations[operation], solution, 1, 1);
  return solution;
}

/** Rings moved outwards by Clipper 6, mm, corners rounded within a sagitta, mm. */
export function clipperGrown(rings: ClipperRings, by: number, sagitta: number): ClipperPoint[][] {
  const work = new clipperLib.ClipperOffset(2, sagitta * clipperUnits);
  work.AddPaths(rings, clipperLib.JoinType.jtRound, clipperLib.EndType.etClosedPolygon);
  const out: ClipperPoint[][] = [];
  work.Execute(out, by * clipperUnits);
  return out;
}

/** mm² */
export const clipperArea = (rings: ClipperRings): number =>
  rings.reduce((sum, ring) => sum + clipperLib.Clipper.Area(ring), 0) / clipperUnits ** 2;

// Combining areas so that curves stay curves: polygons are combined, then every edge is traced back to the curve
// it stood in for. What comes out untouched is the original curve, control point for control point.
import { type ChordSet, ChordFinder, chordsOf, parameterAt, type SourceContour } from './chords.ts';
import { type ClipOperation, clipPolygons, type Fill, type GridPoint, type GridRing } from './polygon-clip.ts';
import type { Point } from './point.ts';
import { hullBox } from './box.ts';

/** A stretch of a result's boundary: part of one segment of one source, walked from t0 to t1 (backwards if t0 > t1). */
export interface Run {
  readonly source: number;
  readonly segment: number;
  readonly t0: number;
  readonly t1: number;
  readonly from: Point;
  readonly to: Point;
}

/** A closed boundary as runs, with the area it encloses, mm², and its length, mm. */
export interface TracedRing {
  readonly runs: readonly Run[];
  readonly area: number;
  readonly perimeter: number;
}

export interface TracedRegion {
  readonly outer: TracedRing;
  readonly holes: readonly TracedRing[];
}

export interface CombineOptions {
  readonly operation: ClipOperation;
  readonly fill: Fill;
  /** Sagitta of the chords, mm. */
  readonly tolerance: number;
}

/** An edge nothing was found for: numbered apart so that it is laid as a straight line. */
export const untraced = -1;

/** Edges this short, in grid units, are the rounding of a corner. */
const cornerRounding = 4;

/**
 * Combine the areas of `subject` with those of `clip`; both by one fill rule. Sources are numbered through: first
 * the subject's contours, then the clip's. Outer rings of the result run counter-clockwise with y up, holes clockwise.
 */
export function combine(
  subject: readonly SourceContour[],
  clip: readonly SourceContour[],
  { operation, fill, tolerance }: CombineOptions,
): TracedRegion[] {
  const units = unitsFor([...subject, ...clip]);
  const ours = chordsOf(subject, units, tolerance);
  const theirs = chordsOf(clip, units, tolerance, subject.length);
  const finder = new ChordFinder([...ours.chords, ...theirs.chords]);
  const trace = (ring: GridRing) => traceRing(ring, finder, units);
  return clipPolygons(operation, ours.rings, ringsOf(theirs), fill).map(({ outer, holes }) => ({
    outer: trace(outer),
    holes: holes.map(trace),
  }));
}

const ringsOf = (set: ChordSet): readonly GridRing[] => set.rings;

/**
 * Grid units per mm: a power of two, so that dividing loses nothing. 2^25 units across keep the products in the
 * polygon engine under 2^53; 2^15 per mm (0.00003 mm) is finer than anything asked of it.
 */
function unitsFor(sources: readonly SourceContour[]): number {
  const box = hullBox(sources.map(({ contour }) => contour));
  const reach = Math.max(1, Math.abs(box.minX), Math.abs(box.minY), Math.abs(box.maxX), Math.abs(box.maxY));
  if (!Number.isFinite(reach)) return 2 ** 15;
  return 2 ** Math.min(15, 25 - Math.ceil(Math.log2(reach)));
}

function traceRing(ring: GridRing, finder: ChordFinder, units: number): TracedRing {
  const corners = withoutRounding(ring);
  const edges = traceEdges(corners, finder, units);
  return { runs: mergeRuns(edges), ...measureRing(corners, units) };
}

function withoutRounding(ring: GridRing): GridPoint[] {
  const kept: GridPoint[] = [];
  for (const p of ring) {
    const last = kept.at(-1);
    if (!last || Math.hypot(p.x - last.x, p.y - last.y) > cornerRounding) kept.push(p);
  }
  const [first] = kept;
  const last = kept.at(-1);
  if (first && last && kept.length > 1 && Math.hypot(first.x - last.x, first.y - last.y) <= cornerRounding)
    kept.pop();
  return kept;
}

function traceEdges(corners: readonly GridPoint[], finder: ChordFinder, units: number): Run[] {
  const edges: Run[] = [];
  const toMm = (p: GridPoint): Point => ({ x: p.x / units, y: p.y / units });
  let following: ReturnType<ChordFinder['find']>;
  corners.forEach((p, i) => {
    const q = corners[(i + 1) % corners.length];
    if (!q) return;
    following = finder.find(p, q, following);
    const ends = { from: toMm(p), to: toMm(q) };
    if (following)
      edges.push({
        source: following.source,
        segment: following.segment,
        t0: parameterAt(following, p),
        t1: parameterAt(following, q),
        ...ends,
      });
    else edges.push({ source: untraced, segment: i, t0: 0, t1: 1, ...ends });
  });
  return edges;
}

/** Two edges of one segment, the second going on where the first stopped. */
const continues = (a: Run, b: Run): boolean =>
  a.source === b.source &&
  a.segment === b.segment &&
  Math.sign(a.t1 - a.t0) === Math.sign(b.t1 - b.t0) &&
  Math.abs(a.t1 - b.t0) < 1e-3;

const joined = (a: Run, b: Run): Run => ({ ...a, t1: b.t1, to: b.to });

function mergeRuns(edges: readonly Run[]): Run[] {
  const runs: Run[] = [];
  for (const edge of edges) {
    if (edge.source !== untraced && edge.t0 === edge.t1) continue;
    const last = runs.at(-1);
    if (last && continues(last, edge)) runs[runs.length - 1] = joined(last, edge);
    else runs.push(edge);
  }
  const [first] = runs;
  const last = runs.at(-1);
  if (first && last && runs.length > 1 && continues(last, first)) {
    runs.pop();
    runs[0] = joined(last, first);
  }
  return runs;
}

function measureRing(ring: GridRing, units: number): { area: number; perimeter: number } {
  let twice = 0;
  let perimeter = 0;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length] ?? p;
    twice += p.x * q.y - p.y * q.x;
    perimeter += Math.hypot(q.x - p.x, q.y - p.y);
  });
  return { area: Math.abs(twice) / 2 / (units * units), perimeter: perimeter / units };
}

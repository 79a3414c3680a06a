// Combining areas so that curves stay curves: polygons are combined, then every edge is traced back to the curve
// it stood in for. What comes out untouched is the original curve, control point for control point.

import { ChordGrid, type Source } from './chords.ts';
import { clipApart, isKeptAlone } from './clip-apart.ts';
import type { GridPoint, GridRing } from './grid-ring.ts';
import { loneRing } from './lone-ring.ts';
import type { Point } from './point.ts';
import { norm } from './point.ts';
import type { ClipOperation, Fill } from './polygon-clip.ts';
import { isWholeEnd } from './rebuilt-run.ts';
import { sourcesApart } from './sources-apart.ts';
import { ledThroughCorners } from './touching.ts';
import type { Run, TracedRegion, TracedRing } from './traced.ts';

export interface CombineOptions {
  readonly operation: ClipOperation;
  readonly fill: Fill;
  /** Sagitta of the sources' chords. */
  readonly tolerance: number;
}

/** An edge nothing was found for: numbered apart so that it is laid as a straight line. */
export const untraced = -1;

/** Edges this short, in grid units, are the rounding of a corner. */
const cornerRounding = 4;

/** Two stretches of one segment follow on each other when their parameters meet this closely. */
const parameterRounding = 1e-3;

/**
 * Combine the areas of `subject` with those of `clip`; both by one fill rule. Sources are numbered through: first
 * the subject's contours, then the clip's. Outer rings of the result run counter-clockwise with y up, holes clockwise.
 */
export function combine(
  subject: readonly Source[],
  clip: readonly Source[],
  { operation, fill, tolerance }: CombineOptions,
): TracedRegion[] {
  const units = unitsFor([subject, clip], tolerance);
  const ours = subject.map((source, number): Numbered => ({ source, number }));
  const theirs = clip.map((source, i): Numbered => ({ source, number: subject.length + i }));
  const pick = (members: readonly number[]): Numbered[] => members.flatMap((i) => ours[i] ?? []);
  // A union takes in what lies within the clip: only without one are its parts on their own.
  const { sets, others } =
    operation === 'union' && clip.length > 0
      ? { sets: [], others: subject.map((_, i) => i) }
      : sourcesApart(subject, clip, apart / units);
  const apartFound = sets.flatMap(({ members, around }) =>
    combined(pick(members), [], around, { operation, fill, units }),
  );
  const otherFound =
    others.length > 0 || operation === 'union'
      ? combined(pick(others), theirs, 0, { operation, fill, units })
      : [];
  return [...apartFound, ...otherFound].sort((a, b) => a.first - b.first);
}

/** Sources in boxes farther apart than this, in grid units, have nothing to do with one another. */
const apart = 32;

interface Numbered {
  readonly source: Source;
  readonly number: number;
}

/** A region with the lowest number among the sources of the set it comes of. */
interface FoundRegion extends TracedRegion {
  readonly first: number;
}

/** Sources combined on a grid of their own, which is let go when they are traced. */
function combined(
  subject: readonly Numbered[],
  clip: readonly Numbered[],
  clipAround: number,
  { operation, fill, units }: Pick<CombineOptions, 'operation' | 'fill'> & { readonly units: number },
): FoundRegion[] {
  const [alone] = subject;
  const lone =
    alone && subject.length === 1 && clip.length === 0
      ? loneRing(alone.source, alone.number, units)
      : undefined;
  if (alone && lone) {
    const isKept = isKeptAlone(operation, fill, lone.turns, clipAround);
    return isKept ? [{ outer: lone.ring, holes: [], first: alone.number }] : [];
  }
  const grid = new ChordGrid();
  const numbers: number[] = [];
  const ringsOf = (sources: readonly Numbered[]): GridRing[] =>
    sources.flatMap(({ source, number }) => {
      const ring = grid.add(source, number, units);
      if (!ring) return [];
      numbers.push(number);
      return [ring];
    });
  const subjectRings = ringsOf(subject);
  const clipRings = ringsOf(clip);
  const ours = ledThroughCorners(subjectRings, grid.sides);
  const theirs = ledThroughCorners(clipRings, grid.sides);
  const trace = (ring: GridRing) => traceRing(ring, grid, units);
  return clipApart(operation, ours, theirs, fill, clipAround).map(({ outer, holes, first }) => ({
    outer: trace(outer),
    holes: holes.map(trace),
    first: numbers[first] ?? 0,
  }));
}

/**
 * Grid units per unit of length: a power of two, so that dividing loses nothing. About a hundredth of the chords'
 * sagitta, which also takes up the rounding of the files art comes in; coarser where the art is so large that products
 * in the polygon engine would pass 2^53.
 */
function unitsFor(sides: readonly (readonly Source[])[], tolerance: number): number {
  let reach = 0;
  for (const side of sides)
    for (const { chords, by } of side)
      for (let k = 0; k < chords.x.length; k++)
        reach = Math.max(reach, Math.abs((chords.x[k] ?? 0) + by.x), Math.abs((chords.y[k] ?? 0) + by.y));
  const wanted = Math.round(Math.log2(100 / tolerance));
  return 2 ** (reach > 0 ? Math.min(wanted, 25 - Math.ceil(Math.log2(reach))) : wanted);
}

function traceRing(ring: GridRing, grid: ChordGrid, units: number): TracedRing {
  const corners = withoutRounding(ring);
  return { runs: traceRuns(corners, grid, units), ...measureRing(corners, units) };
}

const near = (p: GridPoint, q: GridPoint): boolean =>
  Math.abs(p.x - q.x) <= cornerRounding && Math.abs(p.y - q.y) <= cornerRounding;

function withoutRounding(ring: GridRing): readonly GridPoint[] {
  const kept: GridPoint[] = [];
  for (const p of ring) {
    const last = kept.at(-1);
    if (!last || !near(p, last)) kept.push(p);
  }
  const [first] = kept;
  const last = kept.at(-1);
  if (first && last && kept.length > 1 && near(first, last)) kept.pop();
  return kept;
}

interface OpenRun {
  source: number;
  segment: number;
  t0: number;
  t1: number;
  from: GridPoint;
  to: GridPoint;
  turn: number;
}

/** Two stretches of one segment, the second going on where the first stopped. */
const continues = (a: OpenRun, b: OpenRun): boolean =>
  a.source === b.source &&
  a.segment === b.segment &&
  a.source !== untraced &&
  a.t1 > a.t0 === b.t1 > b.t0 &&
  Math.abs(a.t1 - b.t0) < parameterRounding;

const turnOf = (came: GridPoint, at: GridPoint, goes: GridPoint): number =>
  Math.sign((at.x - came.x) * (goes.y - at.y) - (at.y - came.y) * (goes.x - at.x));

/** Follow the corners of a ring and gather its edges into runs. */
function traceRuns(corners: readonly GridPoint[], grid: ChordGrid, units: number): Run[] {
  const runs: OpenRun[] = [];
  let chord = -1;
  let last: OpenRun | undefined;
  for (let i = 0; i < corners.length; i++) {
    const p = corners[i];
    const q = corners[i + 1] ?? corners[0];
    const came = corners[i === 0 ? corners.length - 1 : i - 1];
    if (!p || !q || !came) break;
    chord = grid.find(p, q, chord);
    const edge: OpenRun =
      chord < 0
        ? { source: untraced, segment: i, t0: 0, t1: 1, from: p, to: q, turn: 0 }
        : {
            source: grid.source[chord] ?? untraced,
            segment: grid.segment[chord] ?? 0,
            t0: grid.parameterAt(chord, p),
            t1: grid.parameterAt(chord, q),
            from: p,
            to: q,
            turn: turnOf(came, p, q),
          };
    if (edge.t0 === edge.t1) continue;
    if (isWholeEnd(edge.t0)) edge.turn = 0;
    if (last && continues(last, edge)) {
      last.t1 = edge.t1;
      last.to = edge.to;
    } else {
      runs.push(edge);
      last = edge;
    }
  }
  const [first] = runs;
  if (first && last && first !== last && continues(last, first)) {
    first.t0 = last.t0;
    first.from = last.from;
    first.turn = last.turn;
    runs.pop();
  }
  const toMm = (p: GridPoint): Point => ({ x: p.x / units, y: p.y / units });
  return runs.map((run) => ({ ...run, from: toMm(run.from), to: toMm(run.to) }));
}

function measureRing(ring: readonly GridPoint[], units: number): { area: number; perimeter: number } {
  let twice = 0;
  let perimeter = 0;
  let p = ring.at(-1);
  for (const q of ring) {
    if (p) {
      twice += p.x * q.y - p.y * q.x;
      perimeter += norm(q.x - p.x, q.y - p.y);
    }
    p = q;
  }
  return { area: Math.abs(twice) / 2 / (units * units), perimeter: perimeter / units };
}

// One cell of the laid pattern: the merged areas of the art inside a window, as rings that stay inside it and
// chains that run from one border of the window to another, where the next cell takes them up.
import { type Affine, moveContour } from '../../geometry/affine.ts';
import { type Box, hullBox } from '../../geometry/box.ts';
import { type ChordedContour, chorded, type Source } from '../../geometry/chords.ts';
import { combine, untraced } from '../../geometry/combine.ts';
import type { Contour } from '../../geometry/contour.ts';
import { keptContour } from '../../geometry/kept-contour.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { type SegmentOf, segmentsOf } from '../../geometry/rebuild.ts';
import { chordTolerance, joinTolerance } from '../../geometry/tolerance.ts';
import type { Boundary, Run, TracedRegion } from '../../geometry/traced.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import type { PeriodContour } from './cut-shapes.ts';

/** What a stretch of a window's boundary is: a border to the next cell, or an end of the piece, in the waste. */
export type Side = 'left' | 'right' | 'end';

/** A window with its boundary running counter-clockwise with y up; `sides` names each of its segments. */
export interface CellWindow {
  readonly contour: Contour;
  readonly sides: readonly Side[];
}

/** A copy of a period's contour, `i` and `j` lattice steps from where it was drawn. */
export interface Copy {
  readonly family: number;
  readonly i: number;
  readonly j: number;
}

export interface Crossing {
  readonly side: 'left' | 'right';
  readonly y: number;
}

/** A stretch of boundary from one crossing of a border to the next. */
export interface Chain {
  readonly runs: readonly Run[];
  readonly region: number;
  readonly start: Crossing;
  readonly end: Crossing;
}

export interface Ring {
  readonly boundary: Boundary;
  readonly region: number;
}

export interface Cell {
  readonly rings: readonly Ring[];
  readonly chains: readonly Chain[];
  readonly regions: number;
  /** Whether drawn lines run along a border to the next cell: what meets there, one cell on each side, can't be merged. */
  readonly rubs: boolean;
  readonly segmentOf: SegmentOf;
  /** The copy a run belongs to; undefined for the window's own edges. */
  readonly copyOf: (run: Run) => Copy | undefined;
  /** Whether a run is an edge of the window that lies in the waste, and cuts short what it meets. */
  readonly isEnd: (run: Run | undefined) => boolean;
  /** Stretches of tile border that stayed visible: there the tile does not join itself. */
  readonly gaps: readonly { readonly at: Point; readonly length: number }[];
}

/** A contour of the laid period, with its chords, which all its copies share. */
export interface LaidContour {
  readonly chords: ChordedContour;
  readonly box: Box;
  readonly borders: ReadonlySet<number>;
}

/** The art to fill a cell with: contours of the laid period, and the laid lattice. */
export interface LaidPeriod {
  readonly contours: readonly LaidContour[];
  readonly lattice: Lattice;
}

/** A period moved from the drawing into the laid pattern. */
export function layPeriod(contours: readonly PeriodContour[], lattice: Lattice, m: Affine): LaidPeriod {
  const linear = (p: Point): Point => ({ x: m.a * p.x + m.c * p.y, y: m.b * p.x + m.d * p.y });
  return {
    contours: contours.map(({ contour, borders }) => {
      const laid = moveContour(m, contour);
      const chords = chorded(laid, chordTolerance);
      return { chords: { ...chords, contour: keptContour(chords.contour) }, box: hullBox([laid]), borders };
    }),
    lattice: { a: linear(lattice.a), b: linear(lattice.b) },
  };
}

export interface PlacedCopy extends Copy, Source {
  readonly borders: ReadonlySet<number>;
}

const noEdge = (): boolean => false;

/** Every copy of the period that may show in the box. */
export function copiesIn({ contours, lattice }: LaidPeriod, box: Box): PlacedCopy[] {
  return contours.flatMap(({ chords, box: own, borders }, family) => {
    const reach = {
      minX: box.minX - own.maxX,
      minY: box.minY - own.maxY,
      maxX: box.maxX - own.minX,
      maxY: box.maxY - own.minY,
    };
    const isEdge = borders.size === 0 ? noEdge : (segment: number) => borders.has(segment);
    return stepsIn(lattice, reach).map(({ i, j, at }) => ({
      family,
      i,
      j,
      borders,
      chords,
      by: at,
      isEdge,
    }));
  });
}

/** Lines this close to a border run along it, mm: well over a few grid units. */
const borderReach = 1e-3;

/** What sources give within a contour, and the segment that a run of it is part of. */
export interface Merged {
  readonly regions: readonly TracedRegion[];
  readonly segmentOf: ReturnType<typeof segmentsOf>;
}

/** Sources merged and cut off by a contour, whose own runs come from a source after the last of them. */
export function mergedWithin(sources: readonly Source[], contour: Contour): Merged {
  const frame: Source = {
    chords: chorded(contour, chordTolerance),
    by: { x: 0, y: 0 },
    isEdge: () => true,
  };
  const regions = combine(sources, [frame], {
    operation: 'intersection',
    fill: 'nonzero',
    tolerance: chordTolerance,
  });
  return { regions, segmentOf: segmentsOf([...sources, frame]) };
}

/** Fill a window with the period and merge what overlaps or touches. */
export function cellOf(period: LaidPeriod, window: CellWindow): Cell {
  const copies = copiesIn(period, hullBox([window.contour]));
  const { regions, segmentOf } = mergedWithin(copies, window.contour);
  const windowSource = copies.length;
  const isBorder = (run: Run): boolean =>
    run.source !== untraced && copies[run.source]?.borders.has(run.segment) === true;
  const sideOf = (run: Run): Side | undefined =>
    run.source === windowSource ? window.sides[run.segment] : undefined;
  const borders = window.contour.segments
    .filter((_, i) => isCrossed(window.sides[i]))
    .map(({ from }) => from.x);
  const isOnBorder = ({ source, from, to }: Run): boolean =>
    source !== windowSource &&
    Math.abs(to.y - from.y) > joinTolerance &&
    borders.some((x) => Math.max(Math.abs(from.x - x), Math.abs(to.x - x)) < borderReach);
  let rubs = false;
  const gaps: { at: Point; length: number }[] = [];
  const rings: Ring[] = [];
  const chains: Chain[] = [];
  regions.forEach(({ outer, holes }, region) => {
    for (const ring of [outer, ...holes]) {
      // What met no edge of the window crosses no border of it either.
      if (ring.isAlone) {
        rings.push({ boundary: ring, region });
        continue;
      }
      const kept = ring.runs.filter((run) => !isBorder(run) || distance(run.from, run.to) >= joinTolerance);
      for (const run of kept)
        if (isBorder(run)) gaps.push({ at: run.from, length: distance(run.from, run.to) });
      rubs ||= kept.some(isOnBorder);
      const parts = chainsOf(kept, sideOf);
      if (parts === undefined) rings.push({ boundary: { runs: kept }, region });
      else for (const part of parts) chains.push({ ...part, region });
    }
  });
  return {
    rings,
    chains,
    regions: regions.length,
    rubs,
    segmentOf,
    copyOf: (run) => copies[run.source],
    isEnd: (run) => run !== undefined && sideOf(run) === 'end',
    gaps,
  };
}

const isCrossed = (side: Side | undefined): side is 'left' | 'right' => side === 'left' || side === 'right';

/** Cut a ring where it follows a border; undefined if it follows none. */
function chainsOf(
  runs: readonly Run[],
  sideOf: (run: Run) => Side | undefined,
): Omit<Chain, 'region'>[] | undefined {
  const firstBorder = runs.findIndex((run) => isCrossed(sideOf(run)));
  if (firstBorder < 0) return undefined;
  const around = [...runs.slice(firstBorder), ...runs.slice(0, firstBorder)];
  const chains: Omit<Chain, 'region'>[] = [];
  let current: Run[] = [];
  let start: Crossing | undefined;
  const finish = (end: Crossing) => {
    if (start && current.length > 0) chains.push({ runs: current, start, end });
    current = [];
  };
  for (const run of around) {
    const side = sideOf(run);
    if (!isCrossed(side)) current.push(run);
    else {
      finish({ side, y: run.from.y });
      start = { side, y: run.to.y };
    }
  }
  const closing = around[0] && sideOf(around[0]);
  if (isCrossed(closing) && around[0]) finish({ side: closing, y: around[0].from.y });
  return chains;
}

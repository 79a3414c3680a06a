// True local width: where film, or a gap in it, is narrower than a limit, and by what disc that was found.
import { batchesBut, chordsAbout } from '../../geometry/batches.ts';
import { grow, hullBox } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { setsJoined } from '../../geometry/joined.ts';
import type { Point } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import { type EdgeChords, edgeChords, type Side } from './edge-chords.ts';
import { type EdgeDiscs, edgeDiscs } from './edge-discs.ts';
import { NarrowCluster, type NarrowPlace } from './narrow-cluster.ts';
import { type NarrowRun, narrowRuns } from './narrow-runs.ts';
import { isWide } from './plain-line.ts';

export interface WidthOptions {
  readonly side: Side;
  /** What is narrower than this is found, mm. */
  readonly limit: number;
  /** Sagitta of the chords that stand in for curves, mm: widths are right within twice that. */
  readonly tolerance: number;
  /** Whether sides that leave their corner as one and part slowly make a point of it; a narrow arm if left out. */
  readonly cusps?: boolean;
  /** Whether places keep the discs along them. */
  readonly keepsDiscs?: boolean;
  /** Whether a place is to be looked at; everywhere if left out. Its surroundings count all the same. */
  readonly isWanted?: (p: Point) => boolean;
}

/**
 * The narrow places of areas that overlap nowhere. A disc that touches the edge at two places nearly opposite, and
 * meets no other part of it, is a disc of the medial axis: where such discs are smaller than the limit, the area is
 * narrow. Corners, where discs shrink to nothing between sides that turn away from each other, are not.
 */
export function narrowPlaces(shapes: readonly Shape[], options: WidthOptions): NarrowPlace[] {
  const { side, limit, tolerance } = options;
  if (!(limit > 0)) return [];
  // A disc in a gap reaches from an edge no farther than the limit, one in film no edge but that of its own shape.
  const reach = side === 'gap' ? limit / 2 + precision : 0;
  const boxes = shapes.map(({ contours }) => grow(hullBox(contours), reach));
  const isClear = (i: number): boolean => {
    const [contour, ...holes] = shapes[i]?.contours ?? [];
    return (
      contour !== undefined && holes.length === 0 && isWide(contour, limit, { tolerance, longest: limit })
    );
  };
  const found = batchesBut(isClear, boxes, (i) => chordsAbout(shapes[i]?.contours)).flatMap((members) =>
    placesAmong(
      members.flatMap((i) => shapes[i] ?? []),
      options,
    ).map(({ shape, ...place }) => ({ of: members[shape] ?? 0, place })),
  );
  return found.sort((a, b) => a.of - b.of).map(({ place }) => place);
}

/** Narrow places, each with the first shape that it was found along. */
function placesAmong(
  shapes: readonly Shape[],
  { side, limit, tolerance, cusps = false, keepsDiscs = false, isWanted }: WidthOptions,
): (NarrowPlace & { readonly shape: number })[] {
  const chords = edgeChords(shapes, { side, tolerance, longest: limit });
  const wanted = isWanted && ((k: number) => isWanted({ x: chords.x[k] ?? 0, y: chords.y[k] ?? 0 }));
  const discs = edgeDiscs(chords, limit, wanted);
  const runs = narrowRuns(chords, discs, limit);
  if (runs.length === 0) return [];
  const wide = wideContours(chords, discs, limit);
  return clustersOf(chords, discs, runs).flatMap((runs) => {
    const cluster = new NarrowCluster(chords, discs, runs, { limit, cusps, keepsDiscs });
    const places = runs.some(({ contour }) => wide.has(contour)) ? cluster.places() : [cluster.whole()];
    const shape = chords.shapeOf[runs[0]?.contour ?? 0] ?? 0;
    return places.map((place) => ({ ...place, shape }));
  });
}

/** Contours along which what is measured is somewhere as wide as the limit. */
function wideContours(chords: EdgeChords, discs: EdgeDiscs, limit: number): ReadonlySet<number> {
  const isNarrow = new Uint8Array(chords.count);
  discs.chord.forEach((k, d) => {
    if ((discs.radius[d] ?? 0) < limit / 2) isNarrow[k] = 1;
  });
  const wide = new Set<number>();
  for (let k = 0; k < chords.count; k++) if (isNarrow[k] === 0) wide.add(chords.contour[k] ?? 0);
  return wide;
}

/** Runs that face each other, together. */
function clustersOf(chords: EdgeChords, discs: EdgeDiscs, runs: readonly NarrowRun[]): NarrowRun[][] {
  const runOfChord = new Int32Array(chords.count).fill(-1);
  runs.forEach((run, i) => {
    for (const d of run.discs) runOfChord[discs.chord[d] ?? 0] = i;
  });
  const sets = setsJoined(runs.length, (join) => {
    runs.forEach((run, i) => {
      for (const d of run.discs) {
        const touched = discs.touched[d] ?? -1;
        if (touched < 0) continue;
        for (const k of [touched, chords.before[touched] ?? touched]) {
          const other = runOfChord[k] ?? -1;
          if (other >= 0) join(i, other);
        }
      }
    });
  });
  return sets.map((set) => set.flatMap((i) => runs[i] ?? []));
}

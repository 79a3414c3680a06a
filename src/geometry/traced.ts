// The boundary of a combined region, told by the parts of the sources that it is made of.
import type { Point } from './point.ts';

/** A stretch of a result's boundary: part of one segment of one source, walked from t0 to t1 (backwards if t0 > t1). */
export interface Run {
  readonly source: number;
  readonly segment: number;
  readonly t0: number;
  readonly t1: number;
  readonly from: Point;
  readonly to: Point;
  /** To which side the chords turn where it begins: more than 0 to the left with y up, less to the right; 0 where it begins at a node. */
  readonly turn: number;
}

/** A boundary as runs. */
export interface Boundary {
  readonly runs: readonly Run[];
}

/** A closed boundary with the area it encloses, mm², and its length, mm. */
export interface TracedRing extends Boundary {
  /** Whether it met nothing, neither another source nor an edge that is marked: each run is a whole segment, and they are made anew each time. */
  readonly isAlone?: boolean;
  readonly area: number;
  readonly perimeter: number;
}

export interface TracedRegion {
  readonly outer: TracedRing;
  readonly holes: readonly TracedRing[];
}

// What report.json tells of a motif: where it lies, and how it was made.
import type { Band } from '../../blank/flat-band.ts';
import type { MotifLay } from '../../pattern/rigid/motif.ts';
import type { LayerAsMade } from '../../prove/asked.ts';
import type { WallPoint } from '../../unroll/flat-wall.ts';
import type { Miss } from '../../unroll/placing.ts';
import type { ToldMotif } from '../typed/placed-motif.ts';

/** How a motif lies. */
export interface PlaceReport {
  /** Whether it lies on one flat band, clear of all that is in the way. */
  readonly lies: boolean;
  readonly misses: readonly Miss[];
  /** The nearest place where it lies; null where there is none at this size. */
  readonly nearest: WallPoint | null;
}

export interface MotifReport extends PlaceReport, ToldMotif {
  /** Stem of its files where it is cut apart, and of its layers' names on a wrap. */
  readonly name: string;
  readonly at: WallPoint;
  readonly across: number;
  readonly up: number;
  readonly lay: MotifLay;
  readonly apart: boolean;
  /** How far around it the pattern is taken away, mm; left out where it is not. */
  readonly clear?: number;
  /** How far around it the pattern is gone, mm: more than `clear` where what that left was too small to hold. */
  readonly cleared?: number;
  /** How far it reaches up the wall, mm along, and around it, in turns that may be below 0 or past 1. */
  readonly reach: Band & { readonly turns: Band };
  /** Its layers: cut apart, told from its place; cut with the wrap, as the pattern's are, once a piece they lie on. */
  readonly layers: readonly LayerAsMade[];
}

// What a job is made of and with: coats, film, sheet and cutter, everything in mm, and what holds when nothing is said.
import type { Measured } from './measured.ts';

/** A layer on the wall. Under the film it makes the wall larger; `over` it, it only counts for material and time. */
export interface Coat {
  readonly name: string;
  /** mm, along the wall's normal. */
  readonly thickness: number;
  readonly over: boolean;
  /** Share that never stays on the wall; 0 when left out. */
  readonly loss?: number;
  /** The part of the wall it is laid on, mm along; left out, the longest flat band. */
  readonly covers?: { readonly from: number; readonly to: number };
  /** Hours until the next step. */
  readonly wait?: number;
  /** Least that can be mixed at once, ml. */
  readonly leastBatch?: number;
  /** Price of a litre. */
  readonly price?: number;
}

/** A coat of which it is known how much is poured, ml: its thickness comes of the wall it is laid on. */
export type PouredCoat = Omit<Coat, 'thickness'> & { readonly volume: number };

export type JobCoat = Coat | PouredCoat;

/** Film that gave more than this would be another material: as a share of its length. */
export const mostGiving = 0.5;

export interface Film {
  /** mm. */
  readonly thickness: number;
  /** Share of its length by which the film is stretched in laying: 0.02 is two in a hundred. */
  readonly stretch: number;
  /** Share by which it may be gathered around a wall that bends, before it puckers: about nothing. */
  readonly gather: number;
  /** Thinnest film, mm, and narrowest gap, mm, that can be cut and weeded. */
  readonly minWidth: number;
  readonly minGap: number;
  /** Smallest piece that holds, mm². */
  readonly minPiece: number;
  /** Sharpest point that stays down, radians; degrees in the file. */
  readonly minAngle: number;
  /** `decal`: the artwork stays on the vessel; `mask`: the rest does, and is pulled off again after the spray. */
  readonly use: 'decal' | 'mask';
  /** How far the marks of its test strip were apart as drawn, and once it was laid, mm; left out, it stays as it is cut. */
  readonly measured?: { readonly drawn: number; readonly laid: number };
  /** Which way its grain runs on the sheet; pieces are then laid with the way from foot to lip along it. */
  readonly grain?: 'across' | 'up';
}

/** What is known of the cutter. Lengths in mm. */
export interface Cutter {
  /** Nodes closer than this are one to it. */
  readonly step: number;
  /** How fast the blade goes, a second, corners and all. */
  readonly speed: number;
  /** Seconds from one line's end to the next one's start: up, across, down. */
  readonly lift: number;
  /** How often each line is cut. */
  readonly passes: number;
  /** The largest sheet it takes; without `up` a roll. */
  readonly bed?: { readonly across: number; readonly up?: number };
  /** What the blade does not reach along every edge of the sheet. */
  readonly margin: number;
  /** The least width of film, and of a gap, that it cuts clean. */
  readonly smallest: number;
  /** How far the tip of its knife trails behind the axis; 0 where it does not. */
  readonly knifeOffset: number;
  /** Whether the files are to hold the way of the axis; else the cutter works that out from the lines by itself. */
  readonly compensate: boolean;
  /** How far the blade goes on over the beginning of a closed line. */
  readonly runOn: number;
  /** At a corner: swing the blade round its tip, or lift it and come down again for the other side. */
  readonly corner: 'swivel' | 'lift';
  /** With `lift`: how far each side is cut past the corner. */
  readonly pastCorner: number;
  /** What its test piece measured; left out, it is true. */
  readonly measured?: Measured;
  /** Printed marks that it finds its place by, at the corners of the guide. */
  readonly marks: 'none' | 'crosses' | 'corners';
}

/** A sheet of film, or a roll, as it lies in the cutter; mm. */
export interface Sheet {
  readonly across: number;
  /** Left out: a roll. */
  readonly up?: number;
  /** Kept clear along every edge. */
  readonly margin: number;
  /** Kept clear between two pieces. */
  readonly spacing: number;
  /** Whether the film is cut from its back: files of sheets show it as in a mirror. */
  readonly mirror: boolean;
  /** Price of a sheet; of a roll, of a metre of it. */
  readonly price?: number;
}

/** Between pieces on a sheet, mm. Common practice, no source. */
export const standardSpacing = 2;
/** The least sizes that cut and weed without care in adhesive film. Common practice, no source. */
export const standardFilm: Film = {
  thickness: 0.08,
  stretch: 0,
  gather: 0,
  minWidth: 1,
  minGap: 0.4,
  minPiece: 4,
  minAngle: (20 * Math.PI) / 180,
  use: 'decal',
};
/** A hobby cutter with a drag knife. Common practice, no source. */
export const standardCutter: Cutter = {
  step: 0.05,
  speed: 60,
  lift: 0.3,
  passes: 1,
  margin: 0,
  smallest: 0,
  knifeOffset: 0,
  compensate: false,
  runOn: 0,
  corner: 'swivel',
  pastCorner: 0,
  marks: 'none',
};

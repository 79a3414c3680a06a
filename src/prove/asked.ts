// What the proof holds the files against: the blank's wall and what the job asked for. All mm.
import type { Band } from '../blank/flat-band.ts';
import type { AskedSheets } from './checks/check-sheets.ts';
import type { AskedCutter } from './written/cutter-file.ts';

/** The surface that the middle of the film lies on. All heights the proof knows are that surface's own, mm up it. */
export type AskedWall =
  | { readonly kind: 'straight'; readonly radius: number; readonly sine: number }
  | {
      readonly kind: 'bent';
      readonly places: readonly { readonly along: number; readonly radius: number }[];
    };

/** A layer of art on one piece, as it was when it was made: what it covers, and where its middle is. */
export interface LayerAsMade {
  readonly layer: string;
  /** Which file of its kind: pieces from the foot up, the panels of each in the order of their turns; 1 where there is one. */
  readonly piece: number;
  /** mm². */
  readonly area: number;
  /** Centre of area on the sheet, from the foot end of `seam-start`: mm to the right of that line, mm up along it. */
  readonly middle: { readonly right: number; readonly up: number };
}

/** A motif that is cut apart. */
export interface AskedMotif {
  /** Stem of its files. */
  readonly name: string;
  /** Height of the place it is laid about, mm along. */
  readonly along: number;
  /** Its layers as they were made; their middles are told from that place, mm to the right and up on the sheet. */
  readonly layers: readonly LayerAsMade[];
  /** What it was made to cover up the wall, mm along; left out where that isn't known. */
  readonly reach?: Band;
}

/** Where the pattern is taken away around a motif: its reach up the wall, mm along, and around it, and by how much more. */
export interface Cleared extends Band {
  readonly turns: Band;
  /** mm */
  readonly by: number;
}

/** A mask: from the decal's lower edge to the foot, or from its upper to the lip; lengths in mm. */
export interface AskedMask {
  readonly covers: 'foot' | 'lip';
  readonly standOff: number;
  /** How far the openings of a window go past the decal; left out where there is none. */
  readonly window?: number;
}

/** A collar: the level line that one edge of its paper runs on, mm along, what the paper covers, and the surface its middle lies on there. */
export interface AskedCollar extends Band {
  readonly along: number;
  readonly tab: number;
  readonly wall: AskedWall;
}

export interface Asked {
  readonly wall: AskedWall;
  /** The finished band, mm along the wall. */
  readonly band: Band;
  readonly trim: { readonly lip: number; readonly foot: number };
  readonly overlap: number;
  /** How much of the overlap lies before `seam-start`, mm; the rest past `seam-finish`. */
  readonly before?: number;
  /** Whether both ends follow a winding line, the same one, instead of the lines at turn 0 and 1. */
  readonly winds?: boolean;
  /** Turns at which each piece is parted into panels, and what a panel goes on past its joint; left out where none is. */
  readonly panels?: { readonly joints: readonly number[]; readonly overlap: number };
  /** Heights at which the band is cut level, mm along, and what a piece goes on past its lip edge there; left out where it is not. */
  readonly levels?: { readonly at: readonly number[]; readonly overlap: number };
  /** Half the width kept clear around a handle at turn 0, mm of girth, if there is one. */
  readonly clear?: number;
  /** Of cover strips over the seam and over joints of pieces, if they are asked for: width, mm, and what they lie on. */
  readonly strip?: {
    readonly width: number;
    readonly wall: AskedWall;
    /** The finished band by the strip's own lengths; and a height of the film below carried to them. */
    readonly band: Band;
    readonly fromFilm: (along: number) => number;
  };
  /** Collars of paper, from the foot up. */
  readonly collars?: readonly AskedCollar[];
  /** Of cover strips on borders of the pattern: how many stand up the wall, and the heights of the level ones on the film below. */
  readonly covers?: NonNullable<Asked['strip']> & {
    readonly upright: number;
    readonly along: readonly number[];
  };
  readonly film: { readonly stretch: number; readonly gather: number };
  /** Left out where nothing is to be known of it. */
  readonly cutter?: AskedCutter;
  /** Bands of the blank on which film lies flat. */
  readonly flatBands: readonly Band[];
  /** Endless upwards where it is a roll. */
  readonly sheet?: AskedSheets;
  /** How many times the pattern is the same around the wall at one height; left out where there is none, or it isn't known. */
  readonly equalParts?: number;
  /** Repeats of the pattern around; left out where there is none. */
  readonly around?: number;
  readonly layers?: readonly LayerAsMade[];
  readonly motifs?: readonly AskedMotif[];
  readonly cleared?: readonly Cleared[];
  readonly mask?: AskedMask;
  /** Whether all of a mask is to hold together. */
  readonly holds?: boolean;
  /** Whether its wraps are paper that motifs are laid by: they need not fit the sheet. */
  readonly isPaper?: boolean;
  /** Relief cuts: how near, mm, they may come to what stays, the art of a decal or what lies around that of a mask. */
  readonly relief?: { readonly clear: number; readonly use: 'decal' | 'mask' };
}

/** Radius of the surface the film's middle lies on, mm. */
export function askedRadius(wall: AskedWall, along: number): number {
  if (wall.kind === 'straight') return wall.radius + along * wall.sine;
  const { places } = wall;
  const next = places.findIndex((place) => place.along >= along);
  const [low, high] = [places[Math.max(0, next - 1)], next < 0 ? places.at(-1) : places[next]];
  if (!low || !high) return Number.NaN;
  const share = high.along > low.along ? (along - low.along) / (high.along - low.along) : 0;
  return low.radius + (high.radius - low.radius) * Math.max(0, Math.min(1, share));
}

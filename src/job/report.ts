// report.json: every figure a maker acts on, in mm and degrees.

import type { Band } from '../blank/flat-band.ts';
import {
  meanLean,
  reconciled,
  type Wall,
  type WallForm,
  wallForm,
  wallGirthAt,
  wallLength,
  wallUncertaintyAt,
} from '../blank/wall.ts';
import type { Finding } from '../finding.ts';
import { degrees } from '../lengths/angle.ts';
import type { SeamPlace } from '../pattern/seam/seam-place.ts';
import type { LayerAsMade } from '../prove/asked.ts';
import type { Proof } from '../prove/proof.ts';
import type { CutterReport } from './blade/cutter-words.ts';
import type { WeedingReport } from './blade/weeding.ts';
import type { LayReport } from './closing/lay-distortion.ts';
import type { MotifReport } from './motifs/motif-report.ts';
import type { CoatReport } from './plan/coats-on-wall.ts';
import type { DartReport } from './plan/dart-plan.ts';
import type { Measures } from './plan/measures.ts';
import type { SeamReport } from './plan/seam.ts';

export interface BlankReport {
  readonly wall: WallForm;
  readonly halfAngleDeg: number;
  readonly along: number;
  readonly flatBands: readonly Band[];
  readonly girthAt: readonly { readonly along: number; readonly girth: number; readonly u: number }[];
}

export interface TemplateReport {
  readonly shape: 'rectangle' | 'sector' | 'stepped' | 'gores';
  /** The pieces from the foot up, or panels or gores in the order of their turns, where there is more than one. */
  readonly parts: readonly TemplateReport[];
  readonly turns: { readonly from: number; readonly to: number };
  readonly innerRadius?: number;
  readonly outerRadius?: number;
  readonly sweepDeg: number;
  readonly width: number;
  readonly height: number;
  readonly overlap: number;
  readonly trim: { readonly lip: number; readonly foot: number };
  readonly band: Band;
  /** What the film is asked for on a wall that bends: the largest share of stretch and of gathering. */
  readonly strain?: { readonly stretch: number; readonly gathered: number };
  /** How far art runs past the outline into the waste. */
  readonly runOff: number;
  /** Of a panel: the letters of its joints, and how far it is turned in its file so that it fits the sheet. */
  readonly panel?: { readonly left?: string; readonly right?: string; readonly turnedDeg: number };
  readonly gores?: GoresReport;
}

export interface GoresReport {
  readonly count: number;
  /** Of one gore where it is widest, net of overlap, mm. */
  readonly width: number;
  /** The most that film is stretched in each gore, as a share. */
  readonly strain: number;
  readonly joined: 'foot' | 'lip' | 'loose';
  /** Of a comb: width of the strip that joins it, mm, and what its edge is stretched by (negative: gathered). */
  readonly strip?: number;
  readonly stripStrain?: number;
  /** Of a piece cut in darts. */
  readonly darts?: DartReport;
}

export interface PatternReport extends LayReport {
  readonly around: number;
  readonly up: number;
  readonly scaleAcross: number;
  readonly scaleUp: number;
  readonly joins: boolean;
  readonly closes: readonly [number, number];
  readonly leanDeg: number;
  readonly lay: string;
  /** The key of the way it closes by, where one was chosen or the tile does not join. */
  readonly way?: string;
  /** Where along the drawing the seam was set so that a straight one cuts little. */
  readonly seamAt?: SeamPlace;
  /** Of mended artwork: how far an edge moved at most, drawn mm. */
  readonly largestMove?: number;
  /** Largest distance measured between the art's exact image on the sheet and the curves written. */
  readonly fitError: number;
  readonly seamGap?: { readonly position: number; readonly tangentDeg: number; readonly crossings: number };
  /** What each layer covers and where its middle is, piece by piece: the proof holds the files against it. */
  readonly layers: readonly LayerAsMade[];
}

export interface FileReport {
  readonly file: string;
  readonly role: string;
  /** Number of the sheet that the file is, or that its piece is first cut from; from 1. */
  readonly sheet?: number;
  /** The one layer that a cut file holds, where each has a file of its own. */
  readonly layer?: string;
}

/** A sheet of film, or a stretch of a roll, with what is cut from it. All mm. */
export interface SheetReport {
  readonly sheet: number;
  readonly file: string;
  /** Colour of the art that is cut from it; `paper` for collars, empty where there is no art. */
  readonly film: string;
  readonly across: number;
  readonly up: number;
  /** How often it is to be cut, each time from a new sheet. */
  readonly times: number;
  /** How much of its longer side is used, margins with it. */
  readonly used: number;
  /** Whether it is the last of its film, or of a run that is laid alike. */
  readonly isLast: boolean;
  /** Area of it that is cut into, mm²: all of it; of a last one, over its whole width as far as it is used. */
  readonly cutInto: number;
  /** Area of the pieces on it, mm². */
  readonly covered: number;
  /** Each piece: its file, or of gores the id in their one file; the id of its outline here, where its file's origin lies, how its file is turned. */
  readonly pieces: readonly {
    readonly part: string;
    readonly id: string;
    readonly at: { readonly x: number; readonly y: number };
    readonly turnedDeg: number;
  }[];
}

export interface Report {
  readonly blank: BlankReport & Measures;
  /** Every coat under the film, then those over it. */
  readonly coats?: readonly CoatReport[];
  readonly seam?: SeamReport;
  readonly template?: TemplateReport;
  readonly pattern?: PatternReport;
  readonly items?: readonly MotifReport[];
  readonly lettering?: readonly MotifReport[];
  /** What was measured on the written files, rolled back onto the blank. */
  readonly proof?: Pick<Proof, 'pass' | 'checks'>;
  /** What stays and what is weeded, and how long cutting and weeding take. */
  readonly weeding?: WeedingReport;
  /** What the profile of the cutter does to the files. */
  readonly cutter?: CutterReport;
  /** The sheets that the batch takes, where the job has a sheet. */
  readonly sheets?: readonly SheetReport[];
  readonly checks: readonly Finding[];
  readonly files?: readonly FileReport[];
}

export function blankReport(wall: Wall, flatBands: readonly Band[]): BlankReport {
  const readings = reconciled(wall).residuals;
  const length = wallLength(wall);
  const places = [0, length / 2, length, ...readings.map(({ along }) => along)];
  const apart = [...places]
    .sort((a, b) => a - b)
    .filter((along, i, all) => i === 0 || along - (all[i - 1] ?? 0) > 1e-6);
  return {
    wall: wallForm(wall),
    halfAngleDeg: degrees(meanLean(wall)),
    along: length,
    flatBands,
    girthAt: apart.map((along) => ({
      along,
      girth: wallGirthAt(wall, along),
      u: wallUncertaintyAt(wall, along),
    })),
  };
}

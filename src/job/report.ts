// report.json: every figure a maker acts on, in mm and degrees.

import type { Band } from '../blank/flat-band.ts';
import { alongOfHeight } from '../blank/profile.ts';
import {
  meanLean,
  type Wall,
  type WallForm,
  wallForm,
  wallGirthAt,
  wallLength,
  wallUncertaintyAt,
} from '../blank/wall.ts';
import type { Finding } from '../finding.ts';
import { degrees } from '../lengths/angle.ts';
import type { LayerAsMade } from '../prove/asked.ts';
import type { Proof } from '../prove/proof.ts';
import { sweep } from '../unroll/flat-wall.ts';
import { slantRadii, type Template, templateBox, turnOfEdge } from '../unroll/template.ts';
import type { CoatReport } from './coats-on-wall.ts';
import type { ItemReport } from './items.ts';
import type { Measures } from './measures.ts';

export interface BlankReport {
  readonly wall: WallForm;
  readonly halfAngleDeg: number;
  readonly along: number;
  readonly flatBands: readonly Band[];
  readonly girthAt: readonly { readonly along: number; readonly girth: number; readonly u: number }[];
  /** What each reading says against the wall fitted to all of them. */
  readonly readings: readonly {
    readonly station: number;
    readonly along: number;
    readonly girth: number;
    readonly residual: number;
    readonly u: number;
  }[];
}

export interface TemplateReport {
  readonly shape: 'rectangle' | 'sector' | 'stepped' | 'gores';
  /** The pieces from the foot up, or gores in the order of their turns, where there is more than one. */
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
}

export interface PatternReport {
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
  /** Largest distance measured between the art's exact image on the sheet and the curves written. */
  readonly fitError: number;
  readonly seamGap?: { readonly position: number; readonly tangentDeg: number; readonly crossings: number };
  /** What each layer covers and where its middle is, piece by piece: the proof holds the files against it. */
  readonly layers: readonly LayerAsMade[];
}

export interface FileReport {
  readonly file: string;
  readonly role: string;
}

export interface Report {
  readonly blank: BlankReport & Omit<Measures, 'readings'>;
  /** Every coat under the film, then those over it. */
  readonly coats?: readonly CoatReport[];
  readonly template?: TemplateReport;
  readonly pattern?: PatternReport;
  readonly items?: readonly ItemReport[];
  /** What was measured on the written files, rolled back onto the blank. */
  readonly proof?: Pick<Proof, 'pass' | 'checks'>;
  readonly checks: readonly Finding[];
  readonly files?: readonly FileReport[];
}

/** Where a wall's readings are, mm along, and what each says. */
function readingsOf(wall: Wall): BlankReport['readings'] {
  if (wall.kind === 'straight')
    return wall.straight.residuals.map(({ station, along, measured, residual, uncertainty }) => ({
      station,
      along,
      girth: measured,
      residual,
      u: uncertainty,
    }));
  return wall.curved.readings.map(({ at, kind, radius }, station) => ({
    station,
    along: kind === 'along' ? at : alongOfHeight(wall.curved.profile, at),
    girth: 2 * Math.PI * radius,
    residual: 0,
    u: 0,
  }));
}

export function blankReport(wall: Wall, flatBands: readonly Band[]): BlankReport {
  const readings = readingsOf(wall);
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
    readings,
  };
}

export function templateReport(
  template: Template,
  runOff: number,
  strain: readonly { readonly strain: number }[],
): TemplateReport {
  const { wall, band, trim, overlap, shape, left, seam } = template;
  const middle = (band.from + band.to) / 2;
  const box = templateBox(template);
  const radii = slantRadii(template);
  const turns = { from: turnOfEdge(wall, left, middle), to: turnOfEdge(wall, seam.finish, middle) };
  return {
    shape,
    parts: [],
    turns,
    ...(shape === 'sector' ? { innerRadius: radii.inner, outerRadius: radii.outer } : {}),
    sweepDeg: shape === 'sector' ? Math.abs(degrees(sweep(wall))) * (turns.to - turns.from) : 0,
    width: box.maxX - box.minX,
    height: box.maxY - box.minY,
    overlap,
    trim,
    band,
    ...(strain.length === 0 ? {} : { strain: strainReport(strain) }),
    runOff,
  };
}

/** The template of a whole job: its only piece, or stacked pieces with what they have in common. */
export function wholeTemplate(pieces: readonly TemplateReport[]): TemplateReport {
  const [first] = pieces;
  const last = pieces.at(-1);
  if (!first || !last) throw new Error('a template has at least one piece');
  if (pieces.length === 1) return first;
  const most = (of: (piece: TemplateReport) => number) => Math.max(...pieces.map(of));
  return {
    shape: 'stepped',
    parts: pieces,
    turns: first.turns,
    sweepDeg: most(({ sweepDeg }) => sweepDeg),
    width: most(({ width }) => width),
    height: pieces.reduce((sum, { height }) => sum + height, 0),
    overlap: first.overlap,
    trim: { foot: first.trim.foot, lip: last.trim.lip },
    band: { from: first.band.from, to: last.band.to },
    strain: {
      stretch: most(({ strain }) => strain?.stretch ?? 0),
      gathered: most(({ strain }) => strain?.gathered ?? 0),
    },
    runOff: first.runOff,
  };
}

const strainReport = (
  strain: readonly { readonly strain: number }[],
): { stretch: number; gathered: number } => ({
  stretch: Math.max(0, ...strain.map((place) => place.strain)),
  gathered: Math.max(0, ...strain.map((place) => -place.strain)),
});

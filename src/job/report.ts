// report.json: every figure a maker acts on, in mm and degrees.

import type { Band } from '../blank/flat-band.ts';
import { bareGirthAt, girthUncertaintyAt, isCylinder, type StraightWall } from '../blank/straight-wall.ts';
import type { Finding } from '../finding.ts';
import { sweep } from '../unroll/flat-wall.ts';
import { slantRadii, type Template, templateBox, turnOfEdge } from '../unroll/template.ts';

export interface BlankReport {
  readonly wall: 'cylinder' | 'frustum';
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
  readonly shape: 'rectangle' | 'sector';
  readonly parts: readonly never[];
  readonly turns: { readonly from: number; readonly to: number };
  readonly innerRadius?: number;
  readonly outerRadius?: number;
  readonly sweepDeg: number;
  readonly width: number;
  readonly height: number;
  readonly overlap: number;
  readonly trim: { readonly lip: number; readonly foot: number };
  readonly band: Band;
  /** How far art runs past the outline into the waste. */
  readonly runOff: number;
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
  /** Largest distance measured between the art's exact image on the sheet and the curves written. */
  readonly fitError: number;
  readonly seamGap?: { readonly position: number; readonly tangentDeg: number; readonly crossings: number };
}

export interface FileReport {
  readonly file: string;
  readonly role: string;
}

export interface Report {
  readonly blank: BlankReport;
  readonly template?: TemplateReport;
  readonly pattern?: PatternReport;
  readonly checks: readonly Finding[];
  readonly files?: readonly FileReport[];
}

const degrees = (radians: number): number => (radians * 180) / Math.PI;

export function blankReport(wall: StraightWall, flat: Band): BlankReport {
  const places = [0, wall.length / 2, wall.length, ...wall.residuals.map(({ along }) => along)];
  const apart = [...places]
    .sort((a, b) => a - b)
    .filter((along, i, all) => i === 0 || along - (all[i - 1] ?? 0) > 1e-6);
  return {
    wall: isCylinder(wall) ? 'cylinder' : 'frustum',
    halfAngleDeg: degrees(wall.halfAngle),
    along: wall.length,
    flatBands: [flat],
    girthAt: apart.map((along) => ({
      along,
      girth: bareGirthAt(wall, along),
      u: girthUncertaintyAt(wall, along),
    })),
    readings: wall.residuals.map(({ station, along, measured, residual, uncertainty }) => ({
      station,
      along,
      girth: measured,
      residual,
      u: uncertainty,
    })),
  };
}

export function templateReport(template: Template, runOff: number): TemplateReport {
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
    runOff,
  };
}

/** Exit status: 1 where something needs the maker's eye. */
export const exitStatus = (checks: readonly Finding[]): 0 | 1 =>
  checks.some(({ level }) => level === 'look') ? 1 : 0;

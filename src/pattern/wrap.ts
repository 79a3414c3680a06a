// The pattern laid around the wall: from a tile's layers to merged areas on the sheet.
import type { Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import { fitTolerance } from '../geometry/tolerance.ts';
import { turnMotion } from '../unroll/flat-wall.ts';
import type { Template } from '../unroll/template.ts';
import { layPeriod } from './cell.ts';
import { type Closing, equalParts, layOut } from './closing.ts';
import type { Lattice } from './lattice.ts';
import { type Lay, stepOnSheet, toSheet } from './lay.ts';
import { layLayer, type PatternSheet } from './layered.ts';
import { type PatternTile, periodOf } from './period.ts';
import { laidPiece } from './windows.ts';

export interface WrapLayer {
  readonly name: string;
  readonly colour: string;
  /** Areas on the sheet, in the flat wall's frame. */
  readonly shapes: readonly Shape[];
}

/** A place on the wall where two copies of the tile do not meet, and how long the open stretch is, mm. */
export interface Mismatch {
  readonly layer: string;
  readonly turn: number;
  readonly along: number;
  readonly length: number;
}

export interface Wrap {
  readonly layers: readonly WrapLayer[];
  readonly mismatches: readonly Mismatch[];
  /** Largest distance measured between the art's exact image on the sheet and the curves laid, mm. */
  readonly fitError: number;
}

export interface WrapOptions {
  readonly tile: PatternTile;
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly lay: Lay;
  readonly template: Template;
  /** How far art that leaves the piece goes on past the outline before it is closed, mm. */
  readonly runOff: number;
}

/** Lay every layer of the tile around the wall. */
export function wrapPattern(options: WrapOptions): Wrap {
  const { tile, lattice, closing, lay, template, runOff } = options;
  const parts = equalParts(closing);
  const sheet: PatternSheet = {
    piece: laidPiece(template, lay, runOff),
    cut: laidPiece(template, lay, 0),
    map: { point: (p) => toSheet(lay, p), displacement: (at, by) => stepOnSheet(lay, at, by) },
    tolerance: fitTolerance,
    period: {
      width: lay.around / parts,
      steps: { i: closing.n / parts, j: closing.m / parts },
      motion: (periods) => turnMotion(lay.wall, periods / parts),
    },
  };
  const m = layOut(closing, tile.height);
  const mismatches: Mismatch[] = [];
  let fitError = 0;
  const layers = tile.layers.map(({ name, colour, shapes }) => {
    const period = layPeriod(periodOf(shapes, tile, lattice), lattice, m);
    const laid = layLayer(period, sheet);
    fitError = Math.max(fitError, laid.worst);
    for (const { at, length } of laid.gaps) mismatches.push({ layer: name, ...placeOf(lay, at), length });
    return { name, colour, shapes: laid.shapes };
  });
  return { layers, mismatches, fitError };
}

const placeOf = (lay: Lay, at: Point): { turn: number; along: number } => {
  const turn = at.x / lay.around;
  return { turn: turn - Math.floor(turn), along: lay.toAlong(at.y) };
};

// The pattern laid around the wall: from a tile's layers to merged areas on the sheet.
import { movePoint } from '../../geometry/affine.ts';
import type { Shape } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { fitTolerance } from '../../geometry/tolerance.ts';
import { turnMotion } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import { type Closing, equalParts, layOut } from '../lattice/closing.ts';
import type { Lattice } from '../lattice/lattice.ts';
import { type PatternTile, periodOfLayer } from '../period/period.ts';
import { layPeriod } from '../tile/cell.ts';
import {
  type EdgeOptions,
  type EdgesLaid,
  edgesLaid,
  fadedMotifs,
  sliversOf,
  takenOut,
} from './band-edges.ts';
import { type Lay, stepOnSheet, toSheet } from './lay.ts';
import { layLayer, type PatternSheet } from './layered.ts';
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
  /** What the finished edges leave out, if anything. */
  readonly edges: EdgesLaid;
}

export interface WrapOptions {
  readonly tile: PatternTile;
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly lay: Lay;
  readonly template: Template;
  /** How far art that leaves the piece goes on past the outline before it is closed, mm. */
  readonly runOff: number;
  /** What becomes of film that the finished edges cut; left out, it is cut and all of it kept. */
  readonly edges?: EdgeOptions;
}

/** Where the pattern is laid: the piece with its run-off, and the way from the laid pattern to it. */
function sheetOf({ closing, lay, template, runOff }: WrapOptions): PatternSheet {
  const parts = equalParts(closing);
  return {
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
}

/** Lay every layer of the tile around the wall. */
export function wrapPattern(options: WrapOptions): Wrap {
  const { tile, lattice, closing, edges } = options;
  const sheet = sheetOf(options);
  const m = layOut(closing, tile.height);
  const periods = tile.layers.map((layer) => layPeriod(periodOfLayer(layer, tile, lattice), lattice, m));
  const faded = edges?.isFaded ? fadedMotifs(periods, options, edges) : undefined;
  const rest = faded ? faded.nets : periods;
  const laid = rest.map((period) => layLayer(period, sheet));
  const slivers = rest.map((period) => (edges ? sliversOf(period, options, edges) : []));
  const layers = tile.layers.map(({ name, colour }, i) => ({
    name,
    colour,
    shapes: [
      ...(edges
        ? takenOut(laid[i]?.shapes ?? [], slivers[i] ?? [], options, edges)
        : (laid[i]?.shapes ?? [])),
      ...(faded?.layers[i] ?? []),
    ],
  }));
  const gaps = [
    ...laid.flatMap((layer, i) => layer.gaps.map((gap) => ({ layer: i, ...gap }))),
    ...(faded?.gaps ?? []),
  ];
  return {
    layers,
    mismatches: [
      ...gaps.map(({ layer, at, length }) => ({ layer: tile.layers[layer]?.name ?? '', at, length })),
      ...(tile.gaps ?? []).map((gap) => ({ ...gap, at: movePoint(m, gap.at) })),
    ].map(({ layer, at, length }) => ({ layer, ...placeOf(options.lay, at), length })),
    fitError: Math.max(0, faded?.worst ?? 0, ...laid.map(({ worst }) => worst)),
    edges: edgesLaid(slivers.flat(), faded, options),
  };
}

const placeOf = (lay: Lay, at: Point): { turn: number; along: number } => {
  const turn = at.x / lay.around;
  return { turn: turn - Math.floor(turn), along: lay.toAlong(at.y) };
};

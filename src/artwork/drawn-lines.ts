// The paths of a normalised SVG as they were drawn, before areas are merged: for checks of the lines themselves.
import type { DrawnLine } from '../drawing/drawn-line.ts';
import { parsePathData } from '../drawing/path-data.ts';
import { determinant } from '../geometry/affine.ts';
import { keptContour } from '../geometry/kept-contour.ts';
import type { Painted } from './covered.ts';

/** The lines around what is filled and along what is stroked, in painting order, mm. Clips and copies are left aside. */
export const drawnLines = (painted: readonly Painted[]): DrawnLine[] =>
  painted.map(({ id, colour, by, data, toMm }) => ({
    id,
    colour,
    ...(typeof by === 'string' ? {} : { stroke: by.width * Math.sqrt(Math.abs(determinant(toMm))) }),
    contours: parsePathData(data, toMm).map(keptContour),
  }));

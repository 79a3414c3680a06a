// The pattern laid around the wall: from a tile's layers to merged areas on the sheet.
import { boxAround } from '../geometry/box.ts';
import type { Shape } from '../geometry/contour.ts';
import { signedArea, spanOf } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { fitTolerance, sliverWidth } from '../geometry/tolerance.ts';
import { turnMotion } from '../unroll/flat-wall.ts';
import type { Template } from '../unroll/template.ts';
import { type Cell, cellOf, type LaidPeriod, layPeriod } from './cell.ts';
import { type Closing, equalParts, layOut } from './closing.ts';
import type { Lattice } from './lattice.ts';
import { type Lay, stepOnSheet, toSheet } from './lay.ts';
import { type PatternTile, periodOf } from './period.ts';
import { SheetCurves } from './sheet-curves.ts';
import { type PlacedCell, type StitchedArea, stitch } from './stitch.ts';
import { isWaste, type LaidPiece, laidPiece, wholeWindow, windowsAt } from './windows.ts';

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

/** Where the first cell border stands inside the piece, mm: odd sizes, so that no border runs along drawn lines twice. */
const insets = [0.2718, 0.5772, 0.9159, 1.3247, 1.618, 2.0309, 2.5029];

/** Lay every layer of the tile around the wall. */
export function wrapPattern(options: WrapOptions): Wrap {
  const { tile, lattice, closing, lay, template, runOff } = options;
  const piece = laidPiece(template, lay, runOff);
  const m = layOut(closing, tile.height);
  const mismatches: Mismatch[] = [];
  let fitError = 0;
  const layers = tile.layers.map(({ name, colour, shapes }) => {
    const period = layPeriod(periodOf(shapes, tile, lattice), lattice, m);
    const laid = layLayer(period, piece, options);
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

interface Laid {
  readonly shapes: readonly Shape[];
  readonly worst: number;
  readonly gaps: Cell['gaps'];
}

function layLayer(period: LaidPeriod, piece: LaidPiece, { closing, lay, template }: WrapOptions): Laid {
  const parts = equalParts(closing);
  const width = lay.around / parts;
  const { places, areas } = stitchedCells(period, piece, width);
  const curves = new SheetCurves({
    places,
    width,
    map: { point: (p) => toSheet(lay, p), displacement: (at, by) => stepOnSheet(lay, at, by) },
    tolerance: fitTolerance,
    motion: (periods) => turnMotion(lay.wall, periods / parts),
    period: { i: closing.n / parts, j: closing.m / parts },
  });
  const finished = laidPiece(template, lay, 0);
  const shapes = areas
    .map((area) => shapeOf(area, curves, finished))
    .filter((shape) => shape.contours.length > 0);
  return {
    shapes,
    worst: curves.worst,
    gaps: gapsOf(places),
  };
}

/** Open borders: those of one whole period, or of all there is where the piece holds none. */
function gapsOf(places: readonly PlacedCell[]): Cell['gaps'] {
  const whole = places.length > 2 ? places.slice(1, 2) : places;
  return whole.flatMap(({ cell }) => cell.gaps);
}

/** Cells that agree on their borders; where no border gives such cells, the whole piece is one cell. */
function stitchedCells(
  period: LaidPeriod,
  piece: LaidPiece,
  width: number,
): { places: readonly PlacedCell[]; areas: readonly StitchedArea[] } {
  for (const inset of insets) {
    const windows = windowsAt(piece, width, inset);
    if (!windows) break;
    const full = windows.full && cellOf(period, windows.full);
    const places: PlacedCell[] = [
      { cell: cellOf(period, windows.start), shift: 0 },
      ...(full ? Array.from({ length: windows.count }, (_, shift) => ({ cell: full, shift })) : []),
      { cell: cellOf(period, windows.finish), shift: 0 },
    ];
    const areas = stitch(places);
    if (areas) return { places, areas };
  }
  const places = [{ cell: cellOf(period, wholeWindow(piece)), shift: 0 }];
  const areas = stitch(places);
  // It has no border that could be crossed in two ways: were it so all the same, all art would be lost in silence.
  if (!areas) throw new Error('a piece of one cell does not close');
  return { places, areas };
}

/** An area's contours on the sheet, the outer one first; none where it lies in the waste. Slivers are left out. */
function shapeOf(area: StitchedArea, curves: SheetCurves, piece: LaidPiece): Shape {
  const boundaries = [
    ...area.rings.map(({ place, ring }) => curves.ring(place, ring)),
    ...area.loops.map((loop) => curves.loop(loop)),
  ];
  if (isWaste(boxAround(boundaries.map(({ box }) => box)), piece)) return { contours: [] };
  const contours = boundaries
    .map(({ contour }) => ({ contour, area: Math.abs(signedArea(contour)) }))
    .filter(({ contour, area: size }) => size >= (sliverWidth * spanOf(contour)) / 2)
    .sort((a, b) => b.area - a.area);
  return { contours: contours.map(({ contour }) => contour) };
}

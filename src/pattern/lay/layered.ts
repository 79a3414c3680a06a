// One layer of a pattern on one piece of sheet: its copies merged, cut off in the waste and carried to the sheet.
import type { Affine } from '../../geometry/affine.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import type { SmoothMap } from '../../geometry/fit.ts';
import { keptContour } from '../../geometry/kept-contour.ts';
import { signedArea, spanOf } from '../../geometry/measure.ts';
import { sliverWidth } from '../../geometry/tolerance.ts';
import { type Cell, cellOf, type LaidPeriod } from '../tile/cell.ts';
import { SheetCurves } from './sheet-curves.ts';
import { type PlacedCell, type StitchedArea, stitch } from './stitch.ts';
import { isWaste, type LaidPiece, wholeWindow, windowsAt } from './windows.ts';

/** A piece of sheet that a pattern is laid on. */
export interface PatternSheet {
  /** The piece with the run-off around it, and without, in the laid pattern. */
  readonly piece: LaidPiece;
  readonly cut: LaidPiece;
  /** From the laid pattern to the sheet. */
  readonly map: SmoothMap;
  /** How far a curve may stray from its exact image, mm. */
  readonly tolerance: number;
  /**
   * What the sheet looks the same after: a step of the laid pattern, mm, the lattice steps it is made of, and the
   * sheet's own motion for so many of them. Infinite where there is none, and the piece is worked out as a whole.
   */
  readonly period: {
    readonly width: number;
    readonly steps: { readonly i: number; readonly j: number };
    readonly motion: (periods: number) => Affine;
  };
}

export interface LaidLayer {
  /** Areas on the sheet, the outer contour first. */
  readonly shapes: readonly Shape[];
  /** Largest distance measured between the art's exact image and the curves laid, mm. */
  readonly worst: number;
  /** Where copies of the tile do not meet. */
  readonly gaps: Cell['gaps'];
}

/** Where the first cell border stands inside the piece, mm: odd sizes, so that no border runs along drawn lines twice. */
const insets = [0.2718, 0.5772, 0.9159, 1.3247, 1.618, 2.0309, 2.5029];

export function layLayer(laid: LaidPeriod, { piece, cut, map, tolerance, period }: PatternSheet): LaidLayer {
  const { width, steps, motion } = period;
  const { places, areas } = stitchedCells(laid, piece, width);
  const curves = new SheetCurves({ places, width, map, tolerance, motion, period: steps });
  const shapes = areas.map((area) => shapeOf(area, curves, cut)).filter((shape) => shape.contours.length > 0);
  return { shapes, worst: curves.worst, gaps: gapsOf(places) };
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
function shapeOf(area: StitchedArea, curves: SheetCurves, cut: LaidPiece): Shape {
  const boundaries = [
    ...area.rings.map(({ place, ring }) => curves.ring(place, ring)),
    ...area.loops.map((loop) => curves.loop(loop)),
  ];
  if (isWaste(boxAround(boundaries.map(({ box }) => box)), cut)) return { contours: [] };
  const contours = boundaries
    .map(({ contour }) => ({ contour, area: Math.abs(signedArea(contour)) }))
    .filter(({ contour, area: size }) => size >= (sliverWidth * spanOf(contour)) / 2)
    .sort((a, b) => b.area - a.area);
  return { contours: contours.map(({ contour }) => keptContour(contour)) };
}

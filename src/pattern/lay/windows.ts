// The windows through which the laid pattern is cut into cells: one period wide inside the piece, and what is left at
// its two ends.
import type { Box } from '../../geometry/box.ts';
import { type Contour, polygon } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { type SideEdge, type Template, turnOfEdge } from '../../unroll/template.ts';
import type { CellWindow, Side } from '../tile/cell.ts';
import type { Lay } from './lay.ts';

/** The piece in the laid pattern, run-off included: its two side edges as x at a height y. */
export interface LaidPiece {
  readonly foot: number;
  readonly lip: number;
  readonly left: (y: number) => number;
  readonly right: (y: number) => number;
}

/** The piece grown by the run-off on all sides, in the laid pattern. */
export function laidPiece(template: Template, lay: Lay, runOff: number): LaidPiece {
  const { wall, piece } = template;
  const edge = (side: SideEdge, outward: number) => (y: number) =>
    lay.around * turnOfEdge(wall, { turn: side.turn, offset: side.offset + outward }, lay.toAlong(y));
  return {
    foot: lay.fromAlong(piece.from - runOff),
    lip: lay.fromAlong(piece.to + runOff),
    left: edge(template.left, -runOff),
    right: edge(template.right, runOff),
  };
}

/** Heights at which a side edge is sampled; it lies in the waste, and is all but straight in the laid pattern. */
const heights = ({ foot, lip }: LaidPiece): number[] =>
  Array.from({ length: 9 }, (_, i) => foot + ((lip - foot) * i) / 8);

interface Boundary {
  readonly points: readonly Point[];
  readonly side: Side;
}

const upright = (piece: LaidPiece, x: number, side: Side): Boundary => ({
  points: [
    { x, y: piece.foot },
    { x, y: piece.lip },
  ],
  side,
});

const sloping = (piece: LaidPiece, x: (y: number) => number): Boundary => ({
  points: heights(piece).map((y) => ({ x: x(y), y })),
  side: 'end',
});

/** The window between two boundaries, each given from foot to lip. */
function windowBetween(left: Boundary, right: Boundary): CellWindow {
  const down = [...left.points].reverse();
  const contour: Contour = polygon([...right.points, ...down]);
  const sides: Side[] = [
    ...right.points.slice(1).map(() => right.side),
    'end',
    ...left.points.slice(1).map(() => left.side),
    'end',
  ];
  return { contour, sides };
}

/** The windows of a piece: borders stand one period apart. */
export interface Windows {
  readonly start: CellWindow;
  /** One period; laid `count` times side by side. Undefined where none fits. */
  readonly full: CellWindow | undefined;
  readonly count: number;
  readonly finish: CellWindow;
}

/** Windows whose first border stands `inset` mm inside the piece, or undefined where no border fits into it. */
export function windowsAt(piece: LaidPiece, width: number, inset: number): Windows | undefined {
  const first = Math.max(...heights(piece).map(piece.left)) + inset;
  const to = Math.min(...heights(piece).map(piece.right));
  const count = Math.floor((to - first) / width - 1e-3);
  if (count < 0) return undefined;
  const last = first + count * width;
  return {
    start: windowBetween(sloping(piece, piece.left), upright(piece, first, 'right')),
    full:
      count === 0
        ? undefined
        : windowBetween(upright(piece, first, 'left'), upright(piece, first + width, 'right')),
    count,
    finish: windowBetween(upright(piece, last, 'left'), sloping(piece, piece.right)),
  };
}

/** The whole piece as one window. */
export const wholeWindow = (piece: LaidPiece): CellWindow =>
  windowBetween(sloping(piece, piece.left), sloping(piece, piece.right));

/** Whether a box lies wholly beside the piece, so that what is in it would only be cut out of the waste. */
export function isWaste(box: Box, piece: LaidPiece): boolean {
  const ys = heights(piece);
  return (
    box.maxY <= piece.foot ||
    box.minY >= piece.lip ||
    box.maxX <= Math.min(...ys.map(piece.left)) ||
    box.minX >= Math.max(...ys.map(piece.right))
  );
}

// Motifs laid around the wall one by one, each whole: at every place where the pattern has it, but those left out.
import { moveContour } from '../../geometry/affine.ts';
import { type Box, boxesMeet, boxOfPoints } from '../../geometry/box.ts';
import { chorded } from '../../geometry/chords.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { mapSegment } from '../../geometry/fit.ts';
import { tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { chordTolerance, fitTolerance } from '../../geometry/tolerance.ts';
import { toWall, turnMotion } from '../../unroll/flat-wall.ts';
import { outline, type Template } from '../../unroll/template.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import type { LaidPeriod } from '../tile/cell.ts';
import { cutOff } from './cut-off.ts';
import { type Lay, stepOnSheet, toSheet } from './lay.ts';
import type { MotifShapes } from './motif-shapes.ts';
import { type LaidPiece, laidPiece } from './windows.ts';

/** A motif at one of its places, on the sheet: in the first period around, from turn 0 on. */
export interface PlacedMotif {
  readonly layers: readonly (readonly Shape[])[];
  /** How far it reaches in the laid pattern. */
  readonly box: Box;
}

export interface MotifGround {
  readonly lay: Lay;
  readonly template: Template;
  readonly runOff: number;
  /** How many times the pattern is the same around. */
  readonly parts: number;
}

/** A motif with its box, as it stands at its own place in the laid pattern. */
export interface DrawnMotif extends MotifShapes {
  readonly box: Box;
}

/** A drawn motif of what was merged; undefined where nothing of it is left. */
export function drawnMotif(shapes: MotifShapes): DrawnMotif | undefined {
  const contours = shapes.layers.flatMap((layer) => layer.flatMap((shape) => shape.contours));
  return contours.length === 0 ? undefined : { ...shapes, box: tightBox(contours) };
}

/** The places of a motif in one period around, as steps in the laid pattern: those that show in the piece's heights. */
export function placesOf(
  { box }: DrawnMotif,
  lattice: Lattice,
  width: number,
  piece: LaidPiece,
): readonly Point[] {
  const middle = (box.minX + box.maxX) / 2;
  // Half open, so that a motif that stands on the border of two periods is counted in one of them.
  const hair = 1e-6;
  const reach = {
    minX: -middle - hair,
    maxX: width - middle - hair,
    minY: piece.foot - box.maxY,
    maxY: piece.lip - box.minY,
  };
  return stepsIn(lattice, reach)
    .map(({ at }) => at)
    .filter(({ x }) => x + middle < width - hair);
}

/** A motif carried to the sheet by the lay itself, curve by curve; gives the largest distance it strays. */
export function stretchedOnto(lay: Lay, layers: MotifShapes['layers'], by: Point) {
  let worst = 0;
  const map = {
    point: (p: Point) => toSheet(lay, { x: p.x + by.x, y: p.y + by.y }),
    displacement: (at: Point, step: Point) => stepOnSheet(lay, { x: at.x + by.x, y: at.y + by.y }, step),
  };
  const carried = ({ closed, segments }: Contour): Contour => ({
    closed,
    segments: segments.flatMap((s) => {
      const fitted = mapSegment(map, s, fitTolerance);
      worst = Math.max(worst, fitted.error);
      return fitted.segments;
    }),
  });
  const onSheet = layers.map((shapes) => shapes.map(({ contours }) => ({ contours: contours.map(carried) })));
  return { layers: onSheet, worst };
}

/** The piece with its run-off as what art is cut at: whole, or up to its middle from either side. */
interface Rims {
  readonly whole: Shape;
  readonly left: Shape;
  readonly right: Shape;
}

function rimsOf({ template, runOff }: MotifGround): Rims {
  const { piece, left, right } = template;
  const grown = {
    ...template,
    piece: { from: piece.from - runOff, to: piece.to + runOff },
    left: { ...left, offset: left.offset - runOff },
    right: { ...right, offset: right.offset + runOff },
  };
  const middle = { turn: (left.turn + right.turn) / 2, offset: 0 };
  const rim = (part: Template): Shape => ({ contours: [outline(part)] });
  return {
    whole: rim(grown),
    left: rim({ ...grown, right: middle }),
    right: rim({ ...grown, left: middle }),
  };
}

/** Motifs of one period repeated around the piece, layer by layer; what leaves the piece is cut in the waste. */
export function repeatedAround(
  placed: readonly PlacedMotif[],
  count: number,
  ground: MotifGround,
): Shape[][] {
  const { lay, template, runOff, parts } = ground;
  const width = lay.around / parts;
  const piece = laidPiece(template, lay, runOff);
  const sides = sidesOf(piece);
  const rims = rimsOf(ground);
  const middle = (lay.around * (template.left.turn + template.right.turn)) / 2;
  const layers: Shape[][] = Array.from({ length: count }, () => []);
  for (const { layers: own, box } of placed) {
    const first = Math.ceil((sides.outer.minX - box.maxX) / width);
    const last = Math.floor((sides.outer.maxX - box.minX) / width);
    for (let k = first; k <= last; k++) {
      const [minX, maxX] = [box.minX + k * width, box.maxX + k * width];
      const isWhole =
        minX > sides.inner.minX && maxX < sides.inner.maxX && box.minY > piece.foot && box.maxY < piece.lip;
      // A wide sector comes back to its own start: what leaves it at one side may not be seen at the other.
      const rim = maxX < middle ? rims.left : minX > middle ? rims.right : rims.whole;
      own.forEach((shapes, layer) => {
        const turned = shapes.map((shape) => turnedBy(ground, shape, k / parts));
        const kept = isWhole ? turned : cutAtRim(turned, rim);
        for (const shape of kept) layers[layer]?.push(shape);
      });
    }
  }
  return layers;
}

function turnedBy({ lay }: MotifGround, shape: Shape, turns: number): Shape {
  if (turns === 0) return shape;
  const motion = turnMotion(lay.wall, turns);
  return { contours: shape.contours.map((contour) => moveContour(motion, contour)) };
}

function cutAtRim(shapes: readonly Shape[], rim: Shape): readonly Shape[] {
  const box = tightBox(rim.contours);
  const near = shapes.filter(({ contours }) => boxesMeet(tightBox(contours), box));
  return cutOff(near, rim);
}

/** Heights at which the sides are looked at; they are all but straight in the laid pattern. */
const heights = 9;

/** Where the piece's sides are in the laid pattern: within the inner there is piece at every height, past the outer none. */
function sidesOf({ foot, lip, left, right }: LaidPiece) {
  const ys = Array.from({ length: heights }, (_, i) => foot + ((lip - foot) * i) / (heights - 1));
  const [lefts, rights] = [ys.map(left), ys.map(right)];
  return {
    inner: { minX: Math.max(...lefts), maxX: Math.min(...rights) },
    outer: { minX: Math.min(...lefts), maxX: Math.max(...rights) },
  };
}

/** Layers of a period that hold only some of their contours. */
export const onlyContours = (
  { contours, lattice }: LaidPeriod,
  kept: (family: number) => boolean,
): LaidPeriod => ({ contours: contours.filter((_, family) => kept(family)), lattice });

/** How far shapes on the sheet reach in the laid pattern. */
export function laidBox(lay: Lay, layers: readonly (readonly Shape[])[]): Box {
  const points = layers.flatMap((shapes) =>
    shapes.flatMap(({ contours }) =>
      contours.flatMap((contour): Point[] => {
        const { x, y } = chorded(contour, chordTolerance);
        return Array.from(x, (across, k) => {
          const { turn, along } = toWall(lay.wall, { x: across, y: y[k] ?? 0 });
          return { x: turn * lay.around, y: lay.fromAlong(along) };
        });
      }),
    ),
  );
  return boxOfPoints(points);
}

// A motif: art that is laid once, about a place of the wall.
import { type Affine, compose, moveContour, rotation, translation } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/box.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { least, most } from '../../geometry/extremes.ts';
import { mapSegment, type SmoothMap } from '../../geometry/fit.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { pointAt } from '../../geometry/segment.ts';
import { chordTolerance, fitTolerance } from '../../geometry/tolerance.ts';
import {
  type FlatWall,
  girthAt,
  levelAngle,
  radiusAt,
  toFlat,
  toWall,
  type WallPoint,
} from '../../unroll/flat-wall.ts';
import { grownTemplate, outline, type Template, turnOfEdge } from '../../unroll/template.ts';
import { conformalLay, evenLay, type Lay, stepOnSheet, toSheet } from '../lay/lay.ts';
import type { WrapLayer } from '../lay/wrap.ts';

/**
 * How a motif is spread over a wall that tapers: `rigid` moves it whole; `even` bends it along the level line and keeps
 * its heights; `conformal` bends it and keeps its angles.
 */
export type MotifLay = 'rigid' | 'even' | 'conformal';

/** Art as drawn, mm, y down, its origin at the place it is laid about. */
export interface Motif {
  readonly layers: readonly WrapLayer[];
  /** The room it is said to take. */
  readonly frame: Box;
}

export interface MotifPlace {
  readonly at: WallPoint;
  readonly lay: MotifLay;
  /**
   * The flat wall of the piece that its place lies on, of several on a wall that bends. There it is laid, and goes on over the others by turn
   * and height, as a pattern does; left out, it is laid about its place on whatever piece is asked for.
   */
  readonly home?: FlatWall;
}

/** A motif's layers on the sheet, in the flat wall's frame. */
export interface LaidMotif {
  readonly layers: readonly WrapLayer[];
  /** Largest distance measured between the exact image and the curves laid, mm. */
  readonly fitError: number;
}

/** The lay about a place: the motif's origin comes to lie there, at its own size. */
export function layAbout(wall: FlatWall, { at, lay }: MotifPlace): Lay {
  const start = { around: girthAt(wall, at.along) };
  return lay === 'conformal' ? conformalLay(wall, at.along, start) : evenLay(wall, at.along, start);
}

/** Lay a motif about a place. A rigid one is moved exactly; a bent one is fitted within `fitTolerance`. */
export function layMotif(
  layers: readonly WrapLayer[],
  wall: FlatWall,
  { home, ...place }: MotifPlace,
): LaidMotif {
  if (home && home.reference !== wall.reference) {
    const laid = layMotif(layers, home, place);
    return fitted(laid.layers, carriedOver({ ...home, middle: place.at.turn }, wall));
  }
  if (place.lay === 'rigid' || wall.sine === 0) {
    const move = rigidMove(wall, place.at);
    return { layers: mapped(layers, (contour) => moveContour(move, contour)), fitError: 0 };
  }
  const lay = layAbout(wall, place);
  const away = place.at.turn * lay.around;
  const map: SmoothMap = {
    point: ({ x, y }) => toSheet(lay, { x: x + away, y: -y }),
    displacement: (at, by) => stepOnSheet(lay, { x: at.x + away, y: -at.y }, { x: by.x, y: -by.y }),
  };
  return fitted(layers, map);
}

/** Layers as a map carries them. */
function fitted(layers: readonly WrapLayer[], map: SmoothMap): LaidMotif {
  let fitError = 0;
  const bent = ({ closed, segments }: Contour): Contour => ({
    closed,
    segments: segments.flatMap((s) => {
      const image = mapSegment(map, s, fitTolerance);
      fitError = Math.max(fitError, image.error);
      return image.segments;
    }),
  });
  return { layers: mapped(layers, bent), fitError };
}

/** From one flat wall to another that has the same heights, place by place of the wall: level goes to level, and up to up. */
function carriedOver(from: FlatWall, to: FlatWall): SmoothMap {
  return {
    point: (p) => toFlat(to, toWall(from, p)),
    displacement: (at, by) => {
      const { turn, along } = toWall(from, at);
      const [a, b] = [levelAngle(from, turn), levelAngle(to, turn)];
      const across = by.x * Math.cos(a) + by.y * Math.sin(a);
      const up = by.x * Math.sin(a) - by.y * Math.cos(a);
      const wider = (across * radiusAt(to, along)) / radiusAt(from, along);
      return {
        x: wider * Math.cos(b) + up * Math.sin(b),
        y: wider * Math.sin(b) - up * Math.cos(b),
      };
    },
  };
}

/** The motion that carries art drawn about its origin, y down, upright to its place on the sheet. */
export function rigidMove(wall: FlatWall, at: WallPoint): Affine {
  const { x, y } = toFlat(wall, at);
  return compose(rotation(levelAngle(wall, at.turn)), translation(x, y));
}

const mapped = (layers: readonly WrapLayer[], move: (contour: Contour) => Contour): WrapLayer[] =>
  layers.map((layer) => ({
    ...layer,
    shapes: layer.shapes.map(({ contours }) => ({ contours: contours.map(move) })),
  }));

/** Whole turns by which a place may come again on one piece: to the left of turn 0, and in the overlap. */
const comesAgain = [-1, 0, 1] as const;

/** The turns that a motif may reach to either side of its place: too many rather than too few. */
function reachInTurns({ frame }: Motif, wall: FlatWall, { at }: MotifPlace): number {
  const away = Math.max(frame.maxX, -frame.minX, frame.maxY, -frame.minY) * Math.SQRT2;
  const least = Math.min(radiusAt(wall, at.along - away), radiusAt(wall, at.along + away));
  return least > 0 ? away / (2 * Math.PI * least) : 1;
}

/**
 * What of a motif lies on a piece, and past its outline by the run-off: layers of the motif's own, in the flat wall's
 * frame. Where the piece covers its place twice, as in the overlap, so does the motif.
 */
export function motifOnPiece(
  motif: Motif,
  template: Template,
  place: MotifPlace,
  runOff: number,
): readonly WrapLayer[] {
  const { wall, piece, left, right } = template;
  const room = grownTemplate(template, runOff);
  const border = { contours: [outline(room)] };
  const ends = [piece.from, piece.to];
  const from = Math.min(...ends.map((along) => turnOfEdge(wall, room.left, along)));
  const to = Math.max(...ends.map((along) => turnOfEdge(wall, room.right, along)));
  const reach = reachInTurns(motif, wall, place);
  const { turn, along } = place.at;
  const copies = comesAgain
    .filter(
      (k) => turn + k + reach >= Math.min(from, left.turn) && turn + k - reach <= Math.max(to, right.turn),
    )
    .map((k) => {
      const at = { turn: turn + k, along };
      const { layers } = layMotif(motif.layers, wall, { ...place, at });
      const half = halfFor(layers, room, at.turn);
      return half ? layers.map((layer) => ({ ...layer, shapes: clipped(layer.shapes, half) })) : layers;
    });
  return motif.layers
    .map((layer, i) => ({
      ...layer,
      shapes: copies.flatMap((layers) => clipped(layers[i]?.shapes ?? [], border)),
    }))
    .filter(({ shapes }) => shapes.length > 0);
}

const clipped = (shapes: readonly Shape[], border: Shape): Shape[] =>
  clippedShapes(shapes, [border], 'intersection', chordTolerance);

/**
 * The half of a piece that what is laid about a turn may be seen on. A sector of more than half a ring comes back to its own start: what
 * leaves it at one side would lie on the other. Undefined where the piece is less, or the copy has both halves.
 */
function halfFor(
  layers: readonly WrapLayer[],
  { winding: _, ...room }: Template,
  turn: number,
): Shape | undefined {
  const { wall, left, right } = room;
  if (Math.abs(wall.sine) * (right.turn - left.turn) < 0.5) return undefined;
  const about = { ...wall, middle: turn };
  const turns = shapesOf(layers).flatMap(({ contours }) =>
    contours.flatMap(({ segments }) =>
      segments.flatMap((s) => [s.from, pointAt(s, 0.5)].map((p) => toWall(about, p).turn)),
    ),
  );
  const middle = { turn: (left.turn + right.turn) / 2, offset: 0 };
  if (most(turns, turn) < middle.turn) return { contours: [outline({ ...room, right: middle })] };
  if (least(turns, turn) > middle.turn) return { contours: [outline({ ...room, left: middle })] };
  return undefined;
}

/** All shapes of layers. */
export const shapesOf = (layers: readonly { readonly shapes: readonly Shape[] }[]): readonly Shape[] =>
  layers.flatMap(({ shapes }) => shapes);

// The template: a band of the wall laid flat, with its overlap and trims, ready to be cut.

import type { Box } from '../geometry/box.ts';
import { type Contour, cubic, line, polyline } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import { add, type Point, scale } from '../geometry/point.ts';
import { asinc, sinc } from '../geometry/sinc.ts';
import { rectangleSag } from '../geometry/tolerance.ts';
import { type FlatWall, girthAt, levelAngle, radiusAt, sweep, toFlat } from './flat-wall.ts';
import { reachFrom, type Winding, widened, windingOutline, windingSides, windingTurn } from './winding.ts';

/** A straight edge of the piece: parallel to the line up the wall at `turn`, at `offset` mm to its right. */
export interface SideEdge {
  readonly turn: number;
  readonly offset: number;
}

export interface TemplateOptions {
  /** The finished band, mm along the wall. */
  readonly band: { readonly from: number; readonly to: number };
  readonly trim: { readonly lip: number; readonly foot: number };
  /** How wide the two ends lie over one another, the same from foot to lip. */
  readonly overlap: number;
  /** How much of the overlap lies before the seam, mm; 0 where all of it lies past it. */
  readonly before?: number;
  /** Half the width kept clear around a handle at turn 0, mm of girth, if there is one. */
  readonly clear?: number;
}

export interface Template {
  readonly wall: FlatWall;
  readonly band: { readonly from: number; readonly to: number };
  readonly trim: { readonly lip: number; readonly foot: number };
  readonly overlap: number;
  /** The cut piece along the wall, trims included. */
  readonly piece: { readonly from: number; readonly to: number };
  readonly left: SideEdge;
  readonly right: SideEdge;
  /** The finished sides, from foot to lip of the band: turn 0 and turn 1, or the two sides of the handle. */
  readonly seam: { readonly start: SideEdge; readonly finish: SideEdge };
  readonly shape: 'rectangle' | 'sector';
  /** The line that both ends follow instead of a straight one; `left` and `right` then enclose it. */
  readonly winding?: Winding;
}

/** Whether a whole turn of this wall lies flat as a rectangle for every purpose. */
export const isRectangle = (wall: FlatWall): boolean =>
  (Math.PI * Math.PI * wall.radius * Math.abs(wall.sine)) / 2 < rectangleSag;

export function templateOf(wall: FlatWall, options: TemplateOptions): Template {
  const { band, trim, overlap, before = 0, clear } = options;
  // A handle takes the same girth from foot to lip; a straight edge keeps that to a few hundredths at the ends of
  // the band when its distance is taken at the middle.
  const middle = radiusAt(wall, (band.from + band.to) / 2);
  const beside = clear === undefined ? 0 : clear * sinc((clear * wall.sine) / middle);
  const start = { turn: 0, offset: beside };
  const finish = { turn: 1, offset: 0 - beside };
  const sides = {
    wall,
    piece: { from: band.from - trim.foot, to: band.to + trim.lip },
    left: clear === undefined ? { turn: 0, offset: 0 - before } : start,
    right: clear === undefined ? { turn: 1, offset: overlap - before } : finish,
  };
  const { from, to } = turnsOfPiece(sides);
  return {
    ...sides,
    wall: { ...wall, middle: (from + to) / 2 },
    band,
    trim,
    overlap: clear === undefined ? overlap : 0,
    seam: { start, finish },
    shape: isRectangle(wall) ? 'rectangle' : 'sector',
  };
}

/**
 * The turn at which a side edge passes a height. The edge is parallel to the line up the wall, not radial:
 * E. M. Longfield, Sheet Metal Drafting (1921), p. 82: "the locks are parallel to lines number 1 and do not connect
 * with the apex".
 */
export function turnOfEdge(wall: FlatWall, edge: SideEdge, along: number): number {
  const radius = radiusAt(wall, along);
  return edge.turn + (edge.offset / girthAt(wall, along)) * asinc((edge.offset * wall.sine) / radius);
}

/** The turns between which a piece lies at a height. */
export function sideTurns(
  { wall, left, right, winding }: Template,
  along: number,
): readonly [number, number] {
  if (!winding) return [turnOfEdge(wall, left, along), turnOfEdge(wall, right, along)];
  const turn = windingTurn(winding, along);
  return [turn, turn + 1 + winding.lap];
}

/** The turns between which all of a piece lies. */
export function turnsOfPiece({
  wall,
  piece,
  left,
  right,
}: Pick<Template, 'wall' | 'piece' | 'left' | 'right'>): {
  readonly from: number;
  readonly to: number;
} {
  const ends = [piece.from, piece.to];
  return {
    from: Math.min(...ends.map((end) => turnOfEdge(wall, left, end))),
    to: Math.max(...ends.map((end) => turnOfEdge(wall, right, end))),
  };
}

/** A template whose ends wind, in the straight sides that enclose them. */
export function woundTemplate(template: Template, winding: Winding): Template {
  const { wall, piece } = template;
  const sides = windingSides(wall, winding, piece);
  return {
    ...template,
    winding,
    left: { turn: 0, offset: reachFrom(wall, 0, sides.left).least },
    right: { turn: 1, offset: reachFrom(wall, 1, sides.right).most },
  };
}

/** The piece grown on all sides. */
export function grownTemplate(template: Template, by: number): Template {
  const { wall, piece, left, right, winding } = template;
  const grown = { from: piece.from - by, to: piece.to + by };
  return {
    ...template,
    piece: grown,
    left: { ...left, offset: left.offset - by },
    right: { ...right, offset: right.offset + by },
    ...(winding ? { winding: widened(winding, wall, grown, by) } : {}),
  };
}

/** A point of a side edge on the sheet. */
export const edgePoint = (wall: FlatWall, edge: SideEdge, along: number): Point =>
  toFlat(wall, { turn: turnOfEdge(wall, edge, along), along });

/** The straight line of a side edge from one height to another. */
export const edgeLine = (wall: FlatWall, edge: SideEdge, from: number, to: number): Contour =>
  polyline([edgePoint(wall, edge, from), edgePoint(wall, edge, to)]);

/** An arc piece spans at most this, so that its cubic strays by less than 1e-7 of the radius: 15 degrees. */
const arcSpan = Math.PI / 12;

/**
 * A level line at a height, from one turn to another, as cubics. A cubic of a circular arc of angle A has handles of
 * (4/3) tan(A/4) radii (standard construction, e.g. A. Riškus 2006, from memory), here written without the radius.
 */
export function levelLine(wall: FlatWall, along: number, fromTurn: number, toTurn: number): Contour {
  const angle = sweep(wall) * (toTurn - fromTurn);
  const pieces = Math.max(1, Math.ceil(Math.abs(angle) / arcSpan));
  const girth = girthAt(wall, along);
  const turnAt = (i: number) => fromTurn + ((toTurn - fromTurn) * i) / pieces;
  const segments = Array.from({ length: pieces }, (_, i) => {
    const [t0, t1] = [turnAt(i), turnAt(i + 1)];
    const from = toFlat(wall, { turn: t0, along });
    const to = toFlat(wall, { turn: t1, along });
    if (isRectangle(wall)) return line(from, to);
    const quarter = (sweep(wall) * (t1 - t0)) / 4;
    const handle = ((girth * (t1 - t0)) / 3) * (sinc(quarter) / Math.cos(quarter));
    const level = (turn: number): Point => {
      const a = levelAngle(wall, turn);
      return { x: Math.cos(a), y: Math.sin(a) };
    };
    return cubic(from, add(from, scale(level(t0), handle)), add(to, scale(level(t1), -handle)), to);
  });
  return { closed: false, segments };
}

/** The outline of the cut piece: foot edge to the right, side edge, lip edge to the left, side edge. Closed. */
export function outline(template: Template): Contour {
  const { wall, piece, winding } = template;
  const [footLeft, footRight] = sideTurns(template, piece.from);
  const [lipLeft, lipRight] = sideTurns(template, piece.to);
  const footEnd = levelLine(wall, piece.from, footLeft, footRight);
  const lipEnd = levelLine(wall, piece.to, lipRight, lipLeft);
  if (winding) return windingOutline(windingSides(wall, winding, piece), footEnd, lipEnd);
  const [foot, lip] = [footEnd.segments, lipEnd.segments];
  const corner = (turn: number, along: number) => toFlat(wall, { turn, along });
  return {
    closed: true,
    segments: [
      ...foot,
      line(corner(footRight, piece.from), corner(lipRight, piece.to)),
      ...lip,
      line(corner(lipLeft, piece.to), corner(footLeft, piece.from)),
    ],
  };
}

/** A finished edge at a height of the band, over the whole piece from side to side. */
export const finishedEdge = (template: Template, along: number): Contour =>
  levelLine(template.wall, along, ...sideTurns(template, along));

/** The bounding box of the cut piece. */
export const templateBox = (template: Template): Box => tightBox([outline(template)]);

/** Slant distances of the finished band from the apex of the cone, mm, smaller first. Needs a sector. */
export function slantRadii(template: Template): { readonly inner: number; readonly outer: number } {
  const { wall, band } = template;
  const radii = [band.from, band.to].map((along) => radiusAt(wall, along) / Math.abs(wall.sine));
  return { inner: Math.min(...radii), outer: Math.max(...radii) };
}

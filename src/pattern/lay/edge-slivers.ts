// What a cut along the finished edge would leave too small to hold: found once a period, taken out all around.

import { type Box, boxCorners } from '../../geometry/box.ts';
import { BoxIndex } from '../../geometry/box-index.ts';
import { chorded } from '../../geometry/chords.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { withHolesApart, withHolesBack } from '../../geometry/holes-apart.ts';
import { InsideFinder } from '../../geometry/inside.ts';
import { isUnder, shapeArea, tightBox } from '../../geometry/measure.ts';
import { offsetShapes } from '../../geometry/offset.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { toShapes } from '../../geometry/rebuild.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance, precision, sliverWidth } from '../../geometry/tolerance.ts';
import type { TracedRegion } from '../../geometry/traced.ts';
import { girthAt } from '../../unroll/flat-wall.ts';
import { copiesIn, type LaidPeriod, mergedWithin } from '../tile/cell.ts';
import { type Lay, toSheet } from './lay.ts';

/** Least film that holds: mm² and mm. */
export interface FilmLimits {
  readonly minPiece: number;
  readonly minWidth: number;
}

export type BandEnd = 'foot' | 'lip';

/** A piece of film that the cut would leave, as it lies in the laid pattern in the first period around. */
export interface Sliver {
  readonly end: BandEnd;
  readonly shape: Shape;
  readonly box: Box;
  /** mm² and mm up the wall, on the sheet. */
  readonly area: number;
  readonly depth: number;
}

export interface SliverGround {
  readonly lay: Lay;
  /** The finished band, mm along. */
  readonly band: { readonly from: number; readonly to: number };
  /** One period around in the laid pattern, mm. */
  readonly width: number;
  readonly film: FilmLimits;
}

/** A cut shorter than this is a touch, mm. */
const leastCut = 0.05;

/** How far past its own edge a sliver is taken out, mm: gaps narrower than twice this no blade opens. */
export const clearance = 0.05;

/** Whether a piece is too small to hold, by more than rounding: its area, mm², and how far it reaches up the wall, mm. */
export const isTooSmall = ({ minPiece, minWidth }: FilmLimits, area: number, depth: number): boolean =>
  isUnder(area, minPiece) || depth < minWidth - precision;

/**
 * How deep into the band a sliver can reach: past it a piece of that area is thinner than half the least width on the mean. Film that asks
 * for pieces larger than the vessel would have the pattern laid over metres: past the band there is none.
 */
const deepest = ({ film: { minPiece, minWidth }, band }: SliverGround): number =>
  Math.min((2 * minPiece) / minWidth + minWidth, 2 * (band.to - band.from));

/** The slivers at one end of the band. */
export function sliversAt(end: BandEnd, period: LaidPeriod, ground: SliverGround): readonly Sliver[] {
  const { lay, band, width, film } = ground;
  if (!(film.minWidth > 0)) return [];
  const edge = lay.fromAlong(end === 'foot' ? band.from : band.to);
  const up = lay.stretchUp(edge);
  const around = girthAt(lay.wall, end === 'foot' ? band.from : band.to) / lay.around;
  const inner = edge + ((end === 'foot' ? 1 : -1) * deepest(ground)) / up;
  // Slivers are far shorter than this; what reaches the window's sides is none.
  const reach = Math.max(width, deepest(ground) / around);
  const window = {
    minX: -reach,
    maxX: width + reach,
    minY: Math.min(edge, inner),
    maxY: Math.max(edge, inner),
  };
  const copies = copiesIn(period, window);
  if (copies.length === 0) return [];
  const { regions, segmentOf } = mergedWithin(copies, polygon(boxCorners(window)));
  const goesOn = filmPast(end, edge, period, window);
  // A side that was drawn along the edge, as halves of a motif have it on their tile's border, is a cut where film goes on past it.
  const isCut = (region: TracedRegion): boolean =>
    region.outer.runs.some(
      ({ source, from, to }) =>
        Math.max(Math.abs(from.y - edge), Math.abs(to.y - edge)) < chordTolerance &&
        distance(from, to) >= leastCut &&
        (source === copies.length || goesOn((from.x + to.x) / 2)),
    );
  return regions.flatMap((region): Sliver[] => {
    const [shape] = toShapes([region], segmentOf, sliverWidth);
    if (!shape) return [];
    const box = tightBox(shape.contours);
    const middle = (box.minX + box.maxX) / 2;
    const isHere = middle >= 0 && middle < width;
    const isOpen = box.minX < window.minX + chordTolerance || box.maxX > window.maxX - chordTolerance;
    const isDeep = Math.abs((end === 'foot' ? box.maxY : box.minY) - inner) < chordTolerance;
    if (!isHere || isOpen || isDeep) return [];
    const [area, depth] = [shapeArea(shape) * around * up, (box.maxY - box.minY) * up];
    return isTooSmall(film, area, depth) && isCut(region) ? [{ end, shape, box, area, depth }] : [];
  });
}

/** How far past an edge film is looked for, mm: over the grid's rounding, under what a blade tells apart. */
const justPast = 0.05;

/** Whether there is film just past an edge, by the place along it. */
function filmPast(
  end: BandEnd,
  edge: number,
  period: LaidPeriod,
  { minX, maxX }: Pick<Box, 'minX' | 'maxX'>,
): (x: number) => boolean {
  const outward = end === 'foot' ? -justPast : justPast;
  const strip = { minX, maxX, minY: Math.min(edge, edge + outward), maxY: Math.max(edge, edge + outward) };
  let film: InsideFinder | undefined;
  return (x) => {
    film ??= filmIn(strip, period);
    return film.holds({ x, y: edge + outward / 2 });
  };
}

function filmIn(box: Box, period: LaidPeriod): InsideFinder {
  const { regions, segmentOf } = mergedWithin(copiesIn(period, box), polygon(boxCorners(box)));
  return new InsideFinder(toShapes(regions, segmentOf, 0));
}

/** What is taken out of the sheet: every sliver a little larger than it is, at every period from one turn to another. */
function erasersOf(
  slivers: readonly Sliver[],
  { lay, width }: SliverGround,
  turns: { readonly from: number; readonly to: number },
): readonly Shape[] {
  const grown = offsetShapes(
    slivers.map(({ shape }) => shape),
    clearance,
  );
  return grown.flatMap(({ contours: [outer] }) => {
    if (!outer) return [];
    const { x, y } = chorded(outer, chordTolerance);
    const points = Array.from(x, (at, k): Point => ({ x: at, y: y[k] ?? 0 }));
    const { minX, maxX } = tightBox([outer]);
    const first = Math.ceil((turns.from * lay.around - maxX) / width);
    const last = Math.floor((turns.to * lay.around - minX) / width);
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => ({
      contours: [polygon(points.map((p) => toSheet(lay, { x: p.x + (first + k) * width, y: p.y })))],
    }));
  });
}

/** Shapes of a layer without its slivers. */
export function withoutSlivers(
  shapes: readonly Shape[],
  slivers: readonly Sliver[],
  ground: SliverGround,
  turns: { readonly from: number; readonly to: number },
): readonly Shape[] {
  if (slivers.length === 0) return shapes;
  const erasers = erasersOf(slivers, ground, turns);
  const boxes = erasers.map(({ contours }) => tightBox(contours));
  const index = new BoxIndex(boxes.length, (add) => {
    for (const { minX, minY, maxX, maxY } of boxes) add(minX, minY, maxX, maxY);
  });
  const met = ({ minX, minY, maxX, maxY }: Box) => index.meeting(minX, minY, maxX, maxY);
  return shapes.flatMap((shape) => {
    const near = met(tightBox(shape.contours)).flatMap((k) => erasers[k] ?? []);
    if (near.length === 0) return [shape];
    const { shapes: cut, holes } = withHolesApart([shape], (box) => met(box).length > 0);
    return withHolesBack(clippedShapes(cut, near, 'difference', chordTolerance), holes);
  });
}

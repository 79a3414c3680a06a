// The rigid lay: every motif moved and turned to its place as a whole, at its drawn size; only the room between motifs changes.
import { compose, moveContour, movePoint } from '../../geometry/affine.ts';
import type { Box } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { most } from '../../geometry/extremes.ts';
import { directed } from '../../geometry/measure.ts';
import { cross, type Point } from '../../geometry/point.ts';
import { filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import type { WallPoint } from '../../unroll/flat-wall.ts';
import { equalParts, layOut } from '../lattice/closing.ts';
import { type Lattice, stepsIn } from '../lattice/lattice.ts';
import { cutAt, edgesLaid, heightsOf, type LeftAt, periodWidth } from '../lay/band-edges.ts';
import { toWallPoint } from '../lay/lay.ts';
import { type DrawnMotif, drawnMotif, laidBox, repeatedAround } from '../lay/lay-motifs.ts';
import { shapesOfMotif } from '../lay/motif-shapes.ts';
import { type Motifs, motifsOf } from '../lay/motifs.ts';
import { laidPiece } from '../lay/windows.ts';
import type { Wrap, WrapOptions } from '../lay/wrap.ts';
import { periodOfLayer } from '../period/period.ts';
import { layPeriod } from '../tile/cell.ts';
import { rigidMove } from './motif.ts';
import { type Collision, collisionsOf, type StandingMotif } from './motif-collisions.ts';
import { type MotifSliver, withoutMotifSlivers } from './motif-slivers.ts';

/** A wrap of whole motifs. */
export interface RigidWrap extends Wrap {
  /** Motifs of one period, and how far apart pieces of one may stand, mm. */
  readonly motifs: number;
  readonly together: number;
  /** Motifs that would lie on one another, counted all around. */
  readonly collisions: readonly Collision[];
}

/** The plane the motifs are drawn in, turned level, y up, at drawn size; and the steps by which they stand on the wall. */
interface RigidGround extends WrapOptions {
  readonly steps: Lattice;
}

type Drawn = Pick<WrapOptions, 'tile' | 'lattice' | 'closing'>;

/** The motifs of a pattern at drawn size, turned level. */
function drawnLevel({ tile, lattice, closing }: Drawn, together?: number) {
  const upright = layOut({ ...closing, scaleAcross: 1, scaleUp: 1 }, tile.height);
  const periods = tile.layers.map((layer) =>
    layPeriod(periodOfLayer(layer, tile, lattice), lattice, upright),
  );
  return { upright, periods, found: motifsOf(periods, together) };
}

/**
 * Why nothing is laid: something hangs together all around, and so is no motif; or motifs lie over so many of their own likes that it
 * would be one heap of film.
 */
export type Unlayable = 'hangs-together' | 'heaped';

/** A motif's box may meet so many boxes of its own likes: of one that is two and a half repeats wide and high. Ours. */
const mostMet = 25;

interface DrawnMotifs extends ReturnType<typeof drawnLevel> {
  readonly drawn: readonly DrawnMotif[];
  /** By which they stand, mm on the level plane of the wrap. */
  readonly steps: Lattice;
}

function drawnMotifs(pattern: Drawn, together?: number): DrawnMotifs | Unlayable {
  const { lattice, closing } = pattern;
  const level = drawnLevel(pattern, together);
  const { periods, found } = level;
  if (hasNet(found)) return 'hangs-together';
  const drawn = found.motifs.flatMap((motif) => drawnMotif(shapesOfMotif(motif, periods)) ?? []);
  const own = periods[0]?.lattice ?? lattice;
  const steps = { a: spaced(closing, own.a), b: spaced(closing, own.b) };
  const cell = Math.abs(cross(steps.a, steps.b));
  // Boxes alike meet where they stand apart by less than a width and a height, either way.
  const met = drawn.map(({ box }) => (4 * (box.maxX - box.minX) * (box.maxY - box.minY)) / cell);
  return most(met, 0) > mostMet ? 'heaped' : { ...level, drawn, steps };
}

const spaced = ({ scaleAcross, scaleUp }: Drawn['closing'], { x, y }: Point): Point => ({
  x: x * scaleAcross,
  y: y * scaleUp,
});

/** Why a pattern is not laid motif by motif; undefined where it is. */
export function unlayable(pattern: Drawn, together?: number): Unlayable | undefined {
  const found = drawnMotifs(pattern, together);
  return typeof found === 'string' ? found : undefined;
}

/** Lay the motifs of all layers. */
export function rigidWrap(options: WrapOptions): RigidWrap | Unlayable {
  const { tile, closing, lay, template, runOff, edges } = options;
  const motifsDrawn = drawnMotifs(options, edges?.together);
  if (typeof motifsDrawn === 'string') return motifsDrawn;
  const { upright, found, drawn, steps } = motifsDrawn;
  const ground = { ...options, steps };
  const placed = drawn.flatMap((motif, number) =>
    placesOn(ground, motif).map((steps) => ({ ...standing(ground, motif, steps), drawn: number })),
  );
  const { motifs, slivers, left } = atEdges(placed, options);
  const parts = equalParts(closing);
  const around = repeatedAround(motifs, tile.layers.length, { lay, template, runOff, parts });
  const isApart = collisionsOf(motifs, lay, parts).length === 0;
  const layers = isApart ? around : around.map(cutAsOne);
  const gaps = drawn.flatMap((motif) => motif.gaps);
  return {
    layers: tile.layers.map(({ name, colour }, i) => ({ name, colour, shapes: layers[i] ?? [] })),
    mismatches: [
      ...gaps.map(({ layer, at, length }) => ({ layer: tile.layers[layer]?.name ?? '', at, length })),
      ...(tile.gaps ?? []).map((gap) => ({ ...gap, at: movePoint(upright, gap.at) })),
    ].map(({ layer, at, length }) => {
      const { turn, along } = toWallPoint(lay, spaced(closing, at));
      return { layer, turn: turn - Math.floor(turn), along, length };
    }),
    fitError: 0,
    edges: edgesLaid(slivers, left && { left, hasNet: false, together: found.together }, options),
    motifs: drawn.length,
    together: found.together,
    collisions: collisionsOf(
      motifs.filter(({ box }) => isSeen(box, options)),
      lay,
      parts,
    ),
  };
}

/** What the finished edges leave of the motifs: whole ones, or cut ones without their slivers. */
function atEdges(
  placed: readonly StandingMotif[],
  options: WrapOptions,
): {
  readonly motifs: readonly StandingMotif[];
  readonly slivers: readonly MotifSliver[];
  readonly left?: readonly LeftAt[];
} {
  const { edges } = options;
  if (!edges) return { motifs: placed, slivers: [] };
  if (!edges.isFaded) return withoutMotifSlivers(placed, options, edges);
  const left: LeftAt[] = [];
  const heights = heightsOf(options, edges.ends);
  const motifs = placed.filter(({ box }) => {
    const cut = cutAt(box, heights);
    if (cut && !cut.isPast) left.push({ end: cut.end, box });
    return !cut;
  });
  return { motifs, slivers: [], left };
}

/** Whether some of a motif lies within the finished band. */
const isSeen = (box: Box, ground: WrapOptions): boolean =>
  !cutAt(box, heightsOf(ground, ['foot', 'lip']))?.isPast;

/** Film of one layer that lies on film of it, merged: every outline cut as it is would cut through the other's film, or twice along one line. */
const cutAsOne = (shapes: readonly Shape[]): readonly Shape[] =>
  filledShapes(shapes.flatMap(directed), 'nonzero', chordTolerance);

const hasNet = ({ nets }: Motifs): boolean => nets.some((families) => families.size > 0);

const middleOf = ({ minX, minY, maxX, maxY }: Box): Point => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });

/** The steps at which a motif stands in the first period around, at heights where some of it may be seen. */
function placesOn(ground: RigidGround, { box }: DrawnMotif): readonly Point[] {
  const { lay, template, runOff, steps } = ground;
  const width = periodWidth(ground);
  const anchor = anchorOf(ground, box);
  const reach = Math.hypot(box.maxX - box.minX, box.maxY - box.minY) / 2;
  const piece = laidPiece(template, lay, runOff);
  // Half open, so that a motif on the border of two periods is counted in one of them.
  const hair = 1e-6;
  const within = {
    minX: -anchor.x - hair,
    maxX: width - anchor.x - hair,
    minY: piece.foot - reach - anchor.y,
    maxY: piece.lip + reach - anchor.y,
  };
  return stepsIn(steps, within)
    .map(({ at }) => at)
    .filter(({ x }) => x + anchor.x < width - hair);
}

/** Where the middle of a motif stands in the laid pattern. */
function anchorOf({ closing }: RigidGround, box: Box): Point {
  const { x, y } = middleOf(box);
  return { x: x * closing.scaleAcross, y: y * closing.scaleUp };
}

/** A motif so many steps away: its middle at its place on the wall, its level along the level line there. */
function standing(
  ground: RigidGround,
  { layers, box }: DrawnMotif,
  steps: Point,
): Omit<StandingMotif, 'drawn'> {
  const { lay } = ground;
  const anchor = anchorOf(ground, box);
  const at: WallPoint = toWallPoint(lay, { x: anchor.x + steps.x, y: anchor.y + steps.y });
  const middle = middleOf(box);
  // The motif is drawn y up, a sheet has y down.
  const motion = compose({ a: 1, b: 0, c: 0, d: -1, e: -middle.x, f: middle.y }, rigidMove(lay.wall, at));
  const moved = layers.map((shapes) =>
    shapes.map(
      ({ contours }): Shape => ({ contours: contours.map((contour) => moveContour(motion, contour)) }),
    ),
  );
  return { layers: moved, box: laidBox(lay, moved), at };
}

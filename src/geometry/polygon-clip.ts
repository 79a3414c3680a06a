// Adapter: booleans of polygons on an integer grid, by clipper2-ts (BSL-1.0).
// Chosen because it survives shared edges and identical copies, which is what a seam is made of, and runs
// without start-up both in Node and in a browser.
import {
  Clipper,
  Clipper64,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  PathType,
  type Point64,
} from 'clipper2-ts';
import type { GridRegion, GridRing } from './grid-ring.ts';
import { ridOfHairpins } from './hairpins.ts';
import { regionsOfRings } from './nested-rings.ts';
import { shareAnEdge } from './shared-edges.ts';

export type ClipOperation = 'union' | 'intersection' | 'difference';
/** `positive`: what is gone around more often counter-clockwise, with y up, than clockwise. */
export type Fill = 'nonzero' | 'evenodd' | 'positive';

const fills = {
  nonzero: FillRule.NonZero,
  evenodd: FillRule.EvenOdd,
  positive: FillRule.Positive,
} as const;

const operations = {
  union: ClipType.Union,
  intersection: ClipType.Intersection,
  difference: ClipType.Difference,
} as const;

/** Combine polygons; the rings are only read. Both sides are read by the same fill rule. */
export function clipPolygons(
  operation: ClipOperation,
  subject: readonly GridRing[],
  clip: readonly GridRing[],
  fill: Fill,
): GridRegion[] {
  const rings =
    combined(operation, subject, clip, fill) ??
    combined(operation, ridOfHairpins(subject), ridOfHairpins(clip), fill);
  if (!rings) throw new Error('the polygon engine came to no end');
  return regionsOfRings(subject.length > 1 && shareAnEdge(rings) ? unitedAcross(rings) : rings);
}

const turnedOver = (rings: readonly GridRing[]): GridRing[] =>
  rings.map((ring) => ring.map(({ x, y }) => ({ x: y, y: x })).reverse());

/**
 * Rings united once more, swept the other way. Where abutting areas are cut across their common edge, the engine now and then takes its
 * two sides in the wrong order and leaves two rings beside each other that are one: the blade would cut there twice.
 */
const unitedAcross = (rings: readonly GridRing[]): readonly GridRing[] =>
  turnedOver(combined('union', turnedOver(rings), [], 'nonzero') ?? turnedOver(rings));

/** What the engine sweeps by, level after level; it has no other name for it. */
interface Sweep {
  popScanline: () => { readonly success: boolean; readonly y: number };
}

/** Levels for each corner, at the most: it has one, and one more where two sides part. More is only a sweep that goes around for ever. */
const levelsForCorner = 4;

/** The engine's rings; undefined where it goes around a ring for ever, as it may where one turns back on its level. */
function combined(
  operation: ClipOperation,
  subject: readonly GridRing[],
  clip: readonly GridRing[],
  fill: Fill,
): readonly Path64[] | undefined {
  const engine = new Clipper64();
  for (const ring of subject) engine.addPath(ring as Point64[], PathType.Subject);
  for (const ring of clip) engine.addPath(ring as Point64[], PathType.Clip);
  let left = levelsForCorner * [...subject, ...clip].reduce((sum, ring) => sum + ring.length, 1);
  const sweep = engine as unknown as Sweep;
  const { popScanline } = sweep;
  if (typeof popScanline !== 'function') throw new Error('the polygon engine sweeps by another name');
  sweep.popScanline = () => {
    left--;
    return left < 0 ? { success: false, y: 0 } : popScanline.call(engine);
  };
  const rings: Path64[] = [];
  engine.execute(operations[operation], fills[fill], rings);
  return left < 0 ? undefined : rings;
}

/** Outlines grown by a distance in grid units, their corners rounded by chords with no more than the given sagitta. */
export const grownRings = (rings: readonly GridRing[], by: number, sagitta: number): readonly GridRing[] =>
  Clipper.inflatePaths(rings as Point64[][], by, JoinType.Round, EndType.Polygon, 2, sagitta);

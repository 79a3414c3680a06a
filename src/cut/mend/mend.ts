// Film mended so that it can be cut, weeded and carried: thickened, gaps closed, points rounded, specks dropped.
import { BoxIndex } from '../../geometry/box-index.ts';
import type { Shape } from '../../geometry/contour.ts';
import { HolderFinder } from '../../geometry/inside.ts';
import { isUnder, shapeArea } from '../../geometry/measure.ts';
import { closedUp, offsetShapes, openedUp } from '../../geometry/offset.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { widthTolerance } from '../checks/art-faults.ts';
import { type FilmFault, filmFaults } from '../checks/film-faults.ts';
import { unitedShapes } from '../checks/film-layers.ts';
import type { CutLimits } from '../checks/limits.ts';
import { filmNear } from './film-near.ts';
import { type Mend, type MendKind, measuredMends, type PlacedMend } from './mend-moves.ts';
import { narrowWays } from './narrow-ways.ts';
import { sweep } from './sweep.ts';
import { withoutSteps } from './without-steps.ts';

export interface MendedFilm {
  /** Merged, like what was given; what nothing touched is the same curve for curve. */
  readonly shapes: readonly Shape[];
  readonly mends: readonly Mend[];
}

/** What one step made of the film. */
interface Step {
  readonly shapes: readonly Shape[];
  readonly mends: readonly PlacedMend[];
}

/** By this much more than the limit a place is mended, so that it is no fault after, mm across. */
const clearOfLimit = 0.04;

/** What is filled or cut away goes on so far into what it meets, so that no slit is left between, mm. */
const overMeeting = 0.02;

/** One mend may bring about the next: a thickened line comes near another. More rounds than this never end. */
const mostRounds = 6;

/** Mend film whose areas overlap nowhere. */
export function mendFilm(film: readonly Shape[], limits: CutLimits): MendedFilm {
  let shapes = film;
  const rounds: PlacedMend[][] = [];
  for (let round = 0; round < mostRounds; round++) {
    const faults = filmFaults(shapes, { limits, tolerance: widthTolerance, keepsDiscs: true });
    if (faults.length === 0) break;
    const steps: (readonly PlacedMend[])[] = [];
    // Specks last: one may be large enough once it is thickened.
    for (const step of [thicken, closeGaps, roundPoints, dropSpecks]) {
      const done = step(shapes, faults, limits);
      shapes = done.shapes;
      steps.push(done.mends);
    }
    const mends = steps.flat();
    rounds.push(mends);
    // What this round could not mend no other round will.
    if (mends.length === 0) break;
  }
  if (rounds.every((mends) => mends.length === 0)) return { shapes: film, mends: [] };
  const tidy = tidied(shapes, film, limits);
  const most = (mostCutBack + 1) * limits.minWidth + limits.minGap;
  return { shapes: tidy, mends: measuredMends(rounds, film, tidy, { near: limits.minWidth, most }) };
}

/** Mended film without the short steps that mending leaves, but where taking them out would bring a fault about. */
function tidied(mended: readonly Shape[], drawn: readonly Shape[], limits: CutLimits): readonly Shape[] {
  const { step } = limits;
  const tidy = withoutSteps(mended, drawn, { step });
  const faults = filmFaults(tidy, { limits, tolerance: widthTolerance, keepsDiscs: true });
  if (faults.length === 0) return tidy;
  const near = Math.max(limits.minWidth, limits.minGap);
  const index = new BoxIndex(faults.length, (add) => {
    for (const { at } of faults) add(at.x - near, at.y - near, at.x + near, at.y + near);
  });
  return withoutSteps(mended, drawn, { step, stays: ({ x, y }) => index.meeting(x, y, x, y).length > 0 });
}

const ofRule = (faults: readonly FilmFault[], rule: FilmFault['rule']): readonly FilmFault[] =>
  faults.filter((fault) => fault.rule === rule);

/** A point that would be cut back by more than this is thickened instead, as a multiple of the least width. */
const mostCutBack = 3;

/** How far a point of an angle between its sides is cut back, mm, until a disc of the least width fills its end. */
const cutBack = ({ size: angle }: FilmFault, { minWidth }: CutLimits): number =>
  (minWidth / 2) * (1 / Math.sin(angle / 2) - 1);

const isCutBack = (fault: FilmFault, limits: CutLimits): boolean =>
  cutBack(fault, limits) <= mostCutBack * limits.minWidth;

/** Lay film of the least width along the middle of what is thinner, and of points too slender to be cut back. */
function thicken(shapes: readonly Shape[], faults: readonly FilmFault[], limits: CutLimits): Step {
  const slender = ofRule(faults, 'sharp').filter((fault) => !isCutBack(fault, limits));
  const thin = [...ofRule(faults, 'thin-film'), ...slender];
  const radius = (limits.minWidth + clearOfLimit) / 2;
  const laid = thin.flatMap(({ place }) =>
    narrowWays(place?.discs ?? [], limits.minWidth).flatMap((way) => sweep(way, radius)),
  );
  if (laid.length === 0) return { shapes, mends: [] };
  return {
    // By themselves first, as they lie in heaps.
    shapes: unitedShapes([...shapes, ...unitedShapes(laid)]),
    mends: thin.map((fault) => placed('thickened', fault)),
  };
}

const placed = (kind: MendKind, { at, place, size }: FilmFault): PlacedMend => ({
  kind,
  at,
  size,
  along: place?.discs ?? [],
});

/** Fill gaps that no blade opens, as far as they are narrow. */
function closeGaps(shapes: readonly Shape[], faults: readonly FilmFault[], limits: CutLimits): Step {
  const gaps = ofRule(faults, 'thin-gap');
  if (gaps.length === 0) return { shapes, mends: [] };
  const radius = (limits.minGap + clearOfLimit) / 2;
  const discs = gaps.flatMap(({ place }) => place?.discs ?? []);
  const { film, sure } = filmNear(shapes, discs, { around: 4 * radius, reach: 2 * radius });
  const closed = closedUp(film, radius);
  const closedNear = clippedShapes(closed, sure, 'intersection', chordTolerance);
  const filled = fillings(clippedShapes(closedNear, film, 'difference', chordTolerance), gaps);
  // No farther than the closing: past it the filling would stand out of the edge as a bump.
  const overlapping = clippedShapes(
    offsetShapes(filled.regions, overMeeting),
    closed,
    'intersection',
    chordTolerance,
  );
  // Between two corners closing fills nothing: a disc comes as far as the middle from either side. They are joined by film that holds.
  const across = (Math.max(limits.minWidth, limits.minGap) + clearOfLimit) / 2;
  const bridges = filled.open.flatMap(({ place }) =>
    narrowWays(place?.discs ?? [], limits.minGap).flatMap((way) => sweep(way, across)),
  );
  return {
    shapes: unitedShapes([...shapes, ...overlapping, ...bridges]),
    mends: gaps.map((gap) => ({ ...placed('gap-closed', gap), size: gap.size / 2 })),
  };
}

/** Of what closing fills, the regions that lie in gaps, and the gaps in which none lies. */
function fillings(
  closing: readonly Shape[],
  gaps: readonly FilmFault[],
): { readonly regions: readonly Shape[]; readonly open: readonly FilmFault[] } {
  const finder = new HolderFinder(closing);
  const [held, closed] = [new Set<number>(), new Set<FilmFault>()];
  for (const gap of gaps)
    for (const disc of gap.place?.discs ?? [])
      for (const region of finder.holdersOf(disc)) {
        held.add(region);
        closed.add(gap);
      }
  const regions = closing.filter((_, i) => held.has(i));
  return { regions, open: gaps.filter((gap) => !closed.has(gap)) };
}

/** Points nearer than this to a region are its own, mm. */
const atTip = 0.05;

/** Tells of shapes whether a node lies so near one of some places. */
export function nearAny(places: readonly Point[], near: number): (shape: Shape) => boolean {
  const index = new BoxIndex(places.length, (add) => {
    for (const { x, y } of places) add(x, y, x, y);
  });
  const isNear = (p: Point): boolean =>
    index
      .meeting(p.x - near, p.y - near, p.x + near, p.y + near)
      .some((k) => distance(places[k] ?? p, p) < near);
  return ({ contours }) => contours.some(({ segments }) => segments.some(({ from }) => isNear(from)));
}

/** Cut points back to where they are as wide as the limit, with a round end. */
function roundPoints(shapes: readonly Shape[], faults: readonly FilmFault[], limits: CutLimits): Step {
  const points = ofRule(faults, 'sharp').filter((fault) => isCutBack(fault, limits));
  if (points.length === 0) return { shapes, mends: [] };
  const radius = (limits.minWidth + clearOfLimit) / 2;
  const discs = points.flatMap(({ at, place }) => [at, ...(place?.discs ?? [])]);
  const { film, sure } = filmNear(shapes, discs, { around: 2 * mostCutBack * radius, reach: 2 * radius });
  const opened = openedUp(film, radius);
  const sureFilm = clippedShapes(film, sure, 'intersection', chordTolerance);
  const isTip = nearAny(
    points.map(({ at }) => at),
    atTip,
  );
  const tips = clippedShapes(sureFilm, opened, 'difference', chordTolerance).filter(isTip);
  if (tips.length === 0) return { shapes, mends: [] };
  const left = clippedShapes(shapes, offsetShapes(tips, overMeeting / 2), 'difference', chordTolerance);
  return { shapes: left, mends: points.map((point) => placed('point-rounded', point)) };
}

function dropSpecks(shapes: readonly Shape[], _: readonly FilmFault[], limits: CutLimits): Step {
  const sized = shapes.map((shape) => ({ shape, area: shapeArea(shape) }));
  const isSpeck = ({ area }: { readonly area: number }) => isUnder(area, limits.minPiece);
  return {
    shapes: sized.filter((one) => !isSpeck(one)).map(({ shape }) => shape),
    mends: sized.filter(isSpeck).map(({ shape: { contours }, area }) => ({
      kind: 'speck-dropped',
      at: contours[0]?.segments[0]?.from ?? { x: 0, y: 0 },
      size: area,
      along: contours.flatMap(({ segments }) => segments.map(({ from }) => from)),
    })),
  };
}

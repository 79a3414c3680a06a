// What is wrong with the film of a wrap at its final size: looked for once a period, told with its places on the wall.
import type { Shape } from '../../geometry/contour.ts';
import { isUnder, shapeArea } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import { clippedShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { toWall, type WallPoint } from '../../unroll/flat-wall.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import {
  type DrawnFault,
  type FilmLayer,
  type LayerFault,
  layerEdges,
  widthTolerance,
} from './art-faults.ts';
import { filmFaults } from './film-faults.ts';
import type { CutLimits } from './limits.ts';
import { isWhole, type PeriodFilm, periodFilm, type WrapFilm } from './period-film.ts';

/** A fault with its place in the period that was looked at. */
export interface OnWall<Fault> {
  readonly fault: Fault;
  readonly at: WallPoint;
}

export interface WrapFaults {
  readonly film: readonly OnWall<LayerFault>[];
  readonly edges: readonly OnWall<DrawnFault>[];
}

/** How far past a period its film is looked at, as a multiple of the limits: what is narrow longer is found in parts. */
const reachOfLimits = 4;

/** `mask`: the film is what lies around the areas. Only places in the finished band are told. */
export function wrapFaults(wrap: WrapFilm, limits: CutLimits, use: 'decal' | 'mask'): WrapFaults {
  const period = periodFilm(wrap, reachOfLimits * Math.max(limits.minWidth, limits.minGap));
  const { template } = wrap;
  const onWall = <Fault extends { readonly at: Point }>(fault: Fault, length = 0): OnWall<Fault>[] => {
    const at = toWall(template.wall, fault.at);
    return isFinished(template, at) && period.isOwn(at, length) ? [{ fault, at }] : [];
  };
  return {
    film: period.layers
      .flatMap((layer) => faultsOf(layer, period, template, limits, use))
      .flatMap((fault) => onWall(fault, fault.length)),
    edges: layerEdges(period.layers).flatMap((fault) => onWall(fault, fault.size)),
  };
}

function faultsOf(
  { name, shapes }: FilmLayer,
  period: PeriodFilm,
  template: Template,
  limits: CutLimits,
  use: 'decal' | 'mask',
): LayerFault[] {
  const bare = use === 'mask';
  const film = bare
    ? clippedShapes([{ contours: [period.outline] }], shapes, 'difference', chordTolerance)
    : shapes;
  const isSmall = (shape: Shape) => isUnder(shapeArea(shape), limits.minPiece);
  const turns = bare ? period.turns : undefined;
  const pieces = film.filter((shape) => isSmall(shape) && isWhole(shape, template, turns));
  const options = { limits, tolerance: widthTolerance, isWanted: period.isNear, bare, pieces };
  return filmFaults(shapes, options).map((fault) => ({ ...fault, layer: name }));
}

/** Whether a place stays on the vessel: between the trims, and between the two finished sides. */
export function isFinished({ wall, band, seam }: Template, { turn, along }: WallPoint): boolean {
  return (
    along >= band.from &&
    along <= band.to &&
    turn >= turnOfEdge(wall, seam.start, along) &&
    turn < turnOfEdge(wall, seam.finish, along)
  );
}

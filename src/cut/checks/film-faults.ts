// What is wrong with film as it will be cut: too narrow, gaps too narrow, pieces too small, points too sharp.
import type { Shape } from '../../geometry/contour.ts';
import { isUnder, shapeArea, tightBox } from '../../geometry/measure.ts';
import type { Point } from '../../geometry/point.ts';
import type { CutLimits } from './limits.ts';
import { narrowPlaces } from './local-width.ts';
import type { NarrowPlace } from './narrow-cluster.ts';
import { pointContacts } from './point-contacts.ts';

export interface FilmFault {
  readonly rule: 'thin-film' | 'thin-gap' | 'small-piece' | 'sharp';
  readonly at: Point;
  /** Width, mm; of a piece its area, mm²; of a point its angle, radians. */
  readonly size: number;
  /** How far it stays narrow, mm; of a piece, its longest side. */
  readonly length: number;
  /** Of what is narrow: in what way. */
  readonly place?: NarrowPlace;
}

export interface FilmCheckOptions {
  readonly limits: CutLimits;
  /** Sagitta of the chords that stand in for curves, mm. */
  readonly tolerance: number;
  /** Whether a place is to be looked at; everywhere if left out. */
  readonly isWanted?: (p: Point) => boolean;
  /** Whether the shapes are what is bare, and the film lies around them: a mask. */
  readonly bare?: boolean;
  /** Whether places keep the discs along them, by which they are mended. */
  readonly keepsDiscs?: boolean;
  /** The pieces that may be too small, where they are not the shapes themselves. */
  readonly pieces?: readonly Shape[];
}

/** The faults of film whose areas overlap nowhere: one layer, merged. */
export function filmFaults(shapes: readonly Shape[], options: FilmCheckOptions): FilmFault[] {
  const { limits, bare = false, pieces = shapes } = options;
  const places = (side: 'film' | 'gap', limit: number, cusps: boolean) =>
    narrowPlaces(shapes, { side, limit, cusps, ...options });
  const ofFilm = places(bare ? 'gap' : 'film', limits.minWidth, true);
  return [
    ...ofFilm.filter(({ kind }) => kind !== 'point').map((place) => narrowFault('thin-film', place)),
    ...(limits.minWidth > 0 ? contactsOf(shapes, options) : []),
    ...places(bare ? 'film' : 'gap', limits.minGap, false)
      .filter(({ kind }) => kind !== 'point')
      .map((place) => narrowFault('thin-gap', place)),
    ...ofFilm.filter((place) => isSharp(place, limits)).map(sharpFault),
    ...smallPieces(pieces, options),
  ];
}

const narrowFault = (rule: 'thin-film' | 'thin-gap', place: NarrowPlace): FilmFault => ({
  rule,
  at: place.at,
  size: place.width,
  length: place.length,
  place,
});

/** Film that meets in a point alone has no width there, whichever side of the edge it lies on. */
const contactsOf = (shapes: readonly Shape[], { isWanted = () => true }: FilmCheckOptions): FilmFault[] =>
  pointContacts(shapes)
    .filter(isWanted)
    .map((at) =>
      narrowFault('thin-film', { kind: 'neck', at, width: 0, length: 0, discs: [{ ...at, radius: 0 }] }),
    );

const sharpFault = (place: NarrowPlace): FilmFault => ({
  rule: 'sharp',
  at: place.at,
  size: place.angle ?? 0,
  length: place.length,
  place,
});

/**
 * A point is too sharp where it stays narrower than the limit for longer than a wedge of the least angle would: so a
 * blunt tip, or one that is sharp only at its very end, is let be.
 */
function isSharp(
  { kind, angle = 0, length, width }: NarrowPlace,
  { minAngle, minWidth }: CutLimits,
): boolean {
  if (kind !== 'point' || angle >= minAngle) return false;
  const toItsCorner = width === 0 ? 0 : width / 2 / Math.tan(angle / 2);
  return length + toItsCorner >= minWidth / 2 / Math.tan(minAngle / 2) - 1e-3;
}

function smallPieces(pieces: readonly Shape[], { limits, isWanted }: FilmCheckOptions): FilmFault[] {
  return pieces.flatMap((shape) => {
    const area = shapeArea(shape);
    if (!isUnder(area, limits.minPiece)) return [];
    const { minX, minY, maxX, maxY } = tightBox(shape.contours);
    const at = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
    if (isWanted && !isWanted(at)) return [];
    return [{ rule: 'small-piece' as const, at, size: area, length: Math.max(maxX - minX, maxY - minY) }];
  });
}

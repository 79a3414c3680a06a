// Is each layer whole and where it was made, so that all of them fall together on the wall?
import { contourLength } from '../../geometry/arc-length.ts';
import { hullBox } from '../../geometry/box.ts';
import type { Contour } from '../../geometry/contour.ts';
import { distance } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { Asked, LayerAsMade } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import { type Cover, coverOf } from '../written/centre.ts';
import type { ProvedPiece } from '../written/piece.ts';

/** Share of its area that a layer may be off, %: rounding of a file's numbers does a thousandth of that. */
export const areaLimit = 0.01;

/** Area under which a layer has no middle to speak of, mm². */
const leastArea = 1e-3;

/** Of a smaller area a share is that of this one, mm²: rounding moves edges by a ten-thousandth whatever they enclose. */
const smallArea = 25;

/** How much an area, mm², is off what it was made with, %. */
export const areaOff = (area: number, made: number): number =>
  (Math.abs(area - made) / Math.max(made, smallArea)) * 100;

/** Places are written to this at the worst off either way, mm. */
const halfStep = 0.00005;

/**
 * What rounding may move the middle of a small layer by, mm: the area along all its edges that it may add or take, at the farthest from the
 * middle. That of hairs at both ends of a wrap it moves by tenths of a millimetre.
 */
function movedByRounding(shapes: readonly (readonly Contour[])[], { area, middle }: Cover): number {
  if (!(area < smallArea)) return 0;
  const contours = shapes.flat();
  const { minX, minY, maxX, maxY } = hullBox(contours);
  const reach = Math.hypot(
    Math.max(maxX - middle.x, middle.x - minX),
    Math.max(maxY - middle.y, middle.y - minY),
  );
  const edge = contours.reduce((sum, contour) => sum + contourLength(contour), 0);
  return (halfStep * edge * reach) / area;
}

/** A piece as far as its layers go. */
export type RegisteredPiece = Pick<ProvedPiece, 'number' | 'layers' | 'shift'>;

interface Off {
  /** Of the middle, mm. */
  readonly middle: number;
  /** Of the area, %. */
  readonly area: number;
}

const gone: Off = { middle: Number.NaN, area: 100 };

function offOf({ layer, area, middle: { right, up } }: LayerAsMade, piece: RegisteredPiece | undefined): Off {
  const found = piece?.layers.find(({ name }) => name === layer);
  // A layer that shows nothing on a piece is not in its file.
  if (area < leastArea) return { middle: 0, area: found && found.shapes.length > 0 ? 100 : 0 };
  if (!piece || !found) return gone;
  // A layer's own place is told from the foot end of the line `seam-start`, as it lies on the sheet.
  const wanted = { x: right + piece.shift.x, y: up + piece.shift.y };
  const cover = coverOf(found.shapes, wanted);
  return {
    middle: Math.max(0, distance(cover.middle, wanted) - movedByRounding(found.shapes, cover)),
    area: areaOff(cover.area, area),
  };
}

/** Nothing where it is not known how the layers were made. */
export function registerChecks(
  pieces: readonly RegisteredPiece[],
  { layers = [] }: Pick<Asked, 'layers'>,
): Check[] {
  if (layers.length === 0) return [];
  const offs = layers.map((made) =>
    offOf(
      made,
      pieces.find(({ number }) => number === made.piece),
    ),
  );
  return [
    atMost({
      rule: 'register',
      value: largest(offs.map(({ middle }) => middle)),
      limit: precision,
      unit: 'mm',
      says: 'the middle of a layer off where it was made, so that layers would not fall together',
    }),
    atMost({
      rule: 'art-whole',
      value: largest(offs.map(({ area }) => area)),
      limit: areaLimit,
      unit: '%',
      says: 'area of a layer off what it was made with',
    }),
  ];
}

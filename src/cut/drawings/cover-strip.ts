// Cover strips: narrow strips of the job's film laid over where pieces meet, as templates of their own.
import { type FlatWall, flatWall } from '../../unroll/flat-wall.ts';
import { type Template, templateOf } from '../../unroll/template.ts';

/**
 * The strip over a seam, straight, its middle line up the wall at turn 0; drawn upright, about turn 0.5 of its sheet.
 * Its ends are level where the wall is one cone, else square. Trims as those of the piece it lies on.
 */
export function stripAlongSeam(
  wall: FlatWall,
  width: number,
  piece: Pick<Template, 'band' | 'trim'>,
): Template {
  const { band, trim } = piece;
  const middle = { turn: 0.5, offset: 0 };
  return {
    wall,
    band,
    trim,
    overlap: 0,
    piece: { from: band.from - trim.foot, to: band.to + trim.lip },
    left: { turn: 0.5, offset: -width / 2 },
    right: { turn: 0.5, offset: width / 2 },
    seam: { start: middle, finish: middle },
    shape: 'rectangle',
  };
}

/** The wall of a strip up a wall that bends: so narrow that it lies as on a cylinder. */
export const squareWall = ({ radius, reference }: FlatWall): FlatWall => flatWall(radius, 0, reference);

/** The strip over a level joint all the way around, half of it either side; `clear` as in a wrap's template. */
export const stripAlongJoint = (
  wall: FlatWall,
  width: number,
  at: { readonly along: number; readonly clear?: number },
): Template =>
  templateOf(wall, {
    band: { from: at.along - width / 2, to: at.along + width / 2 },
    trim: { lip: 0, foot: 0 },
    overlap: 0,
    ...(at.clear === undefined ? {} : { clear: at.clear }),
  });

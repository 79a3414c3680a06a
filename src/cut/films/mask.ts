// A mask whose edge follows the silhouette of what is laid on the wall and that covers the rest to the foot or to the lip; and its
// negative, a window to spray through behind what is laid.

import { moveContour } from '../../geometry/affine.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { shapeArea, tightBox } from '../../geometry/measure.ts';
import { closedUp, offsetShapes } from '../../geometry/offset.ts';
import { clippedShapes, filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { girthAt, turnMotion } from '../../unroll/flat-wall.ts';
import { grownTemplate, outline, type Template } from '../../unroll/template.ts';
import { seenShapes } from './hidden-edges.ts';
import { beyondSilhouette, filledOf } from './silhouette.ts';

export interface MaskOptions {
  readonly template: Template;
  /** What is laid on the wall, each once, in the flat wall's frame. */
  readonly decal: readonly Shape[];
  /** What is covered: from the decal's lower edge to the foot, or from its upper edge to the lip. */
  readonly covers: 'foot' | 'lip';
  /** mm that the mask's edge stays away from the decal. */
  readonly standOff: number;
  /** Radius that the mask is rounded to where it stands up into the decal's hollows; what is narrower than twice it is left open, mm. */
  readonly smooth: number;
}

type OnTemplate = Pick<MaskOptions, 'template' | 'decal'>;

/** Less than this is the rounding of areas that only touch, mm². */
const leastArea = 0.01;

/** How far past the ends of the piece everything is looked at, so that they are the same line, mm, besides what smoothing needs. */
const beyond = 20;

/** How far past its edge the piece's area is followed up or down the wall, mm. */
const past = 5;

/** A curve that the piece's sides cut is looked at so far past them, in turns. */
const mostTurns = 0.5;

/**
 * The pieces that a mask falls into: one where the decal leaves it whole. Both of its sides end on one place of the wall, since
 * the silhouette is followed past them. On the sheet its edge stays `standOff` away from the decal, and no closer anywhere.
 */
export function maskShapes({ template, decal, covers, standOff, smooth }: MaskOptions): Shape[] {
  const { wall, piece, left, right } = template;
  const least = Math.min(girthAt(wall, piece.from), girthAt(wall, piece.to));
  const more = Math.min(mostTurns, (right.offset - left.offset + 4 * smooth + beyond) / least);
  const seen = seenShapes(filledOf(decal), { wall, side: covers, grown: standOff });
  const beyondIt = beyondSilhouette(offsetShapes(seen, standOff), {
    wall,
    side: covers,
    until: covers === 'foot' ? piece.to + past : piece.from - past,
    turns: { from: -more, to: 1 + more },
  });
  const open = smooth > 0 ? closedUp(beyondIt, smooth) : beyondIt;
  return clippedShapes([{ contours: [outline(template)] }], open, 'difference', chordTolerance)
    .filter((shape) => shapeArea(shape) > leastArea)
    .sort((a, b) => shapeArea(b) - shapeArea(a));
}

/** The whole decal without its holes, as often as the piece covers its place. */
export function decalOnPiece({ template, decal }: OnTemplate): Shape[] {
  const copies = copiesOf(template, filledOf(decal)).flat();
  const box = tightBox([outline(grownTemplate(template, past))]);
  return copies.filter(({ contours }) => {
    const { minX, maxX } = tightBox(contours);
    return maxX > box.minX && minX < box.maxX;
  });
}

/**
 * A pattern that goes around, without its holes: as far as `room` mm past the piece, so that its ends lie outside. Its copies to
 * either side hold the ends that it has within the piece's overlap.
 */
export function patternOnPiece({ template, decal }: OnTemplate, room: number): Shape[] {
  const near = [{ contours: [outline(grownTemplate(template, past + room))] }];
  const seen = copiesOf(template, filledOf(decal)).flatMap((copy) =>
    clippedShapes(copy, near, 'intersection', chordTolerance),
  );
  return filledOf(seen);
}

/** Shapes a turn before, in place, and a turn after. */
const copiesOf = ({ wall }: Template, shapes: readonly Shape[]): Shape[][] =>
  [-1, 0, 1].map((turn) => {
    const move = turnMotion(wall, turn);
    return shapes.map(({ contours }) => ({ contours: contours.map((one) => moveContour(move, one)) }));
  });

/** The openings of a window: what is laid, grown by so much, less where it is negative; as far as the piece goes. `onPiece`: as `decalOnPiece` gives it. */
export function windowShapes(template: Template, onPiece: readonly Shape[], grow: number): Shape[] {
  const all = onPiece.flatMap(({ contours }) => contours);
  const grown = offsetShapes(filledShapes(all, 'nonzero', chordTolerance), grow);
  return clippedShapes(
    grown,
    [{ contours: [outline(grownTemplate(template, past / 2))] }],
    'intersection',
    chordTolerance,
  );
}

/** The border of a mask in one piece. */
export const borderOf = ([mask]: readonly Shape[]): Contour | undefined => mask?.contours[0];

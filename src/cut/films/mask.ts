// A mask whose edge follows the silhouette of what is laid on the wall and that covers the rest to the foot or to the lip; and its
// negative, a window to spray through behind what is laid.

import { moveContour } from '../../geometry/affine.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { closedUp, offsetShapes } from '../../geometry/offset.ts';
import { clippedShapes, filledShapes } from '../../geometry/regions.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
import { type FlatWall, girthAt, turnMotion } from '../../unroll/flat-wall.ts';
import { grownTemplate, outline, type Template, turnsOfPiece } from '../../unroll/template.ts';
import { comesAgain, patchOutline } from '../guide/wall-patch.ts';
import { seenShapes } from './hidden-edges.ts';
import { beyondSilhouette, filledOf, reachOf } from './silhouette.ts';

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

/** And past the sides of a steep cone's sheet by no more than this share of the room that they leave between them: past it lies the other end. */
const shareOfGap = 0.45;

/**
 * The turns that are looked at, as far past turn 0 as past turn 1, so that both ends are the same line; beside a handle as far past the two
 * sides. A sheet that closed to a ring would have 1 over the sine of its half angle.
 */
function turnsLookedAt(template: Template, smooth: number): { readonly from: number; readonly to: number } {
  const { wall, piece } = template;
  const least = Math.min(girthAt(wall, piece.from), girthAt(wall, piece.to));
  const own = turnsOfPiece(template);
  const from = Math.min(own.from, 1 - own.to);
  const gap = shareOfGap * (1 / Math.abs(wall.sine) - (1 - 2 * from));
  const more = Math.max(0, Math.min(mostTurns, gap, (4 * smooth + beyond) / least));
  return { from: from - more, to: 1 - from + more };
}

/**
 * The pieces that a mask falls into: one where the decal leaves it whole. Both of its sides end on one place of the wall, since
 * the silhouette is followed past them. On the sheet its edge stays `standOff` away from the decal, and no closer anywhere.
 */
export function maskShapes({ template, decal, covers, standOff, smooth }: MaskOptions): Shape[] {
  const { wall, piece } = template;
  const seen = seenShapes(filledOf(decal), { wall, side: covers, grown: standOff });
  const beyondIt = beyondSilhouette(offsetShapes(seen, standOff), {
    wall,
    side: covers,
    until: covers === 'foot' ? piece.to + past : piece.from - past,
    turns: turnsLookedAt(template, smooth),
  });
  const open = smooth > 0 ? closedUp(beyondIt, smooth) : beyondIt;
  return clippedShapes([{ contours: [outline(template)] }], open, 'difference', chordTolerance)
    .filter((shape) => shapeArea(shape) > leastArea)
    .sort((a, b) => shapeArea(b) - shapeArea(a));
}

/** The whole decal without its holes, as often as the piece covers its place. */
export const decalOnPiece = ({ template, decal }: OnTemplate): Shape[] =>
  decalNear({ template, decal }, past);

/** Whether the piece comes as near to a decal as the mask's edge is to. */
export function reachesPiece({
  template,
  decal,
  standOff,
}: OnTemplate & Pick<MaskOptions, 'standOff'>): boolean {
  const near = decalNear({ template, decal }, Math.max(past, standOff));
  return clipped(offsetShapes(near, standOff), [{ contours: [outline(template)] }]).length > 0;
}

/** The decal as often as the piece, or what lies no further than `by` mm beside it, covers its place. */
function decalNear({ template, decal }: OnTemplate, by: number): Shape[] {
  const { wall } = template;
  const { from, to } = turnsOfPiece(grownTemplate(template, by));
  const laid = filledOf(decal).flatMap((shape) => {
    const [outer] = shape.contours;
    return outer ? [{ shape, reach: reachOf(outer, wall) }] : [];
  });
  return comesAgain.flatMap((k) => {
    const seen = laid.filter(({ reach }) => reach.to.turn + k > from && reach.from.turn + k < to);
    return turned(
      seen.map(({ shape }) => shape),
      wall,
      k,
    );
  });
}

/**
 * A pattern that goes around, without its holes: as far as `room` mm past the piece, so that its ends lie outside. Its copies to
 * either side hold the ends that it has within the piece's overlap.
 */
export function patternOnPiece({ template, decal }: OnTemplate, room: number): Shape[] {
  const { wall } = template;
  const grown = grownTemplate(template, past + room);
  const near = [{ contours: [outline(grown)] }];
  const { from, to } = turnsOfPiece(grown);
  const filled = filledOf(decal);
  // Of a copy only what has turns of the piece: on a sheet of more than half a ring the rest would lie where other turns are.
  const seen = comesAgain.flatMap((k) => {
    const [first, last] = [Math.max(from, from - k), Math.min(to, to - k)];
    if (first >= last) return [];
    const own = { contours: [patchOutline(grown, first, last, grown.piece)] };
    const copy = k === 0 ? filled : turned(clipped(filled, [own]), wall, k);
    return clipped(copy, near);
  });
  return filledOf(seen);
}

const clipped = (shapes: readonly Shape[], by: readonly Shape[]): Shape[] =>
  clippedShapes(shapes, by, 'intersection', chordTolerance);

/** Shapes moved around by whole turns. */
function turned(shapes: readonly Shape[], wall: FlatWall, turns: number): Shape[] {
  const move = turnMotion(wall, turns);
  return shapes.map(({ contours }) => ({ contours: contours.map((one) => moveContour(move, one)) }));
}

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

// How the lines of a cut file are taken by the blade: in which order, each from where.
import type { Drawing, DrawnGroup, DrawnPath } from '../../drawing/drawing.ts';
import { atHand, keptContour } from '../../geometry/kept-contour.ts';
import type { Point } from '../../geometry/point.ts';
import { inCutOrder } from '../../sheet/cut-order.ts';
import { startedWell } from '../../sheet/cut-start.ts';

/** Where a blade stands before it cuts: the corner of the page that all places are told from. */
export const bladeHome: Point = { x: 0, y: 0 };

const isCut = ({ role }: DrawnGroup): boolean => role === 'artwork' || role === 'outline';

/** Groups with the paths of what is cut in the order of the blade: each layer by itself, outlines after all of them. */
export const groupsInOrder = (groups: readonly DrawnGroup[]): readonly DrawnGroup[] =>
  groups.map((group) => (isCut(group) ? { ...group, paths: inCutOrder(group.paths, bladeHome) } : group));

/**
 * Groups with the lines of what is cut begun where a blade starts well. Done once, when a piece is drawn: begun again, a
 * line might be parted a second time, and the piece would not be the same on its sheet.
 */
const groupsBegunWell = (groups: readonly DrawnGroup[]): readonly DrawnGroup[] =>
  groups.map((group) => (isCut(group) ? { ...group, paths: group.paths.map(begunWell) } : group));

const begunWell = (path: DrawnPath): DrawnPath => ({
  ...path,
  contours: path.contours.map((contour) => keptContour(startedWell(atHand(contour)))),
});

/** A cut drawing and its guide with their lines in that order; both hold the same lines. */
export function drawingsInOrder<T extends { readonly cut: Drawing; readonly guide: Drawing }>(
  drawings: T,
): T {
  const { cut, guide } = drawings;
  const inOrder = groupsInOrder(groupsBegunWell(cut.groups));
  const ordered = new Map(cut.groups.map((group, i) => [group, inOrder[i] ?? group]));
  return {
    ...drawings,
    cut: { ...cut, groups: [...ordered.values()] },
    guide: { ...guide, groups: guide.groups.map((group) => ordered.get(group) ?? group) },
  };
}

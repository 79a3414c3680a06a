// How the lines of a cut file are taken by the blade: in which order, each from where.
import type { Drawing, DrawnGroup } from '../drawing/drawing.ts';
import type { Point } from '../geometry/point.ts';
import { inCutOrder } from '../sheet/cut-order.ts';

/** Where a blade stands before it cuts: the corner of the page that all places are told from. */
export const bladeHome: Point = { x: 0, y: 0 };

const isCut = ({ role }: DrawnGroup): boolean => role === 'artwork' || role === 'outline';

/** Groups with the paths of what is cut in the order of the blade: each layer by itself, outlines after all of them. */
export function groupsInOrder(groups: readonly DrawnGroup[]): readonly DrawnGroup[] {
  return groups.map((group) =>
    isCut(group) ? { ...group, paths: inCutOrder(group.paths, bladeHome) } : group,
  );
}

/** A cut drawing and its guide with their lines in that order; both hold the same lines. */
export function drawingsInOrder<T extends { readonly cut: Drawing; readonly guide: Drawing }>(
  drawings: T,
): T {
  const { cut, guide } = drawings;
  const inOrder = groupsInOrder(cut.groups);
  const ordered = new Map(cut.groups.map((group, i) => [group, inOrder[i] ?? group]));
  return {
    ...drawings,
    cut: { ...cut, groups: [...ordered.values()] },
    guide: { ...guide, groups: guide.groups.map((group) => ordered.get(group) ?? group) },
  };
}

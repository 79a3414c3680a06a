// Where a delivered drawing lies on the wall: its seam lines tell.
import type { Drawing, DrawnGroup, Role } from '../drawing/drawing.ts';
import { Refused, stop } from '../finding.ts';
import { type Point, subtract } from '../geometry/point.ts';
import { edgePoint, type Template } from '../unroll/template.ts';

export const groupsOf = (drawing: Drawing, role: Role): DrawnGroup[] =>
  drawing.groups.filter((group) => group.role === role);

/**
 * The place of the flat wall's origin in a guide, mm. The guide's `seam-start` begins at the foot of the finished band.
 * @throws Refused where the guide has no such line.
 */
export function originOf(guide: Drawing, template: Template, file: string): Point {
  const paths = groupsOf(guide, 'seam').flatMap((group) => group.paths);
  const start = paths.find(({ id }) => id === 'seam-start')?.contours[0]?.segments[0]?.from;
  if (!start) throw new Refused([stop('no-seam', { file }, 'has no path "seam-start"; make the job again')]);
  return subtract(start, edgePoint(template.wall, template.seam.start, template.band.from));
}

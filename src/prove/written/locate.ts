// Where a delivered drawing lies on the wall: its seam lines tell.
import type { Drawing, DrawnGroup, Role } from '../../drawing/drawing.ts';
import { Refused, stop } from '../../finding.ts';
import type { Contour } from '../../geometry/contour.ts';
import { lineCrossings } from '../../geometry/crossings.ts';
import { type Point, subtract } from '../../geometry/point.ts';
import { pointAt } from '../../geometry/segment.ts';
import { edgePoint, type Template } from '../../unroll/template.ts';

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

/** Where the level line of a motif's guide crosses its plumb line; undefined where it does not. */
export function crossingOf(plumb: Contour, level: Contour): Point | undefined {
  const [foot, lip] = [plumb.segments[0]?.from, plumb.segments.at(-1)?.to];
  if (!foot || !lip) return undefined;
  return level.segments.flatMap((s) =>
    lineCrossings(s, foot, subtract(lip, foot)).map((t) => pointAt(s, t)),
  )[0];
}

/**
 * The place that a motif is laid about, in its guide: where the level line crosses the plumb line, mm.
 * @throws Refused where the guide has no such lines.
 */
export function placeOf(guide: Drawing, file: string): Point {
  const lineNamed = (id: string) =>
    guide.groups.flatMap(({ paths }) => paths).find((path) => path.id === id)?.contours[0];
  const [plumb, level] = [lineNamed('plumb-line'), lineNamed('level-line')];
  const place = plumb && level && crossingOf(plumb, level);
  if (place) return place;
  const says = 'has no plumb line and level line that cross; make the job again';
  throw new Refused([stop('no-lines', { file }, says)]);
}

// Lines of written files, read back.
import { readSvg } from '../../src/deliver/read-svg.ts';
import type { Affine } from '../../src/geometry/affine.ts';
import type { Contour } from '../../src/geometry/contour.ts';

/** The first contour of a role in a written file, or that of an id. */
export function contourIn(text: string, role: string, id?: string): Contour {
  const paths = readSvg(text, 'a file')
    .groups.filter((group) => group.role === role)
    .flatMap((group) => group.paths);
  const contour = (id === undefined ? paths[0] : paths.find((path) => path.id === id))?.contours[0];
  if (!contour) throw new Error(`no ${role} ${id}`);
  return contour;
}

/** The frame of a line: from its own start, upwards along it. */
export function frameOf(from: { x: number; y: number }, to: { x: number; y: number }): Affine {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const [a, b] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return { a, b, c: -b, d: a, e: from.x, f: from.y };
}

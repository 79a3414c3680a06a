// Source: E. M. Longfield, Sheet Metal Drafting (1921), see source.md.
import { describe, expect, test } from 'vitest';
import type { Contour } from '../../../src/geometry/contour.ts';
import { distance, type Point } from '../../../src/geometry/point.ts';
import { edgeLine, outline, templateOf } from '../../../src/unroll/template.ts';
import { expectWithin, expectWithinPart } from '../../closeness.ts';
import { laidByHeight } from '../frustum.ts';
import values from './values.json' with { type: 'json' };

const ends = (contour: Contour): [Point, Point] => {
  const [only] = contour.segments;
  if (!only || contour.segments.length !== 1) throw new Error('not one line');
  return [only.from, only.to];
};

describe.each(values.frustums)('$name', ({ large, small, altitude, halfDifference }) => {
  test.each([
    { foot: small, lip: large },
    { foot: large, lip: small },
  ])('has the slant and the lateral area of the book: foot $foot, lip $lip', ({ foot, lip }) => {
    const laid = laidByHeight(foot, lip, altitude);
    expectWithin(laid.outerRadius - laid.innerRadius, Math.hypot(halfDifference, altitude), 1e-9);
    expectWithinPart(laid.lateralArea, ((Math.PI * large + Math.PI * small) / 2) * laid.slant, 1e-7);
  });

  test.each([
    { foot: small, lip: large },
    { foot: large, lip: small },
  ])('has a lock parallel to its seam line, not towards the apex: foot $foot, lip $lip', ({ foot, lip }) => {
    const { wall, slant } = laidByHeight(foot, lip, altitude);
    const template = templateOf(wall, {
      band: { from: 0, to: slant },
      trim: { lip: 0, foot: 0 },
      overlap: values.lock,
    });
    const seam = ends(edgeLine(wall, template.seam.finish, 0, slant));
    // The lock's edge as it stands in the outline that is cut: the one line on the right.
    const sides = outline(template).segments.filter(({ kind }) => kind === 'line');
    const edge = sides.find(({ from }) => from.x > 0);
    if (!edge) throw new Error('no edge on the right');
    const along = { x: (seam[1].x - seam[0].x) / slant, y: (seam[1].y - seam[0].y) / slant };
    for (const p of [edge.from, edge.to]) {
      const beside = (p.x - seam[0].x) * -along.y + (p.y - seam[0].y) * along.x;
      expectWithin(beside, values.lock, 1e-9, 'width of the lock');
    }
    const length = distance(edge.from, edge.to);
    const turned = ((edge.to.x - edge.from.x) * along.y - (edge.to.y - edge.from.y) * along.x) / length;
    expectWithin(turned, 0, 1e-12, 'angle to the seam');
    // Continued, the seam line meets the apex; the lock's edge passes it by.
    const apex = { x: 0, y: 1 / wall.curvature };
    const off = (p: Point) => Math.abs((apex.x - p.x) * along.y - (apex.y - p.y) * along.x);
    expectWithin(off(seam[0]), 0, 1e-9);
    expect(off(edge.from)).toBeGreaterThan(0.9 * values.lock);
  });
});

// The vessel as triangles: every corner of the sheet against the closed forms of a cylinder and a cone laid flat.
import { Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { rolledSolid, sheetSurface } from '../../../src/picture/rolled/rolled-solid.ts';
import type { Surface } from '../../../src/picture/rolled/rolled-surface.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { aVessel } from '../a-vessel.ts';

const corner = ({ positions }: Surface, i: number): Vector3 => new Vector3().fromArray(positions, 3 * i);
const cornerNormal = ({ normals }: Surface, i: number): Vector3 => new Vector3().fromArray(normals, 3 * i);
const countOf = ({ positions }: Surface): number => positions.length / 3;

/** Single precision at sizes of 200 mm: 200 / 2^24 = 1.2e-5 mm. Places are shares of a box, so a few of those. */
const single = 1e-4;

/** Place of a corner on the flat drawing, mm. */
function onDrawing(sheet: ReturnType<typeof sheetSurface>, i: number) {
  const { box, places } = sheet;
  return {
    x: box.x + (places[2 * i] ?? Number.NaN) * box.width,
    y: box.y + (places[2 * i + 1] ?? Number.NaN) * box.height,
  };
}

/** Turn of a corner, in (-0.5, 0.5] about the front: `atan2(-x, -z)` is 0 where turn is 0.5. */
const turnOffFront = ({ x, z }: Vector3): number => Math.atan2(-x, -z) / (2 * Math.PI);

test('a cylinder’s sheet: across the drawing is the arc around the axis, up it the height', () => {
  const vessel = aVessel({ footRadius: 40, halfAngle: 0, length: 120, band: { from: 10, to: 110 } });
  const sheet = sheetSurface(vessel);
  const middle = 60;
  for (let i = 0; i < countOf(sheet); i++) {
    const at = corner(sheet, i);
    expectWithin(Math.hypot(at.x, at.z), 40, single, 'radius');
    const flat = onDrawing(sheet, i);
    // Both ends are the seam, where the turn is half a turn off the front either way.
    const arc = Math.abs(turnOffFront(at)) * 2 * Math.PI * 40;
    expectWithin(Math.abs(flat.x - vessel.origin.x), arc, single, 'across');
    expectWithin(vessel.origin.y - flat.y, at.y - middle, single, 'up');
  }
});

// Development of a cone (references, 4.1; any text on sheet metal): a point at slant distance s from the apex and
// azimuth A lies on the pattern at the same distance s from the apex's place, at the angle A sin a.
describe.each([
  ['wider at the lip', 0.1],
  ['wider at the foot', -0.08],
])('a cone %s', (_, halfAngle) => {
  const vessel = aVessel({ footRadius: 40, halfAngle, length: 120, band: { from: 10, to: 110 } });
  const sheet = sheetSurface(vessel);
  const sine = Math.sin(halfAngle);
  const apexHeight = -40 / Math.tan(halfAngle);
  const apex = new Vector3(0, apexHeight, 0);
  const reference = (40 + 60 * sine) / sine;
  const flatApex = { x: vessel.origin.x, y: vessel.origin.y + reference };

  test('keeps every corner’s distance from the apex, and its angle times the sine', () => {
    for (let i = 0; i < countOf(sheet); i++) {
      const at = corner(sheet, i);
      const flat = onDrawing(sheet, i);
      const [dx, dy] = [flat.x - flatApex.x, flat.y - flatApex.y];
      const slant = at.distanceTo(apex);
      expectWithin(Math.hypot(dx, dy), slant, 3 * single, 'slant');
      const angle = Math.atan2(dx, -dy * Math.sign(sine));
      const wanted = Math.abs(turnOffFront(at) * 2 * Math.PI * sine);
      expectWithin(Math.abs(angle) * slant, wanted * slant, 3 * single, 'around');
    }
  });

  test('has the sheet’s right side at growing turns', () => {
    // A quarter of the way from the seam to the front is on the viewer's left of the front, and left on the drawing.
    const quarter = 60;
    expect(onDrawing(sheet, quarter).x).toBeLessThan(vessel.origin.x);
    expectWithin(Math.abs(turnOffFront(corner(sheet, quarter))), 0.25, 1e-6);
    expect(corner(sheet, quarter).x).toBeGreaterThan(39);
  });
});

test('every triangle faces out, along the normals of its corners', () => {
  const vessel = aVessel({ footRadius: 40, halfAngle: 0.1, length: 120, band: { from: 10, to: 110 } });
  const { body, sheet, coats, seam } = rolledSolid(vessel, [{ from: 5, to: 115 }]);
  expect(coats).toHaveLength(1);
  for (const surface of [body, sheet, ...coats, ...(seam ? [seam] : [])]) {
    let counted = 0;
    for (let t = 0; t < surface.triangles.length; t += 3) {
      const [a = 0, b = 0, c = 0] = surface.triangles.subarray(t, t + 3);
      const out = corner(surface, b)
        .sub(corner(surface, a))
        .cross(corner(surface, c).sub(corner(surface, a)));
      // Rings in one place, where two faces of the body meet, span nothing; so does the middle of foot and floor.
      if (out.length() < 1e-3) continue;
      counted++;
      const mean = [a, b, c].reduce((sum, i) => sum.add(cornerNormal(surface, i)), new Vector3());
      expect(out.normalize().dot(mean.normalize())).toBeGreaterThan(0.99);
    }
    expect(counted).toBeGreaterThan(40);
  }
});

test('triangles stay within a hundredth of the round wall they stand for', () => {
  const radius = 40;
  const sheet = sheetSurface(
    aVessel({ footRadius: radius, halfAngle: 0, length: 60, band: { from: 5, to: 55 } }),
  );
  const middle = corner(sheet, 0).add(corner(sheet, 1)).multiplyScalar(0.5);
  expectAtMost(radius - Math.hypot(middle.x, middle.z), 0.01);
});

test('beside a handle there is no line of a seam, and the sheet leaves its place free', () => {
  const vessel = aVessel({
    footRadius: 40,
    halfAngle: 0.02,
    length: 100,
    band: { from: 10, to: 90 },
    handle: 30,
  });
  const { seam, sheet } = rolledSolid(vessel, []);
  expect(seam).toBeUndefined();
  // The width of the handle along the girth: both sides of it together.
  const ends = [corner(sheet, 0), corner(sheet, 240)].map(({ x, z }) => Math.abs(Math.atan2(x, z)));
  const radius = 40 + 10 * Math.sin(0.02);
  expectWithin((ends[0] ?? 0) * radius + (ends[1] ?? 0) * radius, 30, 0.05);
});

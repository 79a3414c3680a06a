// What is seen on a wall beside the sheet, as triangles: against the closed forms of a cylinder.
import { Vector3 } from 'three';
import { expect, test } from 'vitest';
import { wallExtras } from '../../../src/picture/rolled/rolled-extras.ts';
import { rolledSolid } from '../../../src/picture/rolled/rolled-solid.ts';
import type { Surface } from '../../../src/picture/rolled/rolled-surface.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { aVessel } from '../a-vessel.ts';

const radius = 40;
const sizes = { footRadius: radius, halfAngle: 0, length: 100, band: { from: 10, to: 90 } };
/** Single precision at sizes of 100 mm. */
const single = 1e-5;

const corners = ({ positions }: Surface): readonly Vector3[] =>
  Array.from({ length: positions.length / 3 }, (_, i) => new Vector3().fromArray(positions, 3 * i));
const most = (surface: Surface, value: (corner: Vector3) => number): number =>
  Math.max(...corners(surface).map(value));

/** How many triangles are seen from behind where their corners' normals point at the viewer. */
function turnedInwards(surface: Surface): number {
  const at = corners(surface);
  let count = 0;
  for (let i = 0; i < surface.triangles.length; i += 3) {
    const [a, b, c] = [...surface.triangles.slice(i, i + 3)];
    const [p, q, r] = [at[a ?? -1], at[b ?? -1], at[c ?? -1]];
    if (!p || !q || !r) throw new Error('a triangle without its corners');
    const across = q.clone().sub(p).cross(r.clone().sub(p));
    const normal = new Vector3().fromArray(surface.normals, 3 * (a ?? 0));
    if (across.dot(normal) < -single) count++;
  }
  return count;
}

test('a handle is as wide as the chord of its span and stands half a radius off the wall', () => {
  const { handle, lap } = wallExtras(aVessel({ ...sizes, handle: 24 }));
  if (!handle) throw new Error('no handle');
  // A chord: 2 r sin(s / 2r) for an arc s.
  expectWithin(
    most(handle, ({ x }) => x),
    radius * Math.sin(24 / (2 * radius)),
    single,
  );
  expectWithin(
    most(handle, ({ z }) => z),
    1.5 * radius,
    single,
  );
  expect(turnedInwards(handle)).toBe(0);
  expect(lap).toBeUndefined();
});

test('a cover strip takes its width around, all of the band up, and hides the line of the seam', () => {
  const vessel = { ...aVessel(sizes), strip: 10 };
  const { extras, seam } = rolledSolid(vessel, []);
  const [strip, second] = extras.strips;
  if (!strip) throw new Error('no strip');
  const turned = ({ x, z }: Vector3) => Math.atan2(x, z);
  expectWithin(most(strip, turned), 5 / radius, single);
  expectWithin(-most(strip, (at) => -turned(at)), -5 / radius, single);
  expectWithin(
    most(strip, ({ y }) => y),
    90,
    single,
  );
  expect(turnedInwards(strip)).toBe(0);
  expect([second, seam, extras.lap]).toEqual([undefined, undefined, undefined]);
});

test('a strip over a border between rows goes all the way around', () => {
  const covers = { width: 8, turns: [], along: [50] };
  const [strip] = wallExtras({ ...aVessel(sizes), covers }).strips;
  if (!strip) throw new Error('no strip');
  expectWithin(
    most(strip, ({ y }) => y),
    54,
    single,
  );
  expectWithin(
    most(strip, ({ x }) => x),
    radius + 0.15,
    1e-3,
  );
});

test('the edge of an overlap lies past the seam by the overlap', () => {
  const vessel = aVessel(sizes);
  const { lap } = wallExtras(vessel);
  if (!lap) throw new Error('no lap');
  const arc = most(lap, ({ x, z }) => Math.atan2(x, z)) * radius;
  expectWithin(arc, vessel.overlap + 0.2, 1e-3);
  expectAtMost(turnedInwards(lap), 0);
});

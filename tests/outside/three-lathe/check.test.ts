// Source: the 3D library three, see source.md.
import { LatheGeometry, Vector2, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { type Wall, wallAt, wallGirthAt, wallLength, wallOf } from '../../../src/blank/wall.ts';
import { signedArea } from '../../../src/geometry/measure.ts';
import { type GoreLevels, goreOutline } from '../../../src/unroll/gores.ts';
import { aBlank } from '../../blank/a-blank.ts';
import { expectAtMost, expectWithinPart } from '../../closeness.ts';
import values from './values.json' with { type: 'json' };

const around = 720;
const up = 720;

/** The wall as triangles, by its radii and heights at even places along it. */
function triangles(wall: Wall): LatheGeometry {
  const points = Array.from({ length: up + 1 }, (_, i) => {
    const { radius, height } = wallAt(wall, (wallLength(wall) * i) / up);
    return new Vector2(radius, height);
  });
  return new LatheGeometry(points, around);
}

function areaOf(geometry: LatheGeometry): number {
  const position = geometry.getAttribute('position');
  const index = geometry.getIndex();
  if (!index) throw new Error('a lathe is indexed');
  const corner = (i: number) => new Vector3().fromBufferAttribute(position, index.getX(i));
  let area = 0;
  for (let i = 0; i < index.count; i += 3) {
    const [a, b, c] = [corner(i), corner(i + 1), corner(i + 2)];
    area += b.sub(a).cross(c.sub(a)).length() / 2;
  }
  return area;
}

describe.each(values.walls)('$name', ({ stations }) => {
  const { wall } = wallOf(aBlank(stations, { wall: 'smooth' }));
  const length = wallLength(wall);
  const area = areaOf(triangles(wall));
  const gores = {
    at: (along: number) => {
      const { radius, lean } = wallAt(wall, along);
      return { radius, slope: Math.sin(lean) };
    },
  };
  const areaOfGores = (count: number, levels: GoreLevels): number =>
    count *
    Math.abs(signedArea(goreOutline(gores, { count, levels, spacing: 3, band: { from: 0, to: length } })));

  // Single precision positions: parts of 1e-7; the triangles themselves are 3e-6 short.
  test('has the area of its girths added up along it', () => {
    let sum = 0;
    for (let i = 0; i < 2000; i++) sum += (wallGirthAt(wall, ((i + 0.5) * length) / 2000) * length) / 2000;
    expectWithinPart(area, sum, 1e-5);
  });

  test.each([4, 6, 8, 12, 24])(
    'is covered by %i gores with straight levels, whose area is its own',
    (count) => {
      expectWithinPart(areaOfGores(count, 'straight'), area, 1.5e-5);
    },
  );

  // Gores with levels in arcs have their middle at true length, and so too much at their edges where the wall bulges:
  // over all of a gore a third of the strain at its edge, K w²/8.
  test('is covered by gores with levels in arcs within 1.5/N² of its area, nearer and nearer by a quarter', () => {
    const off = [6, 12, 24].map((count) => areaOfGores(count, 'arcs') / area - 1);
    [6, 12, 24].forEach((count, i) => {
      expectAtMost(Math.abs(off[i] ?? 1), 1.5 / (count * count));
    });
    const [six = 0, twelve = 0, twentyFour = 0] = off;
    expect(six / twelve).toBeGreaterThan(3.8);
    expect(six / twelve).toBeLessThan(4.2);
    expect(twelve / twentyFour).toBeGreaterThan(3.6);
    expect(twelve / twentyFour).toBeLessThan(4.4);
  });
});

import { describe, expect, test } from 'vitest';
import { lineCrossings } from '../../src/geometry/crossings.ts';
import { signedArea } from '../../src/geometry/measure.ts';
import { distance } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { flatWall, toFlat } from '../../src/unroll/flat-wall.ts';
import { arcBetween, goreOutline, goreStrain, goresNeeded, halfWidth } from '../../src/unroll/gores.ts';
import { expectAtMost, expectPointWithin, expectWithin } from '../closeness.ts';
import { ball, barrel, type CurvedGoreWall, cone, nearestOn } from './gore-walls.ts';

const band = { from: 0, to: 90 };
const kinds: readonly { readonly name: string; readonly wall: CurvedGoreWall }[] = [
  { name: 'a barrel', wall: barrel(50, 90, 40, 1) },
  { name: 'a waist', wall: barrel(30, 120, 50, -1) },
  { name: 'a cone', wall: cone(30, 0.25) },
  { name: 'most of a ball', wall: { ...ball(50), at: (along) => ball(50).at(along + 20) } },
];
const levelKinds = ['straight', 'arcs'] as const;

describe.each(kinds)('a gore of $name', ({ wall }) => {
  const options = { count: 8, band, spacing: 5 };

  test.each(levelKinds)(
    'with levels %s is closed, and each piece begins where the one before ends',
    (levels) => {
      const { closed, segments } = goreOutline(wall, { ...options, levels });
      expect(closed).toBe(true);
      segments.forEach((s, i) => {
        expect(s.to).toEqual(segments[(i + 1) % segments.length]?.from);
      });
    },
  );

  test.each(levelKinds)('with levels %s turns no corner up its edge', (levels) => {
    const { segments } = goreOutline(wall, { ...options, levels });
    const steps = Math.ceil(90 / 5);
    for (let i = 1; i < steps; i++) {
      const [a, b] = [segments[i], segments[i + 1]];
      if (a?.kind !== 'cubic' || b?.kind !== 'cubic') throw new Error('an edge is of cubics');
      const [before, after] = [
        Math.atan2(a.to.y - a.c2.y, a.to.x - a.c2.x),
        Math.atan2(b.c1.y - b.from.y, b.c1.x - b.from.x),
      ];
      expectWithin(after, before, 1e-12);
    }
  });

  test('closes around the wall: at every height all widths together are the girth', () => {
    const { segments } = goreOutline(wall, { ...options, levels: 'straight' });
    for (let along = 0.37; along < 90; along += 1.31) {
      const crossings = segments.flatMap((s) =>
        lineCrossings(s, { x: 0, y: -along }, { x: 1, y: 0 }).map((t) => pointAt(s, t).x),
      );
      const width = Math.max(...crossings) - Math.min(...crossings);
      expectWithin(8 * width, 2 * Math.PI * wall.at(along).radius, 2e-3);
    }
  });

  // Around the middle of a level line's cone: its arc, from edge to edge, is the gore's share of the girth.
  test('with levels in arcs has its share of the girth along the arc of every level', () => {
    const { segments } = goreOutline(wall, { ...options, levels: 'arcs' });
    for (let along = 0; along <= 90; along += 1.31) {
      const { radius, slope } = wall.at(along);
      const share = halfWidth(radius, 8);
      const apex = { x: 0, y: -along + radius / slope };
      const slant = radius / Math.abs(slope);
      const angle = share / slant;
      const on = {
        x: apex.x + slant * Math.sin(angle),
        y: apex.y - Math.sign(slope) * slant * Math.cos(angle),
      };
      if (Math.abs(slope) > 1e-6) expectAtMost(nearestOn(segments, on), 2e-4);
    }
  });
});

test('gores with levels in arcs are pieces of the cone itself, on a cone', () => {
  const flat = flatWall(30, 0.25, 0);
  const { segments } = goreOutline(cone(30, 0.25), { count: 6, band, spacing: 9, levels: 'arcs' });
  // The flat cone's own coordinates: a sixth of a turn about its middle, its foot end at y 0.
  const piece = (side: number, along: number) => {
    const [p, middle] = [
      toFlat(flat, { turn: 0.5 + side / 12, along }),
      toFlat(flat, { turn: 0.5, along: 0 }),
    ];
    return { x: p.x - middle.x, y: p.y - middle.y };
  };
  for (const along of [0, 13, 45.5, 90])
    for (const side of [-1, 1]) expectAtMost(nearestOn(segments, piece(side, along)), 1e-9);
  for (const along of [0, 90])
    for (const side of [-0.7, 0, 0.4]) expectAtMost(nearestOn(segments, piece(side, along)), 2e-6);
  expectPointWithin(segments[0]?.from ?? { x: 0, y: 0 }, piece(-1, 0), 1e-9);
});

test('a level arc of up to 30 degrees is a circle to under 1e-6 of its radius, of a quarter turn to 2.8e-4', () => {
  for (const [turn, off] of [
    [Math.PI / 12, 1e-6],
    [Math.PI / 4, 2.8e-4],
    [-Math.PI / 4, 2.8e-4],
  ] as const) {
    const side = { x: -Math.sin(Math.abs(turn)) * 100, y: Math.sign(turn) * (1 - Math.cos(turn)) * 100 };
    const arc = arcBetween(side, { x: -side.x, y: side.y }, -turn, turn);
    for (let t = 0; t <= 1; t += 0.05)
      expectWithin(distance(pointAt(arc, t), { x: 0, y: Math.sign(turn) * 100 }), 100, off * 100);
  }
});

describe('the strain of gores', () => {
  const places = Array.from({ length: 61 }, (_, i) => i * 1.5);

  // K w²/8 to first order (tests/outside/strip-on-a-sphere). Exact for the equator of a ball: a film of the gore's width
  // along the equator, edges true, is stretched by 1/cos(w/2R) - 1 in the middle.
  test('is near that of a strip as wide about the equator of a ball, the nearer the narrower', () => {
    const R = 50;
    const strain = (count: number) => goreStrain(ball(R), ball(R).curvature, count, [(Math.PI / 2) * R]);
    for (const [count, near] of [
      [8, 0.07],
      [16, 0.017],
      [48, 0.002],
    ] as const) {
      const exact = 1 / Math.cos(Math.PI / count) - 1;
      expectWithin(strain(count) / exact, 1, near);
    }
  });

  test('is none on a cone, and a quarter for twice as many gores', () => {
    expect(goreStrain(cone(30, 0.2), () => 0, 4, places)).toBe(0);
    const wall = barrel(50, 90, 40, 1);
    const [six, twelve] = [6, 12].map((n) => goreStrain(wall, wall.curvature, n, places));
    expectWithin((six ?? 0) / (twelve ?? 1), 4, 1e-12);
  });

  test('counts a waist as it counts a barrel', () => {
    const wall = barrel(30, 120, 50, -1);
    const strain = goreStrain(wall, wall.curvature, 8, [50]);
    expectWithin(strain, (Math.PI * 30) ** 2 / (64 * 2 * 120 * 30), 1e-12);
  });
});

describe('the number of gores', () => {
  const wall = barrel(50, 90, 40, 1);

  test('is the fewest even one within what the film stretches, found one by one', () => {
    const places = Array.from({ length: 201 }, (_, i) => (90 * i) / 200);
    for (const stretch of [0.1, 0.03, 0.01, 0.003]) {
      const count = goresNeeded(wall, wall.curvature, band, stretch) ?? Number.NaN;
      expectAtMost(goreStrain(wall, wall.curvature, count, places), stretch);
      if (count > 4) expect(goreStrain(wall, wall.curvature, count - 2, places)).toBeGreaterThan(stretch);
      expect(count % 2).toBe(0);
    }
    // (2 pi 50 / N)² / (8 · 90 · 50) within 0.01: N over 16.56.
    expect(goresNeeded(wall, wall.curvature, band, 0.01)).toBe(18);
  });

  test('is never under 4, and none where 48 are not enough', () => {
    expect(goresNeeded(cone(30, 0.2), () => 0, band, 0)).toBe(4);
    expect(goresNeeded(wall, wall.curvature, band, 1e-4)).toBeUndefined();
  });
});

test('gores with straight levels have all the area of the wall between them, by closed forms', () => {
  const R = 50;
  const whole = { from: 0, to: Math.PI * R };
  for (const count of [4, 6, 12]) {
    const gore = goreOutline(ball(R), { count, band: whole, spacing: 2, levels: 'straight' });
    expectWithin(count * Math.abs(signedArea(gore)), 4 * Math.PI * R * R, 1e-2);
  }
  const gore = goreOutline(cone(30, 0.25), { count: 6, band, spacing: 2, levels: 'straight' });
  expectWithin(6 * Math.abs(signedArea(gore)), Math.PI * 90 * (30 + 30 + 0.25 * 90), 1e-6);
});

test('an overlap moves the right edge of a gore out along its levels, and leaves the left one', () => {
  const wall = barrel(50, 90, 40, 1);
  const options = { count: 8, band, spacing: 3, levels: 'arcs' } as const;
  const [plain, wide] = [goreOutline(wall, options), goreOutline(wall, { ...options, overlap: 6 })];
  const edges = plain.segments.length / 2 - 1;
  expect(wide.segments.slice(-edges)).toEqual(plain.segments.slice(-edges));
  for (const along of [0, 17, 40, 71, 90]) {
    const { radius, slope } = wall.at(along);
    const onLevel = (way: number) => {
      if (slope === 0) return { x: way, y: -along };
      const slant = radius / slope;
      return { x: slant * Math.sin(way / slant), y: -along + slant * (1 - Math.cos(way / slant)) };
    };
    const share = halfWidth(radius, 8);
    expectAtMost(nearestOn(wide.segments, onLevel(share + 6)), 2e-4);
    expectAtMost(nearestOn(plain.segments, onLevel(share)), 2e-4);
  }
});

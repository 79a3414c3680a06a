import { describe, expect, test } from 'vitest';
import { wallOf } from '../../src/blank/wall.ts';
import { goreWallOf } from '../../src/unroll/gore-wall.ts';
import { goreEdge } from '../../src/unroll/gores.ts';
import { aBlank } from '../blank/a-blank.ts';
import { expectWithin } from '../closeness.ts';

const build = { coats: 0, film: 0, gather: 0 };

/** A barrel of meridian radius 120 and 50 mm radius at its middle, 60 mm up, by close stations. */
const height = 120;
const radiusAt = (up: number) => 50 - 120 + Math.sqrt(120 ** 2 - (up - 60) ** 2);
const barrelBlank = aBlank(
  Array.from({ length: 25 }, (_, i) => ({ height: i * 5, across: 2 * radiusAt(i * 5) })),
  { wall: 'smooth' },
);
const along = (up: number) => 120 * (Math.asin((up - 60) / 120) + Math.asin(60 / 120));

describe('the wall under gores', () => {
  const { wall } = wallOf(barrelBlank);
  const under = goreWallOf(wall, build);

  // Source: principal curvatures of a surface of revolution, 1/120 up the meridian and cos(lean)/r around it.
  test('has the Gaussian curvature of a barrel by its closed form', () => {
    for (const up of [10, 33, 60, 77, 110]) {
      const cosLean = Math.cos(Math.asin((up - 60) / 120));
      const K = cosLean / (120 * radiusAt(up));
      expectWithin(under.curvature(along(up)) / K, 1, 2e-3);
    }
  });

  test('has the slope and the radius of the barrel', () => {
    for (const up of [0, 10, 60, 110, height]) {
      expectWithin(under.at(along(up)).radius, radiusAt(up), 1e-4);
      // At its ends the curve through the stations turns off by a little more.
      expectWithin(under.at(along(up)).slope, -(up - 60) / 120, 2e-4);
    }
  });

  test('goes straight on past the foot and the lip corner', () => {
    const top = along(height);
    const [end, past] = [under.at(top), under.at(top + 3)];
    expect(past.slope).toBe(end.slope);
    expectWithin(past.radius, end.radius + 3 * end.slope, 1e-12);
    expectWithin(under.at(-3).radius, under.at(0).radius - 3 * under.at(0).slope, 1e-12);
  });

  test('has the film and the coats under it, along its normal', () => {
    const thick = goreWallOf(wall, { coats: 0.4, film: 0.1, gather: 0 });
    for (const up of [10, 60, 100]) {
      const lean = Math.asin((up - 60) / 120);
      const grown = thick.at(thick.toGrown(along(up))).radius - under.at(along(up)).radius;
      expectWithin(grown, 0.45 * Math.cos(lean), 1e-4);
    }
  });
});

describe('a stepped wall under gores', () => {
  const { wall } = wallOf(
    aBlank(
      [
        { height: 0, across: 60 },
        { height: 40, across: 64 },
        { height: 50, across: 80 },
        { height: 100, across: 84 },
      ],
      { wall: 'stepped' },
    ),
  );
  const under = goreWallOf(wall, build);
  const lengths = [Math.hypot(40, 2), Math.hypot(10, 8), Math.hypot(50, 2)] as const;

  test('has its corners, and is straight between them', () => {
    expect(under.levels).toBe('straight');
    expect(under.corners).toHaveLength(2);
    expectWithin(under.corners[0] ?? 0, lengths[0], 1e-9);
    expectWithin(under.corners[1] ?? 0, lengths[0] + lengths[1], 1e-9);
  });

  test('asks of straight levels what makes an edge longer than its middle: sqrt(1 + (pi s / N)²) times', () => {
    const count = 16;
    const s = 8 / lengths[1];
    const middle = lengths[0] + lengths[1] / 2;
    const width = (2 * Math.PI * under.at(middle).radius) / count;
    const strain = (under.curvature(middle) * width ** 2) / 8;
    expectWithin(strain, Math.hypot(1, (Math.PI * s) / count) - 1, 1e-4);
  });

  test('has gores whose edges turn at the corners and nowhere else', () => {
    const band = { from: 0, to: lengths[0] + lengths[1] + lengths[2] };
    const edge = goreEdge(under, { count: 16, band, spacing: 4, levels: 'straight', corners: under.corners });
    const turns = edge.slice(1).map((b, i) => {
      const a = edge[i];
      if (a?.kind !== 'cubic' || b.kind !== 'cubic') throw new Error('an edge is of cubics');
      const turn = (p: { x: number; y: number }, q: { x: number; y: number }) =>
        Math.atan2(p.y - q.y, p.x - q.x);
      return Math.abs(turn(a.to, a.c2) - turn(b.c1, b.from));
    });
    const sharp = turns.filter((turn) => turn > 1e-6);
    const slopes = [2 / lengths[0], 8 / lengths[1], 2 / lengths[2]].map((s) => Math.atan((Math.PI * s) / 16));
    expect(sharp).toHaveLength(2);
    expectWithin(sharp[0] ?? 0, (slopes[1] ?? 0) - (slopes[0] ?? 0), 1e-6);
    expectWithin(sharp[1] ?? 0, (slopes[1] ?? 0) - (slopes[2] ?? 0), 1e-6);
  });
});

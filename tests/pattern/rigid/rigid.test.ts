// Whole motifs: their shape against the drawing by the closed form of the best rigid fit (W. Kabsch, Acta Cryst. A32 (1976)
// 922, in the plane, from memory), their places against the girth, collisions against distances between centres.
import { describe, expect, test } from 'vitest';
import type { Contour } from '../../../src/geometry/contour.ts';
import { signedArea } from '../../../src/geometry/measure.ts';
import { distance, type Point } from '../../../src/geometry/point.ts';
import { conformalLay, evenLay, type Lay, toSheet } from '../../../src/pattern/lay/lay.ts';
import { laidPiece } from '../../../src/pattern/lay/windows.ts';
import type { RigidWrap } from '../../../src/pattern/rigid/rigid.ts';
import { distortionOf } from '../../../src/pattern/ways/distortion.ts';
import { flatWall, girthAt, toWall } from '../../../src/unroll/flat-wall.ts';
import { expectAtMost, expectWithin } from '../../closeness.ts';
import { circle } from '../../geometry/drawn.ts';
import { makeWrap, runOff, shapesArea, type WrapCase } from '../a-wrap.ts';
import { height, shape, teardrop, wavyStripe, width, withCopies } from '../art.ts';

const corners = ({ segments }: Contour): Point[] =>
  segments.flatMap((s) => (s.kind === 'cubic' ? [s.from, s.c1, s.c2] : [s.from]));

const middle = (points: readonly Point[]): Point => ({
  x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
  y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
});

/** The farthest that points are from those they stand for, once moved and turned, never mirrored, as well as can be. */
function residual(drawn: readonly Point[], laid: readonly Point[]): number {
  const [p0, q0] = [middle(drawn), middle(laid)];
  const p = drawn.map(({ x, y }) => ({ x: x - p0.x, y: y - p0.y }));
  const q = laid.map(({ x, y }) => ({ x: x - q0.x, y: y - q0.y }));
  const dot = p.reduce((sum, { x, y }, i) => sum + x * (q[i]?.x ?? 0) + y * (q[i]?.y ?? 0), 0);
  const cross = p.reduce((sum, { x, y }, i) => sum + x * (q[i]?.y ?? 0) - y * (q[i]?.x ?? 0), 0);
  const angle = Math.atan2(cross, dot);
  const turned = p.map(({ x, y }) => ({
    x: x * Math.cos(angle) - y * Math.sin(angle),
    y: x * Math.sin(angle) + y * Math.cos(angle),
  }));
  return Math.max(...turned.map((at, i) => distance(at, q[i] ?? { x: Number.NaN, y: 0 })));
}

/** The least residual over the corner that a closed contour may begin at, and the way it may run. */
function congruence(drawn: Contour, laid: Contour): number {
  const from = corners(drawn);
  const to = corners(laid);
  if (from.length !== to.length) return Number.POSITIVE_INFINITY;
  const ways = [to, [...to].reverse()];
  return Math.min(
    ...ways.flatMap((way) => way.map((_, k) => residual(from, [...way.slice(k), ...way.slice(0, k)]))),
  );
}

const drop = teardrop({ x: 20, y: 18 }, 7);
const leaves = withCopies(shape(drop));
const rigid = (given: Partial<WrapCase>) =>
  makeWrap({ shapes: leaves, width, height, sine: 0.2, lay: 'rigid', band: { from: 10, to: 90 }, ...given });

const isInside = (contour: Contour, made: ReturnType<typeof makeWrap>): boolean =>
  corners(contour).every((p) => {
    const { along } = toWall(made.lay.wall, p);
    return along > made.template.piece.from && along < made.template.piece.to;
  });

describe('motifs moved whole on a taper', () => {
  const made = rigid({});
  const whole = made.contours.filter(({ segments }) => segments.length === drop.segments.length);

  test('have the very shape that was drawn, where an even lay bends them', () => {
    const inside = whole.filter((contour) => isInside(contour, made));
    expect(inside.length).toBeGreaterThan(12);
    for (const contour of inside) expectAtMost(congruence(drop, contour), 1e-6, 'residual');
    // The check itself: what an even lay makes of them is another shape.
    const even = makeWrap({ shapes: leaves, width, height, sine: 0.2, band: { from: 10, to: 90 } });
    const bent = even.contours.filter((contour) => contour.segments.length === drop.segments.length);
    const misses = bent.map((contour) => congruence(drop, contour));
    expect(misses.every((miss) => miss > 0.01)).toBe(true);
  });

  test('stand at equal turns all around, rows as far apart as the pattern closes by', () => {
    const { n, scaleUp } = made.closing;
    const at = whole.map((contour) => toWall(made.lay.wall, corners(contour)[0] ?? { x: 0, y: 0 }));
    const rows = [...new Set(at.map(({ along }) => Math.round(along)))].sort((a, b) => a - b);
    expect(rows.length).toBeGreaterThan(1);
    for (const row of rows) {
      const turns = at.filter(({ along }) => Math.round(along) === row).map(({ turn }) => turn);
      turns.sort((a, b) => a - b);
      for (let i = 1; i < turns.length; i++)
        expectWithin((turns[i] ?? 0) - (turns[i - 1] ?? 0), 1 / n, 1e-9, 'turns between motifs');
    }
    expectWithin((rows[1] ?? 0) - (rows[0] ?? 0), height * scaleUp, 1, 'rows');
  });

  test('end as they begin: what leaves the piece comes again one turn on', () => {
    const { template, lay } = made;
    const far = girthAt(lay.wall, template.band.from);
    const reach = (turn: number) =>
      whole
        .map((contour) => toWall(lay.wall, corners(contour)[0] ?? { x: 0, y: 0 }))
        .filter((at) => Math.abs(at.turn - turn) < 0.04)
        .map(({ along, turn: at }) => ({ along, turn: at - turn }));
    const [starts, finishes] = [reach(0.02), reach(1.02)];
    for (const { along, turn } of finishes)
      expectAtMost(
        Math.min(...starts.map((s) => Math.hypot(s.along - along, (s.turn - turn) * far))),
        1e-6,
        'copy a turn on',
      );
  });
});

test('what hangs together all around has no motifs to move', () => {
  expect(() => makeWrap({ shapes: [wavyStripe(10, 4)], width, height, sine: 0.1, lay: 'rigid' })).toThrow(
    'no motifs',
  );
});

test.each([8, 17, 18.5, 19.5])(
  'discs of radius %d collide where their middles are nearer than two radii',
  (radius) => {
    const disc = shape(circle({ x: 20, y: 30 }, radius, 8));
    // Rows far apart, so that only neighbours around can meet: at the narrow end they come closer.
    const lattice = { a: { x: 40, y: 0 }, b: { x: 0, y: 60 } };
    const band = { from: 10, to: 170 };
    const made = makeWrap({
      shapes: withCopies(disc, 1, 0),
      width,
      height: 60,
      radius: 40,
      sine: 0.12,
      lay: 'rigid',
      band,
      lattice,
    });
    const { n, scaleUp } = made.closing;
    const rows = [-1, 0, 1, 2, 3]
      .map((k) => band.from + (30 + 60 * k) * scaleUp)
      .filter((along) => along + radius > band.from && along - radius < band.to);
    const chord = (along: number) => {
      const at = (turn: number) =>
        toSheet(made.lay, { x: turn * made.lay.around, y: made.lay.fromAlong(along) });
      return distance(at(0), at(1 / n));
    };
    const meeting = rows.filter((along) => chord(along) < 2 * radius);
    const { collisions } = made.wrap as RigidWrap;
    expect(collisions.map(({ one }) => one.along.toFixed(3)).sort()).toEqual(
      meeting.map((along) => along.toFixed(3)).sort(),
    );
    for (const { one, other, times } of collisions) {
      expectWithin(Math.abs(other.turn - one.turn), 1 / n, 1e-9, 'turn between colliding motifs');
      expect(times).toBe(n);
    }
  },
);

/** What discs in a row cover from one place to another, by Simpson's rule over the widest of the chords at each place. */
function rowArea(middles: readonly number[], radius: number, from: number, to: number): number {
  const steps = 40000;
  const wide = (x: number) =>
    2 * Math.sqrt(Math.max(0, ...middles.map((middle) => radius * radius - (x - middle) ** 2)));
  const sum = Array.from({ length: steps + 1 }, (_, i) => {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 0 ? 2 : 4;
    return weight * wide(from + ((to - from) * i) / steps);
  });
  return (sum.reduce((all, one) => all + one, 0) * (to - from)) / steps / 3;
}

/** Discs and a dot, drawn apart, laid closer around than they were drawn. */
function closeRow(radius: number, dotAt: number) {
  const drawn = [circle({ x: 20, y: 30 }, radius, 8), circle({ x: dotAt, y: 30 }, 1, 8)];
  const around = 13;
  const made = makeWrap({
    shapes: drawn.map((contour) => shape(contour)),
    width,
    height: 60,
    lattice: { a: { x: 40, y: 0 }, b: { x: 0, y: 200 } },
    radius: 40,
    band: { from: 0, to: 60 },
    lay: 'rigid',
    scale: 'across',
    around,
  });
  return { ...made, step: (2 * Math.PI * 40) / around };
}

test('discs that come to lie on one another, and on dots, are cut as one piece of film', () => {
  const radius = 15;
  const { wrap, template, lay, contours, step } = closeRow(radius, 38);
  expect(contours.length).toBe(1);
  const { left, right } = laidPiece(template, lay, runOff);
  const middles = Array.from({ length: 19 }, (_, k) => (k - 2 + 0.5) * step);
  const area = rowArea(middles, radius, left(0), right(0));
  expectWithin(shapesArea(wrap.layers[0]?.shapes ?? []), area, 1e-3 * area, 'area of the row');
});

test('a dot that comes to lie wholly within a disc collides with it, and is not cut out of it', () => {
  const { wrap, contours } = closeRow(9, 34);
  expect((wrap as RigidWrap).collisions.length).toBeGreaterThan(0);
  const areas = contours.map((contour) => Math.abs(signedArea(contour)));
  expect(areas.filter((area) => Math.abs(area - Math.PI) < 0.1)).toEqual([]);
  expect(areas.filter((area) => Math.abs(area - 81 * Math.PI) < 0.1).length).toBeGreaterThan(10);
});

/** The two scales of a lay at a place of the laid pattern, by differences: singular values (closed form for 2 by 2). */
function scalesAt(lay: Lay, at: Point, across: number, up: number): readonly [number, number] {
  const h = 1e-4;
  const d = (dx: number, dy: number) => {
    const [p, q] = [
      toSheet(lay, { x: at.x + dx, y: at.y + dy }),
      toSheet(lay, { x: at.x - dx, y: at.y - dy }),
    ];
    return { x: (p.x - q.x) / (2 * h), y: (p.y - q.y) / (2 * h) };
  };
  const [u, v] = [d(h, 0), d(0, h)];
  const [a, b, c, e] = [u.x * across, u.y * across, v.x * up, v.y * up];
  const [sum, det] = [a * a + b * b + c * c + e * e, Math.abs(a * e - b * c)];
  const [plus, minus] = [Math.sqrt(sum + 2 * det), Math.sqrt(Math.max(0, sum - 2 * det))];
  return [(plus + minus) / 2, (plus - minus) / 2];
}

// Tissot's ellipse from the map that curves go through, against the closed form in which the report tells it.
test.each([
  { kind: 'even', scaleAcross: 1.04, scaleUp: 1.04 },
  { kind: 'even', scaleAcross: 1.1, scaleUp: 0.95 },
  { kind: 'conformal', scaleAcross: 1.04, scaleUp: 1.04 },
  { kind: 'conformal', scaleAcross: 0.93, scaleUp: 1 },
] as const)(
  'the distortion of $kind, $scaleAcross by $scaleUp, is what its map does',
  ({ kind, ...closing }) => {
    const [from, to] = [10, 90];
    const wall = flatWall(40, 0.2, (from + to) / 2);
    const lay = (kind === 'even' ? evenLay : conformalLay)(wall, from);
    const ends = { foot: girthAt(wall, from), lip: girthAt(wall, to) };
    const told = distortionOf(kind, closing, { girth: lay.around, ends });
    const alongs = Array.from({ length: 81 }, (_, i) => from + i);
    const scales = alongs.map((along) =>
      scalesAt(lay, { x: 30, y: lay.fromAlong(along) }, closing.scaleAcross, closing.scaleUp),
    );
    const angles = scales.map(([a, b]) => 2 * Math.asin((a - b) / (a + b)));
    expectWithin(told.angle, Math.max(...angles), 1e-5, 'angle');
    const drawn = Math.sqrt(closing.scaleAcross * closing.scaleUp);
    const sizes = scales.map(([a, b]) => Math.abs(Math.sqrt(a * b) / drawn - 1));
    expectWithin(told.size, Math.max(...sizes), 1e-5, 'size');
  },
);

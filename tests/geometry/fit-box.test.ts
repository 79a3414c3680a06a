// Rectangles in rectangles have a closed form; outlines in rooms are held against a plain sweep of turns.
import { describe, expect, test } from 'vitest';
import { moveContour, rotation } from '../../src/geometry/affine.ts';
import { type Contour, cubic, line, polygon } from '../../src/geometry/contour.ts';
import { turnToFit } from '../../src/geometry/fit-box.ts';
import { tightBox } from '../../src/geometry/measure.ts';
import { expectWithin } from '../closeness.ts';
import { randomFrom } from './drawn.ts';

const rectangle = (p: number, q: number): Contour =>
  polygon([
    { x: 3, y: 5 },
    { x: 3 + p, y: 5 },
    { x: 3 + p, y: 5 + q },
    { x: 3, y: 5 + q },
  ]);

/**
 * Whether a rectangle p by q fits one a by b, p >= q and a >= b. Source: W. B. Carver, solution of problem E 1225,
 * The American Mathematical Monthly 64, 1957, p. 114; from memory.
 */
const fitsByCarver = (p: number, q: number, a: number, b: number): boolean =>
  (p <= a && q <= b) ||
  (p > a &&
    q <= b &&
    p * p + q * q >= a * a &&
    b >= (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q));

describe('a rectangle in a rectangle', () => {
  test('fits where the closed form says so, and only there', () => {
    const random = randomFrom(7);
    let [inside, aslant] = [0, 0];
    for (let i = 0; i < 1000; i++) {
      const [a, b] = [100 + 100 * random(), 60 + 40 * random()];
      const [p, q] = [80 + 140 * random(), 3 + 40 * random()];
      // Right at the limit rounding decides.
      const [close, far] = [
        fitsByCarver(p * 0.9999, q * 0.9999, a, b),
        fitsByCarver(p * 1.0001, q * 1.0001, a, b),
      ];
      if (close !== far) continue;
      const turn = turnToFit(rectangle(p, q), { across: a, up: b });
      expect(turn !== undefined, `${p} by ${q} in ${a} by ${b}`).toBe(close);
      if (close) inside++;
      if (turn !== undefined && turn !== 0) aslant++;
    }
    expect(inside).toBeGreaterThan(100);
    expect(aslant).toBeGreaterThan(10);
  });

  test('is turned by no more than it takes', () => {
    // 200 by 10 between sides 199 apart: cos t + 0.05 sin t = 0.995.
    const turn = turnToFit(rectangle(200, 10), { across: 199, up: 400 });
    const wanted = Math.atan(0.05) + Math.acos(0.995 / Math.hypot(1, 0.05));
    expectWithin(Math.abs(turn ?? Number.NaN), wanted, 1e-5);
  });

  test('is turned by a right angle where only that fits, and not at all where it fits as it is', () => {
    expectWithin(Math.abs(turnToFit(rectangle(90, 40), { across: 40, up: 90 }) ?? 0), Math.PI / 2, 1e-6);
    expect(turnToFit(rectangle(90, 40), { across: 90, up: 40 })).toBe(0);
    expect(turnToFit(rectangle(90, 40), { across: 89, up: 39 })).toBeUndefined();
    expect(turnToFit(rectangle(90, 40), { across: 90, up: Number.POSITIVE_INFINITY })).toBe(0);
  });
});

test('an arc is turned so that its box, curves and all, is inside the room', () => {
  const k = (4 / 3) * Math.tan(Math.PI / 16);
  const arc = (r: number, from: number, to: number) => {
    const at = (t: number) => ({ x: r * Math.cos(t), y: r * Math.sin(t) });
    const h = k * r * Math.sign(to - from);
    const [p, q] = [at(from), at(to)];
    return cubic(
      p,
      { x: p.x - h * Math.sin(from), y: p.y + h * Math.cos(from) },
      { x: q.x + h * Math.sin(to), y: q.y - h * Math.cos(to) },
      q,
    );
  };
  const [a, b] = [0.1, 0.1 + Math.PI / 4];
  const outer = arc(100, a, b);
  const inner = arc(60, b, a);
  const ring: Contour = {
    closed: true,
    segments: [outer, line(outer.to, inner.from), inner, line(inner.to, outer.from)],
  };
  for (const room of [
    { across: 45, up: 90 },
    { across: 60, up: 76 },
    { across: 80, up: 55 },
    { across: 62, up: 62 },
  ]) {
    const fits = (turn: number) => {
      const { minX, minY, maxX, maxY } = tightBox([moveContour(rotation(turn), ring)]);
      return maxX - minX <= room.across + 1e-6 && maxY - minY <= room.up + 1e-6;
    };
    const steps = Array.from({ length: 18001 }, (_, i) => (i * Math.PI) / 36000);
    const swept = steps.find((turn) => fits(turn) || fits(-turn));
    const turn = turnToFit(ring, room);
    if (swept === undefined) expect(turn).toBeUndefined();
    else {
      expect(fits(turn ?? Number.NaN)).toBe(true);
      expectWithin(Math.abs(turn ?? Number.NaN), swept, 1e-4);
    }
  }
});

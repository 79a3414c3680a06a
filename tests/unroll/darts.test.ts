// Darts on walls that are closed forms: where they end, that they close, and what film is asked for.
import { describe, expect, test } from 'vitest';
import { movePoint } from '../../src/geometry/affine.ts';
import type { Segment } from '../../src/geometry/contour.ts';
import { shapeArea } from '../../src/geometry/measure.ts';
import { distance, subtract } from '../../src/geometry/point.ts';
import { directionAt, pointAt } from '../../src/geometry/segment.ts';
import { coneRadius, dartRoot, dartsCanClose, dartsOf, strainBetweenDarts } from '../../src/unroll/darts.ts';
import { goreComb } from '../../src/unroll/gore-comb.ts';
import { type GoreOptions, goreEdge, goreStrain } from '../../src/unroll/gores.ts';
import { expectAtMost, expectWithin } from '../closeness.ts';
import { barrel, type CurvedGoreWall } from './gore-walls.ts';

const jar = barrel(50, 120, 60, 1);
const waist = barrel(40, 120, 60, -1);
const band = { from: 10, to: 110 };

const radii = (wall: CurvedGoreWall) =>
  Array.from({ length: 401 }, (_, i) => {
    const along = band.from + ((band.to - band.from) * i) / 400;
    return { along, radius: wall.at(along).radius };
  });

const rootOf = (wall: CurvedGoreWall, whole: 'foot' | 'lip', stretch: number) => {
  const root = dartRoot(radii(wall), whole, stretch);
  if (!root) throw new Error('darts are needed');
  return root;
};

const count = 16;

/** The comb of a jar cut in darts from its lip, and its teeth. */
function cutJar() {
  const root = rootOf(jar, 'foot', 0.02);
  const { follows, strain } = dartsOf(jar, { root, whole: 'foot', count, end: band.to });
  const options: GoreOptions = { count, band, spacing: 4, levels: 'arcs', corners: [root.tip] };
  const comb = goreComb(follows, { ...options, joined: 'foot', strip: root.tip - band.from });
  if (!comb) throw new Error('the jar can be cut in darts');
  return { root, follows, strain, options, comb };
}

const lengthOf = (edge: readonly Segment[]): number =>
  edge.reduce((sum, s) => {
    const points = Array.from({ length: 65 }, (_, i) => pointAt(s, i / 64));
    return sum + points.slice(1).reduce((l, p, i) => l + distance(p, points[i] ?? p), 0);
  }, 0);

describe('where darts end', () => {
  // A bulging band asks its stretch of a cone through both its ends: 1/cos(w/2R) - 1 about the equator, near w²/8R² (derived).
  test('is as far up as film lies down, on a cone that meets the wall there', () => {
    const root = rootOf(jar, 'foot', 0.02);
    expect(root.stretch).toBeLessThanOrEqual(0.02);
    expect(root.stretch).toBeGreaterThan(0.0195);
    expectWithin(coneRadius(root.cone, root.tip), jar.at(root.tip).radius, 1e-9);
    expectWithin(coneRadius(root.cone, band.from), jar.at(band.from).radius, 1e-9);
    expect(dartsCanClose(jar, root)).toBe(true);
  });

  test('is the same from the other edge, turned about the middle', () => {
    const [foot, lip] = [rootOf(jar, 'foot', 0.02), rootOf(jar, 'lip', 0.02)];
    expectWithin(foot.tip + lip.tip, band.from + band.to, 1e-9);
  });

  test('is nowhere where one piece takes all of the band', () => {
    expect(dartRoot(radii(jar), 'foot', 0.4)).toBeUndefined();
  });

  test('is not on a wall that widens against the cone: there film would have to be added', () => {
    expect(dartsCanClose(waist, rootOf(waist, 'foot', 0.02))).toBe(false);
  });
});

describe('darts', () => {
  test('close: at every height the pieces between them have the girth of the wall, and their edges are as long', () => {
    const { root, follows, options } = cutJar();
    const edge = goreEdge(follows, { ...options, band: { from: root.tip, to: band.to } });
    // Rolled up, a level line is an arc of the bend that the drawing has there: chord and bend give its length.
    for (const segment of edge) {
      const { x, y } = segment.to;
      const on = nearestOn(follows, root.tip, { x, y });
      const { radius, slope } = follows.at(on);
      const bend = slope / radius;
      const half = Math.abs(bend) < 1e-9 ? x : Math.atan2(bend * x, 1 - bend * (y - (root.tip - on))) / bend;
      expectWithin(half, (Math.PI * jar.at(on).radius) / count, 1e-3);
    }
    // An edge that leans is a little longer than the wall is up: by what film is strained, at the most.
    const share = lengthOf(edge) / (band.to - root.tip);
    expect(share).toBeGreaterThan(1);
    expect(share).toBeLessThan(1.03);
  });

  test('begin as a point: at their tips both sides run on together', () => {
    const { root, follows, options, comb } = cutJar();
    const own = { ...options, band: { from: root.tip, to: band.to } };
    const [low] = goreEdge(follows, own);
    const [first, second] = comb.places;
    if (!low || !first || !second) throw new Error('no edge');
    const lifted = (p: { x: number; y: number }) => ({ x: p.x, y: p.y + band.from - root.tip });
    const right = movePoint(first, lifted(low.from));
    const left = movePoint(second, lifted({ x: -low.from.x, y: low.from.y }));
    expectAtMost(distance(right, left), 1e-6);
    // The opening grows from nothing: its angle there is what the cone and the wall part by, under 20 degrees.
    const [d1, d2] = [directionAt(low, 0), directionAt(low, 0)];
    const a = subtract(movePoint(first, d1), movePoint(first, { x: 0, y: 0 }));
    const b = subtract(movePoint(second, { x: -d2.x, y: d2.y }), movePoint(second, { x: 0, y: 0 }));
    const angle = Math.acos((a.x * b.x + a.y * b.y) / (Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y)));
    const due = ((2 * Math.PI) / count) * (root.cone.sine - jar.at(root.tip).slope);
    expectWithin(angle, due, 0.02 * due);
  });

  // Source: area of a surface of revolution, 2 pi times the integral of r ds; film is stretched by up to 2 % to cover it.
  test('leave as much film as the wall has, but for what it is stretched', () => {
    const { comb } = cutJar();
    const steps = 2000;
    const h = (band.to - band.from) / steps;
    const wall = Array.from(
      { length: steps },
      (_, i) => 2 * Math.PI * jar.at(band.from + (i + 0.5) * h).radius * h,
    ).reduce((sum, ring) => sum + ring, 0);
    const film = Math.abs(shapeArea({ contours: [comb.outline] }));
    expect(film / wall).toBeLessThan(1.001);
    expect(film / wall).toBeGreaterThan(0.98);
  });

  test('ask of film what a gore of their width does, where they have left the cone behind', () => {
    const { root, follows, strain } = cutJar();
    expect(strain).toBeLessThan(0.03);
    const far = band.to - 1;
    // The first of the even ones eased away: a gore so wide asks K w²/8.
    const gore = goreStrain(jar, jar.curvature, count, [far]);
    const pure = { at: (on: number) => jar.at(on) };
    expectWithin(strainBetweenDarts(pure, count, far), gore, 0.02 * gore);
    expect(strainBetweenDarts(follows, count, far)).toBeLessThan(3 * gore);
    expect(root.tip).toBeLessThan(band.to);
  });
});

/** The place up the middle line whose level line a point of a drawing lies on. */
function nearestOn(
  wall: { at: CurvedGoreWall['at'] },
  from: number,
  { x, y }: { x: number; y: number },
): number {
  let on = from - y;
  for (let i = 0; i < 200; i++) {
    const { radius, slope } = wall.at(on);
    const half = (Math.PI * radius) / count;
    const turn = (Math.PI * slope) / count;
    const fall = Math.abs(turn) < 1e-9 ? (half * turn) / 2 : (half * (1 - Math.cos(turn))) / turn;
    on = from - (y - fall);
  }
  expect(x).toBeGreaterThan(0);
  return on;
}

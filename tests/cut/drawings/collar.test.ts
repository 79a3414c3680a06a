// Collars: level on the wall, closed at the seam, and how far a straight strip would have strayed.
import { expect, test } from 'vitest';
import { type CollarOptions, collarOf, stripOf } from '../../../src/cut/drawings/collar.ts';
import { stacked } from '../../../src/cut/drawings/stack.ts';
import { straightStrip } from '../../../src/cut/drawings/straight-strip.ts';
import { distance } from '../../../src/geometry/point.ts';
import { pointAt } from '../../../src/geometry/segment.ts';
import { type FlatWall, flatWall, girthAt, radiusAt, toFlat, toWall } from '../../../src/unroll/flat-wall.ts';
import { edgePoint, finishedEdge, outline, turnOfEdge } from '../../../src/unroll/template.ts';
import { expectAtMost, expectPointWithin, expectWithin } from '../../closeness.ts';
import { walls } from '../../unroll/walls.ts';

const asked: CollarOptions = { along: 30, edge: 'lower', width: 20, tab: 10 };

test.each(walls)('the level edge rolls back to one height: $name', ({ wall }) => {
  for (const edge of ['upper', 'lower'] as const) {
    // A sweep of 350 degrees leaves no room for a tab as wide as the usual one.
    const { template } = collarOf(wall, { ...asked, edge, along: 40, tab: 0 });
    const onOutline = outline(template).segments.flatMap((s) =>
      Array.from({ length: 9 }, (_, i) => toWall(wall, pointAt(s, i / 8)).along),
    );
    const level = onOutline.filter((along) => Math.abs(along - 40) < 0.5);
    expect(level.length).toBeGreaterThan(8);
    for (const along of level.filter((a) => Math.abs(a - 40) < 0.1)) expectWithin(along, 40, 1e-6, edge);
    for (const s of finishedEdge(template, 40).segments)
      expectWithin(toWall(wall, pointAt(s, 0.5)).along, 40, 1e-6, edge);
  }
});

test.each(walls)('the strip goes around once and its tab is as wide from edge to edge: $name', ({ wall }) => {
  const { template } = collarOf(wall, { ...asked, tab: 2 });
  const { piece, seam, right } = template;
  for (const along of [piece.from, 40, piece.to]) {
    expectWithin(turnOfEdge(wall, seam.finish, along) - turnOfEdge(wall, seam.start, along), 1, 1e-12);
    const [a, b] = [edgePoint(wall, seam.finish, piece.from), edgePoint(wall, seam.finish, piece.to)];
    const p = edgePoint(wall, right, along);
    const off = Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / distance(a, b);
    expectWithin(off, 2, 1e-9);
  }
});

test('the strip lies above a lower edge and below an upper one', () => {
  expect(stripOf({ along: 30, edge: 'lower', width: 20 })).toEqual({ from: 30, to: 50 });
  expect(stripOf({ along: 30, edge: 'upper', width: 20 })).toEqual({ from: 10, to: 30 });
});

test('beside a handle the strip keeps clear of it and has no tab', () => {
  const wall = flatWall(40, 0.05, 40);
  const { template } = collarOf(wall, { ...asked, clear: 24 });
  expect(template.overlap).toBe(0);
  const girth = girthAt(wall, 40);
  expectWithin(turnOfEdge(wall, template.left, 40) * girth, 24, 0.02);
  expectWithin((1 - turnOfEdge(wall, template.right, 40)) * girth, 24, 0.02);
});

/**
 * A thread drawn tight that sets out level, walked over the standing cone in small steps.
 * Source: Clairaut's relation, r cos(angle to the level) stays the same along a geodesic of a surface of revolution
 * (Clairaut 1733, from memory); nothing is unrolled. Midpoint steps in the turn's angle: with c the radius at the start,
 * d(rho)/d(theta) = (r / c) sqrt(r^2 - c^2), where r = rho sin a; at the start the root is 0, so the second order start
 * rho = rho0 (1 + (sin a theta)^2 / 2) is used for the first hundredth.
 */
function walkedClimb(wall: FlatWall, along: number, turns: number): number {
  const s = Math.abs(wall.sine);
  const c = radiusAt(wall, along);
  const first = 0.01;
  let r = c * (1 + (s * first) ** 2 / 2 + (5 * (s * first) ** 4) / 24);
  const steps = 20_000;
  const step = (2 * Math.PI * turns - first) / steps;
  const rate = (radius: number) => ((s * radius) / c) * Math.sqrt(radius * radius - c * c);
  for (let i = 0; i < steps; i++) r += step * rate(r + (step / 2) * rate(r));
  return ((r - c) / s) * Math.sign(wall.sine);
}

test.each([
  { name: 'a cup wider at the lip', wall: flatWall(35, 0.0764, 60) },
  { name: 'a pot wider at the foot', wall: flatWall(54, -0.109, 55) },
  { name: 'a bowl near a quarter turn of sheet', wall: flatWall(50, 0.24, 20) },
])('a straight strip climbs as a tight thread walked over the cone does: $name', ({ wall }) => {
  const { climb } = straightStrip(wall, 30, 1);
  const walked = walkedClimb(wall, 30, 1);
  expectWithin(climb ?? Number.NaN, walked, 1e-5 * Math.abs(walked), 'climb');
});

test('a straight strip rolled onto the wall ends where its climb says, and its middle where its bow says', () => {
  const wall = flatWall(35, 0.0764, 60);
  const { climb = Number.NaN, bow = Number.NaN } = straightStrip(wall, 30, 1);
  // The edge set out square to the first radius, walked along the sheet in steps of 0.01 mm until it has gone around.
  const from = toFlat(wall, { turn: 0, along: 30 });
  const ahead = toFlat(wall, { turn: 1e-7, along: 30 });
  const length = distance(from, ahead);
  const way = { x: (ahead.x - from.x) / length, y: (ahead.y - from.y) / length };
  let gone = 0;
  let at = toWall(wall, from);
  while (at.turn < 1) {
    gone += 0.01;
    at = toWall(wall, { x: from.x + gone * way.x, y: from.y + gone * way.y });
  }
  expectWithin(at.along - 30, climb, 0.01, 'climb');
  const end = toFlat(wall, { turn: 1, along: 30 });
  const middle = toWall(wall, { x: (from.x + end.x) / 2, y: (from.y + end.y) / 2 });
  expectPointWithin({ x: middle.turn, y: middle.along }, { x: 0.5, y: 30 + bow }, 1e-9, 'middle');
});

test('the climb follows the published line r = r0 / sin(phi - phi0) of a cone laid flat', () => {
  // references, 11 (imathworks.com, shortest path on a cone): square to the radius where phi - phi0 is 90 degrees.
  const [half, rho] = [Math.PI / 24, 300];
  const wall = flatWall(rho * Math.sin(half), Math.sin(half), 0);
  const published = rho / Math.sin(Math.PI / 2 + 2 * Math.PI * Math.sin(half)) - rho;
  expectWithin(straightStrip(wall, 0, 1).climb ?? Number.NaN, published, 1e-9);
});

test('a strip on a cylinder stays level, and one on nearly a cylinder loses no precision', () => {
  expect(straightStrip(flatWall(40, 0, 0), 20, 1)).toEqual({ climb: 0, bow: 0 });
  // pi girth sin a (series of the closed form): 40 mm, 1e-9 rad.
  const { climb } = straightStrip(flatWall(40, 1e-9, 0), 0, 1);
  expectWithin(climb ?? Number.NaN, Math.PI * 2 * Math.PI * 40 * 1e-9, 1e-18);
});

test('no straight strip goes round a cone that lies flat as half a disc or more', () => {
  // references, 11: base radius 2 and slant 4 lie flat as exactly 180 degrees ("Conical Conundrum").
  expect(straightStrip(flatWall(2, -2 / 4, 0), 0, 1)).toEqual({ climb: undefined, bow: undefined });
  // Between a quarter and half a turn it goes round, but not level from its start.
  const { climb, bow } = straightStrip(flatWall(2, -1 / 3, 0), 0, 1);
  expect(climb).toBeUndefined();
  expect(bow).toBeGreaterThan(0);
});

test('arcs are stacked close and never nearer than the gap', () => {
  const wall = flatWall(40, 0.3, 40);
  const pieces = [20, 60].map((along) => outline(collarOf(wall, { ...asked, along }).template));
  const [first, second] = stacked(pieces, 6);
  expect(first).toEqual({ x: 0, y: 0 });
  const points = pieces.map((piece, i) =>
    piece.segments.flatMap((s) =>
      Array.from({ length: 21 }, (_, k) => {
        const p = pointAt(s, k / 20);
        return { x: p.x, y: p.y + (i === 0 ? 0 : (second?.y ?? 0)) };
      }),
    ),
  );
  const [lower = [], upper = []] = points;
  const nearest = Math.min(...lower.map((p) => Math.min(...upper.map((q) => distance(p, q)))));
  expect(nearest).toBeGreaterThanOrEqual(6);
  expectAtMost(nearest, 9, 'the gap');
});

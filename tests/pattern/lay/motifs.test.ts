// Motifs against groups counted by clipper-lib (Angus Johnson): the outer polygons of 7 by 7 merged copies around the middle.
import { describe, expect, test } from 'vitest';
import type { Shape } from '../../../src/geometry/contour.ts';
import { type Lattice, latticeOf, step } from '../../../src/pattern/lattice/lattice.ts';
import { shapesOfMotif } from '../../../src/pattern/lay/motif-shapes.ts';
import { type Motifs, motifsOf } from '../../../src/pattern/lay/motifs.ts';
import { StepSets } from '../../../src/pattern/lay/step-sets.ts';
import { periodOf } from '../../../src/pattern/period/period.ts';
import { type LaidPeriod, layPeriod } from '../../../src/pattern/tile/cell.ts';
import { blob, box, circle, randomFrom } from '../../geometry/drawn.ts';
import { combineRings, dense, ringsArea, shapesArea, toRing } from '../a-wrap.ts';
import { height, moveShape, ring, shape, wavyStripe, width, withCopies } from '../art.ts';

const grid = latticeOf({ across: width, up: height, drop: 0, shift: 0 });
const asDrawn = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
const periodIn = (shapes: readonly Shape[], lattice: Lattice = grid): LaidPeriod =>
  layPeriod(periodOf(shapes, { width, height }, lattice), lattice, asDrawn);

const found = (shapes: readonly Shape[], lattice?: Lattice): Motifs =>
  motifsOf([periodIn(shapes, lattice)], 0);
const netOf = ({ nets }: Motifs): number => nets.reduce((sum, net) => sum + net.size, 0);

describe('in a drawing', () => {
  test('every blot that stands alone is a motif', () => {
    const dots = [5, 15, 25].map((x) => shape(circle({ x, y: 12 }, 3)));
    expect(found(dots).motifs).toHaveLength(3);
  });

  test('a ring and its hole are one; a dot in the hole touches nothing, so it is one of its own', () => {
    const rings = [ring({ x: 20, y: 15 }, 10, 7), shape(circle({ x: 20, y: 15 }, 3))];
    const { motifs } = found(rings);
    expect(motifs.map(({ edges }) => edges.length).sort()).toEqual([1, 2]);
  });

  test('what crosses the border is one, whether its copies are drawn or it is cut there', () => {
    const across = shape(circle({ x: 0, y: 15 }, 4));
    expect(found(withCopies(across)).motifs).toHaveLength(1);
    const halves = [shape(circle({ x: 0, y: 15 }, 4)), shape(circle({ x: width, y: 15 }, 4))];
    const cut = found(halves);
    expect(cut.motifs).toHaveLength(1);
    const [motif] = cut.motifs;
    const { layers } = shapesOfMotif(motif ?? { edges: [], box: { minX: 0, minY: 0, maxX: 0, maxY: 0 } }, [
      periodIn(halves),
    ]);
    expect(shapesArea(layers[0] ?? [])).toBeCloseTo(Math.PI * 16, 1);
  });

  test('a stripe that meets its own copy goes on for ever, and is no motif', () => {
    const stripe = found([wavyStripe(10, 4), shape(circle({ x: 20, y: 24 }, 2))]);
    expect(stripe.motifs).toHaveLength(1);
    expect(netOf(stripe)).toBeGreaterThan(0);
  });

  test('what touches is one, whatever its colours; film under film of another colour too', () => {
    const body = periodIn([shape(box(10, 10, 10, 10))]);
    const beak = periodIn([shape(box(20, 13, 5, 3))]);
    const eye = periodIn([shape(circle({ x: 15, y: 15 }, 2))]);
    expect(motifsOf([body, beak, eye], 0).motifs.map(({ edges }) => edges.length)).toEqual([3]);
    const apart = periodIn([shape(box(20.2, 13, 4.8, 3))]);
    expect(motifsOf([body, apart], 0).motifs).toHaveLength(2);
    // Nothing else is near: pieces a hair apart are meant as one, and so they are where it is said.
    expect(motifsOf([body, apart])).toMatchObject({ motifs: [{ edges: [{}, {}] }] });
    expect(motifsOf([body, apart], 0.3).motifs).toHaveLength(1);
  });
});

describe('pieces that stand clearly nearer to one another than to all else are one motif', () => {
  const sun = [0, 1, 2].map((k) => shape(box(10, 8 + 3 * k, 12, 2)));
  test('stripes a millimetre apart, with the next copy far away', () => {
    const { motifs, together } = motifsOf([periodIn(sun)]);
    expect(motifs).toHaveLength(1);
    expect(together).toBeCloseTo(1, 6);
  });

  test('dots evenly spaced are not: joining them would make a net', () => {
    const dots = [0, 1, 2, 3].flatMap((i) =>
      [0, 1, 2].map((j) => shape(circle({ x: 5 + 10 * i, y: 5 + 10 * j }, 3.5))),
    );
    expect(motifsOf([periodIn(dots)])).toMatchObject({ together: 0, motifs: { length: 12 } });
  });

  test('a piece beside a net stays what it is', () => {
    const { motifs } = motifsOf([periodIn([wavyStripe(10, 4), shape(circle({ x: 5, y: 20 }, 3))])]);
    expect(motifs).toHaveLength(1);
  });
});

/** Closed groups of many merged copies, those that stand about the middle one; by clipper-lib. */
function groupsByClipper(shapes: readonly Shape[], lattice: Lattice) {
  const rings = [];
  for (let i = -3; i <= 3; i++)
    for (let j = -3; j <= 3; j++)
      for (const drawn of shapes)
        for (const contour of moveShape(step(lattice, i, j), drawn).contours)
          rings.push(toRing(dense(contour, 5)));
  const merged = combineRings('union', rings, []);
  return merged.map((points) => {
    const area = ringsArea([points]);
    const x = points.reduce((sum, p) => sum + p.X, 0) / points.length / 1e5;
    const y = points.reduce((sum, p) => sum + p.Y, 0) / points.length / 1e5;
    return { area, x, y };
  });
}

test.each([
  { name: 'a plain grid', lattice: grid },
  { name: 'a half drop', lattice: latticeOf({ across: width, up: height, drop: height / 2, shift: 0 }) },
  { name: 'a slanted lattice', lattice: { a: { x: 41, y: 7 }, b: { x: -9, y: -30 } } },
])('groups of random blots are those that clipper-lib merges: $name', ({ lattice }) => {
  for (let seed = 1; seed <= 2; seed++) {
    const random = randomFrom(seed);
    // Single blots that reach past their tile are taken as drawn: the period is given, not cut.
    const shapes = Array.from({ length: 7 }, () =>
      shape(blob(random, { x: random() * width, y: random() * height }, 2 + 3.2 * random())),
    );
    const period = layPeriod(
      shapes.flatMap(({ contours }) => contours.map((contour) => ({ contour, borders: new Set<number>() }))),
      lattice,
      asDrawn,
    );
    const motifs = motifsOf([period], 0);
    if (netOf(motifs) > 0) continue;
    const areas = motifs.motifs.map((motif) => shapesArea(shapesOfMotif(motif, [period]).layers[0] ?? []));
    // Every group of the plane has one copy a period: the middle of those near the origin, modulo the lattice.
    const det = lattice.a.x * lattice.b.y - lattice.a.y * lattice.b.x;
    const outer = groupsByClipper(shapes, lattice).filter(({ area, x, y }) => {
      const i = (x * lattice.b.y - y * lattice.b.x) / det;
      const j = (lattice.a.x * y - lattice.a.y * x) / det;
      return area > 0 && i >= -0.5 && i < 0.5 && j >= -0.5 && j < 0.5;
    });
    expect(areas.length, `seed ${seed}`).toBe(outer.length);
    const total = (list: readonly number[]) => list.reduce((sum, area) => sum + area, 0);
    expect(total(areas)).toBeCloseTo(total(outer.map(({ area }) => area)), 0);
  }
});

test('sets that are joined to another copy of themselves are nets, others are not', () => {
  const sets = new StepSets(4);
  sets.join(0, 1, { i: 1, j: 0 });
  sets.join(1, 2, { i: 0, j: 2 });
  expect(sets.find(2).root).toBe(sets.find(0).root);
  expect(sets.isNet(sets.find(0).root)).toBe(false);
  // The way round: 2 stands at (1, 2) of 0, so its copy (-1, -2) is that of 0.
  sets.join(2, 0, { i: -1, j: -2 });
  expect(sets.isNet(sets.find(0).root)).toBe(false);
  sets.join(2, 0, { i: 0, j: -2 });
  expect(sets.isNet(sets.find(0).root)).toBe(true);
  expect(sets.isNet(sets.find(3).root)).toBe(false);
});

// Collars of walls that step or bend. Truth: the level edge is as long as the vessel is round there, pi times across as read, by
// svg-path-properties (ISC); laid flat it is an arc of the radius r / sin a, the slant height of the cone that touches the wall along
// that line (development of a cone, any handbook of sheet metal work).
import { expect, test } from 'vitest';
import { writePathData } from '../../src/drawing/path-data.ts';
import { cross, distance, subtract } from '../../src/geometry/point.ts';
import { planCollars } from '../../src/job/plan/collar-plan.ts';
import { readBlank } from '../../src/job/typed/read-blank.ts';
import { finishedEdge } from '../../src/unroll/template.ts';
import { expectWithin } from '../closeness.ts';
import { librarianLength } from '../geometry/libraries.ts';

const [foot, step, rim] = [
  { height: 0, across: 60 },
  { height: 60, across: 84 },
  { height: 120, across: 90 },
];

const collarsOf = (wall: 'stepped' | 'smooth', stations: readonly unknown[], heights: readonly number[]) => {
  const blank = readBlank({ name: 'lantern, invented', use: 'other', wall, stations }, 'lantern.blank.json');
  return planCollars({
    blank,
    blankFile: 'lantern.blank.json',
    keyed: (key) => `--${key}`,
    lines: heights.map((mm) => ({ kind: 'height', mm })),
    width: 12,
    tab: 0,
    coats: 0,
    paper: 0,
  });
};

/** Length of a collar's level edge, and the radius of the circle through its ends and middle; mm. */
function levelEdge({ template, along }: ReturnType<typeof collarsOf>['collars'][number]) {
  const edge = finishedEdge(template, along);
  const points = edge.segments.flatMap(({ from, to }) => [from, to]);
  const [a, b, c] = [points[0], points[Math.floor(points.length / 2)], points.at(-1)];
  if (!a || !b || !c) throw new Error('no edge');
  const [u, v, w] = [distance(a, b), distance(b, c), distance(a, c)];
  const twiceArea = Math.abs(cross(subtract(b, a), subtract(c, a)));
  return { length: librarianLength(writePathData([edge])), radius: (u * v * w) / (2 * twiceArea) };
}

test('on a wall that steps, each level line is as long as the vessel is round, and bent as its own part asks', () => {
  const heights = [30, 90];
  const { collars, findings } = collarsOf('stepped', [foot, step, rim], heights);
  expect(findings).toEqual([]);
  // Half way between stations the vessel is as wide as their mean.
  const wanted = [
    { across: (60 + 84) / 2, lean: Math.atan((84 - 60) / 2 / 60) },
    { across: (84 + 90) / 2, lean: Math.atan((90 - 84) / 2 / 60) },
  ];
  expect(collars).toHaveLength(heights.length);
  collars.forEach((collar, i) => {
    const { across, lean } = wanted[i] ?? { across: Number.NaN, lean: Number.NaN };
    const { length, radius } = levelEdge(collar);
    expectWithin(length, Math.PI * across, 0.01, `length at ${heights[i]} mm`);
    expectWithin(radius, across / 2 / Math.sin(lean), 0.05, `radius at ${heights[i]} mm`);
  });
});

test('on a wall that bends, a level line at a station is as long as was read there, and bends with the wall below and above its belly', () => {
  const stations = [
    { height: 0, across: 80 },
    { height: 30, across: 100 },
    { height: 60, across: 106 },
    { height: 90, across: 100 },
    { height: 120, across: 80 },
  ];
  const { collars } = collarsOf('smooth', stations, [30, 90]);
  const [below, above] = collars;
  if (!below || !above) throw new Error('no collars');
  for (const collar of collars) expectWithin(levelEdge(collar).length, Math.PI * 100, 0.01);
  // The wall is its own mirror image about the belly, and so are the two arcs: one opens up, one down.
  expectWithin(levelEdge(below).radius, levelEdge(above).radius, 0.05);
  expectWithin(below.template.wall.sine, -above.template.wall.sine, 1e-4);
  expect(below.template.wall.sine).toBeGreaterThan(0.1);
});

test('where the wall bends away under the strip it is said, with how far', () => {
  const stations = [foot, { height: 30, across: 90 }, { height: 60, across: 96 }];
  expect(
    collarsOf('smooth', stations, [20])
      .findings.map(({ says }) => says)
      .join(),
  ).toMatch(/bends away from the collar by/);
});

// Art at a level joint, drawn by hand on a cylinder, where mm around are mm of sheet: what it misses by follows from plane
// trigonometry, worked out beside each case.
import { expect, test } from 'vitest';
import type { Contour } from '../../../src/geometry/contour.ts';
import { polygon } from '../../../src/geometry/contour.ts';
import { NearestFinder } from '../../../src/geometry/nearest.ts';
import type { Point } from '../../../src/geometry/point.ts';
import { levelJointChecks } from '../../../src/prove/checks/check-level-joints.ts';
import type { ProvedPiece } from '../../../src/prove/written/piece.ts';
import type { PanelArt, ProvedRow, RowLayer } from '../../../src/prove/written/row.ts';
import { expectWithin } from '../../closeness.ts';

const joint = 30;
const radius = 40;

const panelArt = (turns: { from: number; to: number }, contours: readonly Contour[]): PanelArt => ({
  panel: { turns, beside: { start: 0, finish: 0 } } as ProvedPiece,
  contours,
});

function layerOf(arts: readonly PanelArt[], { cone, band }: Pick<ProvedRow, 'cone' | 'band'>): RowLayer {
  const contours = arts.flatMap((art) => art.contours);
  const row = { panels: arts.map(({ panel }) => panel), cone, band, trim: { lip: 0, foot: 0 } };
  return { row, name: 'kelp', arts, contours, finder: new NearestFinder(contours) };
}

/** Art in mm around and mm up from the joint, which is cut there or goes on past it. */
function side(
  band: { from: number; to: number },
  ...rings: readonly (readonly (readonly [number, number])[])[]
) {
  const contours: readonly Contour[] = rings.map((ring) =>
    polygon(ring.map(([x, up]): Point => ({ x, y: joint + up - band.from }))),
  );
  const cone = { from: band.from, radius, sine: 0 };
  return layerOf([panelArt({ from: 0, to: 1 }, contours)], { cone, band });
}
type Rings = Parameters<typeof side> extends [unknown, ...infer R] ? R : never;
const below = (...rings: Rings) => side({ from: 0, to: joint }, ...rings);
const above = (...rings: Rings) => side({ from: joint, to: 60 }, ...rings);
const check = (low: RowLayer, high: RowLayer) => levelJointChecks([low.row, high.row], [low, high])[0];

/** A band 10 mm wide that leans by so many mm around for each mm up, cut at the joint, from or up to 5 mm away. */
const leaning = (lean: number, to: number, by = 0): Rings[number] => [
  [20 + by, 0],
  [30 + by, 0],
  [30 + by + lean * to, to],
  [20 + by + lean * to, to],
];

test.each([0, 0.5, -1, 3])('a band that leans by %d and goes on misses by nothing', (lean) => {
  const found = check(below(leaning(lean, -5)), above(leaning(lean, 5)));
  expect(found).toMatchObject({ rule: 'level-joint-position', pass: true, unit: 'mm' });
  expectWithin(found?.value ?? 1, 0, 1e-6);
  expect(found?.says).toContain('over 4 lines');
});

test.each([0, 0.5, -1, 3])(
  'moved around by 0.2 mm, a band that leans by %d misses square to itself',
  (lean) => {
    const found = check(below(leaning(lean, -5)), above(leaning(lean, 5, 0.2)));
    expect(found?.pass).toBe(false);
    // Two parallel lines 0.2 mm apart on the level lie 0.2 mm times the cosine of their lean apart.
    expectWithin(found?.value ?? 0, 0.2 * Math.cos(Math.atan(lean)), 1e-6);
  },
);

test('art that is gone above the joint, or comes to it at another place, is told as far away', () => {
  expect(check(below(leaning(0, -5)), above())?.value).toBe(25);
  expect(check(below(leaning(0, -5)), above(leaning(0, 5, 100)))?.value).toBe(25);
  // Nor is it where the piece above has nothing of that layer at all.
  const low = below(leaning(0, -5));
  expect(levelJointChecks([low.row, above().row], [low])[0]?.value).toBe(25);
});

test('a shape bent at the joint itself meets there, and one whose tip ends there needs no like', () => {
  // A diamond's widest place lies on the joint: its sides lean one way below it and the other way above.
  const low: Rings[number] = [
    [20, 0],
    [30, 0],
    [25, -5],
  ];
  const high: Rings[number] = [
    [20, 0],
    [30, 0],
    [25, 5],
  ];
  expectWithin(check(below(low), above(high))?.value ?? 1, 0, 1e-6);
  const tip: Rings[number] = [
    [60, -5],
    [64, -5],
    [62, 0],
  ];
  expectWithin(check(below(low, tip), above(high))?.value ?? 1, 0, 1e-6);
});

test('a line over the seam is held against its like once around, and art that does not reach a joint is not held at all', () => {
  const girth = 2 * Math.PI * radius;
  const across = (to: number, by: number): Rings[number] => [
    [-2 + by, 0],
    [3 + by, 0],
    [3 + by, to],
    [-2 + by, to],
  ];
  const found = check(below(across(-5, 0)), above(across(5, girth)));
  expectWithin(found?.value ?? 1, 0, 1e-6);
  const away: Rings[number] = [
    [5, -9],
    [9, -9],
    [9, -4],
    [5, -4],
  ];
  expect(check(below(away), above())).toBeUndefined();
});

// The upright end of a stripe whose upper edge lies on the joint: there is nothing above it to go on as.
test('a line that ends at the joint in a corner of both pieces misses by what the corners do', () => {
  const stripe = (by = 0): Rings[number] => [
    [20 + by, -5],
    [40 + by, -5],
    [40 + by, 0.002],
    [20 + by, 0.002],
  ];
  expectWithin(check(below(stripe()), above(stripe()))?.value ?? 1, 0, 1e-6);
  expectWithin(check(below(stripe()), above(stripe(0.2)))?.value ?? 0, 0.2, 1e-6);
  expect(check(below(stripe()), above())?.value).toBe(25);
});

// The stripe's end leans by 4 mm around for each mm up, and its corner stands 0.004 mm below the joint: 0.016 mm beside where the end's line comes to the joint.
test('a line that leans far and ends in a corner a hair below the joint misses by nothing', () => {
  const leaningEnd = (by = 0): Rings[number] => [
    [0 + by, -5],
    [40 + by, -5],
    [40 + by, -0.004],
    [4 * (5 - 0.004) + by, -0.004],
  ];
  const low = (by = 0) => below(leaningEnd(by), leaning(0, -5, 80));
  const high = (by = 0) => above(leaningEnd(by), leaning(0, 5, 80));
  expectWithin(check(low(), high())?.value ?? 1, 0, 1e-6);
});

// Beside a handle art ends in the waste past the side of each piece, and on a wall that bends their sides are not one line.
test('what lies in the waste beside a handle need not go on', () => {
  const beside = { start: 25, finish: 25 };
  const atHandle = (layer: RowLayer): RowLayer => {
    const row = { ...layer.row, panels: layer.row.panels.map((panel) => ({ ...panel, beside })) };
    return { ...layer, row };
  };
  // Its two lines come to the joint 20 and 30 mm from turn 0, of which the first is in the waste.
  const found = check(atHandle(below(leaning(0, -5))), atHandle(above(leaning(0, 5, 0.2))));
  expect(found?.says).toContain('over 2 lines');
  expectWithin(found?.value ?? 0, 0.2, 1e-6);
  const inWaste = (by: number): Rings[number] => leaning(0, by, -10).map(([x, up]) => [x, up] as const);
  expect(check(atHandle(below(inWaste(-5))), atHandle(above()))).toBeUndefined();
});

// Two panels, joined at half a turn (125.66 mm): the first laps over the second, and its art ends there with its film, in each row elsewhere.
test('where a panel laps over the next its art may end, but up to its joint it goes on', () => {
  const half = Math.PI * radius;
  const inPanels = ({ arts, row }: RowLayer, lap: number, missing = 0): RowLayer => {
    const contours = arts.flatMap((art) => art.contours);
    const to = row.band.from === joint ? 5 : -5;
    const stripe = (from: number, end: number): Contour =>
      polygon(
        [
          [from, 0],
          [end, 0],
          [end, to],
          [from, to],
        ].map(([x = 0, up = 0]): Point => ({ x, y: joint + up - row.band.from })),
      );
    const [first, last] = [stripe(half - 20, half + lap), stripe(half - 1, half + 30 + missing)];
    return layerOf(
      [panelArt({ from: 0, to: 0.5 }, [...contours, first]), panelArt({ from: 0.5, to: 1 }, [last])],
      row,
    );
  };
  const found = check(inPanels(below(), 7), inPanels(above(), 7.2));
  // The stripe's two ends, from both sides; neither the lap's nor the waste's before the second panel.
  expect(found?.says).toContain('over 4 lines');
  expectWithin(found?.value ?? 1, 0, 1e-6);
  expectWithin(check(inPanels(below(), 7), inPanels(above(), 7, 0.2))?.value ?? 0, 0.2, 1e-6);
});

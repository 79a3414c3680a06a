// The cheapest way up a field against a general graph library (dijkstrajs: Dijkstra's single-source shortest paths) on
// the same graph spelled out node by node, and against every path tried where there are few.
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { bendCost, type CostField, stepCost, windingPath } from '../../../src/pattern/seam/winding-path.ts';
import { expectWithin } from '../../closeness.ts';
import { randomFrom } from '../../geometry/drawn.ts';

type Graph = Record<string, Record<string, number>>;
const { find_path: findPath } = createRequire(import.meta.url)('dijkstrajs') as {
  find_path(graph: Graph, from: string, to: string): readonly string[];
};

function fieldOf(seed: number, columns: number, rows: number, isPeriodic: boolean): CostField {
  const random = randomFrom(seed);
  const costs = Float32Array.from({ length: columns * rows }, () => 1 + 40 * random() ** 4);
  return { columns, rows, across: 0.25, up: 0.25, isPeriodic, costs };
}

/** The graph of states, spelled out: "knot column slope", from "start" to "end". */
function graphOf(field: CostField, rowsPerStep: number, steepest: number): Graph {
  const { columns, rows, isPeriodic } = field;
  const knots = rows / rowsPerStep;
  const graph: Graph = { start: {}, end: {} };
  const edge = (from: string, to: string, cost: number) => {
    const edges = graph[from] ?? {};
    edges[to] = cost;
    graph[from] = edges;
  };
  const slopes = Array.from({ length: 2 * steepest + 1 }, (_, s) => s - steepest);
  for (let knot = 0; knot < knots; knot++)
    for (let column = 0; column < columns; column++)
      for (const slope of slopes) {
        const to = column + slope;
        if (!isPeriodic && (to < 0 || to >= columns)) continue;
        const landed = `${knot + 1} ${((to % columns) + columns) % columns} ${slope}`;
        const cost = stepCost(field, { rowsPerStep }, knot, column, slope);
        if (knot === 0) edge('start', `0 ${column}`, 0);
        if (knot === 0) edge(`0 ${column}`, landed, cost);
        else
          for (const by of [-1, 0, 1])
            if (Math.abs(slope + by) <= steepest)
              edge(`${knot} ${column} ${slope + by}`, landed, cost + Math.abs(by) * bendCost);
        if (knot === knots - 1) edge(landed, 'end', 0);
      }
  return graph;
}

const costAlong = (graph: Graph, nodes: readonly string[]): number =>
  nodes.slice(1).reduce((sum, node, i) => sum + (graph[nodes[i] ?? '']?.[node] ?? Number.NaN), 0);

describe.each([true, false])('the cheapest way up, periodic: %s', (isPeriodic) => {
  test.each([1, 2, 3, 4, 5, 6])('costs what the graph library finds (seed %d)', (seed) => {
    const field = fieldOf(seed, 14, 32, isPeriodic);
    const graph = graphOf(field, 4, 3);
    const best = costAlong(graph, findPath(graph, 'start', 'end'));
    const { cost, columns } = windingPath(field, { rowsPerStep: 4, steepest: 3 });
    expectWithin(cost, best, 1e-9, 'cost');
    // And the path given is one of that cost, within its bounds.
    const slopes = columns.slice(1).map((column, k) => column - (columns[k] ?? 0));
    const bends = slopes.slice(1).map((slope, k) => Math.abs(slope - (slopes[k] ?? 0)));
    expect(Math.max(...slopes.map(Math.abs))).toBeLessThanOrEqual(3);
    expect(Math.max(...bends)).toBeLessThanOrEqual(1);
    const walked = slopes.reduce(
      (sum, slope, k) => sum + stepCost(field, { rowsPerStep: 4 }, k, columns[k] ?? 0, slope),
      bends.reduce((sum, bend) => sum + bend * bendCost, 0),
    );
    expectWithin(walked, cost, 1e-9, 'cost of the path');
    if (!isPeriodic) expect(columns.every((column) => column >= 0 && column < 14)).toBe(true);
  });

  test('costs the least of every path there is', () => {
    const field = fieldOf(11, 5, 10, isPeriodic);
    const options = { rowsPerStep: 2, steepest: 1 };
    const least = (knot: number, column: number, slope: number | undefined): number => {
      if (knot === 5) return 0;
      return Math.min(
        ...[-1, 0, 1]
          .filter((to) => slope === undefined || Math.abs(to - slope) <= 1)
          .filter((to) => isPeriodic || (column + to >= 0 && column + to < 5))
          .map(
            (to) =>
              stepCost(field, options, knot, column, to) +
              (slope === undefined ? 0 : Math.abs(to - slope) * bendCost) +
              least(knot + 1, (column + to + 5) % 5, to),
          ),
      );
    };
    const best = Math.min(...[0, 1, 2, 3, 4].map((column) => least(0, column, undefined)));
    expectWithin(windingPath(field, options).cost, best, 1e-9, 'cost');
  });
});

test('a clear lane is followed around what stands in the way', () => {
  const [columns, rows] = [40, 80];
  const costs = new Float32Array(columns * rows).fill(1);
  // Two bars with gaps at opposite sides: no straight line gets through both.
  for (let c = 0; c < columns; c++)
    for (let r = 0; r < 4; r++) {
      if (c > 10) costs[(20 + r) * columns + c] = 500;
      if (c < 30) costs[(60 + r) * columns + c] = 500;
    }
  const field: CostField = { columns, rows, across: 0.25, up: 0.25, isPeriodic: false, costs };
  const { cost } = windingPath(field, { rowsPerStep: 4, steepest: 8 });
  expect(cost).toBeLessThan(40);
});

test.each([true, false])(
  'of ways as good as one another the nearest to the middle is taken, periodic: %s',
  (isPeriodic) => {
    const costs = new Float32Array(21 * 16).fill(1);
    const field: CostField = { columns: 21, rows: 16, across: 0.25, up: 0.25, isPeriodic, costs };
    expect(windingPath(field, { rowsPerStep: 4, steepest: 2 }).columns).toEqual([10, 10, 10, 10, 10]);
  },
);

// Sets joined two by two against a general graph search (dijkstrajs): what is in a set can be reached, by joins either way.
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { setsJoined } from '../../src/geometry/joined.ts';
import { randomFrom } from './drawn.ts';

const { single_source_shortest_paths: reachedFrom } = createRequire(import.meta.url)('dijkstrajs') as {
  single_source_shortest_paths(graph: unknown, from: string): Record<string, unknown>;
};

test('are those that can be reached, in rising order, the sets by their least', () => {
  const random = randomFrom(11);
  const anyOf = (count: number) => Math.floor(count * random());
  for (let round = 0; round < 40; round++) {
    const count = 1 + anyOf(30);
    const joins = Array.from({ length: anyOf(count) }, () => [anyOf(count), anyOf(count)] as const);
    const graph: Record<string, Record<string, number>> = {};
    for (let i = 0; i < count; i++) graph[i] = {};
    for (const [a, b] of joins) {
      Object.assign(graph[a] ?? {}, { [b]: 1 });
      Object.assign(graph[b] ?? {}, { [a]: 1 });
    }
    const wanted: number[][] = [];
    for (let i = 0; i < count; i++) {
      if (wanted.flat().includes(i)) continue;
      const reached = Object.keys(reachedFrom(graph, String(i))).map(Number);
      wanted.push([...new Set([i, ...reached])].sort((a, b) => a - b));
    }
    const sets = setsJoined(count, (join) => {
      for (const [a, b] of joins) join(a, b);
    });
    expect(sets).toEqual(wanted);
  }
});

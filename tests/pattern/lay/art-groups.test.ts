// Grouping by the lattice's squares against a search through all groups.
import { expect, test } from 'vitest';
import type { Point } from '../../../src/geometry/point.ts';
import type { Lattice } from '../../../src/pattern/lattice/lattice.ts';
import { ArtGroups } from '../../../src/pattern/lay/art-groups.ts';
import { apartInArt } from '../../../src/pattern/lay/art-place.ts';
import { expectAtMost } from '../../closeness.ts';
import { randomFrom } from '../../geometry/drawn.ts';

const places = (count: number, side: number, random = randomFrom(5)): Point[] =>
  Array.from({ length: count }, () => ({ x: (random() - 0.5) * side, y: (random() - 0.5) * side }));

/** Each place joins the earliest group whose first is near: looked for in all of them. */
function searched(lattice: Lattice, near: number, all: readonly Point[]): Point[][] {
  const groups: Point[][] = [];
  for (const at of all) {
    const group = groups.find(([first]) => first && apartInArt(lattice, first, at) < near);
    if (group) group.push(at);
    else groups.push([at]);
  }
  return groups;
}

const lattices: Readonly<Record<string, Lattice>> = {
  upright: { a: { x: 40, y: 0 }, b: { x: 0, y: 30 } },
  slanting: { a: { x: 31, y: 7 }, b: { x: -12, y: 26 } },
  'hardly wider than what is near': { a: { x: 2.2, y: 0 }, b: { x: 0.4, y: 3.1 } },
  narrower: { a: { x: 1, y: 0 }, b: { x: 0, y: 50 } },
};

test.each(Object.entries(lattices))('a lattice that is %s: groups as a search finds them', (_, lattice) => {
  const all = places(400, 120);
  const groups = new ArtGroups<Point>(lattice, 1.5);
  for (const at of all) groups.add(at, at);
  expect(groups.all).toEqual(searched(lattice, 1.5, all));
});

// Each was held against all before it: 4,000 specks in a tile took `make` two minutes.
test('ten thousand places are each looked at a few times, however many there are', () => {
  const groups = new ArtGroups<number>({ a: { x: 900, y: 0 }, b: { x: 0, y: 900 } }, 1.5);
  let looks = 0;
  const watched = ({ x, y }: Point): Point => ({
    get x() {
      looks++;
      return x;
    },
    y,
  });
  places(10_000, 900).forEach((at, i) => void groups.add(watched(at), i));
  expectAtMost(looks / 10_000, 6, 'looks at a place');
});

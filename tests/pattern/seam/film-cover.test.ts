// What film covers of the cells of a grid, against areas in closed form.
import { expect, test } from 'vitest';
import { FilmCover } from '../../../src/pattern/seam/film-cover.ts';
import { expectWithin } from '../../closeness.ts';

const rectangle = (x: number, y: number, width: number, height: number) => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
];
const disc = (x: number, y: number, radius: number, count = 2000) =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
  });
const sharesOf = (outlines: Parameters<FilmCover['add']>[0], first = 0) => {
  const cover = new FilmCover(20, 20);
  cover.add(outlines, first);
  return cover.shares();
};
const sum = (shares: Float32Array) => shares.reduce((all, share) => all + share, 0);
/** Shares are single floats. */
const rounding = 1e-4;

test('a bar takes as much of every column, wherever in a row it lies', () => {
  for (const y of [3, 3.1, 3.49, 3.5, 3.9]) {
    const shares = sharesOf([rectangle(-5, y, 40, 3.2)]);
    for (let column = 0; column < 20; column++)
      expectWithin(sum(shares.filter((_, i) => i % 20 === column)), 3.2, rounding, `column ${column}`);
  }
});

test('a disc and its hole cover their areas, whichever way they wind', () => {
  for (const turned of [
    (p: ReturnType<typeof disc>) => p,
    (p: ReturnType<typeof disc>) => [...p].reverse(),
  ]) {
    const shares = sharesOf([turned(disc(9.3, 10.2, 7)), turned(disc(9.3, 10.2, 4).reverse())]);
    expectWithin(sum(shares), Math.PI * (49 - 16), 1e-3, 'area');
    expectWithin(shares[10 * 20 + 9] ?? 1, 0, rounding, 'in the hole');
    expectWithin(shares[10 * 20 + 4] ?? 0, 1, rounding, 'within');
  }
});

test('what is past the grid is left out, from wherever it begins', () => {
  const half = sharesOf([disc(20, 5, 4)]);
  expectWithin(sum(half), (Math.PI * 16) / 2, 1e-3, 'half of it');
  expectWithin(sum(sharesOf([disc(20, 5, 4)], 20)), (Math.PI * 16) / 2, 1e-3, 'the other half');
  expectWithin(sum(sharesOf([disc(5, 20, 4)])), (Math.PI * 16) / 2, 1e-3, 'past the last row');
  expect(sum(sharesOf([disc(30, 5, 4)]))).toBe(0);
});

test('films over one another count as one', () => {
  const cover = new FilmCover(4, 4);
  for (let i = 0; i < 3; i++) cover.add([rectangle(1, 1, 2, 2)]);
  expectWithin(sum(cover.shares()), 4, rounding);
});

// Artwork to lay around walls, drawn on a tile of 40 mm by 30 mm, y down.
import { moveContour, translation } from '../../src/geometry/affine.ts';
import { type Contour, cubic, line, reverseContour, type Shape } from '../../src/geometry/contour.ts';
import type { Point } from '../../src/geometry/point.ts';
import { blob, box, circle } from '../geometry/drawn.ts';

export const width = 40;
export const height = 30;

export const shape = (...contours: Contour[]): Shape => ({ contours });

export const moveShape = (by: Point, { contours }: Shape): Shape => ({
  contours: contours.map((contour) => moveContour(translation(by.x, by.y), contour)),
});

/** A shape with copies of itself so many tiles away on every side: art that crosses every border alike. */
export const withCopies = (one: Shape, across = 1, up = 1): Shape[] => {
  const copies: Shape[] = [];
  for (let i = -across; i <= across; i++)
    for (let j = -up; j <= up; j++) copies.push(moveShape({ x: i * width, y: j * height }, one));
  return copies;
};

export const ring = (centre: Point, outer: number, inner: number): Shape =>
  shape(circle(centre, outer), reverseContour(circle(centre, inner)));

/** One cubic that comes back to where it began. */
export const teardrop = ({ x, y }: Point, size: number, mirrored = false): Contour => {
  const side = mirrored ? -size : size;
  return {
    closed: true,
    segments: [cubic({ x, y }, { x: x + side, y: y - size }, { x: x - side, y: y - size }, { x, y })],
  };
};

/** A stripe with wavy edges, from a tile before the border to a tile past the other; its edges meet their own copies smoothly. */
export const wavyStripe = (y: number, thick: number): Shape => {
  const edge = (at: number): Contour['segments'] =>
    [-1, 0, 1].map((k) =>
      cubic(
        { x: k * width, y: at },
        { x: k * width + width / 3, y: at + 5 },
        { x: k * width + (2 * width) / 3, y: at - 5 },
        { x: (k + 1) * width, y: at },
      ),
    );
  const back = reverseContour({ closed: false, segments: edge(y + thick) }).segments;
  const [left, right] = [-width, 2 * width];
  return shape({
    closed: true,
    segments: [
      ...edge(y),
      line({ x: right, y }, { x: right, y: y + thick }),
      ...back,
      line({ x: left, y: y + thick }, { x: left, y }),
    ],
  });
};

export interface NamedArt {
  readonly name: string;
  readonly draw: (random: () => number) => Shape[];
  /** Whether every copy meets its neighbour on a plain grid of tiles. */
  readonly joins: boolean;
}

const between = (random: () => number, from: number, to: number): number => from + (to - from) * random();

export const art: readonly NamedArt[] = [
  {
    name: 'blobs that cross every border',
    joins: true,
    draw: (random) =>
      [0, 1, 2, 3].flatMap(() =>
        withCopies(
          shape(
            blob(
              random,
              { x: between(random, 0, width), y: between(random, 0, height) },
              between(random, 3, 9),
            ),
          ),
        ),
      ),
  },
  {
    name: 'blobs that the tile cuts off',
    joins: false,
    draw: (random) =>
      [0, 1, 2].map(() =>
        shape(
          blob(
            random,
            { x: between(random, 0, width), y: between(random, 0, height) },
            between(random, 5, 12),
          ),
        ),
      ),
  },
  {
    name: 'a shape of two and a half tiles',
    joins: true,
    draw: (random) =>
      withCopies(
        shape(
          moveContour({ a: 5.2, b: 0, c: 0, d: 0.7, e: 17.3, f: 14.1 }, blob(random, { x: 0, y: 0 }, 10)),
        ),
        3,
      ),
  },
  { name: 'a wavy stripe all round', joins: true, draw: (random) => [wavyStripe(between(random, 8, 14), 7)] },
  { name: 'a background', joins: true, draw: () => [shape(box(0, 0, width, height))] },
  {
    name: 'a background with a hole over a corner',
    joins: true,
    draw: () => [
      shape(
        box(-10, -10, width + 20, height + 20),
        ...[0, 1].flatMap((i) =>
          [0, 1].map((j) => reverseContour(circle({ x: i * width + 0.7, y: j * height - 0.4 }, 6))),
        ),
      ),
    ],
  },
  {
    name: 'level stripes, flush and crossing',
    joins: true,
    draw: () => [
      shape(box(0, 3, width, 4)),
      shape(box(-5, 12, width + 10, 4)),
      shape(box(0, height - 2, width, 2)),
      shape(box(0, 0, width, 1.5)),
    ],
  },
  {
    name: 'upright stripes along the border',
    joins: true,
    draw: () => [
      shape(box(0, -2, 3, height + 4)),
      shape(box(width - 3, 0, 3, height)),
      shape(box(15, 0, 4, height)),
      shape(box(15, 0, 4, height)),
    ],
  },
  {
    name: 'rings with islands over a corner',
    joins: true,
    draw: () => [
      ...withCopies(ring({ x: 1, y: 2.3 }, 9, 6)),
      ...withCopies(ring({ x: 1, y: 2.3 }, 4, 2)),
      ...withCopies(shape(circle({ x: 1, y: 2.3 }, 1))),
      ring({ x: 20, y: 15 }, 7, 3),
    ],
  },
  {
    name: 'the same shape twice, and overlapping itself',
    joins: true,
    draw: (random) => {
      const one = shape(blob(random, { x: 20, y: 15 }, 12));
      return [one, one, moveShape({ x: 7, y: 2 }, one), ...withCopies(moveShape({ x: 20, y: 13 }, one))];
    },
  },
  {
    name: 'specks',
    joins: true,
    draw: (random) =>
      Array.from({ length: 12 }, () =>
        shape(
          circle(
            { x: between(random, 1, width - 1), y: between(random, 1, height - 1) },
            between(random, 0.03, 0.2),
          ),
        ),
      ),
  },
  {
    name: 'circles that touch their own copies',
    joins: true,
    draw: () => [
      shape(circle({ x: 20, y: 15 }, 20, 8)),
      shape(circle({ x: 0, y: 15 }, 3)),
      shape(circle({ x: width, y: 15 }, 3)),
    ],
  },
  {
    name: 'squares that touch at corners and along parts of sides',
    joins: true,
    draw: () => [
      shape(box(0, 0, 20, 15)),
      shape(box(20, 15, 20, 15)),
      shape(box(24, 0, 6, 10)),
      shape(box(30, 5, 10, 7)),
    ],
  },
  {
    name: 'teardrops of one curve, run either way',
    joins: true,
    draw: () => [...withCopies(shape(teardrop({ x: 2, y: 12 }, 12))), shape(teardrop({ x: 20, y: 25 }, 18))],
  },
];

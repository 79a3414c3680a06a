// What is picked out of cut film and what stays, and how long that takes, place by place.
import type { Contour, Shape } from '../geometry/contour.ts';
import { shapeArea, tightBox } from '../geometry/measure.ts';
import { distance, type Point } from '../geometry/point.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import type { PartedFilm } from './parted-film.ts';

/** How long weeding takes by hand. Common practice, no source: it is to compare jobs by, and to be replaced by one's own. */
export const weedingRule = {
  /** To find a piece of waste, lift its corner and throw it away, seconds. */
  piece: 3,
  /** Edge along which waste is pulled off in a second, mm. */
  edge: 30,
  /** A piece that stays and is smaller than this, mm², is held down meanwhile, which takes so many seconds more. */
  small: 100,
  hold: 2,
} as const;

/** Time that a place of the film takes. */
export interface WeedingPlace {
  readonly at: Point;
  readonly seconds: number;
}

/** Stretches of an edge are told apart by no more than this, mm. */
const stretch = 2;

/** What of parted film stays, and what is weeded. */
export interface WeededFilm {
  readonly stays: readonly Shape[];
  readonly waste: readonly Shape[];
  /** All that takes time in weeding it. */
  readonly places: readonly WeedingPlace[];
}

/** Of a decal the art stays, of a mask the ground. */
export function weededFilm({ art, ground }: PartedFilm, use: 'decal' | 'mask'): WeededFilm {
  const [stays, waste] = use === 'decal' ? [art, ground] : [ground, art];
  return { stays, waste, places: weedingPlaces(stays, waste, art) };
}

/** `art`: the film whose edges they share. */
function weedingPlaces(
  stays: readonly Shape[],
  waste: readonly Shape[],
  art: readonly Shape[],
): WeedingPlace[] {
  if (waste.length === 0) return [];
  const held = stays.filter((shape) => shapeArea(shape) < weedingRule.small);
  return [
    ...waste.map((shape) => ({ at: middleOf(shape), seconds: weedingRule.piece })),
    ...held.map((shape) => ({ at: middleOf(shape), seconds: weedingRule.hold })),
    ...art.flatMap(({ contours }) => contours.flatMap(edgePlaces)),
  ];
}

function middleOf({ contours }: Shape): Point {
  const { minX, minY, maxX, maxY } = tightBox(contours.slice(0, 1));
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

const edgePlaces = ({ segments }: Contour): WeedingPlace[] =>
  segments.flatMap((s) => {
    const count = Math.max(chordCount(s, chordTolerance), Math.ceil(distance(s.from, s.to) / stretch));
    return Array.from({ length: count }, (_, i) => {
      const length = distance(pointAt(s, i / count), pointAt(s, (i + 1) / count));
      return { at: pointAt(s, (i + 0.5) / count), seconds: length / weedingRule.edge };
    });
  });

/** A square of the film, from its top left corner, with the time that it takes. */
export interface WeedingSquare extends Point {
  readonly seconds: number;
}

/** Places put together in squares of a side, mm. */
export function weedingSquares(places: readonly WeedingPlace[], side: number): WeedingSquare[] {
  const squares = new Map<string, WeedingSquare>();
  for (const { at, seconds } of places) {
    const [i, j] = [Math.floor(at.x / side), Math.floor(at.y / side)];
    const known = squares.get(`${i} ${j}`);
    squares.set(`${i} ${j}`, { x: i * side, y: j * side, seconds: (known?.seconds ?? 0) + seconds });
  }
  return [...squares.values()];
}

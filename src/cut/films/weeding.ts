// What is picked out of cut film and what stays, and how long that takes, place by place.
import { contourLength } from '../../geometry/arc-length.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { shapeArea } from '../../geometry/measure.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { chordCount, pointAt } from '../../geometry/segment.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';
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

/** Edges are taken in stretches of at least this length, mm, and under twice that. */
const stretch = 1;

/** What rounding may take off it where a motif is turned, mm. */
const rounding = 1e-6;

/** What of parted film stays, what is weeded, and how long that takes by the rule, seconds. */
export interface WeededFilm {
  readonly stays: readonly Shape[];
  readonly waste: readonly Shape[];
  /** The art, whichever of the two it is. */
  readonly art: readonly Shape[];
  readonly seconds: number;
}

/** Of a decal the art stays, of a mask the ground. */
export function weededFilm({ art, ground }: PartedFilm, use: 'decal' | 'mask'): WeededFilm {
  const [stays, waste] = use === 'decal' ? [art, ground] : [ground, art];
  return { stays, waste, art, seconds: waste.length === 0 ? 0 : secondsFor(stays, waste, art) };
}

function secondsFor(stays: readonly Shape[], waste: readonly Shape[], art: readonly Shape[]): number {
  let edge = 0;
  for (const { contours } of art) for (const contour of contours) edge += contourLength(contour);
  const { piece, hold } = weedingRule;
  return piece * waste.length + hold * heldOf(stays).length + edge / weedingRule.edge;
}

const heldOf = (stays: readonly Shape[]): readonly Shape[] =>
  stays.filter((shape) => shapeArea(shape) < weedingRule.small);

interface WeedingPlaces {
  /** All that takes time. */
  readonly places: readonly WeedingPlace[];
  /** Those of the art's edges, contour by contour and in its order, each with its time alone. */
  readonly edges: readonly (readonly WeedingPlace[])[];
}

/** Where the time goes that weeding a film takes. */
export function weedingPlaces({ stays, waste, art }: WeededFilm): WeedingPlaces {
  if (waste.length === 0) return { places: [], edges: [] };
  const edges = art.flatMap(({ contours }) =>
    contours.map((contour) => edgePlaces(contour, 1 / weedingRule.edge)),
  );
  const places = [
    ...waste.flatMap((shape) => aroundPiece(shape, weedingRule.piece)),
    ...heldOf(stays).flatMap((shape) => aroundPiece(shape, weedingRule.hold)),
    ...edges.flat(),
  ];
  return { places, edges };
}

/** A piece's time along all of its outer edge: its middle may lie outside it, and far from where the hand is. */
function aroundPiece({ contours: [outer] }: Shape, seconds: number): WeedingPlace[] {
  return outer ? edgePlaces(outer, seconds / contourLength(outer)) : [];
}

/** A contour in stretches, each at its middle chord; `rate`: seconds a mm. */
function edgePlaces({ segments }: Contour, rate: number): WeedingPlace[] {
  const places: WeedingPlace[] = [];
  let [gathered, length]: [Point[], number] = [[], 0];
  const put = () => {
    const at = gathered[Math.floor(gathered.length / 2)];
    if (at) places.push({ at, seconds: length * rate });
    [gathered, length] = [[], 0];
  };
  for (const s of segments) {
    const count = Math.max(
      chordCount(s, chordTolerance),
      Math.floor((distance(s.from, s.to) + rounding) / stretch),
    );
    for (let i = 0; i < count; i++) {
      length += distance(pointAt(s, i / count), pointAt(s, (i + 1) / count));
      gathered.push(pointAt(s, (i + 0.5) / count));
      if (length >= stretch - rounding) put();
    }
  }
  put();
  return places;
}

/**
 * How far around a place counts for it, mm: wholly at the place, falling to nothing here by the square of the distance, so that
 * a square cm counts in all and nothing comes in at once.
 */
const reach = Math.sqrt(200 / Math.PI);

/**
 * Seconds for a square cm along the edges of a film: of all the time around each place. What is around it goes with the motif
 * and turns with it, so motifs alike with neighbours alike come out alike wherever they lie.
 */
export function weedingRates(film: WeededFilm): readonly (readonly WeedingPlace[])[] {
  const { places, edges } = weedingPlaces(film);
  const rateAt = ratesAmong(places);
  return edges.map((edge) => edge.map(({ at }) => ({ at, seconds: rateAt(at) })));
}

/** The rate at a place. Places lie in squares of the reach, as columns of numbers: a large drawing has half a million. */
function ratesAmong(places: readonly WeedingPlace[]): (at: Point) => number {
  const cells = new Map<string, number[]>();
  const cellOf = (mm: number): number => Math.floor(mm / reach);
  for (const { at, seconds } of places) {
    const key = `${cellOf(at.x)} ${cellOf(at.y)}`;
    const cell = cells.get(key);
    if (cell) cell.push(at.x, at.y, seconds);
    else cells.set(key, [at.x, at.y, seconds]);
  }
  const around = (i: number, j: number): number[][] =>
    [-1, 0, 1].flatMap((di) => [-1, 0, 1].flatMap((dj) => [cells.get(`${i + di} ${j + dj}`) ?? []]));
  let last = { i: Number.NaN, j: Number.NaN, near: [] as number[][] };
  return (at) => {
    const i = cellOf(at.x);
    const j = cellOf(at.y);
    // Along an edge one place follows the other.
    if (i !== last.i || j !== last.j) last = { i, j, near: around(i, j) };
    let seconds = 0;
    for (const cell of last.near) seconds += timeNear(at, cell);
    return seconds;
  };
}

/** What the places of a square, in threes, count for one. */
function timeNear({ x, y }: Point, cell: readonly number[]): number {
  let seconds = 0;
  for (let k = 0; k < cell.length; k += 3) {
    const dx = (cell[k] ?? x) - x;
    const dy = (cell[k + 1] ?? y) - y;
    const share = 1 - (dx * dx + dy * dy) / (reach * reach);
    if (share > 0) seconds += (cell[k + 2] ?? 0) * share;
  }
  return seconds;
}

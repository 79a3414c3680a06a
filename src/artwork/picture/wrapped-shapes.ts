// Areas of a picture whose copies lie all around it, from the lines traced once on it: they meet their copies curve for curve.
import { moveContour, shifted, translation } from '../../geometry/affine.ts';
import { type Box, boxAround, boxCorners, boxesMeet, hullBox, movedBox } from '../../geometry/box.ts';
import {
  type Contour,
  line,
  polygon,
  polyline,
  reverseSegment,
  type Segment,
  type Shape,
} from '../../geometry/contour.ts';
import { holdsPoint } from '../../geometry/inside.ts';
import { tightBox } from '../../geometry/measure.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { cross, dot, type Point } from '../../geometry/point.ts';
import { filledShapes, filledWithin } from '../../geometry/regions.ts';
import { withEnds } from '../../geometry/segment.ts';
import { chordTolerance } from '../../geometry/tolerance.ts';

/** An edge of the film, mm: closed, or one round of one that goes on for ever, so many whole pictures on. */
export interface TracedEdge {
  readonly contour: Contour;
  readonly by: { readonly i: number; readonly j: number };
}

/** The picture, mm, and a place on it that is film for sure, or is none for sure. */
export interface WrappedTile {
  readonly width: number;
  readonly height: number;
  readonly sure: { readonly at: Point; readonly isFilm: boolean };
}

/**
 * The film inside edges. Motifs that stand apart come whole, once, with each copy that reaches into the picture; film that goes
 * on from copy to copy without end is cut at the picture's edge.
 */
export function wrappedShapes(edges: readonly TracedEdge[], tile: WrappedTile): Shape[] {
  const frame = { minX: 0, minY: 0, maxX: tile.width, maxY: tile.height };
  const closed = edges.flatMap(({ contour }) => (contour.closed ? [contour] : []));
  const here = copiesIn(closed, frame, tile);
  const through = edges.filter(({ contour }) => !contour.closed).flatMap((edge) => runsThrough(edge, tile));
  const endless = closedFarOff(through, tile);
  const all = [...here, ...endless];
  const { at, isFilm } = tile.sure;
  const isInside = holdsPoint({ contours: all }, at) === isFilm;
  if (endless.length === 0 && isInside) return wholeMotifs(closed, tile);
  // What lies between edges is known but for which side is film: all of the plane more turns it round.
  const plane = isInside ? [] : [farSquare(tile, 4)];
  return filledWithin([...all, ...plane], polygon(boxCorners(frame)), chordTolerance);
}

type Size = Pick<WrappedTile, 'width' | 'height'>;

const stepOf = ({ width, height }: Size, i: number, j: number): Point => ({ x: i * width, y: j * height });

/** The steps that bring a box into another. */
function stepsInto(box: Box, into: Box, size: Size): Point[] {
  const range = (from: number, to: number) =>
    Array.from({ length: Math.max(0, to - from + 1) }, (_, k) => from + k);
  const across = range(
    Math.ceil((into.minX - box.maxX) / size.width),
    Math.floor((into.maxX - box.minX) / size.width),
  );
  const down = range(
    Math.ceil((into.minY - box.maxY) / size.height),
    Math.floor((into.maxY - box.minY) / size.height),
  );
  return across.flatMap((i) => down.map((j) => stepOf(size, i, j)));
}

/** Every copy of closed contours that meets a box. */
const copiesIn = (contours: readonly Contour[], into: Box, size: Size): Contour[] =>
  contours.flatMap((contour) =>
    stepsInto(tightBox([contour]), into, size).map((by) => moveContour(translation(by.x, by.y), contour)),
  );

/** Motifs whose edges all close: each whole, in every copy that reaches into the tile. */
function wholeMotifs(closed: readonly Contour[], size: Size): Shape[] {
  const tile = { minX: 0, minY: 0, maxX: size.width, maxY: size.height };
  const homes = closed.map((contour) => {
    const box = tightBox([contour]);
    const by = stepOf(
      size,
      -Math.floor(middleOf(box).x / size.width),
      -Math.floor(middleOf(box).y / size.height),
    );
    return movedBox(box, by);
  });
  const around = filledShapes(copiesIn(closed, boxAround([tile, ...homes]), size), 'evenodd', chordTolerance);
  const own: { readonly shape: Shape; readonly box: Box }[] = [];
  for (const shape of around) {
    const box = tightBox(shape.contours);
    const at = middleOf(box);
    // One whose middle lies on the border may be found on either side of it, or on both.
    const isHome =
      at.x > -rounding && at.y > -rounding && at.x < size.width + rounding && at.y < size.height + rounding;
    if (isHome && !own.some((other) => isCopy(box, other.box, size))) own.push({ shape, box });
  }
  return own.flatMap(({ shape, box }) =>
    stepsInto(box, tile, size).map((by): Shape => ({ contours: shifted(shape.contours, by) })),
  );
}

/** Copies of one edge differ by rounding alone, mm. */
const rounding = 1e-4;

const middleOf = ({ minX, minY, maxX, maxY }: Box): Point => ({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });

/** Whether two boxes are one motif's, whole pictures apart. */
function isCopy(one: Box, other: Box, { width, height }: Size): boolean {
  const isOff = (p: number, q: number, whole: number) =>
    Math.abs(p - q - Math.round((p - q) / whole) * whole) > rounding;
  return !(
    isOff(one.minX, other.minX, width) ||
    isOff(one.maxX, other.maxX, width) ||
    isOff(one.minY, other.minY, height) ||
    isOff(one.maxY, other.maxY, height)
  );
}

/** How far from the middle of a tile all of it lies. */
const reachOf = ({ width, height }: Size): number => Math.hypot(width, height) / 2;

/** A square about the tile's middle, so many times its reach. */
function farSquare(size: Size, times: number): Contour {
  const [x, y, far] = [size.width / 2, size.height / 2, times * reachOf(size)];
  return polygon(boxCorners({ minX: x - far, minY: y - far, maxX: x + far, maxY: y + far }));
}

/** An endless edge from well before the tile to well after. */
interface Run {
  readonly segments: readonly Segment[];
  readonly from: Point;
  readonly to: Point;
  /** The way that it goes, from picture to picture. */
  readonly round: Point;
}

/** Every copy of an endless edge that runs through the tile. */
function runsThrough({ contour, by }: TracedEdge, size: Size): Run[] {
  const tile = { minX: 0, minY: 0, maxX: size.width, maxY: size.height };
  const round = stepOf(size, by.i, by.j);
  const box = hullBox([contour]);
  // Copies whole rounds apart are stretches of one edge; `i by.j - j by.i` is the same for all of them, and for no other.
  const seen = new Map<number, Point>();
  for (const at of stepsInto(box, tile, size)) {
    const [i, j] = [Math.round(at.x / size.width), Math.round(at.y / size.height)];
    const edge = i * by.j - j * by.i;
    if (!seen.has(edge)) seen.set(edge, at);
  }
  return [...seen.values()].flatMap((at) => runThrough(contour, at, round, size, tile));
}

/** More endless edges than this are closed two by two: each by itself goes around all the others, and crosses the ways of all. */
const manyEdges = 60;

/** Endless edges closed outside the tile: in it they part the plane as the endless ones do. */
function closedFarOff(runs: readonly Run[], size: Size): Contour[] {
  if (runs.length <= manyEdges) return runs.map((run) => closedAround(run, size));
  const [first] = runs;
  const way = first?.round ?? { x: 0, y: 0 };
  const aligned = runs.map((run) => (dot(run.round, way) < 0 ? reversed(run) : run));
  const across = ({ from }: Run): number => cross(way, from);
  const sorted = aligned.toSorted((a, b) => across(a) - across(b));
  const closed: Contour[] = [];
  for (let i = 0; i < sorted.length; i += 2) {
    const [one, other] = [sorted[i], sorted[i + 1]];
    if (one && other && isOutside(one.to, other.to, size) && isOutside(one.from, other.from, size))
      closed.push(between(one, reversed(other)));
    else for (const run of [one, other]) if (run) closed.push(closedAround(run, size));
  }
  return closed;
}

const reversed = ({ segments, from, to, round }: Run): Run => ({
  segments: segments.map(reverseSegment).reverse(),
  from: to,
  to: from,
  round: { x: -round.x, y: -round.y },
});

/** What lies between two edges, the second going back. */
const between = (on: Run, back: Run): Contour => ({
  closed: true,
  segments: [...on.segments, line(on.to, back.from), ...back.segments, line(back.to, on.from)],
});

/** Whether the straight way between two places stays outside all that the tile reaches. */
function isOutside(p: Point, q: Point, size: Size): boolean {
  const middle = { x: size.width / 2, y: size.height / 2 };
  const way = new NearestFinder([polyline([p, q])]);
  return way.find(middle, reachOf(size)) === undefined;
}

/** One such edge: rounds of it from outside the tile's reach to outside again. */
function runThrough(contour: Contour, at: Point, round: Point, size: Size, tile: Box): Run[] {
  const home = shifted([contour], at);
  const box = hullBox(home);
  const count = (way: 1 | -1): number => {
    let k = 0;
    for (let rounds = 1; rounds <= mostRounds; rounds++) {
      const by = { x: way * rounds * round.x, y: way * rounds * round.y };
      const moved = movedBox(box, by);
      if (boxesMeet(moved, tile) || !isClear(endOf(home, way, by), size)) k = rounds;
    }
    return k + 1;
  };
  const [back, on] = [count(-1), count(1)];
  const segments: Segment[] = [];
  for (let k = -back; k <= on; k++)
    for (const s of shifted(home, { x: k * round.x, y: k * round.y }).flatMap((one) => one.segments)) {
      const last = segments.at(-1);
      segments.push(last ? withEnds(s, last.to, s.to) : s);
    }
  const [first, last] = [segments[0], segments.at(-1)];
  return first && last ? [{ segments, from: first.from, to: last.to, round }] : [];
}

/** An edge by itself, with a way back far off around the tile. */
const closedAround = ({ segments, from, to }: Run, size: Size): Contour => ({
  closed: true,
  segments: [...segments, ...wayBack(to, from, size)],
});

/** More rounds than this reach across no tile: one round is at least as long as its shorter side. */
const mostRounds = 40;

const endOf = (home: readonly Contour[], way: 1 | -1, by: Point): Point => {
  const { segments } = home[0] ?? { segments: [] };
  const end = way === 1 ? segments.at(-1)?.to : segments[0]?.from;
  return { x: (end?.x ?? 0) + by.x, y: (end?.y ?? 0) + by.y };
};

const isClear = ({ x, y }: Point, size: Size): boolean =>
  Math.hypot(x - size.width / 2, y - size.height / 2) > 1.05 * reachOf(size);

/** From one place to another straight out from the tile, around it, and straight in again: never through it. */
function wayBack(from: Point, to: Point, size: Size): Segment[] {
  const middle = { x: size.width / 2, y: size.height / 2 };
  const angle = (p: Point) => Math.atan2(p.y - middle.y, p.x - middle.x);
  const away = (p: Point) => Math.hypot(p.x - middle.x, p.y - middle.y);
  const far = 1.5 * Math.max(away(from), away(to));
  const on = (turn: number): Point => ({
    x: middle.x + far * Math.cos(turn),
    y: middle.y + far * Math.sin(turn),
  });
  const start = angle(from);
  const sweep = (angle(to) - start + 2 * Math.PI) % (2 * Math.PI);
  const places = [from, ...Array.from({ length: 13 }, (_, k) => on(start + (sweep * k) / 12)), to];
  return places.slice(1).map((p, k) => line(places[k] ?? p, p));
}

// Lines that end on a tile's border and go on from the border across: a pen's end stands square to its line, so where that
// crosses the border askew, a wedge is left open that nobody meant. Each such line is carried over the border as it goes on in the next copy.
import { parsePathData } from '../drawing/path-data.ts';
import { type Finding, note } from '../finding.ts';
import { compose, determinant, moveContour, stretchOf, translation } from '../geometry/affine.ts';
import type { Contour } from '../geometry/contour.ts';
import { add, cross, distance, dot, type Point, scale, subtract, unit } from '../geometry/point.ts';
import { directionAt } from '../geometry/segment.ts';
import type { Pen } from '../geometry/stroke.ts';
import { joinTolerance } from '../geometry/tolerance.ts';
import type { Painted } from './covered.ts';

/** Two lines that turn by less than this on their way over a border are one, radians: a degree. */
const sameWay = Math.PI / 180;

/** A line that runs nearer than this to along the border does not cross it at one place: the cosine of 75 degrees. */
const leastAcross = 0.26;

/** So much of its length lies on the line that it carries on, mm: two areas that only touch would part in rounding. */
const lapped = 0.02;

/** Ends on a border are held against one another: of more than this, which nobody draws by hand, none is carried. */
const mostEnds = 3000;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Where a line ends, mm, and which way it would go on. */
interface End {
  readonly at: Point;
  readonly outward: Point;
  /** Square to the border, out of the tile: of a corner that of either. */
  readonly out: Point;
  readonly line: Painted;
  readonly width: number;
}

const bordersOf = ({ width, height }: Size): readonly { readonly out: Point; readonly at: number }[] => [
  { out: { x: -1, y: 0 }, at: 0 },
  { out: { x: 1, y: 0 }, at: width },
  { out: { x: 0, y: -1 }, at: 0 },
  { out: { x: 0, y: 1 }, at: height },
];

/** Of a pen that draws alike in all directions its width, mm. */
function widthOf({ by, toMm }: Painted): number | undefined {
  if (typeof by === 'string' || by.dashes) return undefined;
  const most = stretchOf(toMm);
  const isAlike = Math.abs(Math.abs(determinant(toMm)) - most * most) <= 1e-6 * most * most;
  return isAlike ? by.width * most : undefined;
}

const endsOfContour = ({ closed, segments }: Contour): readonly { at: Point; outward: Point }[] => {
  const [first, last] = [segments[0], segments.at(-1)];
  if (closed || !first || !last || distance(first.from, last.to) <= joinTolerance) return [];
  return [
    { at: first.from, outward: scale(unit(directionAt(first, 0)), -1) },
    { at: last.to, outward: unit(directionAt(last, 1)) },
  ];
};

/** Ends of a painted line that lie on the border of its tile and head out of it. */
function endsOnBorder(line: Painted, size: Size): readonly End[] {
  const width = line.copies.length > 0 ? undefined : widthOf(line);
  if (width === undefined) return [];
  const ends = parsePathData(line.data)
    .map((contour) => moveContour(line.toMm, contour))
    .flatMap(endsOfContour);
  return ends.flatMap(({ at, outward }) => {
    const border = bordersOf(size).find(
      ({ out, at: place }) =>
        Math.abs((out.x === 0 ? at.y : at.x) - place) <= joinTolerance && dot(outward, out) > leastAcross,
    );
    return border ? [{ at, outward, out: border.out, line, width }] : [];
  });
}

/** The step to the copy of the tile in which one line goes on as the other: over a side, or over a corner. */
function stepOver(one: End, other: End, { width, height }: Size): Point | undefined {
  if (one.line.colour !== other.line.colour || Math.abs(one.width - other.width) > joinTolerance)
    return undefined;
  if (dot(one.outward, other.outward) > 0) return undefined;
  if (Math.abs(cross(one.outward, other.outward)) > Math.sin(sameWay)) return undefined;
  const apart = subtract(one.at, other.at);
  const step = { x: Math.round(apart.x / width) * width, y: Math.round(apart.y / height) * height };
  const isThere = distance(apart, step) <= joinTolerance && (step.x !== 0 || step.y !== 0);
  return isThere ? step : undefined;
}

/** Something painted, and where again. */
interface Again {
  readonly of: Painted;
  readonly step: Point;
}

/** A short line that laps two ends which stand against one another. */
function lapOf({ at, outward, line, width }: End): Painted {
  const by: Pen = { width, cap: 'butt', join: 'miter', miterLimit: 4 };
  const [from, to] = [subtract(at, scale(outward, lapped)), add(at, scale(outward, lapped))];
  return { ...line, by, data: `M${from.x} ${from.y}L${to.x} ${to.y}`, toMm: translation(0, 0) };
}

/**
 * What lies over the border where a line ends: the other as it goes on there. At a corner both also reach into the two
 * tiles beside, so what their copies reach into this one is drawn too.
 */
function goneOn(end: End, other: Painted, step: Point): readonly Again[] {
  const lap = lapOf(end);
  const over = [
    { of: other, step },
    { of: lap, step: { x: 0, y: 0 } },
  ];
  if (step.x === 0 || step.y === 0) return over;
  const beside = [
    { x: step.x, y: 0 },
    { x: 0, y: step.y },
  ];
  const back = beside.map((by) => scale(by, -1));
  return [
    ...over,
    ...beside.map((by) => ({ of: other, step: by })),
    ...back.flatMap((by) => [end.line, lap].map((of) => ({ of, step: by }))),
  ];
}

/** Each once, painted where it is. */
function paintedAgain(again: readonly Again[]): readonly Painted[] {
  const known = new Map<string, Painted>();
  for (const { of, step } of again) {
    const toMm = compose(of.toMm, translation(step.x, step.y));
    known.set(JSON.stringify([of.data, of.by, toMm]), { ...of, toMm });
  }
  return [...known.values()];
}

/**
 * What a tile paints, and where a line ends askew on its border what goes on from there in the next copy: a line that
 * begins at the same place, in the same direction, colour and width. A note says of how many ends.
 */
export function withLinesCarried(
  painted: readonly Painted[],
  size: Size,
  file: string,
): { readonly painted: readonly Painted[]; readonly findings: readonly Finding[] } {
  const ends = painted.flatMap((line) => endsOnBorder(line, size));
  if (ends.length > mostEnds) return { painted, findings: [] };
  const added = new Map<Painted, Again[]>();
  let count = 0;
  for (const end of ends) {
    if (Math.abs(cross(end.outward, end.out)) <= Math.sin(sameWay)) continue;
    const found = ends.flatMap((other) => {
      const step = stepOver(end, other, size);
      return step ? [{ other: other.line, step }] : [];
    })[0];
    if (!found) continue;
    count++;
    added.set(end.line, [...(added.get(end.line) ?? []), ...goneOn(end, found.other, found.step)]);
  }
  if (count === 0) return { painted, findings: [] };
  const says = `${count} ends of lines stand askew on its border, where a line goes on from each in the next copy: they are carried over it, so that no wedge stays open`;
  return {
    painted: painted.flatMap((line) => [line, ...paintedAgain(added.get(line) ?? [])]),
    findings: [note('lines-carried', { file }, says)],
  };
}

// The one colour that film can have where a drawing shades: the mean of a gradient over the area it fills.
import { parsePathData } from '../../drawing/path-data.ts';
import { type Affine, compose, determinant, inverse, movePoint } from '../../geometry/affine.ts';
import { type ChordedContour, chorded } from '../../geometry/chords.ts';
import { tightBox } from '../../geometry/measure.ts';
import { distance, type Point } from '../../geometry/point.ts';
import type { Fill } from '../../geometry/polygon-clip.ts';
import { pointAt } from '../../geometry/segment.ts';
import type { Pen } from '../../geometry/stroke.ts';
import { parseMatrix, type SvgNode } from './svg-tree.ts';

interface Stop {
  readonly offset: number;
  /** Red, green, blue, 0 to 255. */
  readonly colour: readonly number[];
  readonly opacity: number;
}

/** A colour, and how much of it covers, 0 to 1. */
export interface Shade {
  readonly colour: string;
  readonly share: number;
}

/** Rows and columns of places at which an area is looked at. */
const rows = 64;

/** A place looked at, and how much stands for it. */
interface Place {
  readonly at: Point;
  readonly weight: number;
}

/** Chords for finding out what lies inside: as a share of the area's size. */
const coarse = 1e-3;

/**
 * The mean of a gradient over what a path fills (clips left aside) or along the line that a pen follows: of the sRGB
 * values, as a renderer's pixels have it, what is see-through counting less. `box`: the map of the unit square onto the
 * path's box. Undefined where it shows nothing.
 */
export function meanShade(
  gradient: SvgNode,
  data: string,
  by: Fill | Pen,
  box: () => Affine,
): Shade | undefined {
  const stops = stopsOf(gradient);
  if (stops.length === 0) return undefined;
  const along = shareAlong(gradient, box);
  const sums = [0, 0, 0];
  let [covered, all] = [0, 0];
  for (const { at, weight } of typeof by === 'string' ? placesInside(data, by) : placesAlong(data)) {
    const { colour, opacity } = shadeAt(stops, along(at));
    covered += weight * opacity;
    all += weight;
    for (const i of [0, 1, 2]) sums[i] = (sums[i] ?? 0) + weight * opacity * (colour[i] ?? 0);
  }
  if (!(covered > 0)) return undefined;
  const channel = (sum: number): string =>
    Math.round(sum / covered)
      .toString(16)
      .padStart(2, '0');
  return { colour: `#${sums.map(channel).join('')}`, share: covered / all };
}

const stopsOf = ({ children }: SvgNode): readonly Stop[] =>
  children
    .filter(({ element }) => element.name === 'stop')
    .map(({ element: { attributes } }) => {
      const colour = attributes['stop-color'] ?? '#000000';
      return {
        offset: Number(attributes.offset ?? 0),
        colour: [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16)),
        opacity: Number(attributes['stop-opacity'] ?? 1),
      };
    });

/** Source: SVG 1.1, 13.2.4: between stops by parts, past the ends as the end's. */
function shadeAt(stops: readonly Stop[], t: number): Stop {
  const after = stops.findIndex(({ offset }) => offset > t);
  const [to, from] = [
    stops[after] ?? stops.at(-1),
    stops[after - 1] ?? stops[after < 0 ? stops.length - 1 : 0],
  ];
  if (!from || !to || to.offset === from.offset) return to ?? { offset: 0, colour: [], opacity: 0 };
  const part = (t - from.offset) / (to.offset - from.offset);
  const mixed = (a: number, b: number) => a + part * (b - a);
  return {
    offset: t,
    colour: from.colour.map((value, i) => mixed(value, to.colour[i] ?? value)),
    opacity: mixed(from.opacity, to.opacity),
  };
}

/** Where along the gradient a place of the path's own units lies: 0 at its start, 1 at its end, spread past them. */
function shareAlong({ element: { name, attributes } }: SvgNode, box: () => Affine): (p: Point) => number {
  const own = parseMatrix(attributes.gradientTransform) ?? { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };
  const m = attributes.gradientUnits === 'userSpaceOnUse' ? own : compose(own, box());
  const back = determinant(m) === 0 ? undefined : inverse(m);
  const read = (key: string): number => Number(attributes[key] ?? 0);
  const spread = spreads[attributes.spreadMethod ?? 'pad'] ?? spreads.pad;
  const raw = name === 'linearGradient' ? linear(read) : radial(read);
  return (p) => (back && spread ? spread(raw(movePoint(back, p))) : 1);
}

const spreads: Readonly<Record<string, (t: number) => number>> = {
  pad: (t) => Math.max(0, Math.min(1, t)),
  repeat: (t) => t - Math.floor(t),
  reflect: (t) => 1 - Math.abs(1 - (t - 2 * Math.floor(t / 2))),
};

function linear(read: (key: string) => number): (p: Point) => number {
  const [x, y] = [read('x1'), read('y1')];
  const [dx, dy] = [read('x2') - x, read('y2') - y];
  const length = dx * dx + dy * dy;
  return (p) => (length === 0 ? 1 : ((p.x - x) * dx + (p.y - y) * dy) / length);
}

/** Circles from the focus, of no size, to the outer one: the largest on which a place lies. Source: SVG 1.1, 13.2.3. */
function radial(read: (key: string) => number): (p: Point) => number {
  const [fx, fy, r] = [read('fx'), read('fy'), read('r')];
  const [dx, dy] = [read('cx') - fx, read('cy') - fy];
  const a = dx * dx + dy * dy - r * r;
  return (p) => {
    const [x, y] = [p.x - fx, p.y - fy];
    const b = x * dx + y * dy;
    const c = x * x + y * y;
    if (Math.abs(a) < 1e-12 * r * r) return b > 0 ? c / (2 * b) : 1;
    // With the focus inside the circle `a` is below zero, and one answer is above it.
    const root = Math.sqrt(Math.max(0, b * b - a * c));
    return Math.max((b - root) / a, (b + root) / a);
  };
}

/** Places spread evenly over what a path fills, in rows. */
function* placesInside(data: string, fill: Fill): Generator<Place> {
  const contours = parsePathData(data);
  const box = tightBox(contours);
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (!(size > 0)) return;
  const chords = contours.map((contour) => chorded(contour, coarse * size));
  const step = size / rows;
  for (let y = box.minY + step / 2; y < box.maxY; y += step) {
    const crossings = chords.flatMap((one) => crossingsAt(one, y)).sort((p, q) => p.x - q.x);
    let winding = 0;
    for (const [i, { x, turn }] of crossings.entries()) {
      winding += turn;
      const isInside = fill === 'evenodd' ? i % 2 === 0 : winding !== 0;
      const length = (crossings[i + 1]?.x ?? x) - x;
      const count = Math.max(1, Math.round(length / step));
      if (!isInside || length <= 0) continue;
      for (let k = 0; k < count; k++)
        yield { at: { x: x + ((k + 0.5) / count) * length, y }, weight: length / count };
    }
  }
}

/** Where the chords of a contour cross a level, and whether they go down or up there. */
function crossingsAt({ x, y }: Pick<ChordedContour, 'x' | 'y'>, level: number) {
  const found: { readonly x: number; readonly turn: number }[] = [];
  for (let k = 0; k < x.length; k++) {
    const next = k + 1 === x.length ? 0 : k + 1;
    const [x0, y0, x1, y1] = [x[k] ?? 0, y[k] ?? 0, x[next] ?? 0, y[next] ?? 0];
    if (y0 <= level === y1 <= level) continue;
    found.push({ x: x0 + ((level - y0) / (y1 - y0)) * (x1 - x0), turn: y1 > y0 ? 1 : -1 });
  }
  return found;
}

/** Places spread evenly along the lines of a path. */
function* placesAlong(data: string): Generator<Place> {
  const segments = parsePathData(data).flatMap((contour) => contour.segments);
  const lengths = segments.map((s) => distance(s.from, pointAt(s, 0.5)) + distance(pointAt(s, 0.5), s.to));
  const total = lengths.reduce((sum, length) => sum + length, 0);
  for (const [k, s] of segments.entries()) {
    const length = lengths[k] ?? 0;
    const count = Math.max(1, Math.round((length / total) * rows * rows));
    for (let i = 0; i < count; i++) yield { at: pointAt(s, (i + 0.5) / count), weight: length / count };
  }
}

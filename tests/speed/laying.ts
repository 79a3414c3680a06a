// A pattern laid on a taper and fitted again, against two general-purpose libraries at the error that was measured of ours.
import { svgPathProperties } from 'svg-path-properties';
import { writePathData } from '../../src/drawing/path-data.ts';
import { type Contour, cubic, polygon, type Segment } from '../../src/geometry/contour.ts';
import { mapSegment, type SmoothMap } from '../../src/geometry/fit.ts';
import { NearestFinder } from '../../src/geometry/nearest.ts';
import { add } from '../../src/geometry/point.ts';
import { pointAt } from '../../src/geometry/segment.ts';
import { fitTolerance } from '../../src/geometry/tolerance.ts';
import { evenLay, stepOnSheet, toSheet } from '../../src/pattern/lay/lay.ts';
import { flatWall } from '../../src/unroll/flat-wall.ts';
import { type Comparison, compare, counted } from './harness.ts';
import { paper } from './libraries.ts';
import { blobs } from './shapes.ts';

const lay = evenLay(flatWall(37, 0.08, 70), 12);
const map: SmoothMap = { point: (p) => toSheet(lay, p), displacement: (at, by) => stepOnSheet(lay, at, by) };

/** A way to lay one contour, drawn as path data too: curves or straight lines on the sheet. */
type Way = (contour: Contour, data: string) => readonly Segment[];

const ours: Way = ({ segments }) => segments.flatMap((s) => mapSegment(map, s, fitTolerance).segments);

/** Points at equal steps of arc length, mapped, joined by straight lines. */
const sampledByLength =
  (step: number): Way =>
  (_, data) => {
    const path = new svgPathProperties(data);
    const length = path.getTotalLength();
    const steps = Math.ceil(length / step);
    const points = Array.from({ length: steps }, (__, i) =>
      map.point(path.getPointAtLength((i * length) / steps)),
    );
    return polygon(points).segments;
  };

/**
 * Flattened by paper, its points mapped, and fitted again by its own simplify, which holds its tolerance against squares of
 * distances. Opened at one node: fits of closed paths do not close where they begin.
 */
const flattenedAndSimplified =
  (flatness: number): Way =>
  (_, data) => {
    const path = new paper.Path(data);
    path.flatten(flatness);
    path.closed = false;
    const [first] = path.segments;
    if (first) path.add(first.point);
    for (const segment of path.segments) {
      const p = map.point(segment.point);
      segment.point = new paper.Point(p.x, p.y);
    }
    path.simplify(flatness ** 2);
    const { segments } = path;
    const curves = segments.slice(1).map((to, i) => {
      const from = segments[i] ?? to;
      return cubic(from.point, add(from.point, from.handleOut), add(to.point, to.handleIn), to.point);
    });
    path.remove();
    return curves;
  };

/** Farther than this from what was laid, the error is no longer measured, mm. */
const reach = 2;

/** Sixteen places a segment, neither at its ends nor in its middle. */
const probes = Array.from({ length: 16 }, (_, i) => (i + 0.37) / 16);

/** The largest distance of the exact image from what a way lays, mm. */
function errorOf(way: Way, contours: readonly Contour[], data: readonly string[]): number {
  let worst = 0;
  for (const [i, contour] of contours.entries()) {
    const laid = new NearestFinder([{ closed: true, segments: way(contour, data[i] ?? '') }]);
    for (const s of contour.segments)
      for (const t of probes)
        worst = Math.max(worst, laid.find(map.point(pointAt(s, t)), reach)?.distance ?? reach);
  }
  return worst;
}

/** The coarsest setting, of ever smaller ones from the first, with which a way errs by no more than was measured of ours. */
function settingWithin(
  way: (setting: number) => Way,
  first: number,
  most: number,
  contours: readonly Contour[],
  data: readonly string[],
): number {
  for (let setting = first; setting > first / 100; setting /= 2 ** (1 / 8))
    if (errorOf(way(setting), contours, data) <= most) return setting;
  throw new Error('no setting is as exact as ours');
}

export function layingComparisons(): Comparison[] {
  const contours = blobs(100, 230, 110, 4);
  const data = contours.map((contour) => writePathData([contour]));
  const some = contours.slice(0, 20);
  const error = errorOf(ours, some, data);
  const count = (way: Way) => () =>
    contours.reduce((sum, contour, i) => sum + way(contour, data[i] ?? '').length, 0);
  const others = [
    { name: 'sampling by length (svg-path-properties)', way: sampledByLength, first: 0.12 },
    { name: 'flatten and simplify (paper)', way: flattenedAndSimplified, first: 0.002 },
  ];
  return others.flatMap(({ name, way, first }) => {
    const other = way(settingWithin(way, first, error, some, data));
    return [
      compare(`lay 100 blobs on a taper, against ${name}`, count(ours), count(other), {
        rounds: 5,
        warmUp: 1,
      }),
      counted(`segments of that, against ${name}`, count(ours)(), count(other)(), 'segments'),
      counted(`error of that, against ${name}`, error * 1000, errorOf(other, some, data) * 1000, 'µm'),
    ];
  });
}

// Lines that run along another at a place of it, looked for among those that run its way alone.
import type { Contour, Segment } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { cross, dot, type Point } from '../../geometry/point.ts';
import { directionAt, pointAt } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';

/** Lines that run within this of one another the same way are one line to a blade, mm. */
export const beside = precision;

/** Tangent of the angle up to which two lines run the same way: one degree. */
export const sameWay = Math.tan(Math.PI / 180);

/** Straight lines are held apart by which of so many ways they run, two degrees each: in the box of one that slants lie thousands at random. */
const ways = 90;

const wayOf = (direction: Point): number => {
  const part = Math.floor((Math.atan2(direction.y, direction.x) / Math.PI) * ways);
  return ((part % ways) + ways) % ways;
};

/** Finds what runs along a segment. */
export class LinesAlong {
  /** Of all contours, in order. Of those kept as numbers each asking makes others: one of these is the same object always. */
  readonly segments: readonly Segment[];
  readonly #curves: NearestFinder;
  readonly #straight: readonly NearestFinder[];

  constructor(contours: readonly Contour[]) {
    this.segments = contours.flatMap(({ segments }) => segments);
    const curves: Segment[] = [];
    const straight = Array.from({ length: ways }, (): Segment[] => []);
    for (const segment of this.segments)
      (segment.kind === 'line' ? straight[wayOf(directionAt(segment, 0))] : curves)?.push(segment);
    const finderOf = (segments: readonly Segment[]) => new NearestFinder([{ closed: false, segments }]);
    this.#curves = finderOf(curves);
    this.#straight = straight.map(finderOf);
  }

  /** Whether another line runs along a segment at a place of it. */
  runsBy(segment: Segment, at: number): boolean {
    const [place, way] = [pointAt(segment, at), directionAt(segment, at)];
    const own = wayOf(way);
    const finders = [-1, 0, 1].map((step) => this.#straight[(own + step + ways) % ways]);
    return [this.#curves, ...finders].some((finder) =>
      finder?.comesBy(
        place,
        beside,
        ({ segment: other, t }) => {
          const otherWay = directionAt(other, t);
          return Math.abs(cross(way, otherWay)) < sameWay * Math.abs(dot(way, otherWay));
        },
        segment,
      ),
    );
  }
}

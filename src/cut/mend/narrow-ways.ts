// The ways along which narrow film is thickened and gaps are filled: middles of discs in order, each way once.
import { line, type Segment } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { distance, type Point } from '../../geometry/point.ts';

/** Discs farther apart than this, as a multiple of the limit, are of two sides or two necks. */
const sameWay = 1;

/** Middles nearer to a longer way than this part of the limit are its own from the edge's other side. */
const twins = 10;

/** The middles of discs in order, parted where one is far from the next; of the two sides of a narrow place one. `limit`, mm. */
export function narrowWays(middles: readonly Point[], limit: number): Point[][] {
  const ways: Point[][] = [];
  let last: Point | undefined;
  for (const { x, y } of middles) {
    const way = ways.at(-1);
    if (way && last && distance(last, { x, y }) <= sameWay * limit) way.push({ x, y });
    else ways.push([{ x, y }]);
    last = { x, y };
  }
  return withoutTwins(ways, limit / twins);
}

/**
 * Both sides of a narrow place have the same middle: a way that keeps to longer ones is left out. Of all ways one index is made, and of
 * what it finds only the kept count: of lines that cross, one made anew for each way took as long as the square of their number.
 */
function withoutTwins(ways: readonly Point[][], near: number): Point[][] {
  const sorted = [...ways].sort((a, b) => b.length - a.length).map((way) => ({ way, steps: stepsOf(way) }));
  const finder = new NearestFinder(sorted.map(({ steps }) => ({ closed: false, segments: steps })));
  const kept = new Set<Segment>();
  return sorted.flatMap(({ way, steps }) => {
    if (way.every((p) => finder.comesBy(p, near, ({ segment }) => kept.has(segment)))) return [];
    for (const step of steps) kept.add(step);
    return [way];
  });
}

/** The steps of a way; of a single place one to itself. */
const stepsOf = (way: readonly Point[]): Segment[] =>
  way.length === 1 ? way.map((p) => line(p, p)) : way.slice(1).map((to, i) => line(way[i] ?? to, to));

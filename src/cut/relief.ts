// Relief cuts: straight cuts up the wall across large waste, so that it lifts in strips; they touch nothing that stays.
import type { Contour, Shape } from '../geometry/contour.ts';
import { line } from '../geometry/contour.ts';
import { holdsPoint } from '../geometry/inside.ts';
import { NearestFinder } from '../geometry/nearest.ts';
import { distance, type Point } from '../geometry/point.ts';
import { girthAt } from '../unroll/flat-wall.ts';
import { edgePoint, type Template } from '../unroll/template.ts';

export interface ReliefOptions {
  readonly template: Template;
  /** What is cut of the piece: in the flat wall's frame, each shape with its holes. */
  readonly shapes: readonly Shape[];
  /** Of a decal the shapes stay, of a mask all around them. */
  readonly use: 'decal' | 'mask';
  /** How wide strips are about, mm. */
  readonly every: number;
  /** How near a cut may come to an edge of what stays, mm. */
  readonly clear: number;
}

/** Places along a line where it is looked at, mm apart. */
const step = 0.25;

/** Cuts shorter than this share of a strip's width are not worth a lift of the blade. Common practice, no source. */
const leastShare = 0.25;

/** A cut may stand this share of a strip's width to either side of its place, where there is more waste to part. */
const tries = [0, -0.1, 0.1, -0.2, 0.2];

/** The cuts, each from below upwards, in the order of their turns. */
export function reliefCuts(options: ReliefOptions): Contour[] {
  const { template, shapes, every } = options;
  const { wall, piece, left, right } = template;
  if (shapes.length === 0) return [];
  const width = girthAt(wall, (piece.from + piece.to) / 2) * (right.turn - left.turn);
  const strips = Math.floor(width / every);
  const finder = new NearestFinder(shapes.flatMap(({ contours }) => contours));
  return Array.from({ length: Math.max(0, strips - 1) }, (_, i) => i + 1).flatMap((i) => {
    const all = tries.map((by) => {
      const turn = left.turn + ((i + by) / strips) * (right.turn - left.turn);
      const [from, to] = [piece.from, piece.to].map((along) => edgePoint(wall, { turn, offset: 0 }, along));
      return from && to ? runsOn(from, to, finder, options) : [];
    });
    return all.reduce((best, runs) => (lengthOf(runs) > lengthOf(best) + step ? runs : best), all[0] ?? []);
  });
}

const lengthOf = (runs: readonly Contour[]): number =>
  runs.reduce((sum, { segments: [s] }) => sum + (s ? distance(s.from, s.to) : 0), 0);

/**
 * The stretches of a line that lie in waste and clear of what stays. A place that is clear by half a step more than asked keeps
 * all between it and the next one clear, for no distance changes faster than one goes.
 */
function runsOn(
  from: Point,
  to: Point,
  finder: NearestFinder,
  { shapes, use, every, clear }: ReliefOptions,
): Contour[] {
  const count = Math.ceil(distance(from, to) / step);
  const at = (i: number): Point => ({
    x: from.x + ((to.x - from.x) * i) / count,
    y: from.y + ((to.y - from.y) * i) / count,
  });
  const isClear = (i: number) => finder.find(at(i), clear + step / 2) === undefined;
  const isWaste = (p: Point) => shapes.some((shape) => holdsPoint(shape, p)) === (use === 'mask');
  const runs: Contour[] = [];
  let start = -1;
  for (let i = 0; i <= count + 1; i++) {
    const free = i <= count && isClear(i);
    if (free && start < 0) start = i;
    if (free || start < 0) continue;
    const [a, b] = [at(start), at(i - 1)];
    if (distance(a, b) >= every * leastShare && isWaste(at((start + i - 1) / 2)))
      runs.push({ closed: false, segments: [line(a, b)] });
    start = -1;
  }
  return runs;
}

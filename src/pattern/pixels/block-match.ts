// One block of a picture held against what shows a step away, and moved until it lies on it best.
import type { Point } from '../../geometry/point.ts';
import type { Planes } from './planes.ts';

export interface Block {
  /** Its corner at the upper left. */
  readonly at: Point;
  /** How far from the step it lies best, px; where only edges of one direction tell, across them alone. */
  readonly off: Point;
  /** The direction across its edges where they all run one way. */
  readonly across: Point | undefined;
  /** Mean squares, all channels together: what differs where it lies best, and what it shows. */
  readonly differs: number;
  readonly contrast: number;
}

/** A place is told both ways where its gradients run both ways: the lesser over the greater. */
const leastBothWays = 0.04;

/** Blocks are moved so often, and no farther than this, px. */
const mostRounds = 6;
const farthest = 4;
const settledWithin = 0.01;

/**
 * A block moved until it lies best on what shows a step away; undefined where that is past the border. Source: Lucas and Kanade,
 * IJCAI 1981, from memory: Gauss-Newton on the squared differences, its gradients taken once.
 */
export function matched(picture: Planes, at: Point, side: number, step: Point): Block | undefined {
  const { width, height } = picture;
  const { xx, xy, yy, contrast, slopes } = gradients(picture, at, side);
  const trace = xx + yy;
  const root = Math.hypot(xx - yy, 2 * xy);
  if (trace <= 0) return { at, off: { x: 0, y: 0 }, across: undefined, differs: 0, contrast };
  const isPlaced = trace - root > leastBothWays * (trace + root);
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const across = isPlaced ? undefined : { x: Math.cos(angle), y: Math.sin(angle) };
  let off = { x: 0, y: 0 };
  let differs = 0;
  for (let round = 0; round < mostRounds; round++) {
    const [dx, dy] = [step.x + off.x, step.y + off.y];
    const [left, top] = [Math.floor(dx), Math.floor(dy)];
    const [x, y] = [at.x + left, at.y + top];
    if (x < 1 || y < 1 || x + side + 1 >= width || y + side + 1 >= height) return undefined;
    const miss = missed(picture, at, side, { left, top, fx: dx - left, fy: dy - top }, slopes);
    differs = miss.squares / (side * side);
    const by = across
      ? along(across, (miss.ex * across.x + miss.ey * across.y) / ((trace + root) / 2))
      : solved(xx, xy, yy, miss);
    const longest = Math.max(1, Math.hypot(by.x, by.y));
    off = { x: off.x - by.x / longest, y: off.y - by.y / longest };
    if (Math.hypot(off.x, off.y) > farthest || Math.hypot(by.x, by.y) < settledWithin) break;
  }
  return { at, off, across, differs, contrast };
}

const along = (direction: Point, by: number): Point => ({ x: direction.x * by, y: direction.y * by });

function solved(
  xx: number,
  xy: number,
  yy: number,
  { ex, ey }: { readonly ex: number; readonly ey: number },
): Point {
  const determinant = xx * yy - xy * xy;
  return { x: (ex * yy - ey * xy) / determinant, y: (ey * xx - ex * xy) / determinant };
}

/** The gradients of a block, channel by channel in rows, the sums of their products, and its variance. */
function gradients({ width, planes }: Planes, at: Point, side: number) {
  const slopes = new Float64Array(2 * planes.length * side * side);
  let [xx, xy, yy, contrast, n] = [0, 0, 0, 0, 0];
  for (const plane of planes) {
    let [sum, squares] = [0, 0];
    for (let y = at.y; y < at.y + side; y++)
      for (let i = y * width + at.x; i < y * width + at.x + side; i++) {
        const value = plane[i] ?? 0;
        const gx = ((plane[i + 1] ?? 0) - (plane[i - 1] ?? 0)) / 2;
        const gy = ((plane[i + width] ?? 0) - (plane[i - width] ?? 0)) / 2;
        slopes[n++] = gx;
        slopes[n++] = gy;
        xx += gx * gx;
        xy += gx * gy;
        yy += gy * gy;
        sum += value;
        squares += value * value;
      }
    const count = side * side;
    contrast += (squares - (sum * sum) / count) / count;
  }
  return { xx, xy, yy, contrast, slopes };
}

interface Shift {
  readonly left: number;
  readonly top: number;
  /** What is over of whole pixels, 0 to 1. */
  readonly fx: number;
  readonly fy: number;
}

/** What differs between a block and its like, as squares and along the block's gradients. */
function missed(
  { width, planes }: Planes,
  at: Point,
  side: number,
  { left, top, fx, fy }: Shift,
  slopes: Float64Array,
) {
  let [ex, ey, squares, n] = [0, 0, 0, 0];
  const [nw, ne, sw, se] = [(1 - fx) * (1 - fy), fx * (1 - fy), (1 - fx) * fy, fx * fy];
  const by = top * width + left;
  for (const plane of planes)
    for (let y = at.y; y < at.y + side; y++)
      for (let i = y * width + at.x; i < y * width + at.x + side; i++) {
        const j = i + by;
        const there =
          nw * (plane[j] ?? 0) +
          ne * (plane[j + 1] ?? 0) +
          sw * (plane[j + width] ?? 0) +
          se * (plane[j + width + 1] ?? 0);
        const miss = there - (plane[i] ?? 0);
        ex += miss * (slopes[n++] ?? 0);
        ey += miss * (slopes[n++] ?? 0);
        squares += miss * miss;
      }
  return { ex, ey, squares };
}

// Rings that are seen at a glance not to cross or touch themselves: most motifs, which then need no polygon engine.
import { type GridPoint, type GridRing, ringArea } from './grid-ring.ts';

/** An order of points along one axis; of points alike in it, along the other. */
type Order = (p: GridPoint, q: GridPoint) => number;

const upwards: Order = (p, q) => p.y - q.y || p.x - q.x;
const rightwards: Order = (p, q) => p.x - q.x || p.y - q.y;

/**
 * Whether a ring surely is simple: it goes one way on one side and back on the other, up and down or right and left, and its
 * two sides meet at their ends alone; or it has few sides, and none of them meets another. False says nothing. Exact for coordinates
 * under 2^25.
 */
export const isPlainlySimple = (ring: GridRing): boolean =>
  ring.length > 2 &&
  (isMonotone(ring, upwards) ||
    isMonotone(ring, rightwards) ||
    (ring.length <= mostHeld && crossesNothingOn(ring)));

const crossesNothingOn = (ring: GridRing): boolean =>
  crossesNothing(
    ring.map(({ x }) => x),
    ring.map(({ y }) => y),
    1,
  );

/** A ring of more sides than this is left to the engine: each is held against each. */
export const mostHeld = 256;

/**
 * Whether a ring's sides, by their corners in columns, neither cross nor touch each other, each held against each. One shorter than
 * `least` counts as touching. Exact for whole coordinates under 2^25.
 */
export function crossesNothing(x: ArrayLike<number>, y: ArrayLike<number>, least: number): boolean {
  const count = x.length;
  if ((roundOf(x, y)?.sine ?? 0) >= leastSine) return hasBentSides(x, y, least);
  const at = (k: number) => k % count;
  const boxes = boxesOfStretches(x, y);
  for (let i = 0; i < count; i++) {
    const ax = x[i] ?? 0;
    const ay = y[i] ?? 0;
    const bx = x[at(i + 1)] ?? 0;
    const by = y[at(i + 1)] ?? 0;
    if (Math.abs(bx - ax) + Math.abs(by - ay) < least) return false;
    const minX = Math.min(ax, bx);
    const maxX = Math.max(ax, bx);
    const minY = Math.min(ay, by);
    const maxY = Math.max(ay, by);
    // The next chord begins where this one ends: it may not run straight back.
    for (let j = i + 1; j < count; j++) {
      if (j % stretch === 0 && isClearOf(boxes, 4 * (j / stretch), minX, maxX, minY, maxY)) {
        j += stretch - 1;
        continue;
      }
      const cx = x[j] ?? 0;
      const next = j + 1 === count ? 0 : j + 1;
      const dx = x[next] ?? 0;
      if ((cx < minX && dx < minX) || (cx > maxX && dx > maxX)) continue;
      const cy = y[j] ?? 0;
      const dy = y[next] ?? 0;
      if ((cy < minY && dy < minY) || (cy > maxY && dy > maxY)) continue;
      const isNext = j === i + 1 || (i === 0 && j === count - 1);
      if (isNext) {
        if (turn(ax, ay, bx, by, j === i + 1 ? dx : cx, j === i + 1 ? dy : cy) === 0) return false;
        continue;
      }
      if (isParted(ax, ay, bx, by, cx, cy, dx, dy) && isParted(cx, cy, dx, dy, ax, ay, bx, by)) return false;
    }
  }
  return true;
}

/** A ring whose sides come no nearer to its rays than this, as a sine, meets itself nowhere, however its corners were rounded. */
const leastSine = 1e-6;

/** How a ring lies around its middle that goes around it once, and never back. */
export interface Round {
  /** Of the least angle between any side and a ray that meets it. */
  readonly sine: number;
  /** Nothing of the ring lies nearer to its middle than this. */
  readonly nearest: number;
}

/**
 * How a ring, by its corners in columns, lies around their middle; undefined where it does not go around it once, or turns back. Every ray
 * from there crosses such a ring once, so it meets itself nowhere. Most motifs are so, and it is told in one round.
 */
export function roundOf(x: ArrayLike<number>, y: ArrayLike<number>): Round | undefined {
  const count = x.length;
  let [middleX, middleY] = [0, 0];
  for (let k = 0; k < count; k++) {
    middleX += x[k] ?? 0;
    middleY += y[k] ?? 0;
  }
  middleX /= count;
  middleY /= count;
  let px = (x[count - 1] ?? 0) - middleX;
  let py = (y[count - 1] ?? 0) - middleY;
  let [hand, rounds, least, nearest] = [0, 0, Infinity, Infinity];
  for (let k = 0; k < count; k++) {
    const qx = (x[k] ?? 0) - middleX;
    const qy = (y[k] ?? 0) - middleY;
    const swept = px * qy - py * qx;
    if (hand === 0) hand = swept < 0 ? -1 : 1;
    if (!(swept * hand > 0)) return undefined;
    // A side lies on one line, at one distance from the middle: the farther along it, the nearer it runs to the ray.
    const square = swept * swept;
    const side = (qx - px) * (qx - px) + (qy - py) * (qy - py);
    nearest = Math.min(nearest, square / side);
    least = Math.min(least, square / (side * Math.max(px * px + py * py, qx * qx + qy * qy)));
    // No side goes half around: each round passes the ray to the right once.
    if (py < 0 !== qy < 0 && (hand > 0 ? py : qy) < 0) rounds += 1;
    px = qx;
    py = qy;
  }
  return rounds === 1 ? { sine: Math.sqrt(least), nearest: Math.sqrt(nearest) } : undefined;
}

/** Whether of a ring's sides none is shorter than `least`, and none goes straight on from the one before. */
function hasBentSides(x: ArrayLike<number>, y: ArrayLike<number>, least: number): boolean {
  const count = x.length;
  let [ax, ay] = [x[count - 2] ?? 0, y[count - 2] ?? 0];
  let [bx, by] = [x[count - 1] ?? 0, y[count - 1] ?? 0];
  for (let k = 0; k < count; k++) {
    const [cx, cy] = [x[k] ?? 0, y[k] ?? 0];
    if (Math.abs(cx - bx) + Math.abs(cy - by) < least || turn(ax, ay, bx, by, cx, cy) === 0) return false;
    [ax, ay, bx, by] = [bx, by, cx, cy];
  }
  return true;
}

/** So many sides on end have a box together: most sides are far from most of the ring. */
const stretch = 8;

/** Of every stretch of sides its least and greatest x, and its least and greatest y. */
function boxesOfStretches(x: ArrayLike<number>, y: ArrayLike<number>): readonly number[] {
  const boxes: number[] = [];
  for (let from = 0; from < x.length; from += stretch) {
    let [minX, maxX, minY, maxY] = [Infinity, -Infinity, Infinity, -Infinity];
    for (let k = from; k <= from + stretch && k <= x.length; k++) {
      const corner = k === x.length ? 0 : k;
      minX = Math.min(minX, x[corner] ?? 0);
      maxX = Math.max(maxX, x[corner] ?? 0);
      minY = Math.min(minY, y[corner] ?? 0);
      maxY = Math.max(maxY, y[corner] ?? 0);
    }
    boxes.push(minX, maxX, minY, maxY);
  }
  return boxes;
}

/** Whether a stretch's box, by where its columns begin, lies beside another. */
const isClearOf = (
  boxes: readonly number[],
  at: number,
  minX: number,
  maxX: number,
  minY: number,
  maxY: number,
): boolean =>
  (boxes[at + 1] ?? 0) < minX ||
  (boxes[at] ?? 0) > maxX ||
  (boxes[at + 3] ?? 0) < minY ||
  (boxes[at + 2] ?? 0) > maxY;

/** Whether the line through a and b has c and d on two sides, or one of them on it. */
const isParted = (
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): boolean => turn(ax, ay, bx, by, cx, cy) * turn(ax, ay, bx, by, dx, dy) <= 0;

/** Above zero where p lies to the left of the line from a to b. */
const turn = (ax: number, ay: number, bx: number, by: number, px: number, py: number): number =>
  (bx - ax) * (py - ay) - (by - ay) * (px - ax);

/** Which way a ring that does not cross itself runs, with y up. */
export const isCounterClockwise = (ring: GridRing): boolean => ringArea(ring) > 0;

function isMonotone(ring: GridRing, order: Order): boolean {
  const sides = sidesOf(ring, order);
  return sides?.every((side) => goesOn(side, order)) === true && liesApart(sides, order);
}

/** The two ways around a ring from its first point in an order to its last. */
function sidesOf(ring: GridRing, order: Order): readonly [GridRing, GridRing] | undefined {
  let [first] = ring;
  if (!first) return undefined;
  let last = first;
  let start = 0;
  ring.forEach((p, i) => {
    if (first && order(p, first) < 0) [first, start] = [p, i];
    if (order(p, last) > 0) last = p;
  });
  const around = [...ring.slice(start), ...ring.slice(0, start + 1)];
  const top = around.indexOf(last);
  return [around.slice(0, top + 1), around.slice(top).reverse()];
}

const goesOn = (side: GridRing, order: Order): boolean =>
  side.every((p, i) => {
    const before = side[i - 1];
    return before === undefined || order(before, p) < 0;
  });

/** Above zero where r lies to the left of the line from p to q. */
const turnAt = (p: GridPoint, q: GridPoint, r: GridPoint): number => turn(p.x, p.y, q.x, q.y, r.x, r.y);

/** Whether each corner of either side, but the ends, has the other side on the same hand. */
function liesApart([one, other]: readonly [GridRing, GridRing], order: Order): boolean {
  let hand = 0;
  let [i, j] = [1, 1];
  while (i < one.length - 1 || j < other.length - 1) {
    const [p0, p, q0, q] = [one[i - 1], one[i], other[j - 1], other[j]];
    if (!p0 || !p || !q0 || !q) return false;
    const isFirst = order(p, q) < 0;
    const found = Math.sign(isFirst ? turnAt(q0, q, p) : -turnAt(p0, p, q));
    if (found === 0 || found === -hand) return false;
    hand = found;
    if (isFirst) i++;
    else j++;
  }
  return true;
}

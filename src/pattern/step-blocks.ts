// A step held against a picture, block by block: whether each shows again a step away, and by how much it stands off.
import type { Point } from '../geometry/point.ts';
import type { Planes } from './likeness.ts';

/** What blocks say of a step; px. */
export interface StepSeen {
  /** The step as most blocks have it, to a fraction of a pixel. */
  readonly step: Point;
  /** Blocks that show something, and those of them that show it again where the step says. */
  readonly shown: number;
  readonly again: number;
  /** Corners of the blocks that do not, and how wide a block is. */
  readonly missing: readonly Point[];
  readonly side: number;
}

/** Sides of blocks, px; how many a step is looked at in; and how far a block may stand off the step, px. */
const sizes = { least: 20, most: 56 } as const;
const mostBlocks = 100;
export const mostOff = 0.5;

/** Of what a block shows so much may differ where it shows again, beside noise: edges are drawn by pixels. */
const mostDiffering = 0.12;

/** Blocks with less contrast than this share of the picture's own show nothing. */
const leastContrast = 0.15;

/** A place is told both ways where its gradients run both ways: the lesser over the greater. */
const leastBothWays = 0.04;

export interface Looked {
  readonly picture: Planes;
  /** Variance of the whole picture, all channels together; and of its noise. */
  readonly variance: number;
  readonly noise: number;
}

export function lookedAt(picture: Planes): Looked {
  const { planes } = picture;
  const variance = planes.reduce((sum, plane) => sum + varianceOf(plane), 0);
  return { picture, variance, noise: planes.reduce((sum, plane) => sum + noiseOf(plane, picture), 0) };
}

function varianceOf(plane: Float64Array): number {
  const mean = plane.reduce((sum, value) => sum + value, 0) / plane.length;
  return plane.reduce((sum, value) => sum + (value - mean) ** 2, 0) / plane.length;
}

/** Variance of noise: the median size of what a second difference both ways leaves. Source: Immerkaer, CVIU 64 (1996) 300-302, its median form. */
function noiseOf(plane: Float64Array, { width, height }: Planes): number {
  const left: number[] = [];
  const every = Math.max(1, Math.floor(Math.sqrt((width * height) / 40_000)));
  const at = (x: number, y: number) => plane[y * width + x] ?? 0;
  for (let y = 1; y < height - 1; y += every)
    for (let x = 1; x < width - 1; x += every)
      left.push(
        Math.abs(
          at(x - 1, y - 1) +
            at(x + 1, y - 1) +
            at(x - 1, y + 1) +
            at(x + 1, y + 1) +
            4 * at(x, y) -
            2 * (at(x, y - 1) + at(x, y + 1) + at(x - 1, y) + at(x + 1, y)),
        ),
      );
  left.sort((p, q) => p - q);
  const median = left[Math.floor(left.length / 2)] ?? 0;
  // The mask's own weights square to 36; the median of a normal's size is 0.6745 of its deviation.
  return (median / 0.6745 / 6) ** 2;
}

interface Block {
  readonly at: Point;
  readonly off: Point;
  readonly differs: number;
  readonly contrast: number;
  readonly isPlaced: boolean;
}

const likeIn =
  (noise: number) =>
  ({ differs, contrast }: Block): boolean =>
    differs <= mostDiffering * contrast + 3 * noise;

/** Whether a block shows again by any of some steps. */
export const recurs = (
  { picture, noise }: Looked,
  at: Point,
  side: number,
  steps: readonly Point[],
): boolean =>
  steps.some((step) => {
    const corner = { x: Math.round(at.x), y: Math.round(at.y) };
    if (corner.x < 1 || corner.y < 1) return false;
    if (corner.x + side >= picture.width || corner.y + side >= picture.height) return false;
    const block = matched(picture, corner, side, step);
    return block !== undefined && likeIn(noise)(block) && Math.hypot(block.off.x, block.off.y) <= 2 * mostOff;
  });

/** What blocks of a picture say of a step. */
export function stepSeen({ picture, variance, noise }: Looked, step: Point): StepSeen {
  const side = Math.round(Math.min(sizes.most, Math.max(sizes.least, Math.hypot(step.x, step.y) / 4)));
  const all = blocksOver(picture, step, side).flatMap((at) => matched(picture, at, side, step) ?? []);
  const blocks = all.filter(({ contrast }) => contrast > leastContrast * variance + noise);
  const isLike = likeIn(noise);
  const placed = blocks.filter((block) => block.isPlaced && isLike(block));
  const middle = { x: median(placed.map(({ off }) => off.x)), y: median(placed.map(({ off }) => off.y)) };
  const away = ({ off }: Block) => Math.hypot(off.x - middle.x, off.y - middle.y);
  const again = placed.filter((block) => away(block) <= mostOff);
  const shown = blocks.filter(({ isPlaced }) => isPlaced);
  const mean = (of: 'x' | 'y') =>
    again.reduce((sum, { off }) => sum + off[of], 0) / Math.max(1, again.length);
  return {
    step: again.length === 0 ? step : { x: step.x + mean('x'), y: step.y + mean('y') },
    shown: shown.length,
    again: again.length,
    missing: shown.filter((block) => !again.includes(block)).map(({ at }) => at),
    side,
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((p, q) => p - q);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** Corners of blocks spread over all that shows twice, so that each and its copy lie a pixel inside. */
function blocksOver({ width, height }: Planes, step: Point, side: number): readonly Point[] {
  const room = 3;
  const [fromX, fromY] = [Math.max(0, -Math.floor(step.x)) + room, Math.max(0, -Math.floor(step.y)) + room];
  const [toX, toY] = [
    Math.min(width, width - Math.ceil(step.x)) - side - room,
    Math.min(height, height - Math.ceil(step.y)) - side - room,
  ];
  if (toX < fromX || toY < fromY) return [];
  const [w, h] = [toX - fromX, toY - fromY];
  const pitch = Math.max(side / 2, Math.sqrt(((w + side) * (h + side)) / mostBlocks));
  const [columns, rows] = [Math.floor(w / pitch) + 1, Math.floor(h / pitch) + 1];
  const places: Point[] = [];
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < columns; i++)
      places.push({
        x: Math.floor(fromX + (columns > 1 ? (w * i) / (columns - 1) : w / 2)),
        y: Math.floor(fromY + (rows > 1 ? (h * j) / (rows - 1) : h / 2)),
      });
  return places;
}

/**
 * A block moved until it lies best on what shows a step away. Source: Lucas and Kanade, IJCAI 1981, from memory: Gauss-Newton
 * on the squared differences, its gradients taken once.
 */
function matched({ width, height, planes }: Planes, at: Point, side: number, step: Point): Block | undefined {
  let [xx, xy, yy, contrast] = [0, 0, 0, 0];
  for (const plane of planes) {
    let [sum, squares] = [0, 0];
    for (let y = at.y; y < at.y + side; y++)
      for (let x = at.x; x < at.x + side; x++) {
        const i = y * width + x;
        const value = plane[i] ?? 0;
        const gx = ((plane[i + 1] ?? 0) - (plane[i - 1] ?? 0)) / 2;
        const gy = ((plane[i + width] ?? 0) - (plane[i - width] ?? 0)) / 2;
        xx += gx * gx;
        xy += gx * gy;
        yy += gy * gy;
        sum += value;
        squares += value * value;
      }
    const count = side * side;
    contrast += (squares - (sum * sum) / count) / count;
  }
  const trace = xx + yy;
  const root = Math.hypot(xx - yy, 2 * xy);
  const isPlaced = trace - root > leastBothWays * (trace + root) && trace > 0;
  const determinant = xx * yy - xy * xy;
  let off = { x: 0, y: 0 };
  let differs = 0;
  for (let round = 0; round < 6; round++) {
    let [ex, ey] = [0, 0];
    differs = 0;
    const [dx, dy] = [step.x + off.x, step.y + off.y];
    const [left, top] = [Math.floor(dx), Math.floor(dy)];
    const [fx, fy] = [dx - left, dy - top];
    if (
      at.x + left < 1 ||
      at.y + top < 1 ||
      at.x + left + side + 1 >= width ||
      at.y + top + side + 1 >= height
    )
      return undefined;
    for (const plane of planes)
      for (let y = at.y; y < at.y + side; y++)
        for (let x = at.x; x < at.x + side; x++) {
          const i = y * width + x;
          const j = i + top * width + left;
          const there =
            ((plane[j] ?? 0) * (1 - fx) + (plane[j + 1] ?? 0) * fx) * (1 - fy) +
            ((plane[j + width] ?? 0) * (1 - fx) + (plane[j + width + 1] ?? 0) * fx) * fy;
          const miss = there - (plane[i] ?? 0);
          ex += (miss * ((plane[i + 1] ?? 0) - (plane[i - 1] ?? 0))) / 2;
          ey += (miss * ((plane[i + width] ?? 0) - (plane[i - width] ?? 0))) / 2;
          differs += miss * miss;
        }
    differs /= side * side;
    if (!isPlaced || determinant <= 0) break;
    const by = { x: (ex * yy - ey * xy) / determinant, y: (ey * xx - ex * xy) / determinant };
    const longest = Math.max(1, Math.hypot(by.x, by.y));
    off = { x: off.x - by.x / longest, y: off.y - by.y / longest };
    if (Math.hypot(off.x, off.y) > 4) break;
    if (Math.hypot(by.x, by.y) < 0.01) break;
  }
  return { at, off, differs, contrast, isPlaced };
}

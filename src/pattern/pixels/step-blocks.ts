// A step held against a picture, block by block: whether each shows again a step away, and by how much it stands off.
import { dot, type Point } from '../../geometry/point.ts';
import { type Block, matched } from './block-match.ts';
import type { Planes } from './planes.ts';
import { blurLeaves, blurred } from './planes-blurred.ts';

/** What blocks say of a step; px. */
export interface StepSeen {
  /** The step as most blocks have it, to a fraction of a pixel. */
  readonly step: Point;
  /** Blocks that show something, and those of them that show it again where the step says. */
  readonly shown: number;
  readonly again: number;
  /** Those blocks by their corners, and how wide each is. */
  readonly blocks: readonly { readonly at: Point; readonly isAgain: boolean }[];
  readonly side: number;
}

/** Sides of blocks, px; how many a step is looked at in; and how far a block may stand off the step, px. */
const sizes = { least: 20, most: 56 } as const;

/** Where a step leaves less room than that, blocks are as wide as it is, but not narrower than this; and how far blocks keep off the borders. */
const leastSide = 12;
const offBorder = 3;
const mostBlocks = 100;
const mostOff = 0.5;

/** Of what a block shows so much may differ where it shows again, beside noise: edges are drawn by pixels. */
const mostDiffering = 0.12;

/** Blocks with less contrast than this share of the picture's own show nothing. */
const leastContrast = 0.15;

/** Straight edges place a step where so many of them run another way: the lesser over the greater. */
const leastBothWays = 0.04;

/** Steps nearer than this, px, are looked at once: what blocks say of them is the same. */
const sameLook = 0.1;

/** A picture made ready for looking: what is between its pixels is known where it is a little blurred. */
export interface Looked {
  readonly picture: Planes;
  /** Variance of the whole picture, all channels together; and of its noise. */
  readonly variance: number;
  readonly noise: number;
  readonly seen: Map<string, StepSeen>;
}

export function lookedAt(picture: Planes): Looked {
  const soft = blurred(picture);
  const variance = soft.planes.reduce((sum, plane) => sum + varianceOf(plane), 0);
  const noise = picture.planes.reduce((sum, plane) => sum + noiseOf(plane, picture), 0) * blurLeaves;
  return { picture: soft, variance, noise, seen: new Map() };
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

/** What blocks of a picture say of a step. */
export function stepSeen(looked: Looked, step: Point): StepSeen {
  const key = `${Math.round(step.x / sameLook)} ${Math.round(step.y / sameLook)}`;
  const before = looked.seen.get(key);
  if (before) return before;
  const seen = seenAnew(looked, step);
  looked.seen.set(key, seen);
  return seen;
}

function seenAnew({ picture, variance, noise }: Looked, step: Point): StepSeen {
  const wanted = Math.min(sizes.most, Math.max(sizes.least, Math.hypot(step.x, step.y) / 4));
  const room =
    Math.min(picture.width - Math.abs(step.x), picture.height - Math.abs(step.y)) - 2 * offBorder - 2;
  const side = Math.round(Math.min(wanted, Math.max(leastSide, room)));
  const blocks = blocksOver(picture, step, side)
    .flatMap((at) => matched(picture, at, side, step) ?? [])
    .filter(({ contrast }) => contrast > leastContrast * variance + noise);
  const like = blocks.filter(({ differs, contrast }) => differs <= mostDiffering * contrast + 3 * noise);
  const middle = middleOf(like);
  const again = new Set(middle ? like.filter((block) => away(block, middle) <= mostOff) : []);
  const off = meanOf([...again]) ?? middle ?? { x: 0, y: 0 };
  return {
    step: { x: step.x + off.x, y: step.y + off.y },
    shown: blocks.length,
    again: again.size,
    blocks: blocks.map((block) => ({ at: block.at, isAgain: again.has(block) })),
    side,
  };
}

/** How far a block stands off a place, as far as its edges tell, px. */
const away = ({ off, across }: Block, to: Point): number => {
  const by = { x: off.x - to.x, y: off.y - to.y };
  return across ? Math.abs(dot(by, across)) : Math.hypot(by.x, by.y);
};

/** Where most blocks have the step: the median of those that tell it both ways; of few such, what all agree on. */
function middleOf(blocks: readonly Block[]): Point | undefined {
  const placed = blocks.filter(({ across }) => !across);
  if (placed.length < leastPlaced || placed.length < leastPlacedShare * blocks.length)
    return meanOf(nearMost(blocks));
  return { x: median(placed.map(({ off }) => off.x)), y: median(placed.map(({ off }) => off.y)) };
}

/** Fewer blocks that tell both ways have no say of their own. */
const leastPlaced = 4;
const leastPlacedShare = 0.2;

/** Blocks without those that stand farther off than most: a first look by all is drawn aside by few that are wrong. */
function nearMost(blocks: readonly Block[]): readonly Block[] {
  const first = meanOf(blocks);
  if (!first) return [];
  const far = 2 * Math.max(mostOff / 2, median(blocks.map((block) => away(block, first))));
  return blocks.filter((block) => away(block, first) <= far);
}

/** Where blocks have the step, each as far as its edges tell: least squares; undefined where all edges run one way. */
function meanOf(blocks: readonly Block[]): Point | undefined {
  let [xx, xy, yy, x, y] = [0, 0, 0, 0, 0];
  for (const { off, across } of blocks) {
    const [nx, ny] = across ? [across.x, across.y] : [1, 0];
    const other = across ? 0 : 1;
    xx += nx * nx;
    xy += nx * ny;
    yy += ny * ny + other;
    const along = nx * off.x + ny * off.y;
    x += nx * along;
    y += ny * along + other * off.y;
  }
  const trace = xx + yy;
  const root = Math.hypot(xx - yy, 2 * xy);
  if (!(trace - root > leastBothWays * (trace + root))) return undefined;
  const determinant = xx * yy - xy * xy;
  return { x: (x * yy - y * xy) / determinant, y: (y * xx - x * xy) / determinant };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((p, q) => p - q);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** Corners of blocks spread over all that shows twice, so that each and its copy lie a pixel inside. */
function blocksOver({ width, height }: Planes, step: Point, side: number): readonly Point[] {
  const start = (by: number) => Math.max(0, -Math.floor(by)) + offBorder;
  const [fromX, fromY] = [start(step.x), start(step.y)];
  const [toX, toY] = [
    Math.min(width, width - Math.ceil(step.x)) - side - offBorder,
    Math.min(height, height - Math.ceil(step.y)) - side - offBorder,
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

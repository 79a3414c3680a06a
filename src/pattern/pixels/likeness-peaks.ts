// Steps by which a picture is most like itself: the tops of its likeness, to a fraction of a pixel.
import type { Point } from '../../geometry/point.ts';
import type { Likeness } from './likeness.ts';

/** The least share of the picture that must show again, and how like it must be there. */
const leastOverlap = 0.06;
const leastLikeness = 0.25;

/** Shorter steps are the width of a line, px. */
const leastStep = 4;

/** Tops looked at: those most like, and of those nearly as like the shortest. */
const mostPeaks = 70;
const nearlyAsLike = 0.6;

interface Peak extends Point {
  readonly like: number;
}

/** Steps to the right, or straight down, px; the likeliest first, then the shortest. */
export function likenessPeaks(likeness: Likeness): readonly Point[] {
  const peaks = topsOf(likeness).sort((p, q) => q.like - p.like);
  const least = nearlyAsLike * (peaks[0]?.like ?? 0);
  const length = ({ x, y }: Point) => Math.hypot(x, y);
  const short = peaks.filter(({ like }) => like > least).sort((p, q) => length(p) - length(q));
  return [...new Set([...peaks.slice(0, mostPeaks / 2), ...short.slice(0, mostPeaks / 2)])];
}

function topsOf({ width, height, at }: Likeness): Peak[] {
  const [right, down] = [width - 2, height - 2];
  const row = right + 1;
  const map = new Float64Array(row * (2 * down + 1)).fill(-1);
  for (let dy = -down; dy <= down; dy++)
    for (let dx = 0; dx <= right; dx++) {
      const overlap = (1 - dx / width) * (1 - Math.abs(dy) / height);
      if (overlap >= leastOverlap) map[(dy + down) * row + dx] = at(dx, dy);
    }
  const like = (dx: number, dy: number): number => {
    // What is like itself a step away is as like itself the same step back.
    if (dx < 0) return like(-dx, -dy);
    return dx > right || Math.abs(dy) > down ? -1 : (map[(dy + down) * row + dx] ?? -1);
  };
  const tops: Peak[] = [];
  for (let dy = -down; dy <= down; dy++)
    for (let dx = dy > 0 ? 0 : 1; dx <= right; dx++) {
      const own = like(dx, dy);
      if (own < leastLikeness || Math.hypot(dx, dy) < leastStep || !isTop(like, dx, dy)) continue;
      tops.push({
        x: dx + between(like(dx - 1, dy), own, like(dx + 1, dy)),
        y: dy + between(like(dx, dy - 1), own, like(dx, dy + 1)),
        like: own,
      });
    }
  return tops;
}

function isTop(like: (dx: number, dy: number) => number, dx: number, dy: number): boolean {
  const own = like(dx, dy);
  for (let v = -2; v <= 2; v++) for (let u = -2; u <= 2; u++) if (like(dx + u, dy + v) > own) return false;
  return true;
}

/** Where a parabola through three values has its top, from the middle one. */
function between(before: number, own: number, after: number): number {
  const bend = before - 2 * own + after;
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
}

// Is every repeat like the next one, all the way around, and the overlap like what it lies on?
import { type Affine, movePoint, moveSegment } from '../geometry/affine.ts';
import type { Contour, Segment } from '../geometry/contour.ts';
import type { NearestFinder } from '../geometry/nearest.ts';
import type { Point } from '../geometry/point.ts';
import { pointAt } from '../geometry/segment.ts';
import { precision } from '../geometry/tolerance.ts';
import { atMost, type Check, largest } from './check.ts';
import { type ProvedPiece, pieceBand } from './piece.ts';
import { onward, rollUp } from './rolled-cone.ts';
import { samplesOf } from './samples.ts';
import { SegmentStarts } from './segment-starts.ts';

/** How far away a line's like is looked for, mm; none within it counts as this far. */
const reach = 25;

/** Art this near the border of the piece may be what is left of a shape that ends in the waste, mm. */
const border = 0.05;

type IsInside = (p: Point) => boolean;

/** Whether a point of the sheet is on the piece, a little inside its borders. */
export function insideOf(piece: ProvedPiece, overlap: number): IsInside {
  const { cone, beside } = piece;
  const { from, to } = pieceBand(piece);
  const back = onward(cone, -1);
  return (p) => {
    const { turn, along } = rollUp(cone, p);
    if (along < from + border || along > to - border) return false;
    // A sector wider than half a turn reaches back past its own first line: each line counts on its own side only.
    if (turn < 0.25) return p.x > beside + border;
    if (turn > 0.75) return back.a * p.x + back.c * p.y + back.e < overlap - beside - border;
    return true;
  };
}

interface Ground {
  readonly starts: SegmentStarts;
  readonly finder: NearestFinder;
  readonly isInside: IsInside;
  /** To the next repeat, and to the one before. */
  readonly motions: readonly Affine[];
}

/**
 * How far a segment is from its like a repeat on; where there is none on the piece, a repeat before. Copies are mostly
 * the same curves point for point, which one look tells; what is not is held place by place against what is there.
 */
function missOf(segment: Segment, ground: Ground): number {
  for (const motion of ground.motions) {
    const there = moveSegment(motion, segment);
    const like = ground.starts.nearest(there, precision);
    if (like <= precision) return like;
    if ([0, 0.5, 1].some((t) => ground.isInside(pointAt(there, t)))) break;
  }
  return largest(sampledMisses(segment, ground));
}

function sampledMisses(segment: Segment, { finder, isInside, motions }: Ground): number[] {
  return samplesOf(segment)
    .filter(isInside)
    .flatMap((p) => {
      const there = motions.map((motion) => movePoint(motion, p)).find(isInside);
      if (!there) return [];
      return [(finder.find(there, 1) ?? finder.find(there, reach))?.distance ?? reach];
    });
}

/** Segments tried of a layer for each count of parts, at the most, and the share of them that must have their like. */
const tried = 400;
const mostAlike = 0.7;

/**
 * In how many equal parts the art goes around, as most of it shows: a divisor of the repeats around. For files of
 * which it isn't known; what is spoiled in places does not hide it, and is found by `repeatMiss` then.
 */
export function partsFound(
  layers: readonly { readonly piece: ProvedPiece; readonly contours: readonly Contour[] }[],
  { around, overlap }: { readonly around: number; readonly overlap: number },
): number {
  const grounds = layers.map(({ piece, contours }) => {
    const segments = contours.flatMap((contour) => contour.segments);
    const isInside = insideOf(piece, overlap);
    const some = segments
      .filter((_, i) => i % Math.ceil(segments.length / tried) === 0)
      .filter(({ from, to }) => isInside(from) && isInside(to));
    return { piece, some, isInside, starts: new SegmentStarts(segments) };
  });
  for (let parts = around; parts > 1; parts--) {
    if (around % parts !== 0) continue;
    const likes = grounds.flatMap(({ piece, some, isInside, starts }) => {
      const next = onward(piece.cone, 1 / parts);
      return some
        .map((segment) => moveSegment(next, segment))
        .filter(({ from, to }) => isInside(from) && isInside(to))
        .map((segment) => starts.nearest(segment, precision) <= precision);
    });
    if (likes.filter(Boolean).length > mostAlike * likes.length) return parts;
  }
  return 1;
}

/** What a repeat misses the next one by at the most, mm, over one layer of a piece; the overlap counts as one. */
export function repeatMiss(
  piece: ProvedPiece,
  { contours, finder }: { readonly contours: readonly Contour[]; readonly finder: NearestFinder },
  { equalParts, overlap }: { readonly equalParts: number; readonly overlap: number },
): number {
  const segments = contours.flatMap((contour) => contour.segments);
  const ground: Ground = {
    starts: new SegmentStarts(segments),
    finder,
    isInside: insideOf(piece, overlap),
    motions: [1, -1].map((sign) => onward(piece.cone, sign / equalParts)),
  };
  return largest(segments.map((segment) => missOf(segment, ground)));
}

export const repeatCheck = (value: number, equalParts: number): Check =>
  atMost({
    rule: 'repeats',
    value,
    limit: precision,
    unit: 'mm',
    says:
      equalParts > 1
        ? `what a repeat misses the next one by, ${equalParts} equal parts around and the overlap`
        : 'what the overlap misses the art under it by',
  });

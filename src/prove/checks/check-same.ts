// Does the cut file hold the very lines of the guide: all of them, each in its place?
import type { Contour } from '../../geometry/contour.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { precision } from '../../geometry/tolerance.ts';
import { atMost, type Check, largest } from '../check.ts';
import { type DeliveredGroup, groupsIn } from '../written/delivered-file.ts';
import { curvesOf, type ReadPiece } from '../written/piece.ts';
import { samplesOn } from '../written/samples.ts';
import { unlike } from '../written/segment-starts.ts';

/** How far away a line's twin is looked for, mm; none within it counts as this far. */
const reach = 25;

interface Pair {
  readonly piece: ReadPiece;
  readonly cut: DeliveredGroup | undefined;
  readonly guide: DeliveredGroup | undefined;
}

/** The groups of what is cut, each with its twin on the guide. */
function pairsOf(piece: ReadPiece): Pair[] {
  return ['artwork', 'relief', 'outline'].flatMap((role) => {
    const [cut, guide] = [groupsIn(piece.cut, role), groupsIn(piece.guide, role)];
    return Array.from({ length: Math.max(cut.length, guide.length) }, (_, i) => ({
      piece,
      cut: cut[i],
      guide: guide[i],
    }));
  });
}

/** Paths of one group that the other has not, counted both ways; 0 where all are the same to the letter. */
function strangers({ cut, guide }: Pair): { readonly cut: string[]; readonly guide: string[] } {
  const [ours, theirs] = [cut?.paths ?? [], guide?.paths ?? []].map((paths) => paths.map(({ data }) => data));
  const without = (some: readonly string[] = [], others: readonly string[] = []) => {
    const left = new Map<string, number>();
    for (const data of others) left.set(data, (left.get(data) ?? 0) + 1);
    return some.filter((data) => {
      const count = left.get(data) ?? 0;
      left.set(data, count - 1);
      return count <= 0;
    });
  };
  return { cut: without(ours, theirs), guide: without(theirs, ours) };
}

/** How far the lines of each side stray from those of the other, mm. */
function apart(piece: ReadPiece, one: readonly string[], other: readonly string[]): number {
  const [a, b] = [curvesOf(piece.cut, one, piece.place), curvesOf(piece.guide, other, piece.place)];
  if (!a || !b) return reach;
  // Corrected lines have other numbers; where they stand in the same order no search is needed.
  const off = inOrder(a, b);
  return off <= precision ? off : Math.max(straying(a, b), straying(b, a));
}

/** How far control points are from their likes, one for one: no less than their curves are; Infinity where they are not alike. */
function inOrder(a: readonly Contour[], b: readonly Contour[]): number {
  const [ours, theirs] = [a, b].map((contours) => contours.flatMap(({ segments }) => segments));
  if (!ours || !theirs || ours.length !== theirs.length) return Number.POSITIVE_INFINITY;
  return ours.reduce((most, segment, i) => {
    const other = theirs[i];
    return Math.max(most, other ? unlike(segment, other) : Number.POSITIVE_INFINITY);
  }, 0);
}

function straying(from: readonly Contour[], to: readonly Contour[]): number {
  const finder = new NearestFinder(to);
  const near = (p: { x: number; y: number }) => finder.find(p, 1) ?? finder.find(p, reach);
  return largest(samplesOn(from).map((p) => near(p)?.distance ?? reach));
}

export function sameChecks(pieces: readonly ReadPiece[]): Check[] {
  const found = pieces.flatMap(pairsOf).map((pair) => ({ ...pair, not: strangers(pair) }));
  const counts = found.map(({ cut, guide }) =>
    Math.abs((cut?.paths.length ?? 0) - (guide?.paths.length ?? 0)),
  );
  const distances = found.map(({ piece, not }) =>
    not.cut.length + not.guide.length === 0 ? 0 : apart(piece, not.cut, not.guide),
  );
  return [
    atMost({
      rule: 'all-there',
      value: counts.reduce((sum, count) => sum + count, 0),
      limit: 0,
      unit: 'count',
      says: 'shapes that the cut file has more or fewer than its guide',
    }),
    atMost({
      rule: 'as-guide',
      value: largest(distances),
      limit: precision,
      unit: 'mm',
      says: 'cut lines off the same lines on the guide',
    }),
  ];
}

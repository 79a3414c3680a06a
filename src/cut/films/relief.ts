// Relief cuts: straight cuts up the wall across large waste, so that it lifts in strips; they touch nothing that stays.
import type { Box } from '../../geometry/box.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { line } from '../../geometry/contour.ts';
import { holdsPoint } from '../../geometry/inside.ts';
import { NearestFinder } from '../../geometry/nearest.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { girthAt } from '../../unroll/flat-wall.ts';
import { edgePoint, sideTurns, type Template } from '../../unroll/template.ts';

/** Where relief cuts may run in a piece of film: up the wall, from side to side. */
export interface ReliefField {
  /** mm */
  readonly width: number;
  /** The line at a share of the width, from its lower end. */
  readonly lineAt: (share: number) => { readonly from: Point; readonly to: Point };
  /** Whether a place on that line, at a share of its length, lies at least `clear` mm from the piece's sides, which may wind. */
  readonly isInside: (share: number, up: number, clear: number) => boolean;
}

export interface ReliefOptions {
  readonly field: ReliefField;
  /** What is cut of the piece: in the field's frame, each shape with its holes. */
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

/** The field of a wrap: lines through the wall's axis. */
export function fieldOfWrap(template: Template): ReliefField {
  const { wall, piece } = template;
  const middle = (piece.from + piece.to) / 2;
  const [left, right] = sideTurns(template, middle);
  const turnAt = (share: number) => left + share * (right - left);
  return {
    width: girthAt(wall, middle) * (right - left),
    lineAt: (share) => {
      const edge = { turn: turnAt(share), offset: 0 };
      return { from: edgePoint(wall, edge, piece.from), to: edgePoint(wall, edge, piece.to) };
    },
    isInside: (share, up, clear) => {
      const along = piece.from + up * (piece.to - piece.from);
      const [from, to] = sideTurns(template, along);
      const room = clear / girthAt(wall, along);
      return turnAt(share) >= from + room && turnAt(share) <= to - room;
    },
  };
}

/** The field of a piece of film as a box, y down. */
export const fieldOfBox = ({ minX, minY, maxX, maxY }: Box): ReliefField => ({
  width: maxX - minX,
  lineAt: (share) => {
    const x = minX + share * (maxX - minX);
    return { from: { x, y: maxY }, to: { x, y: minY } };
  },
  isInside: () => true,
});

/** The cuts, each from below upwards, from left to right. */
export function reliefCuts(options: ReliefOptions): Contour[] {
  const { field, shapes, every } = options;
  if (shapes.length === 0) return [];
  const strips = Math.floor(field.width / every);
  const finder = new NearestFinder(shapes.flatMap(({ contours }) => contours));
  return Array.from({ length: Math.max(0, strips - 1) }, (_, i) => i + 1).flatMap((i) => {
    const all = tries.map((by) => {
      return runsOn((i + by) / strips, finder, options);
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
  share: number,
  finder: NearestFinder,
  { field, shapes, use, every, clear }: ReliefOptions,
): Contour[] {
  const { from, to } = field.lineAt(share);
  const count = Math.ceil(distance(from, to) / step);
  const at = (i: number): Point => ({
    x: from.x + ((to.x - from.x) * i) / count,
    y: from.y + ((to.y - from.y) * i) / count,
  });
  const room = clear + step / 2;
  const isClear = (i: number) =>
    field.isInside(share, i / count, room) && finder.find(at(i), room) === undefined;
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

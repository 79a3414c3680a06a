// Are the finished edges level, the seam lines upright at their turns, and the outline where it should be?

import { distance, type Point } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { Asked } from '../asked.ts';
import { atMost, type Check, largest } from '../check.ts';
import { windingOff } from '../seams/winding-sides.ts';
import { guideCurves, type ProvedPiece, pieceBand, spanOf } from '../written/piece.ts';
import { acrossFrom, girthOf, rightOfTurn, rollUp } from '../written/rolled-cone.ts';
import { samplesOn } from '../written/samples.ts';

const missing = [Number.NaN];

/** How far a finished edge strays from its height anywhere, mm. */
export function levelOff(piece: ProvedPiece, id: string, along: number): readonly number[] {
  const points = samplesOn(guideCurves(piece, 'trim', id));
  return points.length === 0 ? missing : points.map((p) => Math.abs(rollUp(piece.cone, p).along - along));
}

/** How far the seam lines stray from the lines up the wall, around, and from their ends, mm. */
function seamOff(piece: ProvedPiece): readonly number[] {
  const { cone, band, beside } = piece;
  return (['seam-start', 'seam-finish'] as const).flatMap((id) => {
    const [turn, away] = id === 'seam-start' ? [0, beside.start] : [spanOf(piece), -beside.finish];
    const ends = guideCurves(piece, 'seam', id)[0]?.segments[0];
    if (!ends) return missing;
    const across = samplesOn(guideCurves(piece, 'seam', id)).map((p) =>
      Math.abs(rightOfTurn(cone, turn, p) - away),
    );
    const heights = [rollUp(cone, ends.from).along - band.from, rollUp(cone, ends.to).along - band.to];
    return [...across, ...heights.map(Math.abs)];
  });
}

/** How far a point of the outline is from all four borders that the piece should have, mm. */
function borderOff(piece: ProvedPiece, p: Point): number {
  const { cone, beside, before, overlap } = piece;
  const { from, to } = pieceBand(piece);
  const span = spanOf(piece);
  const { turn, along } = rollUp(cone, p);
  // A sector wider than half a turn reaches back past its own first line: each side counts in its own half only, and no
  // farther than a quarter around the cone's point, for behind that its line goes on where no film is cut by it. Of a panel
  // one side alone may stand beside a handle, farther in than half of its turns.
  const middle = (span + (beside.start - beside.finish) / girthOf(cone, along)) / 2;
  const quarter = 1 / (4 * Math.abs(cone.sine));
  const isLeft = turn < middle;
  const left = isLeft && turn < quarter ? rightOfTurn(cone, 0, p) - beside.start + before : Infinity;
  const right =
    !isLeft && span - turn <= quarter ? rightOfTurn(cone, span, p) + beside.finish - overlap : -Infinity;
  const inside = along > from - precision && along < to + precision && left > -precision && right < precision;
  const away = Math.min(...[along - from, along - to, left, right].map(Math.abs));
  return inside ? away : Math.max(from - along, along - to, -left, right);
}

/** How far the corners the piece should have are from the outline's own nodes, mm. */
function cornersOff({ cone, beside, before, overlap, outline, ...piece }: ProvedPiece): readonly number[] {
  const { from, to } = pieceBand(piece);
  const span = spanOf(piece);
  const nodes = outline.flatMap(({ segments }) => segments.map((s) => s.from));
  return [from, to]
    .flatMap((along) => [
      acrossFrom(cone, 0, beside.start - before, along),
      acrossFrom(cone, span, overlap - beside.finish, along),
    ])
    .map((corner) => Math.min(...nodes.map((node) => distance(node, corner))));
}

/** How far a piece's outline is from where it should run, and its corners from where they should be, mm. */
export function outlineOff(piece: ProvedPiece): number {
  const points = samplesOn(piece.outline);
  if (points.length === 0) return Number.NaN;
  return largest([...points.map((p) => borderOff(piece, p)), ...cornersOff(piece)]);
}

export function edgeChecks(pieces: readonly ProvedPiece[], { clear, winds }: Asked): Check[] {
  const level = pieces.flatMap((piece) => [
    ...levelOff(piece, 'trim-foot', piece.band.from),
    ...levelOff(piece, 'trim-lip', piece.band.to),
  ]);
  const outline = pieces.flatMap((piece) => {
    if (winds && samplesOn(piece.outline).length > 0) return windingOff(piece);
    return [outlineOff(piece)];
  });
  const row = (rule: string, values: readonly number[], says: string): Check =>
    atMost({ rule, value: largest(values), limit: precision, unit: 'mm', says });
  return [
    row('finished-edges', level, 'finished edges off their level on the wall'),
    row(
      'seam-lines',
      pieces.flatMap(seamOff),
      clear === undefined ? 'seam lines off turn 0 and once around' : 'sides off the handle',
    ),
    row(
      'outline',
      outline,
      winds
        ? 'ends of the cut outline off their level, or its winding sides off one another'
        : 'cut outline off the piece that this wall asks for',
    ),
  ];
}

// The outlines on a piece's guide of the cover strips that will lie on it.
import type { NotedPlace } from '../../cut/guide/marks.ts';
import { footprintOnPiece, patchOnPiece } from '../../cut/guide/wall-patch.ts';
import type { Shape } from '../../geometry/contour.ts';
import type { Template } from '../../unroll/template.ts';
import { uprightTurns } from '../closing/border-strips.ts';
import type { MakeInput } from '../make-input.ts';
import type { Plan } from '../plan/plan.ts';
import type { Strips } from '../typed/strips.ts';

export interface PieceUnderStrips {
  /** Which piece of the job it is, from the foot up, and how many there are. */
  readonly index: number;
  readonly count: number;
  /** The strips over borders of its pattern. */
  readonly strips?: Strips;
}

/** One place for all of them, or none. */
export function stripPlaces(
  input: Pick<MakeInput, 'job' | 'blank'>,
  { template, lengths }: Pick<Plan, 'template' | 'lengths'>,
  { index, count, strips }: PieceUnderStrips,
): readonly NotedPlace[] {
  const { job, blank } = input;
  const { strip } = job.seam;
  const { band } = template;
  const joints = [...(index > 0 ? [band.from] : []), ...(index < count - 1 ? [band.to] : [])];
  const shapes = [
    ...(strip === undefined || blank.handle ? [] : upright(template, 0, strip)),
    ...(strip === undefined ? [] : joints.flatMap((on) => level(template, on, strip))),
    ...(strips
      ? [
          ...uprightTurns(strips.turns, input).flatMap((turn) => upright(template, turn, strips.width)),
          ...strips.along.flatMap((along) => level(template, lengths.toGrown(along), strips.width)),
        ]
      : []),
  ];
  return shapes.length === 0 ? [] : [{ says: 'cover strip', shapes }];
}

/** A straight strip, its middle line up the wall at a turn; as much longer as its corners stand out past a level edge. */
function upright(template: Template, turn: number, width: number): readonly Shape[] {
  const { from, to } = template.piece;
  return footprintOnPiece(
    template,
    { across: width, up: to - from + width },
    { turn, along: (from + to) / 2 },
  );
}

/** A level strip all around, its middle line at a height of the sheet's own. */
const level = (template: Template, on: number, width: number): readonly Shape[] =>
  patchOnPiece(template, { along: { from: on - width / 2, to: on + width / 2 } });

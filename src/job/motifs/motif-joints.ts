// Single motifs and the joints of panels and levels: joints keep off them where they can, and one that is crossed all the same is told.
import { comesAgain } from '../../cut/guide/wall-patch.ts';
import { type Finding, look } from '../../finding.ts';
import { polygon, type Shape } from '../../geometry/contour.ts';
import { inMm } from '../../lengths/length.ts';
import { toFlat } from '../../unroll/flat-wall.ts';
import { turnsOfPiece } from '../../unroll/template.ts';
import type { MakeInput } from '../make-input.ts';
import type { Levels } from '../plan/panel-places.ts';
import { typedAt } from '../typed/typed-at.ts';
import type { LaidMotif } from './laid-apart.ts';

/** As much of a laid motif as tells the room that it takes. */
type MotifOnWrap = Pick<LaidMotif, 'reach'> & {
  readonly placed: Pick<LaidMotif['placed'], 'isApart'>;
  readonly plan: Pick<LaidMotif['plan'], 'template'>;
};

const cutWithWrap = <M extends MotifOnWrap>(laid: readonly M[]): readonly M[] =>
  laid.filter(({ placed }) => !placed.isApart);

/**
 * The room that motifs take of the wrap, on the sheet of their piece: a joint in a gap between two letters cuts a name in two as well. On a
 * sheet of more than half a ring what comes a turn later would lie where its other end is: it counts only at turns that the piece has.
 */
export const motifRoom = (laid: readonly MotifOnWrap[]): readonly Shape[] =>
  cutWithWrap(laid).flatMap(({ plan: { template }, reach: { from, to, turns } }) => {
    const piece = turnsOfPiece(template);
    const seen = comesAgain.filter((k) => turns.to + k > piece.from && turns.from + k < piece.to);
    return seen.map((k) => {
      const corners = [
        [turns.from, from],
        [turns.to, from],
        [turns.to, to],
        [turns.from, to],
      ] as const;
      return {
        contours: [polygon(corners.map(([turn, along]) => toFlat(template.wall, { turn: turn + k, along })))],
      };
    });
  });

/** Findings `item-on-joint`, one a motif that a joint goes through; `joints` in turns, levels in mm along the bare wall. */
export const jointFindings = (
  { jobFile }: Pick<MakeInput, 'jobFile'>,
  laid: readonly LaidMotif[],
  { joints, levels }: { readonly joints: readonly number[]; readonly levels: Levels },
): Finding[] =>
  cutWithWrap(laid).flatMap(({ placed: { key, says, at }, reach: { from, to, turns }, lengths }) => {
    const up = joints.filter((joint) =>
      comesAgain.some((k) => joint + k > turns.from && joint + k < turns.to),
    );
    const level = levels.at.filter((along) => lengths.toGrown(along) > from && lengths.toGrown(along) < to);
    const where = [
      ...up.map((turn) => `the joint of two panels at turn ${turn.toFixed(3)}`),
      ...level.map((along) => `the level joint at ${inMm(along)} along`),
    ];
    if (where.length === 0) return [];
    const tells = `${says} is cut in two by ${where.join(' and ')}; move it off, give "panels" with joints beside it, or cut it apart and lay it over the joint ("apart": true)`;
    return [look('item-on-joint', typedAt(jobFile, `${key}.at`, at), tells)];
  });

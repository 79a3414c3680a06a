// The outlines on the guide of what is no part of the cut: the lip zone, keep-outs and motifs cut apart.
import type { Blank } from '../blank/blank.ts';
import type { Band } from '../blank/flat-band.ts';
import { lipZoneStart } from '../blank/lip-zone.ts';
import { wallLength } from '../blank/wall.ts';
import { type NotedPlace, wordSize } from '../cut/marks.ts';
import { footprintOnPiece, patchOnPiece } from '../cut/wall-patch.ts';
import { levelAngle, toFlat } from '../unroll/flat-wall.ts';
import type { Template } from '../unroll/template.ts';
import { bandOnSheet, keepOutOnSheet } from './on-sheet.ts';
import type { PlacedMotif } from './placed-motif.ts';
import type { Plan } from './plan.ts';

/** `motifs` are those of the sheet: their heights are mm on. */
export function notedPlaces(
  { keepOuts = [], ...blank }: Pick<Blank, 'keepOuts' | 'use' | 'lipZone'>,
  motifs: readonly PlacedMotif[],
  { wall, template, lengths }: Pick<Plan, 'wall' | 'template' | 'lengths'>,
): readonly NotedPlace[] {
  const lipZone = lipZoneStart(blank, wallLength(wall));
  const whole = bandOnSheet({ from: 0, to: wallLength(wall) }, lengths);
  const atLip =
    lipZone === undefined
      ? []
      : [allAround('lip zone', template, { ...whole, from: lengths.toGrown(lipZone) })];
  const onSheet = keepOuts.map((keepOut) => keepOutOnSheet(keepOut, lengths));
  const bare = onSheet.map(({ what, turn, along = whole }) =>
    turn
      ? {
          says: what,
          shapes: patchOnPiece(template, {
            along,
            turn: turn.to < turn.from ? { from: turn.from, to: turn.to + 1 } : turn,
          }),
        }
      : allAround(what, template, along),
  );
  const laid = motifs
    .filter(({ isApart }) => isApart)
    .map(({ name, size, at, motif: { frame } }) => ({
      says: name.replace('-', ' '),
      shapes: footprintOnPiece(template, size, {
        turn: at.turn,
        along: at.along - (frame.minY + frame.maxY) / 2,
      }),
    }));
  return [...atLip, ...bare, ...laid].filter(({ shapes }) => shapes.length > 0);
}

/** Where words of places all around stand, as a share of the piece: clear of the front, where paper is joined and other words are. */
const besideFront = 0.4;

/** A place all around the wall. */
function allAround(says: string, template: Template, along: Band): NotedPlace {
  const { wall, piece, left, right } = template;
  const [from, to] = [Math.max(along.from, piece.from), Math.min(along.to, piece.to)];
  const turn = left.turn + besideFront * (right.turn - left.turn);
  const middle = toFlat(wall, { turn, along: (from + to) / 2 });
  const wordsAt = to - from < wordSize ? [] : [{ ...middle, angle: levelAngle(wall, turn) }];
  return { says, shapes: patchOnPiece(template, { along }), wordsAt };
}

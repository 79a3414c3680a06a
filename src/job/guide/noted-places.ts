// The outlines on the guide of what is no part of the cut: the lip zone, keep-outs and motifs cut apart.
import type { Blank } from '../../blank/blank.ts';
import type { Band } from '../../blank/flat-band.ts';
import { lipZoneStart } from '../../blank/lip-zone.ts';
import { wallLength } from '../../blank/wall.ts';
import { type NotedPlace, wordSize } from '../../cut/guide/marks.ts';
import { footprintOnPiece, patchOnPiece } from '../../cut/guide/wall-patch.ts';
import { levelAngle, toFlat } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import { bandOnSheet } from '../plan/on-sheet.ts';
import type { Ground, Plan } from '../plan/plan.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';

/** A place that has to stay bare, mm on the sheet; left out, its turns are all around. */
export interface BarePlace {
  readonly says: string;
  readonly turn?: Band;
  readonly along: Band;
}

/** The lip zone and the keep-outs of a blank. */
export function bareOnSheet(
  { keepOuts = [], ...blank }: Pick<Blank, 'keepOuts' | 'use' | 'lipZone'>,
  { wall, lengths }: Pick<Ground, 'wall' | 'lengths'>,
): readonly BarePlace[] {
  const length = wallLength(wall);
  const lipZone = lipZoneStart(blank, length);
  const places = [
    ...(lipZone === undefined ? [] : [{ says: 'lip zone', along: { from: lipZone, to: length } }]),
    ...keepOuts.map(({ what, turn, along = { from: 0, to: length } }) => ({
      says: what,
      along,
      ...(turn ? { turn: turn.to < turn.from ? { from: turn.from, to: turn.to + 1 } : turn } : {}),
    })),
  ];
  return places.map((place) => ({ ...place, along: bandOnSheet(place.along, lengths) }));
}

/** `motifs` are those of the sheet: their heights are mm on. */
export function notedPlaces(
  blank: Pick<Blank, 'keepOuts' | 'use' | 'lipZone'>,
  motifs: readonly PlacedMotif[],
  { wall, template, lengths }: Pick<Plan, 'wall' | 'template' | 'lengths'>,
): readonly NotedPlace[] {
  const bare = bareOnSheet(blank, { wall, lengths }).map(({ says, turn, along }) =>
    turn ? { says, shapes: patchOnPiece(template, { along, turn }) } : allAround(says, template, along),
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
  return [...bare, ...laid].filter(({ shapes }) => shapes.length > 0);
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

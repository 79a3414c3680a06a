// The outlines on the guide of what is no part of the cut: keep-outs and items.
import type { Blank } from '../blank/blank.ts';
import { wallLength } from '../blank/wall.ts';
import { footprintOnPiece, patchOnPiece } from '../cut/wall-patch.ts';
import type { Shape } from '../geometry/contour.ts';
import type { ItemReport } from './items.ts';
import type { Plan } from './plan.ts';

/** An outline in the sheet's own frame, with the word to write in it. */
export interface NotedPlace {
  readonly says: string;
  readonly shapes: readonly Shape[];
}

export function notedPlaces(
  { keepOuts = [] }: Pick<Blank, 'keepOuts'>,
  items: readonly ItemReport[],
  { wall, template }: Pick<Plan, 'wall' | 'template'>,
): readonly NotedPlace[] {
  const bare = keepOuts.map(({ what, turn, along }) => ({
    says: what,
    shapes: patchOnPiece(template, {
      along: along ?? { from: 0, to: wallLength(wall) },
      ...(turn ? { turn: turn.to < turn.from ? { from: turn.from, to: turn.to + 1 } : turn } : {}),
    }),
  }));
  const laid = items.map((item, index) => ({
    says: `item ${index + 1}`,
    shapes: footprintOnPiece(template, item, item.at),
  }));
  return [...bare, ...laid].filter(({ shapes }) => shapes.length > 0);
}

// Does a stencil hold together? What lies in a hole of an opening falls out.
import type { Asked } from '../asked.ts';
import { atMost, type Check } from '../check.ts';
import type { ProvedPiece } from '../written/piece.ts';

/** Nothing where no stencil was asked for. */
export function stencilChecks(pieces: readonly ProvedPiece[], { holds = false }: Asked): Check[] {
  if (!holds) return [];
  const islands = pieces
    .flatMap(({ layers }) => layers.flatMap(({ shapes }) => shapes))
    .reduce((sum, contours) => sum + Math.max(0, contours.length - 1), 0);
  return [
    atMost({
      rule: 'stencil-holds',
      value: islands,
      limit: 0,
      unit: 'count',
      says: 'islands of the stencil that nothing holds',
    }),
  ];
}

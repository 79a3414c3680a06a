// A blank as read, tried out: its paper fits worked in, and all that keeps it from being a wall told.
import type { Blank } from '../../blank/blank.ts';
import { handleProblems } from '../../blank/handle-room.ts';
import { keepOutProblems } from '../../blank/keep-out.ts';
import { lipZoneProblems } from '../../blank/lip-zone.ts';
import { resolveFits, type TypedFit } from '../../blank/paper-fit.ts';
import { flatBandsOfWall, wallLength, wallOf } from '../../blank/wall.ts';
import { type Finding, Refused } from '../../finding.ts';
import { paperCone } from '../../unroll/sheet-wall.ts';

/** The blank with its fits, or what stops these readings from being a wall that film can go onto. */
export function settleBlank(
  bare: Blank,
  fits: readonly TypedFit[],
): { readonly blank: Blank } | { readonly problems: readonly Finding[] } {
  try {
    const blank = fits.length === 0 ? bare : { ...bare, fits: resolveFits(bare, fits, paperCone) };
    const { wall } = wallOf(blank);
    flatBandsOfWall(wall, blank);
    const problems = [
      ...(blank.handle === undefined ? [] : handleProblems(blank.handle, wall)),
      ...keepOutProblems(blank.keepOuts ?? [], wallLength(wall)),
      ...lipZoneProblems(blank, wallLength(wall)),
    ];
    return problems.length > 0 ? { problems } : { blank };
  } catch (error) {
    if (error instanceof Refused) return { problems: error.findings };
    throw error;
  }
}

// Whether a handle leaves any wall to lay film on.
import { type Finding, stop } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Handle } from './blank.ts';
import { bareGirthAt, type StraightWall } from './straight-wall.ts';

/** What is wrong with a handle on this wall (rule `handle-too-wide`); empty when wall is left beside it everywhere. */
export function handleProblems(handle: Handle, wall: StraightWall): readonly Finding[] {
  const least = Math.min(bareGirthAt(wall, 0), bareGirthAt(wall, wall.length));
  const taken = handle.spans + 2 * handle.keepOff;
  if (taken < least) return [];
  const says =
    `${formatLength(handle.spans, 'mm')}, with ${formatLength(handle.keepOff, 'mm')} kept off on either side, takes all of ` +
    `the least girth of ${formatLength(least, 'mm')}; give the width the handle takes along the girth`;
  return [stop('handle-too-wide', { key: 'handle.spans' }, says)];
}

// Whether a handle leaves any wall to lay film on.
import { type Finding, stop } from '../finding.ts';
import { formatLength } from '../lengths/length.ts';
import type { Handle } from './blank.ts';
import { closePlaces, type Wall, wallGirthAt, wallLength } from './wall.ts';

/** What is wrong with a handle on this wall (rule `handle-too-wide`); empty when wall is left beside it everywhere. */
export function handleProblems(handle: Handle, wall: Wall): readonly Finding[] {
  const places = closePlaces(wall, { from: 0, to: wallLength(wall) });
  const least = Math.min(...places.map((along) => wallGirthAt(wall, along)));
  const taken = handle.spans + 2 * handle.keepOff;
  if (taken < least) return [];
  const says =
    `${formatLength(handle.spans, 'mm')}, with ${formatLength(handle.keepOff, 'mm')} kept off on either side, takes all of ` +
    `the least girth of ${formatLength(least, 'mm')}; give the width the handle takes along the girth`;
  return [stop('handle-too-wide', { key: 'handle.spans' }, says)];
}

// The room a handle takes, and whether it leaves any wall to lay film on.
import { type Finding, stop } from '../finding.ts';
import { inMm } from '../lengths/length.ts';
import type { Handle } from './blank.ts';
import { closePlaces, type Wall, wallGirthAt, wallLength } from './wall.ts';

/** Half the width kept clear around a handle, mm along the girth: from turn 0 to where film may begin. */
export const roomBeside = ({ spans, keepOff }: Handle): number => spans / 2 + keepOff;

/** What is wrong with a handle on this wall (rule `handle-too-wide`); empty when wall is left beside it everywhere. */
export function handleProblems(handle: Handle, wall: Wall): readonly Finding[] {
  const places = closePlaces(wall, { from: 0, to: wallLength(wall) });
  const least = Math.min(...places.map((along) => wallGirthAt(wall, along)));
  const taken = 2 * roomBeside(handle);
  if (taken < least) return [];
  const says =
    `${inMm(handle.spans)}, with ${inMm(handle.keepOff)} kept off on either side, takes all of ` +
    `the least girth of ${inMm(least)}; give the width the handle takes along the girth`;
  return [stop('handle-too-wide', { key: 'handle.spans' }, says)];
}

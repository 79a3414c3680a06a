// The unit that a run tells lengths in.
import type { Units } from '../lengths/length.ts';
import { toldIn } from '../lengths/told-in.ts';

let asked: Units | undefined;

/** A run begins: the unit that was typed, where one was, goes before that of any file. */
export const beginTelling = (typed: Units | undefined): void => {
  asked = typed;
};

/** The unit of a file that is read: that of the first holds. */
export const tellIn = (units: Units): void => {
  asked ??= units;
};

export const unitsTold = (): Units => asked ?? 'mm';

/** A line of the engine's in the unit of this run. */
export const told = (says: string): string => toldIn(says, unitsTold());

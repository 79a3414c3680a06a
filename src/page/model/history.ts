// Undo and redo: every state of the bench, with what changed it.

export interface History<T> {
  readonly past: readonly T[];
  readonly present: T;
  readonly future: readonly T[];
  /** What the last change was made at, and when, ms: typing on in one field is one change. */
  readonly last?: { readonly at: string; readonly when: number };
}

/** Most steps kept; more would only grow the browser's store. */
const mostSteps = 200;

/** A pause longer than this ends one change of a field and begins the next, ms. */
const pause = 1500;

export const historyOf = <T>(present: T): History<T> => ({ past: [], present, future: [] });

/** The history after a change made at a place, such as a field's path. */
export function changed<T>(history: History<T>, next: T, at: string, when: number): History<T> {
  const { past, present, last } = history;
  const goesOn = last !== undefined && last.at === at && when - last.when < pause && past.length > 0;
  return {
    past: goesOn ? past : [...past, present].slice(-mostSteps),
    present: next,
    future: [],
    last: { at, when },
  };
}

export function undone<T>({ past, present, future }: History<T>): History<T> {
  const before = past.at(-1);
  if (before === undefined) return { past, present, future };
  return { past: past.slice(0, -1), present: before, future: [present, ...future] };
}

export function redone<T>({ past, present, future }: History<T>): History<T> {
  const [after, ...rest] = future;
  if (after === undefined) return { past, present, future };
  return { past: [...past, present], present: after, future: rest };
}

// A list whose every item is handed to one call as an argument runs out of stack, at some hundred thousand items. Where most of the
// stack is taken it does so at a few thousand, which a light test can make.

/** A list of so many is longer than there is room for. */
export const pastRoom = 8000;

/** No call of so many arguments finds room; what needs less by this step does. */
const room = new Array<number>(7000).fill(0);
const step = new Array<number>(1000).fill(0);

/** Does some work with little stack left. */
export function withLittleStack<T>(work: () => T): T {
  return hasRoom() ? deeper(() => withLittleStack(work), ...step) : work();
}

/** The arguments stay on the stack while the work is done. */
const deeper = <T>(work: () => T, ..._: readonly number[]): T => work();

function hasRoom(): boolean {
  try {
    return deeper(() => true, ...room);
  } catch {
    return false;
  }
}

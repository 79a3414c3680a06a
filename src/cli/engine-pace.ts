// How soon node's engine compiles for good, and how much garbage the command lets lie in memory.
import { setFlagsFromString } from 'node:v8';

/**
 * What may lie beside what is in use, in percent of it, before it is cleared away. By itself node lets three times as much lie; at
 * 30 a large job takes a seventh more processor time for a fifth less memory.
 */
const mostLying = 100;

/** Has garbage cleared away sooner: a large job then takes about twice the memory it uses. No limit: what is in use may grow as ever. */
export const tidyHeap = (): void => setFlagsFromString(`--heap-growing-percent=${mostLying}`);

/**
 * How much of a function's code runs before it may be compiled for good, bytes; node's own is 67,584. Most jobs take seconds and end
 * before that pays: a sixth of all processor time went into it, on threads that a machine of two cores takes from the job's own.
 */
const beforeCompiling = 200_000;

/**
 * How long a function may be to be compiled for good into those that call it, and all that is compiled into one of them, bytes;
 * node's own are 460 and 920. What is compiled into many is compiled many times, which small jobs never get back.
 */
const [longestInlined, mostInlined] = [150, 300];

/** Has functions compiled for good later, and less of them into others. */
export function compileLess(): void {
  setFlagsFromString(`--interrupt-budget=${beforeCompiling}`);
  setFlagsFromString(`--max-inlined-bytecode-size=${longestInlined}`);
  setFlagsFromString(`--max-inlined-bytecode-size-cumulative=${mostInlined}`);
}

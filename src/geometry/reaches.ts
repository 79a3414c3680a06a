// How far a run of places can go on from each start.

/**
 * For each start, the last end up to which `holds`. Needs a condition that holds for every part of a run it holds for,
 * and for any two neighbours. Ends only move up; each is looked for in doubling steps, then by halving.
 */
export function reaches(count: number, holds: (start: number, end: number) => boolean): number[] {
  const ends: number[] = [];
  let end = 0;
  for (let start = 0; start < count; start++) {
    end = Math.min(Math.max(end, start + 1), count - 1);
    if (end < count - 1) end = lastEnd(end, count, (tried) => holds(start, tried));
    ends.push(end);
  }
  return ends;
}

function lastEnd(known: number, count: number, holds: (end: number) => boolean): number {
  let [fits, fails, step] = [known, count, 1];
  while (fits + step < fails && holds(fits + step)) {
    fits += step;
    step *= 2;
  }
  fails = Math.min(fails, fits + step);
  while (fails - fits > 1) {
    const middle = (fits + fails) >> 1;
    if (holds(middle)) fits = middle;
    else fails = middle;
  }
  return fits;
}

/** A later run has to be longer by this to count as longer, mm: of equal ones the first is taken. */
const longer = 1e-9;

/** The run that is longest from its start's place to its end's, of those between two indices; undefined where there is none. */
export function longestRun(
  places: readonly number[],
  ends: readonly number[],
  first: number,
  last: number,
): { readonly start: number; readonly end: number } | undefined {
  let best: { start: number; end: number } | undefined;
  let most = 0;
  for (let start = first; start < last; start++) {
    const end = Math.min(ends[start] ?? start, last);
    const length = (places[end] ?? 0) - (places[start] ?? 0);
    if (length > most + longer) [best, most] = [{ start, end }, length];
  }
  return best;
}

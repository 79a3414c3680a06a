// Items by their size, of which mostly the first will do: of thousands of rings in one another each has thousands around it.

/** Items, each there once: the one of least size first, of equals the one given first; they are put in order only where a second is asked for. */
export function* leastFirst<T>(items: readonly T[], sizeOf: (item: T) => number): Generator<T> {
  const least = leastOf(items, sizeOf);
  if (least === undefined) return;
  yield least;
  yield* items.filter((item) => item !== least).sort((a, b) => sizeOf(a) - sizeOf(b));
}

function leastOf<T>(items: readonly T[], sizeOf: (item: T) => number): T | undefined {
  let [least, size]: [T | undefined, number] = [undefined, Infinity];
  for (const item of items) {
    const own = sizeOf(item);
    if (own < size) {
      least = item;
      size = own;
    }
  }
  return least;
}

// The largest and least of many numbers: as arguments of one call, more than a hundred thousand run out of stack.

/** The largest of them; `floor` of none, or where all are less. */
export function most(values: Iterable<number>, floor = Number.NEGATIVE_INFINITY): number {
  let largest = floor;
  for (const value of values) if (value > largest) largest = value;
  return largest;
}

/** The least of them; `ceiling` of none, or where all are more. */
export function least(values: Iterable<number>, ceiling = Number.POSITIVE_INFINITY): number {
  let smallest = ceiling;
  for (const value of values) if (value < smallest) smallest = value;
  return smallest;
}

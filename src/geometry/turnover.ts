// Where an answer changes between two parameters.

/** Where between two parameters an answer changes, by halving: to a billionth of what lies between them. */
export function turnover(answer: (t: number) => boolean, from: number, to: number): number {
  const before = answer(from);
  let [low, high] = [from, to];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (answer(middle) === before) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

// Where a template is parted into panels: as few as fit, along the lines that cost least.

export interface JointOptions {
  /** Places along the template where it may be parted, rising; none at its ends. */
  readonly places: readonly number[];
  /** What parting it at each place costs. */
  readonly costs: readonly number[];
  readonly from: number;
  readonly to: number;
  /** Longest first, inner and last panel, in the measure of the places. A single panel is both first and last. */
  readonly longest: { readonly first: number; readonly inner: number; readonly last: number };
  /** Shortest panel worth handling, in the same measure. */
  readonly shortest: number;
}

/** What panels all as long as each other are worth, in costs: it only decides between places that cost the same. */
const evenness = 1e-3;

interface Reached {
  readonly cost: number;
  /** The place before it, by index; -1 for the template's start. */
  readonly before: number;
}

/**
 * The places at which to part a template, so that every panel fits, there are as few as can be, and the sum of costs is
 * the least for so many. Undefined where no choice of places makes every panel fit.
 */
export function chooseJoints(options: JointOptions): readonly number[] | undefined {
  const { places, from, to, longest } = options;
  const mostPanels = places.length + 1;
  for (let panels = 2; panels <= mostPanels; panels++) {
    // Even the longest panels would not reach: no use looking.
    if (longest.first + longest.last + (panels - 2) * longest.inner < to - from) continue;
    const found = jointsFor(options, panels);
    if (found) return found;
    if (panels > 2 && longest.inner <= 0) return undefined;
  }
  return undefined;
}

/** The cheapest way to each place as a joint. */
type Row = ReadonlyMap<number, Reached>;

/** Dynamic programming over the places: the cheapest way to each as the k-th joint. */
function jointsFor(options: JointOptions, panels: number): readonly number[] | undefined {
  const { from, to, longest } = options;
  const mean = (to - from) / panels;
  const unlike = (length: number) => evenness * ((length - mean) / mean) ** 2;
  const rows: Row[] = [];
  let row: Row = new Map([[-1, { cost: 0, before: -1 }]]);
  for (let k = 0; k < panels - 1; k++) {
    row = nextRow(options, row, k === 0 ? longest.first : longest.inner, unlike);
    rows.push(row);
  }
  const last = cheapestLast(options, row, unlike);
  return last === undefined ? undefined : wayTo(options, rows, last);
}

/** One joint further from each place of a row, by a panel no longer than `most`. */
function nextRow(
  { places, costs, from, to, shortest }: JointOptions,
  row: Row,
  most: number,
  unlike: (length: number) => number,
): Row {
  const next = new Map<number, Reached>();
  for (const [index, { cost }] of row) {
    const start = index < 0 ? from : (places[index] ?? to);
    for (let i = index + 1; i < places.length; i++) {
      const length = (places[i] ?? to) - start;
      if (length > most) break;
      if (length < shortest) continue;
      const sum = cost + (costs[i] ?? 0) + unlike(length);
      if (sum < (next.get(i)?.cost ?? Number.POSITIVE_INFINITY)) next.set(i, { cost: sum, before: index });
    }
  }
  return next;
}

/** The place of the last joint from which the last panel fits, and all is cheapest. */
function cheapestLast(
  { places, from, to, longest, shortest }: JointOptions,
  row: Row,
  unlike: (length: number) => number,
): number | undefined {
  let best: { readonly index: number; readonly cost: number } | undefined;
  for (const [index, { cost }] of row) {
    const length = to - (places[index] ?? from);
    if (length > longest.last || length < shortest) continue;
    const sum = cost + unlike(length);
    if (sum < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { index, cost: sum };
  }
  return best?.index;
}

/** The joints on the way to the last one, from the start. */
function wayTo({ places, to }: JointOptions, rows: readonly Row[], last: number): readonly number[] {
  const joints: number[] = [];
  for (let k = rows.length - 1, index = last; k >= 0; k--) {
    joints.unshift(places[index] ?? to);
    index = rows[k]?.get(index)?.before ?? -1;
  }
  return joints;
}

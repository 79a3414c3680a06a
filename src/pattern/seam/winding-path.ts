// The cheapest smooth way up a field of costs: a shortest path whose state is a place and the slope it is reached with.

/**
 * What a mm of line costs, place by place: cells of `across` by `up` mm, rows from the foot up. Where it is periodic, the
 * last column's neighbour is the first.
 */
export interface CostField {
  readonly columns: number;
  readonly rows: number;
  readonly across: number;
  readonly up: number;
  readonly isPeriodic: boolean;
  /** Row by row, 0 or more. */
  readonly costs: Float32Array;
}

export interface PathOptions {
  /** Rows of the field between two knots of the path; a divisor of its rows. */
  readonly rowsPerStep: number;
  /** The most columns that a path goes aside in one step. */
  readonly steepest: number;
}

export interface WindingPath {
  /** A column for each knot, from the foot up; of a periodic field not brought back into it. */
  readonly columns: readonly number[];
  readonly cost: number;
}

/** Costs closer than this are the same. */
const equal = 1e-6;

/** What one more column of slope costs: of ways as good as one another the one that bends less. */
export const bendCost = 0.02;

/** The cost of the step from a column at a knot with a slope: each row's cell half way up it, times the length in it. */
export function stepCost(
  field: CostField,
  { rowsPerStep }: Pick<PathOptions, 'rowsPerStep'>,
  knot: number,
  column: number,
  slope: number,
): number {
  const { columns, across, up, costs, isPeriodic } = field;
  const length = Math.hypot((slope / rowsPerStep) * across, up);
  let sum = 0;
  for (let j = 0; j < rowsPerStep; j++) {
    const at = Math.round(column + (slope * (j + 0.5)) / rowsPerStep);
    const inside = isPeriodic ? ((at % columns) + columns) % columns : Math.max(0, Math.min(columns - 1, at));
    sum += costs[(knot * rowsPerStep + j) * columns + inside] ?? 0;
  }
  return sum * length;
}

/**
 * The cheapest path from the lowest row to the highest. From one knot to the next it goes aside by a whole number of
 * columns, its slope, and the slope changes by no more than one column from step to step: so its second difference is
 * bounded, and with it the bend of the spline through it. Exact: states have no way back down, so each is settled in the
 * order of its knot (shortest paths in a graph without cycles: Cormen et al., Introduction to Algorithms, ch. 24.2, from
 * memory). Time and memory go with knots x columns x slopes.
 */
export function windingPath(field: CostField, options: PathOptions): WindingPath {
  const { columns, rows, isPeriodic } = field;
  const { steepest, rowsPerStep } = options;
  const knots = rows / rowsPerStep;
  const slopes = 2 * steepest + 1;
  const states = columns * slopes;
  let reached = new Float64Array(states);
  let next = new Float64Array(states);
  const turned = new Int8Array(knots * states);
  for (let knot = 0; knot < knots; knot++) {
    next.fill(Infinity);
    const bend = knot === 0 ? 0 : bendCost;
    for (let column = 0; column < columns; column++) {
      for (let s = 0; s < slopes; s++) {
        const slope = s - steepest;
        const to = column + slope;
        if (!isPeriodic && (to < 0 || to >= columns)) continue;
        const by = cheapestTurn(reached, column * slopes, s, slopes, bend);
        const arrived = (reached[column * slopes + s + by] ?? 0) + Math.abs(by) * bend;
        if (arrived === Infinity) continue;
        const landed = isPeriodic ? ((to % columns) + columns) % columns : to;
        const state = landed * slopes + s;
        next[state] = arrived + stepCost(field, options, knot, column, slope);
        turned[knot * states + state] = by;
      }
    }
    [reached, next] = [next, reached];
  }
  return traced(field, options, reached, turned);
}

/** From which slope, one less, the same or one more, a column is reached most cheaply; a turn costs `bend`. */
function cheapestTurn(reached: Float64Array, at: number, s: number, slopes: number, bend: number): number {
  let least = Infinity;
  let from = 0;
  for (let by = -1; by <= 1; by++) {
    if (s + by < 0 || s + by >= slopes) continue;
    const cost = (reached[at + s + by] ?? 0) + Math.abs(by) * bend;
    if (cost < least) {
      least = cost;
      from = by;
    }
  }
  return from;
}

/** Back from the cheapest end, knot by knot. */
function traced(
  { columns, rows, isPeriodic }: CostField,
  { steepest, rowsPerStep }: PathOptions,
  reached: Float64Array,
  turned: Int8Array,
): WindingPath {
  const slopes = 2 * steepest + 1;
  // Of ways as good as one another the one that ends nearest to the middle.
  const offMiddle = (state: number) => Math.abs(Math.floor(state / slopes) - (columns - 1) / 2);
  let best = 0;
  for (let state = 1; state < reached.length; state++) {
    const less = (reached[best] ?? Infinity) - (reached[state] ?? Infinity);
    if (less > equal || (less > -equal && offMiddle(state) < offMiddle(best))) best = state;
  }
  let at = Math.floor(best / slopes);
  let s = best % slopes;
  const path = [at];
  for (let knot = rows / rowsPerStep - 1; knot >= 0; knot--) {
    const landed = isPeriodic ? ((at % columns) + columns) % columns : at;
    const by = turned[knot * reached.length + landed * slopes + s] ?? 0;
    at -= s - steepest;
    path.push(at);
    s += by;
  }
  return { columns: path.reverse(), cost: reached[best] ?? Infinity };
}

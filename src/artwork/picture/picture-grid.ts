// Whether straight edges inside a picture stand on one even grid with its borders.
import { type BorderView, type RowEdge, type RowReader, rowEdges } from './picture-rows.ts';

/** A grid finer than this, px, or than so many parts of what stands nearest together, is one by chance. */
const leastGrid = 5;
const mostParts = 4;

/** A straight edge is at least so long, px, and stands on its place within this, px. */
const straight = 6;
const onPlace = 0.15;

/** Whether straight edges inside stand on one even grid with both borders, as what is drawn square by square does and a crop does not. */
export function standsOnGrid({ value, along, size }: BorderView): boolean {
  const found: number[] = [];
  let places: readonly number[] = [];
  for (const more of straightPlaces(value, along, size)) {
    found.push(...more);
    places = apartBy(found, 2 * onPlace);
    // What even the finest grid does not hold now it will not when more places are known.
    if (!isOnGrid(places, size, leastGrid)) return false;
  }
  if (places.length === 0) return false;
  const apart = places.slice(1).map((at, i) => at - (places[i] ?? 0));
  return isOnGrid(places, size, Math.max(leastGrid, Math.min(size, ...apart) / mostParts));
}

/** Whether places stand on one grid of a size cut in even parts, none of them less than `least`. */
function isOnGrid(places: readonly number[], size: number, least: number): boolean {
  for (let parts = 2; size / parts >= least; parts++) {
    const grid = size / parts;
    if (places.every((at) => Math.abs(at - grid * Math.round(at / grid)) <= onPlace)) return true;
  }
  return false;
}

/** Places in order, those left out that stand no farther on than this. */
function apartBy(places: readonly number[], least: number): readonly number[] {
  const kept: number[] = [];
  for (const at of [...places].sort((a, b) => a - b)) if (at - (kept.at(-1) ?? -1) > least) kept.push(at);
  return kept;
}

/** An edge that has run straight along the rows for so many pixels; to which side of it the edge stood before. */
interface StraightRun extends RowEdge {
  readonly length: number;
  readonly from: number;
}

/** Where edges that run along the rows stand, px from the border: those that show first, by so many columns at a time. */
function* straightPlaces(value: RowReader, along: number, size: number): Generator<readonly number[]> {
  const line = new Uint8Array(3 * (size + 2));
  const upright: RowReader = (k, _, channel) => line[3 * (k + 1) + channel] ?? 0;
  let places: number[] = [];
  let open: readonly StraightRun[] = [];
  for (let i = 0; i <= along; i++) {
    for (let k = -1; k <= size; k++)
      for (let channel = 0; channel < 3; channel++) line[3 * (k + 1) + channel] = value(i, k, channel);
    const now = i === along ? [] : rowEdges(upright, size, i).filter(({ at }) => at > 1 && at < size - 2);
    const before = open;
    open = now.map((edge) => {
      const run = nearIn(before, edge.at, onPlace, (one) => one.rises === edge.rises);
      return run ? { ...run, length: run.length + 1 } : { ...edge, length: 1, from: sideOf(before, edge) };
    });
    for (const run of before) {
      const goesOn = nearIn(open, run.at, 0, ({ rises }) => rises === run.rises) !== undefined;
      // The top of a round comes from one side and leaves to the same.
      if (goesOn || run.length < straight || run.from * sideOf(now, run) > 0) continue;
      places.push(run.at + 0.5);
    }
    if (places.length === 0 || (i % columnsAtOnce !== 0 && i < along)) continue;
    yield places;
    places = [];
  }
}

/** To which side of an edge one stands that it goes on in, as a round does; 0 where none is near. */
const sideOf = (edges: readonly RowEdge[], { at, rises }: RowEdge): number => {
  const near = nearIn(edges, at, bendsBy, (edge) => edge.rises === rises);
  return near ? Math.sign(near.at - at) : 0;
};

const bendsBy = 0.7;

/**
 * The first wanted one of edges that stand in order, but for `onPlace`, no farther from a place than this: of a fine hatching there are
 * thousands in each column, and looked through one by one they took as long as their square.
 */
function nearIn<Edge extends RowEdge>(
  edges: readonly Edge[],
  place: number,
  within: number,
  isWanted: (edge: Edge) => boolean,
): Edge | undefined {
  const from = place - within - 4 * onPlace;
  let [low, high] = [0, edges.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((edges[middle]?.at ?? 0) < from) low = middle + 1;
    else high = middle;
  }
  for (let i = low; i < edges.length; i++) {
    const edge = edges[i];
    if (!edge || edge.at > place + within + 4 * onPlace) return undefined;
    if (Math.abs(edge.at - place) <= within && isWanted(edge)) return edge;
  }
  return undefined;
}

/** After so many columns places are held against the grid. */
const columnsAtOnce = 16;

// Nesting: pieces laid onto sheets, or along a roll, with as little film as possible.
// A first layout is built piece by piece; then the last sheet is made a little shorter, the overlaps that brings are
// worked out again, and so on. Overlaps that stay are counted more and more, so that the search leaves dead ends.
// Source: J. Egeblad, B. K. Nielsen, A. Odgaard, Fast neighborhood search for two- and three-dimensional nesting
// problems, European Journal of Operational Research 183, 2007 (guided local search), from memory.
import { type Lie, NestBoard, type NestPiece, type NestSheet } from './nest-board.ts';
import { improve } from './nest-move.ts';
import { type Random, seededRandom, shuffled } from './random.ts';

/** Where one piece lies: which kind, on which sheet, turned by how much (radians), its origin moved to where (mm). */
export interface NestPlace {
  readonly kind: number;
  readonly sheet: number;
  readonly turn: number;
  readonly x: number;
  readonly y: number;
}

/** A layout without overlaps. */
export interface Nest {
  readonly places: readonly NestPlace[];
  readonly sheets: number;
  /** How far the last sheet is used, mm. */
  readonly lastUsed: number;
}

export interface NestOptions {
  /** How many places may be tried. The search ends there, at the same layout on every machine. */
  readonly trials: number;
  readonly seed: number;
}

/**
 * Better and better layouts. Each one is whole: stop at any time and keep the last. Undefined is said between layouts, so
 * that a caller can show that work goes on. Nothing is given where a piece fits no sheet.
 */
export function* nest(
  kinds: readonly NestPiece[],
  sheet: NestSheet,
  { trials, seed }: NestOptions,
): Generator<Nest | undefined, void> {
  const board = new NestBoard(kinds, sheet.height);
  const random = seededRandom(seed);
  if (!construct(board, sheet)) return;
  yield layoutOf(board);
  let step = 0.03;
  let stuck = false;
  const best = { lies: liesOf(board), ends: tightEnds(board) };
  while (board.trials < trials) {
    restore(board, best.lies, best.ends);
    if (stuck) exchange(board, random);
    if (!shorten(board, sheet, step, random)) return;
    const parted = yield* separate(board, trials, random);
    stuck = !parted;
    if (parted) {
      best.lies = liesOf(board);
      best.ends = tightEnds(board);
      step = Math.min(step * 1.5, 0.03);
      yield layoutOf(board);
    } else step = Math.max(step * 0.6, 0.001);
  }
}

const liesOf = (board: NestBoard): Lie[] => Array.from({ length: board.pieces }, (_, i) => board.lie(i));

function restore(board: NestBoard, lies: readonly Lie[], ends: readonly number[]): void {
  board.ends.length = 0;
  board.ends.push(...ends);
  for (const [i, lie] of lies.entries()) board.place(i, lie);
}

/** The ends of the sheets, the last one's drawn in to what it is used for. */
function tightEnds(board: NestBoard): number[] {
  const last = board.ends.length - 1;
  return board.ends.map((end, i) => (i === last ? board.used(i) : end));
}

function layoutOf(board: NestBoard): Nest {
  const places = liesOf(board).map(({ variant, sheet, x, y }) => {
    const { kind, turn } = board.variantAt(variant);
    return { kind, sheet, turn, x, y };
  });
  const sheets = board.ends.length;
  return { places, sheets, lastUsed: board.used(sheets - 1) };
}

/** A first layout: the largest piece first, each as far to the left as it goes against those that lie. */
function construct(board: NestBoard, sheet: NestSheet): boolean {
  const order = Array.from({ length: board.pieces }, (_, i) => i).sort(
    (a, b) => extentOf(board, b) - extentOf(board, a),
  );
  for (const piece of order) {
    for (let at = 0; ; at++) {
      if (at === board.ends.length) board.ends.push(sheet.length);
      const lie = leftmost(board, piece, at);
      if (lie) {
        board.place(piece, lie);
        break;
      }
      // An empty sheet that does not take it: none will.
      if (!Array.from(board.sheet).some((s, i) => s === at && (board.variant[i] as number) >= 0))
        return false;
    }
  }
  return true;
}

/** The place farthest to the left on a sheet where a piece meets no other, among those against a corner or an end. */
function leftmost(board: NestBoard, piece: number, sheet: number): Lie | undefined {
  let best: Lie | undefined;
  let bestReach = Infinity;
  for (const variant of board.variantsOf[board.kindOf[piece] as number] ?? []) {
    if (!board.fits(variant, sheet)) continue;
    const { minX, maxX, minY, maxY } = board.variantAt(variant);
    for (const { x, y } of corners(board, variant, sheet)) {
      if (x + minX < -board.slack || x + maxX > (board.ends[sheet] as number) + board.slack) continue;
      if (y + minY < -board.slack || y + maxY > board.height + board.slack) continue;
      const reach = x + maxX + (y + maxY) * 1e-3;
      if (reach >= bestReach) continue;
      if (board.cost(piece, variant, sheet, x, y, board.slack) >= board.slack) continue;
      best = { variant, sheet, x, y };
      bestReach = reach;
    }
  }
  return best;
}

/** Corners of no-fit regions, and where their sides cross the sheet's upper and lower edge or its left end. */
function* corners(board: NestBoard, variant: number, sheet: number): Generator<{ x: number; y: number }> {
  const { minX, minY, maxY } = board.variantAt(variant);
  const left = -minX;
  const levels = [-minY, board.height - maxY];
  for (const y of levels) yield { x: left, y };
  for (let other = 0; other < board.pieces; other++) {
    if (board.sheet[other] !== sheet || (board.variant[other] as number) < 0) continue;
    const region = board.region(board.variant[other] as number, variant);
    const ox = board.x[other] as number;
    const oy = board.y[other] as number;
    for (let k = 0; k < region.x0.length; k++) {
      const x0 = ox + (region.x0[k] as number);
      const y0 = oy + (region.y0[k] as number);
      const x1 = ox + (region.x1[k] as number);
      const y1 = oy + (region.y1[k] as number);
      yield { x: x0, y: y0 };
      for (const y of levels) if (y0 < y !== y1 < y) yield { x: x0 + ((x1 - x0) * (y - y0)) / (y1 - y0), y };
      if (x0 < left !== x1 < left) yield { x: left, y: y0 + ((y1 - y0) * (left - x0)) / (x1 - x0) };
    }
  }
}

/** Make the last sheet shorter by a share of all film used, or leave it out; what then has no place goes anywhere. */
function shorten(board: NestBoard, sheet: NestSheet, share: number, random: Random): boolean {
  const last = board.ends.length - 1;
  const used = board.ends[last] as number;
  const full = Number.isFinite(sheet.length) ? sheet.length * last : 0;
  const target = used - (used + full) * share * (0.5 + random());
  // The only sheet has to take every kind of piece; a last one after others may be left with the shortest alone.
  const least = last === 0 ? Math.max(...shortestOf(board)) : Math.min(...shortestOf(board));
  if (target < least) {
    if (last === 0) return false;
    board.ends.pop();
  } else board.ends[last] = target;
  for (let piece = 0; piece < board.pieces; piece++) reseat(board, piece, random);
  board.weight.fill(1);
  return true;
}

/** How far each kind of piece reaches along a sheet, turned so that it lies within the sheet's height and reaches least, mm. */
const shortestOf = (board: NestBoard): readonly number[] =>
  board.variantsOf.map((variants) =>
    Math.min(
      ...variants.flatMap((variant) => {
        const { minX, maxX, minY, maxY } = board.variantAt(variant);
        return maxY - minY <= board.height + board.slack ? [maxX - minX] : [];
      }),
    ),
  );

/** Bring a piece that reaches past the end of its sheet back onto a sheet: in place if it fits there, else anywhere. */
function reseat(board: NestBoard, piece: number, random: Random): void {
  const at = board.lie(piece);
  const end = board.ends[at.sheet];
  if (end !== undefined && at.x + board.variantAt(at.variant).maxX <= end + board.slack) return;
  if (end !== undefined && board.fits(at.variant, at.sheet)) {
    board.place(piece, { ...at, x: board.clampX(at.variant, at.sheet, at.x) });
    return;
  }
  const choices = board.variantsOf[board.kindOf[piece] as number] ?? [];
  const places = board.ends.flatMap((_, sheet) =>
    choices.filter((variant) => board.fits(variant, sheet)).map((variant) => ({ variant, sheet })),
  );
  const place = places[Math.floor(random() * places.length)];
  // Some turn fitted some sheet when the first layout was built, and no sheet gets too short for all it has to take.
  if (!place) return;
  const x = board.clampX(place.variant, place.sheet, random() * (board.ends[place.sheet] as number));
  board.place(piece, { ...place, x, y: board.clampY(place.variant, random() * board.height) });
}

/** Passes without a better sum of depths before the search gives up on a length. */
const patience = 60;

/** Let two large pieces of different kinds change places: where the search is stuck, little moves lead nowhere new. */
function exchange(board: NestBoard, random: Random): void {
  const largest = Array.from({ length: board.pieces }, (_, i) => i)
    .sort((a, b) => extentOf(board, b) - extentOf(board, a))
    .slice(0, Math.ceil(board.pieces / 2));
  const [a = 0] = shuffled(largest, random);
  const b = shuffled(largest, random).find((other) => board.kindOf[other] !== board.kindOf[a]);
  if (b === undefined) return;
  const [lieA, lieB] = [board.lie(a), board.lie(b)];
  board.place(a, { ...lieB, variant: lieA.variant });
  board.place(b, { ...lieA, variant: lieB.variant });
  for (const piece of [a, b]) {
    const lie = board.lie(piece);
    const { variant, sheet } = lie;
    board.place(piece, { ...lie, x: board.clampX(variant, sheet, lie.x), y: board.clampY(variant, lie.y) });
  }
}

const extentOf = (board: NestBoard, piece: number): number => {
  const { minX, maxX, minY, maxY } = board.variantAt(
    board.variantsOf[board.kindOf[piece] as number]?.[0] as number,
  );
  return (maxX - minX) * (maxY - minY);
};

/** Work the overlaps out. Says whether none is left. */
function* separate(board: NestBoard, trials: number, random: Random): Generator<undefined, boolean> {
  let least = Infinity;
  let since = 0;
  while (since < patience && board.trials < trials) {
    const { sum, colliding } = reckon(board);
    if (colliding.length === 0) return true;
    if (sum < least * 0.999) {
      least = sum;
      since = 0;
    } else since++;
    for (const piece of shuffled(colliding, random)) improve(board, piece, random);
    yield undefined;
  }
  return reckon(board).colliding.length === 0;
}

/** The sum of depths, the pieces that overlap, and new weights: overlaps that stay count more, others less. */
function reckon(board: NestBoard): { readonly sum: number; readonly colliding: readonly number[] } {
  const { pieces, weight, slack } = board;
  const depths = new Float64Array(pieces ** 2);
  let most = 0;
  let sum = 0;
  const colliding = new Set<number>();
  for (let a = 0; a < pieces; a++)
    for (let b = a + 1; b < pieces; b++) {
      const depth = board.depth(a, b);
      if (depth <= slack) continue;
      depths[a * pieces + b] = depth;
      sum += depth;
      most = Math.max(most, depth);
      colliding.add(a).add(b);
    }
  for (let a = 0; a < pieces; a++)
    for (let b = a + 1; b < pieces; b++) {
      const depth = depths[a * pieces + b] as number;
      const old = weight[a * pieces + b] as number;
      const now = depth > 0 ? old * (1.2 + 0.8 * (depth / most)) : Math.max(1, old * 0.95);
      weight[a * pieces + b] = now;
      weight[b * pieces + a] = now;
    }
  return { sum, colliding: [...colliding] };
}

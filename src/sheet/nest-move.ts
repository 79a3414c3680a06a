// A better place for one piece, sought by trial and then by sliding downhill.
import type { Lie, NestBoard } from './nest-board.ts';
import { escapeFrom } from './overlap-depth.ts';
import type { Random } from './random.ts';

interface Tried extends Lie {
  readonly cost: number;
}

/** How many places are tried anywhere, near where the piece lies, and against a corner of another piece. */
const tries = { anywhere: 18, near: 8, corner: 14 } as const;
/** How many of the best tries are slid downhill. */
const kept = 3;

const pick = <T>(items: readonly T[], random: Random): T => items[Math.floor(random() * items.length)] as T;

/** Put a piece where it overlaps less than it does now, if such a place is found. */
export function improve(board: NestBoard, piece: number, random: Random): void {
  const now = board.lie(piece);
  const cost = board.cost(piece, now.variant, now.sheet, now.x, now.y, Infinity);
  if (cost === 0) return;
  let best: Tried = slide(board, piece, { ...now, cost }, random);
  for (const tried of tryPlaces(board, piece, now, random)) {
    if (best.cost === 0) break;
    const slid = slide(board, piece, tried, random);
    if (slid.cost < best.cost) best = slid;
  }
  if (best.cost < cost) board.place(piece, best);
}

/** The few best of many places tried, best first. */
function tryPlaces(board: NestBoard, piece: number, now: Lie, random: Random): Tried[] {
  const best: Tried[] = [];
  const attempt = (variant: number, sheet: number, x: number, y: number) => {
    const at = { variant, sheet, x: board.clampX(variant, sheet, x), y: board.clampY(variant, y) };
    const enough = best[kept - 1]?.cost ?? Infinity;
    const cost = board.cost(piece, variant, sheet, at.x, at.y, enough);
    if (cost >= enough) return;
    best.push({ ...at, cost });
    best.sort((a, b) => a.cost - b.cost);
    best.length = Math.min(best.length, kept);
  };
  const choices = board.variantsOf[board.kindOf[piece] as number] as readonly number[];
  for (let i = 0; i < tries.anywhere; i++) {
    const variant = pick(choices, random);
    const sheet = Math.floor(random() * board.ends.length);
    if (!board.fits(variant, sheet)) continue;
    const { minX, maxX, minY, maxY } = board.variantAt(variant);
    const roomX = (board.ends[sheet] as number) - (maxX - minX);
    attempt(variant, sheet, random() * roomX - minX, random() * (board.height - (maxY - minY)) - minY);
  }
  for (let i = 0; i < tries.near; i++) {
    const variant = pick(choices, random);
    if (!board.fits(variant, now.sheet)) continue;
    const reach = board.size * 0.3;
    attempt(variant, now.sheet, now.x + (random() - 0.5) * reach, now.y + (random() - 0.5) * reach);
  }
  for (let i = 0; i < tries.corner; i++) {
    const other = Math.floor(random() * board.pieces);
    if (other === piece) continue;
    const at = board.lie(other);
    const variant = pick(choices, random);
    if (at.variant < 0 || !board.fits(variant, at.sheet)) continue;
    const region = board.region(at.variant, variant);
    const corner = Math.floor(random() * region.x0.length);
    attempt(variant, at.sheet, at.x + (region.x0[corner] as number), at.y + (region.y0[corner] as number));
  }
  return best;
}

/** Slide a piece to where the weighted depths are least nearby: first straight out of what it lies in, then by trial. */
function slide(board: NestBoard, piece: number, from: Tried, random: Random): Tried {
  let at = stepOut(board, piece, from);
  let stepX = board.size * 0.03;
  let stepY = stepX;
  const least = board.size * 5e-4;
  while (at.cost > 0 && (stepX > least || stepY > least)) {
    const way = random();
    const alongX = way < 0.75 && stepX > least;
    const alongY = (way > 0.25 || !alongX) && stepY > least;
    const sign = random() < 0.5 ? -1 : 1;
    const other = random() < 0.5 ? -1 : 1;
    const dx = alongX ? sign * stepX : 0;
    const dy = alongY ? other * stepY : 0;
    const better = moved(board, piece, at, dx, dy) ?? moved(board, piece, at, -dx, -dy);
    if (better) at = better;
    const by = better ? 1.15 : 0.55;
    if (alongX) stepX *= by;
    if (alongY) stepY *= by;
    if (!alongX && !alongY) break;
  }
  return at.cost > 0 ? stepOut(board, piece, at) : at;
}

function moved(board: NestBoard, piece: number, at: Tried, dx: number, dy: number): Tried | undefined {
  const x = board.clampX(at.variant, at.sheet, at.x + dx);
  const y = board.clampY(at.variant, at.y + dy);
  if (x === at.x && y === at.y) return undefined;
  const cost = board.cost(piece, at.variant, at.sheet, x, y, at.cost);
  return cost < at.cost ? { ...at, x, y, cost } : undefined;
}

/** Step out of one overlapped piece after another while that helps. */
function stepOut(board: NestBoard, piece: number, from: Tried): Tried {
  let at = from;
  for (let round = 0; round < 6 && at.cost > 0; round++) {
    let better: Tried | undefined;
    for (let other = 0; other < board.pieces; other++) {
      if (other === piece || board.sheet[other] !== at.sheet || (board.variant[other] as number) < 0)
        continue;
      const region = board.region(board.variant[other] as number, at.variant);
      const x = at.x - (board.x[other] as number);
      const y = at.y - (board.y[other] as number);
      if (x <= region.minX || x >= region.maxX || y <= region.minY || y >= region.maxY) continue;
      const out = escapeFrom(region, x, y);
      // A hair further than the border, so that rounding does not leave it inside.
      const step = 1 + 1e-9;
      const tried = moved(board, piece, better ?? at, out.x * step, out.y * step);
      if (tried) better = tried;
    }
    if (!better) return at;
    at = better;
  }
  return at;
}

// What a straight trim cuts off motifs that it crosses: bits too small to hold on the vessel.
import type { Contour } from '../geometry/contour.ts';
import { directed } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { chordTolerance } from '../geometry/tolerance.ts';
import { toWall, type WallPoint } from '../unroll/flat-wall.ts';
import type { Template } from '../unroll/template.ts';
import { cornersOf } from './edge-chords.ts';
import type { PeriodFilm } from './period-film.ts';

export interface CutOff {
  readonly at: WallPoint;
  /** mm² */
  readonly area: number;
}

/** A stretch of an edge on the finished side of a trim: where it comes in and goes out, as turns, and its corners. */
interface Chain {
  readonly from: number;
  readonly to: number;
  readonly corners: readonly Point[];
}

const longest = 1e6;

/** Smaller bits are the touch of a tip, and come off with the waste, mm². Common practice, no source. */
const leastBit = 0.05;

/** Bits smaller than `minPiece`, mm², that a trim leaves of motifs it crosses, in the middle of the period. */
export function cutOffs(period: PeriodFilm, template: Template, minPiece: number): CutOff[] {
  const { band } = template;
  const trims = [
    { trim: band.from, inward: 1 },
    { trim: band.to, inward: -1 },
  ];
  return period.layers.flatMap(({ shapes }) => {
    const edges = shapes.flatMap(directed).map((contour) => wallCorners(contour, template));
    return trims.flatMap(({ trim, inward }) => {
      const chains = edges.flatMap((edge) => chainsInside(edge, (along) => (along - trim) * inward));
      return leftOvers(chains, trim, minPiece);
    });
  });
}

interface Corner extends Point {
  readonly wall: WallPoint;
}

const wallCorners = (contour: Contour, { wall }: Template): readonly Corner[] =>
  cornersOf(contour, { tolerance: chordTolerance, longest }).map((p) => ({ ...p, wall: toWall(wall, p) }));

/** The stretches of a closed edge where `inside` is above 0, each with where it crosses 0. */
function chainsInside(edge: readonly Corner[], inside: (along: number) => number): Chain[] {
  const depths = edge.map(({ wall }) => inside(wall.along));
  const first = depths.findIndex((depth, i) => depth <= 0 && (depths[(i + 1) % depths.length] ?? 0) > 0);
  if (first < 0) return [];
  const chains: Chain[] = [];
  let open: { from: number; corners: Point[] } | undefined;
  for (let n = 0; n < edge.length; n++) {
    const [i, j] = [(first + n) % edge.length, (first + n + 1) % edge.length];
    const [p, q] = [edge[i], edge[j]];
    const [a, b] = [depths[i] ?? 0, depths[j] ?? 0];
    if (!p || !q) continue;
    if (a <= 0 === b <= 0) {
      if (b > 0) open?.corners.push(q);
      continue;
    }
    const t = a / (a - b);
    const crossing = { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
    const turn = p.wall.turn + t * (q.wall.turn - p.wall.turn);
    if (b > 0) open = { from: turn, corners: [crossing, q] };
    else if (open) {
      chains.push({ from: open.from, to: turn, corners: [...open.corners, crossing] });
      open = undefined;
    }
  }
  return chains;
}

/** Chains that bound a bit by themselves: film lies between their ends, and no other chain begins there. */
function leftOvers(chains: readonly Chain[], along: number, minPiece: number): CutOff[] {
  const ends = chains.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b);
  return chains.flatMap(({ from, to, corners }) => {
    const [left, right] = [Math.min(from, to), Math.max(from, to)];
    if (ends.some((turn) => turn > left && turn < right)) return [];
    // The film lies at an edge's left in the frame y down as y up: an area run the other way round is a notch.
    const area = doubledArea(corners) / 2;
    return area > leastBit && area < minPiece ? [{ at: { turn: (left + right) / 2, along }, area }] : [];
  });
}

function doubledArea(corners: readonly Point[]): number {
  let twice = 0;
  let p = corners.at(-1);
  for (const q of corners) {
    if (p) twice += p.x * q.y - p.y * q.x;
    p = q;
  }
  return twice;
}

// Pieces laid onto sheets or along a roll: the nest carried over to the page that a cutter gets.
import { type Affine, compose, rotation, translation } from '../geometry/affine.ts';
import type { Contour } from '../geometry/contour.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import { type NestPlace, nest } from './nest.ts';
import { nestOutline } from './nest-outline.ts';

/** A sheet of film as it is cut into, mm. */
export interface SheetStock {
  readonly across: number;
  /** Endless where it is a roll. */
  readonly up: number;
  /** Kept clear along every edge. */
  readonly margin: number;
  /** Kept clear between two pieces. */
  readonly spacing: number;
  /** Whether the film is cut from its back, so that the file shows it as in a mirror. */
  readonly mirror: boolean;
}

export interface StockPiece {
  /** Closed, mm, y down. */
  readonly outline: Contour;
  readonly count: number;
  /** Turns it may be laid at on the sheet, radians, x towards y. */
  readonly turns: readonly number[];
}

/** A piece on its sheet. */
export interface LaidPiece {
  readonly piece: number;
  /** From 0. */
  readonly sheet: number;
  /** From the piece's own drawing to the sheet's page: y down, its top left corner at the origin. */
  readonly move: Affine;
  readonly turn: number;
}

export interface LaidSheets {
  readonly laid: readonly LaidPiece[];
  readonly sheets: number;
  /** Size of each page, mm; of a roll as long as it is used. */
  readonly pages: readonly { readonly across: number; readonly up: number }[];
  /** How far the last sheet is used, the longer way, margins not counted, mm. */
  readonly lastUsed: number;
}

export interface SearchOptions {
  /** How many places may be tried: the search's clock, the same on every machine. */
  readonly trials: number;
  readonly seed: number;
}

/** Chords by which a curve's reach to the margin is told, mm: their sagitta. */
const edgeTolerance = 1e-3;

const edgePoints = ({ segments }: Contour) =>
  segments.flatMap((segment) => {
    const count = chordCount(segment, edgeTolerance);
    return Array.from({ length: count }, (_, i) => pointAt(segment, i / count));
  });

/** A quarter turn from the way nests run, to the right, to the way a sheet that is longer upwards runs. */
const quarter = Math.PI / 2;

/** From the nest's frame to the page. */
function pageMove({ across, up, margin, mirror }: SheetStock): {
  readonly turn: number;
  readonly move: Affine;
} {
  const upright = up > across;
  const inside = translation(margin, margin);
  const placed = upright
    ? compose(compose(rotation(quarter), translation(across - 2 * margin, 0)), inside)
    : inside;
  const flip: Affine = { a: -1, b: 0, c: 0, d: 1, e: across, f: 0 };
  return { turn: upright ? quarter : 0, move: mirror ? compose(placed, flip) : placed };
}

/**
 * Better and better layouts, each whole and without an overlap; undefined in between, so that a caller can show that
 * work goes on, or stop and keep the last. Nothing is given where a piece fits no sheet.
 */
export function* layOnSheets(
  pieces: readonly StockPiece[],
  stock: SheetStock,
  search: SearchOptions,
): Generator<LaidSheets | undefined, void> {
  const [long, short] = [Math.max(stock.across, stock.up), Math.min(stock.across, stock.up)];
  const room = { length: long - 2 * stock.margin, height: short - 2 * stock.margin };
  const page = pageMove(stock);
  const kinds = pieces.map(({ outline, count, turns }) => ({
    outline: nestOutline(outline, stock.spacing / 2),
    // Pieces keep their spacing from one another, not from the margin.
    edge: edgePoints(outline),
    count,
    turns: turns.map((turn) => turn - page.turn),
  }));
  for (const layout of nest(kinds, room, search)) {
    if (!layout) {
      yield undefined;
      continue;
    }
    const { places, sheets, lastUsed } = layout;
    const laid = places.map((place) => laidPiece(place, page));
    yield { laid, sheets, lastUsed, pages: pagesFor(stock, sheets, lastUsed) };
  }
}

const laidPiece = (
  { kind, sheet, turn, x, y }: NestPlace,
  page: { readonly turn: number; readonly move: Affine },
): LaidPiece => ({
  piece: kind,
  sheet,
  move: compose(compose(rotation(turn), translation(x, y)), page.move),
  turn: turn + page.turn,
});

function pagesFor({ across, up, margin }: SheetStock, sheets: number, lastUsed: number): LaidSheets['pages'] {
  const length = Number.isFinite(up) ? up : lastUsed + 2 * margin;
  return Array.from({ length: sheets }, () => ({ across, up: length }));
}

/** An outline about several that have to stay together: the convex hull of them all. */
export function hullOf(outlines: readonly Contour[]): Contour {
  const [first, ...others] = outlines;
  if (first && others.length === 0) return first;
  const points = outlines.flatMap(edgePoints).sort((a, b) => a.x - b.x || a.y - b.y);
  const ring = [...halfHull(points), ...halfHull([...points].reverse())];
  return {
    closed: true,
    segments: ring.map((from, i) => ({ kind: 'line', from, to: ring[(i + 1) % ring.length] ?? from })),
  };
}

/** Source: A. M. Andrew, Information Processing Letters 9, 1979 (monotone chain); from memory. */
function halfHull<P extends { readonly x: number; readonly y: number }>(points: readonly P[]): P[] {
  const chain: P[] = [];
  for (const p of points) {
    for (;;) {
      const [a, b] = [chain.at(-2), chain.at(-1)];
      if (!a || !b || (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) break;
      chain.pop();
    }
    chain.push(p);
  }
  return chain.slice(0, -1);
}

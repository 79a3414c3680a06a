// Whether a tile joins its own copies: what film crosses its borders, held against what the copies beside it show there.

import type { Tile } from '../../artwork/tile.ts';
import { joinTolerance } from '../../geometry/tolerance.ts';
import { boxedShapes, type Stretch } from '../film/film-along.ts';
import type { Lattice } from '../lattice/lattice.ts';
import { frameOf } from '../period/period.ts';
import type { Size } from '../tile/cut-shapes.ts';
import { flushShape } from '../tile/flush.ts';
import { type AtBorder, atBorder, coveredIn, filmAt, type Kink, type OpenStretch } from './at-border.ts';
import { bordersOf, type Held } from './border-lines.ts';
import { type Border, drawnSides, enoughMet, placedBorder, type SlantsMet } from './border-sides.ts';

export interface Joins {
  readonly joins: boolean;
  /** The farthest that outlines miss each other by, mm; of a tile that joins, what rounding left. */
  readonly mismatch: number;
  /** Places that do not join, the worst first. */
  readonly open: readonly OpenStretch[];
  /** Sides of the art that were drawn on the borders, the longest first: film ends there, and is to. */
  readonly sides: readonly OpenStretch[];
  /** Of the places that join, those where an outline bends, the sharpest first. */
  readonly kinks: readonly Kink[];
  /** Outlines that cross the borders, each border counted. */
  readonly crossings: number;
  /** Of each border whether anything at it tells that copies stand where they were drawn to: what runs straight across meets wherever it is cut. */
  readonly placed: Readonly<Record<Border, boolean>>;
}

/** The layers of a tile as they are held against its borders, straight sides along them a hair past. */
const heldLayers = (tile: Tile, frame: Size): Held['drawn'][] =>
  tile.layers.map(({ shapes }) => boxedShapes(shapes.map((shape) => flushShape(shape, frame))));

/** The first of several lattices by which no film at all ends at a tile's borders. */
export function goesOnBy(tile: Tile, lattices: readonly Lattice[]): Lattice | undefined {
  const frames = new Map<string, { readonly frame: Size; readonly layers: Held['drawn'][] }>();
  return lattices.find((lattice) => {
    const own = frameOf(tile, lattice);
    const key = `${own.width} ${own.height}`;
    const { frame, layers } = frames.get(key) ?? { frame: own, layers: heldLayers(tile, own) };
    frames.set(key, { frame, layers });
    return bordersOf(frame).every((line) =>
      layers.every((drawn) => filmAt({ drawn, frame, lattice }, line).open.length === 0),
    );
  });
}

/** How a tile joins its copies, one for each step of the lattice. */
export function joinsOf(tile: Tile, lattice: Lattice): Joins {
  const frame = frameOf(tile, lattice);
  const layers = heldLayers(tile, frame);
  const { grain = 0 } = tile;
  const found = tile.layers.map(({ name }, i) =>
    bordersOf(frame).map((line) => atBorder(name, { drawn: layers[i] ?? [], frame, lattice }, line, grain)),
  );
  const all = found.flat();
  const [met, edges] = [slantsMet(all), all.flatMap((border) => border.open)];
  const isSide = isSeenWhole(tile, lattice) ? () => true : drawnSides(tile, frame, met, edges);
  const isPlaced = placedBorder(tile, frame, met, edges);
  const ends = found
    .flatMap((borders) => borders.flatMap((border, line) => border.open.map((one) => ({ ...one, line }))))
    .map((edge) => {
      const { line, from, to, corners: _, goesPast: __, isFar: ___, ...one } = edge;
      const instead = tile.layers.find(
        ({ name }, i) => name !== one.layer && covers(found[i]?.[line]?.beyond ?? [], from, to),
      );
      return { stretch: instead ? { ...one, instead: instead.name } : one, isSide: isSide(edge) };
    });
  const stretches = (side: boolean): OpenStretch[] =>
    ends.filter((end) => end.isSide === side).map(({ stretch }) => stretch);
  const open = stretches(false).sort((a, b) => b.miss - a.miss);
  const kinks = all.flatMap((border) => border.kinks).sort((a, b) => b.angle - a.angle);
  return {
    joins: open.length === 0,
    mismatch: open[0]?.miss ?? Math.max(0, ...all.map(({ rounding }) => rounding)),
    open,
    sides: stretches(true).sort((a, b) => b.length - a.length),
    kinks,
    crossings: all.reduce((sum, border) => sum + border.crossings, 0),
    placed: {
      side: telling(all, 'side') >= enoughMet || isPlaced('side', true),
      level: telling(all, 'level') >= enoughMet || isPlaced('level', true),
    },
  };
}

/** Whether a tile is a picture whose pixels go on by these very steps: they tell more of its borders than what was traced of them. */
const isSeenWhole = ({ goesOn, width, height }: Tile, { a, b }: Lattice): boolean =>
  goesOn === true &&
  Math.hypot(a.x - width, a.y) <= joinTolerance &&
  Math.hypot(b.x, Math.abs(b.y) - height) <= joinTolerance;

/** How many outlines meet across a border that would not if it stood elsewhere. */
const telling = (borders: readonly AtBorder[], of: Border): number =>
  borders.reduce((sum, { border, telling }) => sum + (border === of ? telling : 0), 0);

const slantsMet = (borders: readonly AtBorder[]): SlantsMet => {
  const met = { side: 0, level: 0 };
  for (const { border, slants } of borders) met[border] += slants;
  return met;
};

/** Whether film covers most of a stretch. */
const covers = (film: readonly Stretch[], from: number, to: number): boolean =>
  coveredIn(film, from, to) > mostly * (to - from);

const mostly = 0.8;

// The pattern cut onto gores: each gets its share of the wall's pattern, and what crosses an edge goes on in the next.
import { movePoint } from '../../geometry/affine.ts';
import type { Shape } from '../../geometry/contour.ts';
import { lineCrossings } from '../../geometry/crossings.ts';
import type { SmoothMap } from '../../geometry/fit.ts';
import type { Point } from '../../geometry/point.ts';
import { fitTolerance } from '../../geometry/tolerance.ts';
import { type GoreFrame, type GorePlace, stepOnGore, toGore } from '../../unroll/gore-map.ts';
import type { GoreOptions, GoreWall } from '../../unroll/gores.ts';
import { type Closing, equalParts, layOut } from '../lattice/closing.ts';
import { gcd, type Lattice } from '../lattice/lattice.ts';
import { layLayer, type PatternSheet } from '../lay/layered.ts';
import type { LaidPiece } from '../lay/windows.ts';
import { type PatternTile, periodOfLayer } from '../period/period.ts';
import { layPeriod } from '../tile/cell.ts';
import type { GoreLay } from './gore-lay.ts';

export interface GorePatternOptions {
  readonly tile: PatternTile;
  readonly lattice: Lattice;
  readonly closing: Closing;
  readonly lay: GoreLay;
  readonly wall: GoreWall;
  /** Of the last gore: its band is the piece's, with the trims. */
  readonly gores: GoreOptions;
  /** How far art that leaves a gore goes on past its outline before it is closed, mm. */
  readonly runOff: number;
}

/** A layer of the pattern: its areas on each gore from turn 0 on, in the drawing of that gore's outline. */
export interface GoreLayer {
  readonly name: string;
  readonly colour: string;
  readonly gores: readonly (readonly Shape[])[];
}

export interface GorePattern {
  readonly layers: readonly GoreLayer[];
  /** Where copies of the tile do not meet: turn, mm up the sheet, and how long the open stretch is, mm. */
  readonly mismatches: readonly {
    readonly layer: string;
    readonly turn: number;
    readonly on: number;
    readonly length: number;
  }[];
  /** Largest distance measured between the art's exact image and the curves laid, mm. */
  readonly fitError: number;
}

/**
 * Gores that meet at an edge are fitted for themselves, so close that a line goes on in its own direction too: where a
 * tip of half a mm radius lay on an edge, 0.0025 mm left 0.21 degrees and 0.00025 left 0.06.
 */
const tolerance = fitTolerance / 20;

/** Past the foot and lip corner a wall may be all but closed: run-off is taken on one no narrower than this, mm. */
const leastRadius = 1;

/** Lay every layer of the tile onto all gores. */
export function gorePattern(options: GorePatternOptions): GorePattern {
  const { tile, lattice, closing, lay, gores } = options;
  const m = layOut(closing, tile.height);
  // Gores that stand alike to the pattern are laid once; the last, with its overlap, for itself.
  const alike = gores.count / gcd(gores.count, equalParts(closing));
  const isLast = (index: number) => index === gores.count - 1;
  const modelOf = (index: number) => (isLast(index) && (gores.overlap ?? 0) > 0 ? index : index % alike);
  const numbers = Array.from({ length: gores.count }, (_, index) => index);
  const sheets = new Map(numbers.map((index) => [modelOf(index), sheetOf(options, modelOf(index))]));
  const mismatches = new Map<string, GorePattern['mismatches'][number]>();
  let fitError = 0;
  const layers = tile.layers.map((layer): GoreLayer => {
    const { name, colour } = layer;
    const period = layPeriod(periodOfLayer(layer, tile, lattice), lattice, m);
    const models = new Map([...sheets].map(([index, sheet]) => [index, layLayer(period, sheet)]));
    for (const { worst, gaps } of models.values()) {
      fitError = Math.max(fitError, worst);
      for (const { at, length } of gaps) {
        const found = { layer: name, turn: turnOf(at.x, lay), on: lay.toOn(at.y), length };
        // Neighbours show the same stretch where it lies in the run-off of one.
        mismatches.set(`${name} ${found.turn.toFixed(5)} ${at.y.toFixed(2)}`, found);
      }
    }
    return { name, colour, gores: numbers.map((index) => models.get(modelOf(index))?.shapes ?? []) };
  });
  for (const { layer, at, length } of tile.gaps ?? []) {
    const { x, y } = movePoint(m, at);
    mismatches.set(`${layer} ${mismatches.size}`, { layer, turn: turnOf(x, lay), on: lay.toOn(y), length });
  }
  return { layers, mismatches: [...mismatches.values()], fitError };
}

const turnOf = (x: number, { around }: GoreLay): number => x / around - Math.floor(x / around);

/** One gore as a sheet of the pattern. */
function sheetOf({ lay, wall, gores, runOff }: GorePatternOptions, index: number): PatternSheet {
  const { count, levels, band } = gores;
  const overlap = index === count - 1 ? (gores.overlap ?? 0) : 0;
  const beside = (on: number, mm: number) => mm / (2 * Math.PI * Math.max(leastRadius, wall.at(on).radius));
  const pieceWith = (extra: number): LaidPiece => ({
    foot: lay.fromOn(band.from - extra),
    lip: lay.fromOn(band.to + extra),
    left: (y) => lay.around * (index / count - beside(lay.toOn(y), extra)),
    right: (y) => lay.around * ((index + 1) / count + beside(lay.toOn(y), overlap + extra)),
  });
  return {
    piece: pieceWith(runOff),
    cut: pieceWith(0),
    map: mapOf(lay, wall, { count, levels, from: band.from }, index, gores.corners ?? []),
    tolerance,
    period: {
      width: Infinity,
      steps: { i: 0, j: 0 },
      motion: () => ({ a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }),
    },
  };
}

function mapOf(
  lay: GoreLay,
  wall: GoreWall,
  frame: GoreFrame,
  index: number,
  corners: readonly number[],
): SmoothMap {
  const perMm = (2 * frame.count) / lay.around;
  const placeOf = ({ x, y }: Point): GorePlace => ({ share: x * perMm - 2 * index - 1, on: lay.toOn(y) });
  const map: SmoothMap = {
    point: (p) => toGore(wall, frame, placeOf(p)),
    displacement: (at, by) =>
      stepOnGore(wall, frame, placeOf(at), { share: by.x * perMm, on: by.y * lay.stretchUp(at.y) }),
  };
  if (frame.levels === 'arcs') return map;
  const heights = corners.map(lay.fromOn);
  const level = { x: 1, y: 0 };
  return {
    ...map,
    corners: (source) =>
      heights
        .flatMap((y) => lineCrossings(source, { x: 0, y }, level))
        .filter((t) => t > 0 && t < 1)
        .sort((a, b) => a - b),
  };
}

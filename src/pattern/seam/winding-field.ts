// What a seam would cost at each place of one period of a wrap: most in film, something near it, little in a gap.
import { chorded } from '../../geometry/chords.ts';
import type { Shape } from '../../geometry/contour.ts';
import { girthAt, toWall } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import type { CostField } from './winding-path.ts';

/** A layer of film: of the pattern, which comes again all around, or of a motif, which is where it is. */
export interface FieldLayer {
  readonly shapes: readonly Shape[];
  readonly isOnce: boolean;
}

export interface FieldOptions {
  /** The piece with straight ends, and the film on it. */
  readonly template: Template;
  readonly layers: readonly FieldLayer[];
  /** How many times the pattern is the same around. */
  readonly parts: number;
  /** How far from film the line is to stay where it can, mm: the least feature. */
  readonly clear: number;
  /** Columns in one period, and rows up the piece. */
  readonly columns: number;
  readonly rows: number;
}

/**
 * Costs of a mm of line: in film, along an edge of it, nearer to it than the least feature (a half or so of that where it
 * is farthest within), in a gap. A mm of film is avoided at any price that a detour has on a cup; where there is no gap
 * the way goes along edges, which hide it best.
 */
const costOf = { film: 400, edge: 100, near: 10, nearest: 30, gap: 1 } as const;

/** Chords of film stray by less than this, mm: a fifth of a cell. */
const chordTolerance = 0.03;

/** A grid over one period: columns by turn from half a period before turn 0 on, rows by height. */
class Grid {
  /** The layers that have film in each cell, one bit each; layers past the eighth share bits. */
  readonly film: Uint8Array;
  readonly options: FieldOptions;

  constructor(options: FieldOptions) {
    this.options = options;
    this.film = new Uint8Array(options.columns * options.rows);
  }

  /** Paint the inside of shapes on the sheet, by their crossings with the middle of each row. */
  paint({ shapes, isOnce }: FieldLayer, bit: number): void {
    const { template, rows } = this.options;
    const { wall, piece } = template;
    const row = (along: number) => ((along - piece.from) / (piece.to - piece.from)) * rows;
    for (const { contours } of shapes) {
      const crossings = new Map<number, number[]>();
      for (const contour of contours) {
        const { x, y } = chorded(contour, chordTolerance);
        const points = Array.from(x, (across, i) => toWall(wall, { x: across, y: y[i] ?? 0 }));
        points.forEach((p, i) => {
          const q = points[(i + 1) % points.length] ?? p;
          const [low, high] = p.along < q.along ? [p, q] : [q, p];
          const [from, to] = [row(low.along), row(high.along)];
          for (let r = Math.max(0, Math.ceil(from - 0.5)); r + 0.5 < to && r < rows; r++) {
            const turns = crossings.get(r) ?? [];
            turns.push(low.turn + ((high.turn - low.turn) * (r + 0.5 - from)) / (to - from));
            crossings.set(r, turns);
          }
        });
      }
      for (const [r, turns] of crossings) this.#fill(r, turns, isOnce, bit);
    }
  }

  /** Paint a row between its first and second crossing, its third and fourth, and so on. */
  #fill(r: number, turns: number[], isOnce: boolean, bit: number): void {
    const { parts, columns } = this.options;
    // Of the pattern the period opposite the seam is taken, of what is there once the surroundings of the seam.
    const first = Math.floor(0.5 * parts) / parts;
    const windows = isOnce
      ? [0, 1].map((turn) => ({ from: turn - 0.5 / parts, to: turn + 0.5 / parts }))
      : [{ from: first, to: first + 1 / parts }];
    const column = (turn: number) => (turn * parts + 0.5) * columns;
    turns.sort((a, b) => a - b);
    for (let i = 0; i + 1 < turns.length; i += 2)
      for (const { from, to } of windows) {
        const [low, high] = [Math.max(turns[i] ?? 0, from), Math.min(turns[i + 1] ?? 0, to)];
        for (let c = Math.ceil(column(low) - 0.5); c + 0.5 < column(high); c++) {
          const at = r * columns + (((c % columns) + columns) % columns);
          this.film[at] = (this.film[at] ?? 0) | bit;
        }
      }
  }
}

/** Costs of the rows of the finished band; past it, in the trims, only length counts. */
export function windingField(options: FieldOptions): CostField {
  const { template, layers, parts, columns, rows } = options;
  const { wall, piece, band } = template;
  const grid = new Grid(options);
  layers.forEach((layer, i) => {
    grid.paint(layer, 1 << (i % 8));
  });
  const up = (piece.to - piece.from) / rows;
  const isPeriodic = layers.every(({ isOnce }) => !isOnce);
  const costs = new Float32Array(columns * rows).fill(costOf.gap);
  const beside = besideFilm(grid, up, isPeriodic);
  for (let r = 0; r < rows; r++) {
    const along = piece.from + (r + 0.5) * up;
    if (along < band.from || along > band.to) continue;
    for (let c = 0; c < columns; c++) costs[r * columns + c] = beside(r, c);
  }
  const across = girthAt(wall, (piece.from + piece.to) / 2) / (parts * columns);
  return { columns, rows, across, up, isPeriodic, costs };
}

/** The cost of a cell by what film is in it and around it. */
function besideFilm(
  { film, options }: Grid,
  up: number,
  isPeriodic: boolean,
): (row: number, column: number) => number {
  const { template, parts, columns, rows, clear } = options;
  const { wall, piece } = template;
  const cellAt = (row: number, column: number): number => {
    if (row < 0 || row >= rows) return 0;
    if (isPeriodic) return film[row * columns + (((column % columns) + columns) % columns)] ?? 0;
    return column < 0 || column >= columns ? 0 : (film[row * columns + column] ?? 0);
  };
  const nearest = Array.from({ length: rows }, (_, r) => {
    const width = girthAt(wall, piece.from + (r + 0.5) * up) / (parts * columns);
    return { width, steps: stepsToFilm(cellAt, r, columns, Math.ceil(clear / width)) };
  });
  const reach = Math.ceil(clear / up);
  return (row, column) => {
    const own = cellAt(row, column);
    if (own !== 0) {
      const isEdge = [
        cellAt(row, column - 1),
        cellAt(row, column + 1),
        cellAt(row - 1, column),
        cellAt(row + 1, column),
      ].some((other) => other !== own);
      return isEdge ? costOf.edge : costOf.film;
    }
    let least = clear * clear;
    for (let by = -reach; by <= reach; by++) {
      const line = nearest[row + by];
      if (!line) continue;
      const steps = line.steps[column] ?? Infinity;
      least = Math.min(least, (steps * line.width) ** 2 + (by * up) ** 2);
    }
    const share = Math.sqrt(least) / clear;
    return share >= 1 ? costOf.gap : costOf.near + (costOf.nearest - costOf.near) * (1 - share);
  };
}

/** For each column of a row, how many columns away film is; Infinity where it is further than `reach`. */
function stepsToFilm(
  cellAt: (row: number, column: number) => number,
  row: number,
  columns: number,
  reach: number,
): Float32Array {
  const steps = new Float32Array(columns).fill(Infinity);
  const sweep = (order: (i: number) => number) => {
    let away = Infinity;
    for (let i = -reach; i < columns; i++) {
      const column = order(i);
      away = cellAt(row, column) === 0 ? away + 1 : 0;
      if (i >= 0 && away <= reach) steps[column] = Math.min(steps[column] ?? Infinity, away);
    }
  };
  sweep((i) => i);
  sweep((i) => columns - 1 - i);
  return steps;
}

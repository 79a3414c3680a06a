// What a seam would cost at each place of one period of a wrap: most in film, something near it, little in a gap.
import { chorded } from '../../geometry/chords.ts';
import type { Shape } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { girthAt, toWall } from '../../unroll/flat-wall.ts';
import type { Template } from '../../unroll/template.ts';
import { FilmCover } from './film-cover.ts';
import type { CostField } from './winding-path.ts';

export interface FieldOptions {
  /** The piece with straight ends, and the film on it. */
  readonly template: Template;
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
  /** Whether all of it comes again so many times around; else that is the share of the wall about turn 0 that is looked at. */
  readonly isPeriodic: boolean;
  readonly parts: number;
  /** How far from film the line is to stay where it can, mm: the least feature. */
  readonly clear: number;
  /** Columns in one period, and rows up the piece. */
  readonly columns: number;
  readonly rows: number;
}

/**
 * Costs of a mm of line: in film, along an edge between two films, nearer to film than the least feature (a half or so of
 * that where it is farthest within), in a gap. A mm of film is avoided at any price that a detour has on a cup; where there
 * is no gap the way goes along edges, which hide it best. A cell that film covers in part costs its part.
 */
const costOf = { film: 400, edge: 100, near: 10, nearest: 30, gap: 1 } as const;

/** Chords of film stray by less than this, mm: a fifth of a cell. */
const chordTolerance = 0.03;

/** A grid over one period: columns by turn from half a period before turn 0 on, rows by height. */
class Grid {
  /** The layers that have film in each cell, one bit each; layers past the eighth share bits. */
  readonly film: Uint8Array;
  /** What of it covers each cell: of what is seen at turn 0 and once around, the more. */
  readonly #covers: readonly [FilmCover, FilmCover];
  readonly options: FieldOptions;

  constructor(options: FieldOptions) {
    this.options = options;
    this.film = new Uint8Array(options.columns * options.rows);
    const cover = () => new FilmCover(options.columns, options.rows);
    this.#covers = [cover(), cover()];
  }

  /** Paint shapes on the sheet. */
  paint(shapes: readonly Shape[], bit: number): void {
    const { template, parts, columns, rows, isPeriodic } = this.options;
    const { wall, piece } = template;
    const place = (x: number, y: number): Point => {
      const { turn, along } = toWall(wall, { x, y });
      return {
        x: (turn * parts + 0.5) * columns,
        y: ((along - piece.from) / (piece.to - piece.from)) * rows,
      };
    };
    // What comes again is taken from opposite the seam, what is there once from around it.
    const windows = isPeriodic && parts > 1 ? [Math.floor(0.5 * parts)] : [0, parts];
    for (const { contours } of shapes) {
      const outlines = contours.map((contour) => {
        const { x, y } = chorded(contour, chordTolerance);
        return Array.from(x, (across, i) => place(across, y[i] ?? 0));
      });
      const crossings = this.#crossings(outlines);
      windows.forEach((period, i) => {
        this.#covers[i]?.add(outlines, period * columns);
        for (const [r, at] of crossings) this.#fill(r, at, period * columns, bit);
      });
    }
  }

  /** Where outlines cross the middle of each row, in columns. */
  #crossings(outlines: readonly (readonly Point[])[]): ReadonlyMap<number, readonly number[]> {
    const crossings = new Map<number, number[]>();
    for (const outline of outlines)
      outline.forEach((p, i) => {
        const q = outline[(i + 1) % outline.length] ?? p;
        const [low, high] = p.y < q.y ? [p, q] : [q, p];
        for (let r = Math.max(0, Math.ceil(low.y - 0.5)); r + 0.5 < high.y && r < this.options.rows; r++) {
          const at = crossings.get(r) ?? [];
          at.push(low.x + ((high.x - low.x) * (r + 0.5 - low.y)) / (high.y - low.y));
          crossings.set(r, at);
        }
      });
    for (const at of crossings.values()) at.sort((a, b) => a - b);
    return crossings;
  }

  /** Paint a row between its first and second crossing, its third and fourth, and so on, as far as it is in a period. */
  #fill(r: number, at: readonly number[], first: number, bit: number): void {
    const { columns } = this.options;
    for (let i = 0; i + 1 < at.length; i += 2) {
      const [low, high] = [Math.max((at[i] ?? 0) - first, 0), Math.min((at[i + 1] ?? 0) - first, columns)];
      for (let c = Math.ceil(low - 0.5); c + 0.5 < high; c++) {
        const cell = r * columns + c;
        this.film[cell] = (this.film[cell] ?? 0) | bit;
      }
    }
  }

  /** The share of each cell that film covers, row by row. */
  shares(): Float32Array {
    const [here, around] = this.#covers.map((cover) => cover.shares());
    return (here ?? new Float32Array()).map((share, i) => Math.max(share, around?.[i] ?? 0));
  }
}

/** Costs of the rows of the finished band; past it, in the trims, only length counts. */
export function windingField(options: FieldOptions): CostField {
  const { template, layers, parts, columns, rows, isPeriodic } = options;
  const { wall, piece, band } = template;
  const grid = new Grid(options);
  layers.forEach(({ shapes }, i) => {
    grid.paint(shapes, 1 << (i % 8));
  });
  const up = (piece.to - piece.from) / rows;
  const costs = new Float32Array(columns * rows).fill(costOf.gap);
  const beside = besideFilm(grid, up);
  const shares = grid.shares();
  for (let r = 0; r < rows; r++) {
    const along = piece.from + (r + 0.5) * up;
    if (along < band.from || along > band.to) continue;
    for (let c = 0; c < columns; c++) {
      const { film, gap } = beside(r, c);
      const share = shares[r * columns + c] ?? 0;
      costs[r * columns + c] = share * film + (1 - share) * gap;
    }
  }
  const across = girthAt(wall, (piece.from + piece.to) / 2) / (parts * columns);
  return { columns, rows, across, up, isPeriodic, costs };
}

/** What a mm costs in the film of a cell and in its gaps, by what film is in it and around it. */
function besideFilm(
  { film, options }: Grid,
  up: number,
): (row: number, column: number) => { readonly film: number; readonly gap: number } {
  const { template, parts, columns, rows, clear, isPeriodic } = options;
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
      ].some((other) => other !== 0 && other !== own);
      return { film: isEdge ? costOf.edge : costOf.film, gap: costOf.nearest };
    }
    let least = clear * clear;
    for (let by = -reach; by <= reach; by++) {
      const line = nearest[row + by];
      if (!line) continue;
      const steps = line.steps[column] ?? Infinity;
      least = Math.min(least, (steps * line.width) ** 2 + (by * up) ** 2);
    }
    const share = Math.sqrt(least) / clear;
    const gap = share >= 1 ? costOf.gap : costOf.near + (costOf.nearest - costOf.near) * (1 - share);
    return { film: costOf.film, gap };
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

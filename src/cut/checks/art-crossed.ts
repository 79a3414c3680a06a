// How much art a joint would cut through, wherever it is laid.
import type { Contour, Shape } from '../../geometry/contour.ts';
import type { Point } from '../../geometry/point.ts';
import { chordCount, pointAt } from '../../geometry/segment.ts';
import { girthAt, toWall } from '../../unroll/flat-wall.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';

/** Chords stray by less than this: film crossed is told to about a tenth of a mm. */
const chordTolerance = 0.05;

export interface CrossedOptions {
  readonly template: Template;
  /** The art, each layer its shapes, on the template's sheet. */
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
  /** Lines up the wall, told by their turns, or level ones, told by their heights, mm on; `up` where it is left out. */
  readonly way?: 'up' | 'level';
  /** Where the lines looked at lie: evenly `step` apart from `first` on. */
  readonly first: number;
  readonly step: number;
  readonly count: number;
  /** How far to the right of each line, or above it, the edge lies, mm: 0 is the line itself. */
  readonly offset: number;
}

/** A family of lines on a template. */
interface Lines {
  /** Where a point is: on which line, in steps from the first, and how far on along it. */
  readonly place: (p: Point) => { readonly at: number; readonly on: number };
  /** How much of a line lies in the finished piece before this place on it, mm. */
  readonly before: (on: number, line: number) => number;
}

function linesUp({ template: { wall, band }, first, step, offset }: CrossedOptions): Lines {
  return {
    place: (p) => {
      const { turn, along } = toWall(wall, p);
      // In steps of the line whose edge passes through the point.
      return { at: (turn - turnOfEdge(wall, { turn: 0, offset }, along) - first) / step, on: along };
    },
    before: (along) => Math.max(band.from, Math.min(band.to, along)),
  };
}

function levelLines({ template: { wall, seam }, first, step, offset }: CrossedOptions): Lines {
  return {
    place: (p) => {
      const { turn, along } = toWall(wall, p);
      return { at: (along - offset - first) / step, on: turn };
    },
    before: (turn, line) => {
      const along = first + line * step + offset;
      const [start, finish] = [seam.start, seam.finish].map((side) => turnOfEdge(wall, side, along));
      return girthAt(wall, along) * Math.max(start ?? 0, Math.min(finish ?? 1, turn));
    },
  };
}

/**
 * For each line, how much of it lies on art inside the finished piece, mm, all layers summed. A line up the wall is a
 * side edge at `offset` from its turn; a level one goes from one finished side to the other.
 */
export function artCrossed(options: CrossedOptions): Float64Array {
  const sums = new Float64Array(options.count);
  const lines = options.way === 'level' ? levelLines(options) : linesUp(options);
  for (const { shapes } of options.layers) {
    const crossings: number[][] = Array.from({ length: options.count }, () => []);
    for (const { contours } of shapes) for (const contour of contours) cross(contour, lines, crossings);
    for (const [i, places] of crossings.entries()) sums[i] = (sums[i] ?? 0) + insideLength(places, i, lines);
  }
  return sums;
}

/** The parts of a line that lie between its first and second crossing, its third and fourth, and so on. */
function insideLength(places: number[], line: number, { before }: Lines): number {
  return places
    .sort((a, b) => a - b)
    .reduce((sum, on, i) => sum + (i % 2 === 0 ? -before(on, line) : before(on, line)), 0);
}

/** Where a contour crosses each line: as often one way as the other, for each corner has one place for both its edges. */
function cross({ segments }: Contour, { place }: Lines, crossings: number[][]): void {
  const [first] = segments;
  if (!first) return;
  const begin = place(first.from);
  let from = begin;
  for (const [i, segment] of segments.entries()) {
    const count = chordCount(segment, chordTolerance);
    for (let k = 1; k <= count; k++) {
      const isLast = i === segments.length - 1 && k === count;
      const to = isLast ? begin : place(k === count ? segment.to : pointAt(segment, k / count));
      const [low, high] = from.at < to.at ? [from, to] : [to, from];
      for (let i = Math.max(0, Math.ceil(low.at)); i < high.at && i < crossings.length; i++)
        crossings[i]?.push(low.on + ((high.on - low.on) * (i - low.at)) / (high.at - low.at));
      from = to;
    }
  }
}

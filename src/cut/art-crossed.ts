// How much art a joint would cut through, wherever it is laid.
import type { Contour, Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';
import { toWall } from '../unroll/flat-wall.ts';
import { type Template, turnOfEdge } from '../unroll/template.ts';

/** Chords stray by less than this: film crossed is told to about a tenth of a mm. */
const chordTolerance = 0.05;

export interface CrossedOptions {
  readonly template: Template;
  /** The art, each layer its shapes, on the template's sheet. */
  readonly layers: readonly { readonly shapes: readonly Shape[] }[];
  /** Turns of the lines looked at: evenly `step` apart from `first` on. */
  readonly first: number;
  readonly step: number;
  readonly count: number;
  /** How far to the right of each line the edge lies, mm: 0 is the line itself. */
  readonly offset: number;
}

/**
 * For each line, how much of it lies on art inside the finished band, mm, all layers summed. A line is a side edge at
 * `offset` from the line up the wall at its turn.
 */
export function artCrossed(options: CrossedOptions): Float64Array {
  const sums = new Float64Array(options.count);
  for (const { shapes } of options.layers) {
    const crossings: number[][] = Array.from({ length: options.count }, () => []);
    for (const { contours } of shapes) for (const contour of contours) cross(contour, options, crossings);
    for (const [i, alongs] of crossings.entries())
      sums[i] = (sums[i] ?? 0) + insideLength(alongs, options.template);
  }
  return sums;
}

/** The parts of a line that lie between its first and second crossing, its third and fourth, and so on. */
function insideLength(alongs: number[], { band }: Template): number {
  const within = (along: number) => Math.max(band.from, Math.min(band.to, along));
  return alongs
    .sort((a, b) => a - b)
    .reduce((sum, along, i) => sum + (i % 2 === 0 ? -within(along) : within(along)), 0);
}

/** Where a contour crosses each line, mm along. */
function cross(contour: Contour, options: CrossedOptions, crossings: number[][]): void {
  const { template, first, step, offset } = options;
  const { wall } = template;
  const place = (p: Point) => {
    const { turn, along } = toWall(wall, p);
    // In steps of the line whose edge passes through the point.
    return { at: (turn - turnOfEdge(wall, { turn: 0, offset }, along) - first) / step, along };
  };
  for (const segment of contour.segments) {
    const count = chordCount(segment, chordTolerance);
    let from = place(segment.from);
    for (let k = 1; k <= count; k++) {
      const to = place(k === count ? segment.to : pointAt(segment, k / count));
      const [low, high] = from.at < to.at ? [from, to] : [to, from];
      for (let i = Math.max(0, Math.ceil(low.at)); i < high.at && i < crossings.length; i++)
        crossings[i]?.push(low.along + ((high.along - low.along) * (i - low.at)) / (high.at - low.at));
      from = to;
    }
  }
}

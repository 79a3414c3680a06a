// The chords that stand in for curves while areas are combined, and the way back from a chord to its curve.
import Flatbush from 'flatbush';
import type { Contour } from './contour.ts';
import type { GridPoint, GridRing } from './polygon-clip.ts';
import { chordCount, pointAt } from './segment.ts';

/** A contour that takes part, and which of its segments are mere edges of a window rather than drawn lines. */
export interface SourceContour {
  readonly contour: Contour;
  readonly isEdge?: (segment: number) => boolean;
}

/** One chord: which segment of which contour it stands in for, and the span of its parameter. */
export interface Chord {
  readonly source: number;
  readonly segment: number;
  readonly t0: number;
  readonly t1: number;
  readonly from: GridPoint;
  readonly to: GridPoint;
  readonly edge: boolean;
}

export interface ChordSet {
  readonly rings: readonly GridRing[];
  readonly chords: readonly Chord[];
}

/** How far, in grid units, the combining may have moved a corner by rounding. */
const slack = 3;

/** Chords of the sources on a grid of `units` per mm. Chords too short for the grid are left out. */
export function chordsOf(
  sources: readonly SourceContour[],
  units: number,
  tolerance: number,
  firstSource = 0,
): ChordSet {
  const rings: GridRing[] = [];
  const chords: Chord[] = [];
  sources.forEach(({ contour, isEdge }, index) => {
    const ring: GridPoint[] = [];
    const begin = chords.length;
    const { segments } = contour;
    const first = segments[0];
    if (!first) return;
    let from = toGrid(first.from, units);
    segments.forEach((s, segment) => {
      const count = chordCount(s, tolerance);
      let t0 = 0;
      for (let i = 1; i <= count; i++) {
        const t1 = i / count;
        const to = toGrid(i === count ? s.to : pointAt(s, t1), units);
        if (to.x === from.x && to.y === from.y) continue;
        ring.push(from);
        chords.push({
          source: firstSource + index,
          segment,
          t0,
          t1,
          from,
          to,
          edge: isEdge?.(segment) ?? false,
        });
        from = to;
        t0 = t1;
      }
    });
    if (ring.length > 2) rings.push(ring);
    else chords.length = begin;
  });
  return { rings, chords };
}

const toGrid = (p: { x: number; y: number }, units: number): GridPoint => ({
  x: Math.round(p.x * units) + 0,
  y: Math.round(p.y * units) + 0,
});

/** Where along a chord a point lies, as a fraction of it, and how far beside it, in grid units. */
function placeOn(chord: Chord, p: GridPoint): { readonly fraction: number; readonly beside: number } {
  const dx = chord.to.x - chord.from.x;
  const dy = chord.to.y - chord.from.y;
  const px = p.x - chord.from.x;
  const py = p.y - chord.from.y;
  const length = Math.hypot(dx, dy);
  return { fraction: (px * dx + py * dy) / (length * length), beside: Math.abs(px * dy - py * dx) / length };
}

const reaches = (chord: Chord, p: GridPoint): boolean => {
  const { fraction, beside } = placeOn(chord, p);
  const margin = slack / Math.hypot(chord.to.x - chord.from.x, chord.to.y - chord.from.y);
  return beside <= slack && fraction >= -margin && fraction <= 1 + margin;
};

/** Finds the chord an edge of the result came from. */
export class ChordFinder {
  readonly #chords: readonly Chord[];
  readonly #index: Flatbush | undefined;

  constructor(chords: readonly Chord[]) {
    this.#chords = chords;
    if (chords.length === 0) return;
    this.#index = new Flatbush(chords.length);
    for (const { from, to } of chords)
      this.#index.add(
        Math.min(from.x, to.x),
        Math.min(from.y, to.y),
        Math.max(from.x, to.x),
        Math.max(from.y, to.y),
      );
    this.#index.finish();
  }

  /**
   * The chord that carries the edge from p to q. Where several do, as along a shared border, drawn lines win over
   * window edges, and then the curve that was being followed.
   */
  find(p: GridPoint, q: GridPoint, following: Chord | undefined): Chord | undefined {
    const x = (p.x + q.x) / 2;
    const y = (p.y + q.y) / 2;
    let best: Chord | undefined;
    let bestScore = Infinity;
    this.#index?.search(x - slack, y - slack, x + slack, y + slack, (i) => {
      const chord = this.#chords[i];
      if (!chord || !reaches(chord, p) || !reaches(chord, q)) return false;
      const follows =
        following !== undefined && chord.source === following.source && chord.segment === following.segment;
      const beside = placeOn(chord, p).beside + placeOn(chord, q).beside;
      const score = (chord.edge ? 100 : 0) + (follows ? 0 : 10) + beside;
      if (score < bestScore) {
        best = chord;
        bestScore = score;
      }
      return false;
    });
    return best;
  }
}

/** The curve's parameter at a point of its chord. */
export function parameterAt(chord: Chord, p: GridPoint): number {
  const fraction = Math.min(1, Math.max(0, placeOn(chord, p).fraction));
  const span = Math.hypot(chord.to.x - chord.from.x, chord.to.y - chord.from.y);
  if (fraction * span <= slack) return chord.t0;
  if ((1 - fraction) * span <= slack) return chord.t1;
  return chord.t0 + fraction * (chord.t1 - chord.t0);
}

// Stretches of an edge along which what is measured stays narrow between two sides that run nearly side by side.
import { precision } from '../../geometry/tolerance.ts';
import type { EdgeChords } from './edge-chords.ts';
import type { EdgeDiscs } from './edge-discs.ts';

/**
 * How a run ends. `open`: it widens. `point`: at a corner where its two sides meet. `blunt`: at a flat or rounded end.
 */
export type RunEnd = 'open' | 'point' | 'blunt';

export interface NarrowRun {
  /** Its discs, as indices into the columns, in the order of the edge. */
  readonly discs: readonly number[];
  /** Where each disc touches, mm along the contour, rising; past the contour's length where the run goes over its start. */
  readonly at: readonly number[];
  readonly start: RunEnd;
  readonly finish: RunEnd;
  /** How far it reaches on the edge, mm, from halfway to the disc before its first to halfway to that after its last. */
  readonly from: number;
  readonly to: number;
  /** Whether it runs around a whole contour, and so has no ends. */
  readonly ring: boolean;
  readonly contour: number;
}

/** Sides that turn from each other by less than this run side by side: 30 degrees, as the cosine of the turn. */
const sideBySide = Math.cos(Math.PI / 6);

/** A disc this much larger than the last of a run lies where it widens. */
const widens = 1.15;

class RunReader {
  readonly #chords: EdgeChords;
  readonly #discs: EdgeDiscs;
  readonly #limit: number;

  constructor(chords: EdgeChords, discs: EdgeDiscs, limit: number) {
    this.#chords = chords;
    this.#discs = discs;
    this.#limit = limit;
  }

  isNarrow(i: number): boolean {
    const { radius, facing } = this.#discs;
    return 2 * (radius[i] ?? 0) < this.#limit - precision && (facing[i] ?? -1) >= sideBySide;
  }

  /** Discs of one contour, i to j - 1. */
  runsOf(i: number, j: number): NarrowRun[] {
    const count = j - i;
    const contour = this.#chords.contour[this.#discs.chord[i] ?? 0] ?? 0;
    const breaks: number[] = [];
    for (let n = 0; n < count; n++)
      if (!this.isNarrow(i + n) || !this.#follows(i + n, i + ((n + 1) % count))) breaks.push(n);
    const first = breaks[0];
    if (first === undefined)
      return [this.#run(i, j, i, count, contour, true)].flatMap((run) => this.#parted(run));
    const runs: NarrowRun[] = [];
    let start = -1;
    for (let n = first + 1; n <= first + count; n++) {
      const d = i + (n % count);
      const isBreak = !this.isNarrow(d) || !this.#follows(d, i + ((n + 1) % count));
      if (start < 0 && this.isNarrow(d)) start = n;
      if (isBreak && start >= 0) {
        const length = (this.isNarrow(d) ? n + 1 : n) - start;
        runs.push(this.#run(i, j, i + (start % count), length, contour, false));
        start = -1;
      }
    }
    return runs.flatMap((run) => this.#parted(run));
  }

  /** Whether nothing lies between a disc and the next: no chord without discs. */
  #follows(d: number, after: number): boolean {
    const [a, b] = [this.#discs.chord[d] ?? 0, this.#discs.chord[after] ?? 0];
    return a === b || this.#chords.next[a] === b;
  }

  #run(i: number, j: number, start: number, length: number, contour: number, ring: boolean): NarrowRun {
    const around = this.#chords.around[contour] ?? 0;
    const count = j - i;
    const discs = Array.from({ length }, (_, n) => i + ((start - i + n) % count));
    const at: number[] = [];
    for (const d of discs) {
      const own = this.#discs.at[d] ?? 0;
      const last = at.at(-1) ?? own;
      at.push(own < last - 1e-9 ? own + around : own);
    }
    const [head, tail] = [discs[0] ?? start, discs.at(-1) ?? start];
    const before = i + ((head - i + count - 1) % count);
    const after = i + ((tail - i + 1) % count);
    return {
      discs,
      at,
      ring,
      contour,
      start: this.#endAt(before, head),
      finish: this.#endAt(after, tail),
      from: (at[0] ?? 0) - this.#beyond(head, 'back', before),
      to: (at.at(-1) ?? 0) + this.#beyond(tail, 'on', after),
    };
  }

  /** How far a run goes on past its outermost disc, mm: halfway to the disc past it, or to the end of its own chord. */
  #beyond(d: number, way: 'on' | 'back', past: number): number {
    const { at, chord } = this.#discs;
    const k = chord[d] ?? 0;
    const onChord = (at[d] ?? 0) - (this.#chords.at[k] ?? 0);
    const toEnd = way === 'back' ? onChord : (this.#chords.length[k] ?? 0) - onChord;
    return chord[past] === k ? Math.min(toEnd, Math.abs((at[past] ?? 0) - (at[d] ?? 0)) / 2) : toEnd;
  }

  /** What a run comes to, seen from its outermost disc and the disc past it. */
  #endAt(past: number, outermost: number): RunEnd {
    const { radius } = this.#discs;
    const [there, here] = [radius[past] ?? 0, radius[outermost] ?? 0];
    if (!this.#follows(past, outermost) && !this.#follows(outermost, past)) return 'open';
    if (there >= (this.#limit / 2) * 0.999 || there > widens * here) return 'open';
    return 2 * there < this.#limit - precision || there <= here ? 'blunt' : 'open';
  }

  /** A run parted where it goes around a point. */
  #parted(run: NarrowRun): NarrowRun[] {
    const points: number[] = [];
    const last = run.discs.length - 1;
    for (let n = 0; n < (run.ring ? last + 1 : last); n++)
      if (this.#pointBetween(run.discs[n] ?? 0, run.discs[n === last ? 0 : n + 1] ?? 0) >= 0) points.push(n);
    if (points.length === 0) return [run];
    return run.ring ? this.#partedRing(run, points) : this.#partedAt(run, points);
  }

  /** The chord that starts at a point between two discs, where the edge turns back on itself; -1 where there is none. */
  #pointBetween(a: number, b: number): number {
    const { chord } = this.#discs;
    const [from, to] = [chord[a] ?? 0, chord[b] ?? 0];
    if (from === to || (this.#chords.turn[to] ?? 0) <= 0) return -1;
    const { ux, uy } = this.#chords;
    const back = (ux[from] ?? 0) * (ux[to] ?? 0) + (uy[from] ?? 0) * (uy[to] ?? 0);
    return back < 0 ? to : -1;
  }

  #partedAt(run: NarrowRun, points: readonly number[]): NarrowRun[] {
    const cuts = [-1, ...points, run.discs.length - 1];
    return cuts.slice(1).map((end, i) => {
      const begin = (cuts[i] ?? -1) + 1;
      const isFirst = i === 0;
      const isLast = i === points.length;
      return {
        ...run,
        discs: run.discs.slice(begin, end + 1),
        at: run.at.slice(begin, end + 1),
        start: isFirst ? run.start : 'point',
        finish: isLast ? run.finish : 'point',
        from: isFirst ? run.from : this.#atPoint(run, begin - 1),
        to: isLast ? run.to : this.#atPoint(run, end),
        ring: false,
      };
    });
  }

  /** How far along its contour the point lies that comes after a run's disc. */
  #atPoint(run: NarrowRun, n: number): number {
    const chord = this.#discs.chord[run.discs[n] ?? 0] ?? 0;
    const own = this.#discs.at[run.discs[n] ?? 0] ?? 0;
    return (run.at[n] ?? 0) + (this.#chords.at[chord] ?? 0) + (this.#chords.length[chord] ?? 0) - own;
  }

  /** A ring opened at its first point, then parted at the others. */
  #partedRing(run: NarrowRun, points: readonly number[]): NarrowRun[] {
    const around = this.#chords.around[run.contour] ?? 0;
    const first = (points[0] ?? 0) + 1;
    const turned = {
      ...run,
      discs: [...run.discs.slice(first), ...run.discs.slice(0, first)],
      at: [...run.at.slice(first), ...run.at.slice(0, first).map((at) => at + around)],
      ring: false,
      start: 'point' as const,
      finish: 'point' as const,
      from: this.#atPoint(run, first - 1),
      to: this.#atPoint(run, first - 1) + around,
    };
    const rest = points.slice(1).map((n) => n - first);
    return rest.length === 0 ? [turned] : this.#partedAt(turned, rest);
  }
}

/** Every narrow run, contour by contour. `limit`, mm: what is narrower, by more than the precision, is narrow. */
export function narrowRuns(chords: EdgeChords, discs: EdgeDiscs, limit: number): NarrowRun[] {
  const reader = new RunReader(chords, discs, limit);
  const runs: NarrowRun[] = [];
  const contourOf = (d: number) => chords.contour[discs.chord[d] ?? 0];
  for (let i = 0; i < discs.chord.length; ) {
    let j = i + 1;
    while (j < discs.chord.length && contourOf(j) === contourOf(i)) j += 1;
    for (const run of reader.runsOf(i, j)) runs.push(run);
    i = j;
  }
  return runs;
}

// Runs of narrow film (or gap) that face each other: told apart as necks, arms, whole pieces and points, each with its width.
import { distance, type Point } from '../../geometry/point.ts';
import type { EdgeChords } from './edge-chords.ts';
import type { EdgeDiscs } from './edge-discs.ts';
import type { NarrowRun } from './narrow-runs.ts';
import { type Taper, type TaperOptions, taperOf } from './taper.ts';

/** A narrow place: its width is that of the largest disc that fits there. */
export interface NarrowPlace {
  /** `neck`: between wider parts; `arm`: one that ends; `whole`: a piece nowhere as wide as the limit; `point`: a tip. */
  readonly kind: 'neck' | 'arm' | 'whole' | 'point';
  /** Middle of the disc; of a point, its tip. */
  readonly at: Point;
  /** mm: where it is narrowest; of a whole piece without a neck, where it is widest; of a point, at its end. */
  readonly width: number;
  /** How far it stays narrow, mm. */
  readonly length: number;
  /** Of a point: the angle between its sides, radians. */
  readonly angle?: number;
  /** Middles and radii of discs along it, one side's after the other's, where they are kept. */
  readonly discs: readonly NarrowDisc[];
}

export interface NarrowDisc extends Point {
  readonly radius: number;
}

/** An arm that ends in the open counts as narrow once it is so many times as long as the limit. Common practice, no source. */
const armLength = 1;

/** Discs whose radii differ by no more than this are equally narrow, mm. */
const equalRadii = 0.001;

/** A neck within a piece that is thin all over is one where it is this much thinner than on either side of it. */
const neckDepth = 0.9;

/** Part of a run, by its first and last disc. */
interface Span {
  readonly run: NarrowRun;
  readonly first: number;
  readonly last: number;
}

/** What is left of a run once its tapering ends are taken off. */
interface Stretch extends Span {
  readonly length: number;
  readonly isNeck: boolean;
}

export interface ClusterOptions extends TaperOptions {
  /** Whether places keep their discs, which only mending needs: of a fine pattern they are millions. */
  readonly keepsDiscs?: boolean;
}

export class NarrowCluster {
  readonly #chords: EdgeChords;
  readonly #discs: EdgeDiscs;
  readonly #runs: readonly NarrowRun[];
  readonly #limit: number;
  readonly #tapering: TaperOptions;
  readonly #keepsDiscs: boolean;

  constructor(chords: EdgeChords, discs: EdgeDiscs, runs: readonly NarrowRun[], options: ClusterOptions) {
    this.#chords = chords;
    this.#discs = discs;
    this.#runs = runs;
    this.#limit = options.limit;
    this.#tapering = options;
    this.#keepsDiscs = options.keepsDiscs ?? false;
  }

  /** What is narrow in a piece that is wide elsewhere. */
  places(): NarrowPlace[] {
    return [...this.#narrow(), ...this.#points()];
  }

  #radius(d: number): number {
    return this.#discs.radius[d] ?? 0;
  }

  #disc(d: number): NarrowDisc {
    return { x: this.#discs.x[d] ?? 0, y: this.#discs.y[d] ?? 0, radius: this.#radius(d) };
  }

  #place(
    d: number,
    stretches: readonly Span[],
    rest: Pick<NarrowPlace, 'kind' | 'width' | 'length' | 'angle'>,
    at: Point = this.#disc(d),
  ): NarrowPlace {
    const discs = (this.#keepsDiscs ? stretches : []).flatMap(({ run, first, last }) =>
      run.discs.slice(first, last + 1).map((one) => this.#disc(one)),
    );
    return { at: { x: at.x, y: at.y }, discs, ...rest };
  }

  /** Of discs all but as small as the smallest, the one in their midst. */
  #amid(all: readonly number[], smallest: number): number {
    const least = all.filter((d) => this.#radius(d) <= this.#radius(smallest) + equalRadii);
    const mean = (of: (disc: NarrowDisc) => number) =>
      least.reduce((sum, d) => sum + of(this.#disc(d)), 0) / least.length;
    const middle = { x: mean(({ x }) => x), y: mean(({ y }) => y) };
    const far = (d: number) => distance(this.#disc(d), middle);
    return least.reduce((a, b) => (far(b) < far(a) ? b : a), smallest);
  }

  #smaller(a: number, b: number): number {
    return this.#radius(b) < this.#radius(a) ? b : a;
  }

  /** A piece that is thin all over: its neck where it has one, else its widest place. */
  whole(): NarrowPlace {
    const all = this.#runs.flatMap(({ discs }) => discs);
    const [start = 0] = all;
    const widest = all.reduce((a, b) => (this.#radius(b) > this.#radius(a) ? b : a), start);
    const [neck, ...others] = this.#runs.flatMap((run) => this.#neckOf(run));
    const d = neck === undefined ? widest : others.reduce((a, b) => this.#smaller(a, b), neck);
    const places =
      neck === undefined ? all.filter((one) => this.#radius(one) >= this.#radius(d) - equalRadii) : [d];
    return this.#place(
      d,
      this.#runs.map((run) => ({ run, first: 0, last: run.discs.length - 1 })),
      {
        kind: neck === undefined ? 'whole' : 'neck',
        width: 2 * this.#radius(d),
        length: this.#runs.reduce((sum, { from, to }) => sum + to - from, 0) / 2,
      },
      this.#disc(this.#amid(places, d)),
    );
  }

  /** The narrowest disc of a run that is clearly narrower than some on either side of it. */
  #neckOf(run: NarrowRun): number[] {
    const discs = run.ring ? this.#fromWidest(run.discs) : run.discs;
    let widest = 0;
    const before = discs.map((d) => {
      widest = Math.max(widest, this.#radius(d));
      return widest;
    });
    widest = 0;
    let best: number | undefined;
    for (let n = discs.length - 1; n >= 0; n--) {
      const d = discs[n] ?? 0;
      widest = Math.max(widest, this.#radius(d));
      if (this.#radius(d) < neckDepth * Math.min(before[n] ?? 0, widest))
        best = best === undefined ? d : this.#smaller(best, d);
    }
    return best === undefined ? [] : [best];
  }

  /** The discs of a ring from the widest around to it again. */
  #fromWidest(discs: readonly number[]): readonly number[] {
    const n = discs.reduce((a, d, i) => (this.#radius(d) > this.#radius(discs[a] ?? 0) ? i : a), 0);
    return [...discs.slice(n), ...discs.slice(0, n + 1)];
  }

  /** Necks and arms: what is left of the runs without their tapering ends, where it is long enough. */
  #narrow(): NarrowPlace[] {
    const stretches = this.#runs
      .flatMap((run) => this.#stretchOf(run) ?? [])
      .filter(({ isNeck, length }) => isNeck || length >= armLength * this.#limit);
    const all = stretches.flatMap(({ run, first, last }) => run.discs.slice(first, last + 1));
    const [start] = all;
    if (start === undefined) return [];
    const d = all.reduce((a, b) => this.#smaller(a, b), start);
    const length = stretches.reduce((sum, stretch) => sum + stretch.length, 0) / 2;
    const kind = stretches.some(({ isNeck }) => isNeck) ? 'neck' : 'arm';
    return [
      this.#place(d, stretches, { kind, width: 2 * this.#radius(d), length }, this.#disc(this.#amid(all, d))),
    ];
  }

  #stretchOf(run: NarrowRun): Stretch | undefined {
    const { head, tail } = this.#tapers(run);
    const last = run.discs.length - 1 - (tail?.count ?? 0);
    const first = head?.count ?? 0;
    if (first > last) return undefined;
    const from = first === 0 ? run.from : (run.at[first - 1] ?? run.from);
    const to = last === run.discs.length - 1 ? run.to : (run.at[last + 1] ?? run.to);
    const isNeck = run.ring || (run.start === 'open' && run.finish === 'open');
    return { run, first, last, length: to - from, isNeck };
  }

  #tapers(run: NarrowRun): { readonly head: Taper | undefined; readonly tail: Taper | undefined } {
    const { start, finish, from, to, at } = run;
    const radii = run.discs.map((d) => this.#radius(d));
    const back = { end: -to, at: at.map((mm) => -mm).reverse(), radii: [...radii].reverse() };
    return {
      head: start === 'open' ? undefined : taperOf({ kind: start, end: from, at, radii }, this.#tapering),
      tail: finish === 'open' ? undefined : taperOf({ kind: finish, ...back }, this.#tapering),
    };
  }

  /** Tips: the tapering ends of runs, the two sides of each together. */
  #points(): NarrowPlace[] {
    const tips = new Map<string, Tip[]>();
    for (const run of this.#runs)
      for (const tip of this.#tipsOf(run)) {
        const key = tip.endRadius === 0 ? `${tip.at.x.toFixed(2)} ${tip.at.y.toFixed(2)}` : 'rounded';
        const sides = tips.get(key);
        if (sides) sides.push(tip);
        else tips.set(key, [tip]);
      }
    return [...tips.values()].map((sides) => {
      const { at, length, endRadius } = sides.reduce((a, b) => (b.length > a.length ? b : a));
      const angle = sides.reduce((sum, side) => sum + side.angle, 0) / sides.length;
      return this.#place(0, sides, { kind: 'point', width: 2 * endRadius, length, angle }, at);
    });
  }

  #tipsOf(run: NarrowRun): Tip[] {
    const { head, tail } = this.#tapers(run);
    const last = run.discs.length - 1;
    return [
      ...(head ? [{ ...head, run, first: 0, last: head.count - 1, at: this.#endOf(run, 0) }] : []),
      ...(tail ? [{ ...tail, run, first: last - tail.count + 1, last, at: this.#endOf(run, last) }] : []),
    ];
  }

  /** Where a run comes to its end: the corner itself, or the middle of the last disc. */
  #endOf(run: NarrowRun, n: number): Point {
    const d = run.discs[n] ?? 0;
    if ((n === 0 ? run.start : run.finish) !== 'point') return this.#disc(d);
    const chord = this.#discs.chord[d] ?? 0;
    const corner = n === 0 ? chord : (this.#chords.next[chord] ?? 0);
    return { x: this.#chords.x[corner] ?? 0, y: this.#chords.y[corner] ?? 0 };
  }
}

interface Tip extends Taper, Span {
  readonly at: Point;
}

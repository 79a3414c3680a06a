// From stitched boundaries to curves on the sheet. Each cell's curves are laid once; copies are turned into place.
import { type Affine, moveSegment, translation } from '../geometry/affine.ts';
import { type Run, untraced } from '../geometry/combine.ts';
import type { Contour, Segment } from '../geometry/contour.ts';
import { mapSegment, type SmoothMap } from '../geometry/fit.ts';
import { type Joint, jointOf, ringSegments, runSegments } from '../geometry/rebuild.ts';
import { movePoint } from '../geometry/affine.ts';
import type { Cell, Chain, Copy, Ring } from './cell.ts';
import type { Link, PlacedCell } from './stitch.ts';

export interface SheetCurvesOptions {
  readonly places: readonly PlacedCell[];
  readonly map: SmoothMap;
  readonly tolerance: number;
  /** The sheet's motion for a whole number of periods around. */
  readonly motion: (periods: number) => Affine;
  /** One period's width in the laid pattern, mm. */
  readonly width: number;
  /** The lattice steps that make one period around. */
  readonly period: { readonly i: number; readonly j: number };
}

/** A run as seen from the cell where a bridge begins, `shift` periods away. */
interface BridgeRun {
  readonly run: Run;
  readonly segment: Segment;
  readonly copy: Copy | undefined;
}

interface LaidChain {
  readonly id: number;
  readonly joints: readonly Joint[];
  readonly middle: readonly Segment[];
}

const samePlace = (a: Copy | undefined, b: Copy | undefined): boolean =>
  a !== undefined && b !== undefined && a.family === b.family && a.i === b.i && a.j === b.j;

/** A segment that a border cut in two: the second half goes on where the first stopped. */
const goesOn = (a: BridgeRun, b: BridgeRun): boolean =>
  samePlace(a.copy, b.copy) &&
  a.run.segment === b.run.segment &&
  Math.sign(a.run.t1 - a.run.t0) === Math.sign(b.run.t1 - b.run.t0) &&
  Math.abs(a.run.t1 - b.run.t0) < 0.02;

function mended(runs: readonly BridgeRun[]): BridgeRun[] {
  const whole: BridgeRun[] = [];
  for (const next of runs) {
    const last = whole.at(-1);
    if (last && goesOn(last, next))
      whole[whole.length - 1] = { ...last, run: { ...last.run, t1: next.run.t1, to: next.run.to } };
    else whole.push(next);
  }
  return whole;
}

export class SheetCurves {
  /** Largest distance measured between the art's exact image on the sheet and the curves laid, mm. */
  worst = 0;
  readonly #options: SheetCurvesOptions;
  readonly #rings = new Map<Ring, readonly Segment[]>();
  readonly #chains = new Map<Chain, LaidChain>();
  readonly #bridges = new Map<string, readonly Segment[]>();

  constructor(options: SheetCurvesOptions) {
    this.#options = options;
  }

  #lay(segments: readonly Segment[]): Segment[] {
    const { map, tolerance } = this.#options;
    return segments.flatMap((segment) => {
      const { segments: laid, error } = mapSegment(map, segment, tolerance);
      this.worst = Math.max(this.worst, error);
      return laid;
    });
  }

  #placed(segments: readonly Segment[], shift: number): readonly Segment[] {
    if (shift === 0) return segments;
    const motion = this.#options.motion(shift);
    return segments.map((segment) => moveSegment(motion, segment));
  }

  /** The contour of a ring that stays inside its cell. */
  ring(place: number, ring: Ring): Contour {
    const { cell, shift } = this.#place(place);
    let laid = this.#rings.get(ring);
    if (!laid) {
      laid = this.#lay(ringSegments(ring.runs, cell.segmentOf).map(({ segment }) => segment));
      this.#rings.set(ring, laid);
    }
    return { closed: true, segments: this.#placed(laid, shift) };
  }

  #place(place: number): PlacedCell {
    const placed = this.#options.places[place];
    if (!placed) throw new Error(`no cell at place ${place}`);
    return placed;
  }

  #chain(cell: Cell, chain: Chain): LaidChain {
    const known = this.#chains.get(chain);
    if (known) return known;
    const { runs } = chain;
    const joints = runs.slice(1).map((run, i) => jointOf(runs[i] ?? run, run, cell.segmentOf));
    const middle = runSegments(runs.slice(1, -1), joints, cell.segmentOf).map(({ segment }) => segment);
    const laid = { id: this.#chains.size, joints, middle: this.#lay(middle) };
    this.#chains.set(chain, laid);
    return laid;
  }

  /** The contour of a boundary that runs through several cells. */
  loop(links: readonly Link[]): Contour {
    const long = links.findIndex(({ chain }) => chain.runs.length > 1);
    if (long < 0) throw new Error('a boundary that only spans cells can not close');
    const around = [...links.slice(long), ...links.slice(0, long)];
    const [first] = around;
    const segments: Segment[] = [];
    let bridge: Link[] = [];
    for (const link of first ? [...around, first] : []) {
      bridge.push(link);
      if (bridge.length === 1 || link.chain.runs.length === 1) continue;
      segments.push(...this.#bridge(bridge));
      if (link !== first || bridge.length > 1) {
        const { cell, shift } = this.#place(link.place);
        segments.push(...this.#placed(this.#chain(cell, link.chain).middle, shift));
      }
      bridge = [link];
    }
    return { closed: true, segments };
  }

  /** The curves from the last run of one chain, through chains of a single run, to the first run of the next. */
  #bridge(links: readonly Link[]): readonly Segment[] {
    const [first] = links;
    const last = links.at(-1);
    if (!first || !last) return [];
    const home = this.#place(first.place);
    const start = this.#chain(home.cell, first.chain);
    const away = this.#place(last.place);
    const end = this.#chain(away.cell, last.chain);
    const key = links.map((link) => this.#chain(this.#place(link.place).cell, link.chain).id).join('>');
    let laid = this.#bridges.get(key);
    if (!laid) {
      const runs = mended(links.map((link, i) => this.#bridgeRun(link, i, links.length, home.shift)));
      laid = this.#lay(this.#bridgeSegments(runs, start.joints.at(-1), end.joints[0], away.shift - home.shift));
      this.#bridges.set(key, laid);
    }
    return this.#placed(laid, home.shift);
  }

  #bridgeRun(link: Link, index: number, count: number, homeShift: number): BridgeRun {
    const { width, period } = this.#options;
    const { cell, shift } = this.#place(link.place);
    const run = index === 0 ? link.chain.runs.at(-1) : link.chain.runs[0];
    if (!run) throw new Error(`bridge ${index} of ${count} has no run`);
    const away = shift - homeShift;
    const move = translation(away * width, 0);
    const copy = run.source === untraced ? undefined : cell.copyOf(run);
    return {
      run: { ...run, from: movePoint(move, run.from), to: movePoint(move, run.to) },
      segment: moveSegment(move, cell.segmentOf(run)),
      copy: copy && { family: copy.family, i: copy.i + away * period.i, j: copy.j + away * period.j },
    };
  }

  #bridgeSegments(
    bridge: readonly BridgeRun[],
    start: Joint | undefined,
    end: Joint | undefined,
    away: number,
  ): Segment[] {
    if (!start || !end) return [];
    const segments = new Map(bridge.map(({ run, segment }) => [run, segment]));
    const runs = bridge.map(({ run }) => run);
    const segmentOf = (run: Run): Segment => segments.get(run) ?? { kind: 'line', from: run.from, to: run.to };
    const inner = runs.slice(1).map((run, i) => jointOf(runs[i] ?? run, run, segmentOf));
    const moved = { ...end, point: movePoint(translation(away * this.#options.width, 0), end.point) };
    return runSegments(runs, [start, ...inner, moved], segmentOf).map(({ segment }) => segment);
  }
}

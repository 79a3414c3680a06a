// From stitched boundaries to curves on the sheet. Each cell's curves are laid once; copies are turned into place.
import { type Affine, movePoint, moveSegment, translation } from '../../geometry/affine.ts';
import { type Box, boxAround, hullBox } from '../../geometry/box.ts';
import { untraced } from '../../geometry/combine.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import { fittedPart, mapSegment, type SmoothMap } from '../../geometry/fit.ts';
import { jointOf, ringSegments, runSegments, type SegmentOf } from '../../geometry/rebuild.ts';
import type { Joint, RebuiltRun } from '../../geometry/rebuilt-run.ts';
import { partOf, pointAt, withEnds } from '../../geometry/segment.ts';
import type { Run } from '../../geometry/traced.ts';
import type { Cell, Chain, Copy, Ring } from '../tile/cell.ts';
import { withoutEndSpikes } from './end-spikes.ts';
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

/** The runs before and after those laid, and which runs are end edges of a window, which cut their neighbours short. */
interface Neighbours {
  readonly before: Run | undefined;
  readonly after: Run | undefined;
  readonly isEnd: (run: Run | undefined) => boolean;
}

/** A curve on the sheet, and whether it is an end edge, in the waste. */
interface LaidSegment {
  readonly segment: Segment;
  readonly isEnd: boolean;
}

/** Curves on the sheet, and the box of what they were in the laid pattern. */
interface Laid {
  readonly segments: readonly LaidSegment[];
  readonly box: Box;
}

interface LaidChain {
  readonly id: number;
  readonly joints: readonly Joint[];
  readonly middle: Laid;
}

/** A boundary on the sheet, with its box in the laid pattern. */
export interface SheetContour {
  readonly contour: Contour;
  readonly box: Box;
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

/**
 * Curves in order as a contour. A curve cut short ends on its own fit, off its exact image by up to the fit's error:
 * the end edge, which lies in the waste, gives way to it.
 */
function closedContour(laid: readonly LaidSegment[]): Contour {
  const segments = laid.map(({ segment, isEnd }, i) => {
    if (!isEnd) return segment;
    const before = laid.at(i - 1);
    const after = laid[(i + 1) % laid.length];
    const from = before && !before.isEnd ? before.segment.to : segment.from;
    return withEnds(segment, from, after?.segment.from ?? segment.to);
  });
  const cuts = new Set(segments.filter((_, i) => laid[i]?.isEnd));
  return {
    closed: true,
    segments: cuts.size === 0 ? segments : withoutEndSpikes(segments, (segment) => cuts.has(segment)),
  };
}

export class SheetCurves {
  /** Largest distance measured between the art's exact image on the sheet and the curves laid, mm. */
  worst = 0;
  readonly #options: SheetCurvesOptions;
  /** Of each cell whether it has more than one place: only then what is laid of it is laid once more. */
  readonly #isRepeated = new Map<Cell, boolean>();
  readonly #rings = new Map<Ring, Laid>();
  readonly #chains = new Map<Chain, LaidChain>();
  readonly #bridges = new Map<string, Laid>();

  constructor(options: SheetCurvesOptions) {
    this.#options = options;
    for (const { cell } of options.places) this.#isRepeated.set(cell, this.#isRepeated.has(cell));
  }

  #lay(rebuilt: readonly RebuiltRun[], around: Neighbours, segmentOf: SegmentOf): Laid {
    const segments = rebuilt.flatMap((item, i) => {
      const isEnd = around.isEnd(item.run);
      const before = rebuilt[i - 1]?.run ?? around.before;
      const after = rebuilt[i + 1]?.run ?? around.after;
      const cut = { before: !isEnd && around.isEnd(before), after: !isEnd && around.isEnd(after) };
      return this.#layRun(item, cut, segmentOf).map((segment) => ({ segment, isEnd }));
    });
    return { segments, box: hullBox([{ closed: false, segments: rebuilt.map(({ segment }) => segment) }]) };
  }

  /** A run that the end of the piece cuts short is taken from the fit of the uncut curve: both ends of a wrap agree. */
  #layRun(
    { run, segment, start, end }: RebuiltRun,
    cut: { readonly before: boolean; readonly after: boolean },
    segmentOf: SegmentOf,
  ): readonly Segment[] {
    const { map, tolerance } = this.#options;
    const forward = run.t1 > run.t0;
    const t0 = cut.before ? (forward ? 0 : 1) : start.after;
    const t1 = cut.after ? (forward ? 1 : 0) : end.before;
    const isCut = cut.before || cut.after;
    const uncut = isCut ? partOf(segmentOf(run), t0, t1) : segment;
    const whole = withEnds(uncut, cut.before ? uncut.from : start.point, cut.after ? uncut.to : end.point);
    const fitted = mapSegment(map, whole, tolerance);
    this.worst = Math.max(this.worst, fitted.error);
    if (!isCut) return fitted.segments;
    const image = (t: number) => map.point(pointAt(whole, t));
    return fittedPart(fitted, image, (start.after - t0) / (t1 - t0), (end.before - t0) / (t1 - t0));
  }

  #placed({ segments, box }: Laid, shift: number): Laid {
    if (shift === 0) return { segments, box };
    const motion = this.#options.motion(shift);
    const away = shift * this.#options.width;
    return {
      segments: segments.map(({ segment, isEnd }) => ({ segment: moveSegment(motion, segment), isEnd })),
      box: { ...box, minX: box.minX + away, maxX: box.maxX + away },
    };
  }

  /** The contour of a ring that stays inside its cell. */
  ring(place: number, ring: Ring): SheetContour {
    const { cell, shift } = this.#place(place);
    const laid = this.#isRepeated.get(cell) ? this.#knownRing(cell, ring) : this.#layRing(cell, ring);
    const { segments, box } = this.#placed(laid, shift);
    return { contour: closedContour(segments), box };
  }

  #knownRing(cell: Cell, ring: Ring): Laid {
    const known = this.#rings.get(ring);
    if (known) return known;
    const laid = this.#layRing(cell, ring);
    this.#rings.set(ring, laid);
    return laid;
  }

  #layRing(cell: Cell, { boundary: { runs } }: Ring): Laid {
    const around = { before: runs.at(-1), after: runs[0], isEnd: cell.isEnd };
    return this.#lay(ringSegments(runs, cell.segmentOf), around, cell.segmentOf);
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
    const middle = runSegments(runs.slice(1, -1), joints, cell.segmentOf);
    const around = { before: runs[0], after: runs.at(-1), isEnd: cell.isEnd };
    const laid = { id: this.#chains.size, joints, middle: this.#lay(middle, around, cell.segmentOf) };
    this.#chains.set(chain, laid);
    return laid;
  }

  /** The contour of a boundary that runs through several cells. */
  loop(links: readonly Link[]): SheetContour {
    const long = links.findIndex(({ chain }) => chain.runs.length > 1);
    if (long < 0) throw new Error('a boundary that only spans cells can not close');
    const around = [...links.slice(long), ...links.slice(0, long)];
    const parts: Laid[] = [];
    let bridge: Link[] = [];
    for (const link of [...around, ...around.slice(0, 1)]) {
      bridge.push(link);
      if (bridge.length === 1 || link.chain.runs.length === 1) continue;
      const { cell, shift } = this.#place(link.place);
      parts.push(this.#bridge(bridge), this.#placed(this.#chain(cell, link.chain).middle, shift));
      bridge = [link];
    }
    return {
      contour: closedContour(parts.flatMap(({ segments }) => segments)),
      box: boxAround(parts.map(({ box }) => box)),
    };
  }

  /** The curves from the last run of one chain, through chains of a single run, to the first run of the next. */
  #bridge(links: readonly Link[]): Laid {
    const [first] = links;
    const last = links.at(-1);
    if (!first || !last) return { segments: [], box: boxAround([]) };
    const home = this.#place(first.place);
    const start = this.#chain(home.cell, first.chain);
    const away = this.#place(last.place);
    const end = this.#chain(away.cell, last.chain);
    const key = links.map((link) => this.#chain(this.#place(link.place).cell, link.chain).id).join('>');
    let laid = this.#bridges.get(key);
    if (!laid) {
      const runs = mended(links.map((link, i) => this.#bridgeRun(link, i, home.shift)));
      const before = first.chain.runs.at(-2);
      const after = last.chain.runs[1];
      const ends = new Set<Run | undefined>([
        ...runs
          .filter(({ copy, run }) => copy === undefined && run.source !== untraced)
          .map(({ run }) => run),
        ...(home.cell.isEnd(before) ? [before] : []),
        ...(away.cell.isEnd(after) ? [after] : []),
      ]);
      const around = { before, after, isEnd: (run: Run | undefined) => ends.has(run) };
      laid = this.#layBridge(runs, start.joints.at(-1), end.joints[0], away.shift - home.shift, around);
      this.#bridges.set(key, laid);
    }
    return this.#placed(laid, home.shift);
  }

  #bridgeRun(link: Link, index: number, homeShift: number): BridgeRun {
    const { width, period } = this.#options;
    const { cell, shift } = this.#place(link.place);
    const run = index === 0 ? link.chain.runs.at(-1) : link.chain.runs[0];
    if (!run) throw new Error('a chain has no run');
    const away = shift - homeShift;
    const move = translation(away * width, 0);
    const copy = run.source === untraced ? undefined : cell.copyOf(run);
    return {
      run: { ...run, from: movePoint(move, run.from), to: movePoint(move, run.to) },
      segment: moveSegment(move, cell.segmentOf(run)),
      copy: copy && { family: copy.family, i: copy.i + away * period.i, j: copy.j + away * period.j },
    };
  }

  #layBridge(
    bridge: readonly BridgeRun[],
    start: Joint | undefined,
    end: Joint | undefined,
    away: number,
    around: Neighbours,
  ): Laid {
    if (!start || !end) return { segments: [], box: boxAround([]) };
    const segments = new Map(bridge.map(({ run, segment }) => [run, segment]));
    const runs = bridge.map(({ run }) => run);
    const segmentOf = (run: Run): Segment =>
      segments.get(run) ?? { kind: 'line', from: run.from, to: run.to };
    const inner = runs.slice(1).map((run, i) => jointOf(runs[i] ?? run, run, segmentOf));
    const moved = { ...end, point: movePoint(translation(away * this.#options.width, 0), end.point) };
    return this.#lay(runSegments(runs, [start, ...inner, moved], segmentOf), around, segmentOf);
  }
}

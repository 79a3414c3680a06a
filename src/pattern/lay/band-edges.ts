// What becomes of film that the finished edges of the band would cut: kept, left out motif by motif, or, where it would
// be too small to hold, taken out.
import { type Box, movedBox } from '../../geometry/box.ts';
import type { Shape } from '../../geometry/contour.ts';
import { least } from '../../geometry/extremes.ts';
import type { Point } from '../../geometry/point.ts';
import { precision } from '../../geometry/tolerance.ts';
import { type Template, turnOfEdge } from '../../unroll/template.ts';
import { type Closing, equalParts } from '../lattice/closing.ts';
import type { LaidPeriod } from '../tile/cell.ts';
import { type BandEnd, type FilmLimits, type Sliver, sliversAt, withoutSlivers } from './edge-slivers.ts';
import type { Lay } from './lay.ts';
import {
  drawnMotif,
  onlyContours,
  type PlacedMotif,
  placesOf,
  repeatedAround,
  stretchedOnto,
} from './lay-motifs.ts';
import { shapesOfMotif } from './motif-shapes.ts';
import { motifsOf } from './motifs.ts';
import { laidPiece } from './windows.ts';

export interface EdgeOptions {
  /** Whether motifs that the finished edges would cut are left out. */
  readonly isFaded: boolean;
  /** The ends of the piece where the finished band ends: not those where the next piece goes on. */
  readonly ends: readonly BandEnd[];
  /** Where the whole band ends, of which this is a piece: a motif that its edge cuts may reach into the next piece. Left out, the piece is all of it. */
  readonly whole?: BandHeights;
  /** Pieces no further apart than this are one motif, mm; left out, the pattern tells. */
  readonly together?: number;
  /** Film smaller than this does not hold. */
  readonly film: FilmLimits;
}

/** Heights of the laid pattern at which a band ends, mm; an end that is none of its own is left out. */
export type BandHeights = Readonly<Partial<Record<BandEnd, number>>>;

/** Pieces of film that one edge leaves out, all around, and where one of them is. */
export interface LeftOut {
  readonly end: BandEnd;
  readonly count: number;
  readonly turn: number;
  readonly along: number;
}

export interface EdgesLaid {
  /** With the area of the smallest of them, mm². */
  readonly slivers: readonly (LeftOut & { readonly smallest: number })[];
  /** Of faded edges: motifs left out, and whether there is film that hangs together all around, which can't be. */
  readonly faded?: {
    readonly motifs: readonly LeftOut[];
    readonly hasNet: boolean;
    /** How far apart pieces of one motif may stand, mm; 0 where they touch. */
    readonly together: number;
  };
}

export interface EdgeGround {
  readonly lay: Lay;
  readonly template: Template;
  readonly runOff: number;
  readonly closing: Closing;
}

/** One period around in the laid pattern, mm. */
export const periodWidth = ({ lay, closing }: EdgeGround): number => lay.around / equalParts(closing);

const sliverGround = (ground: EdgeGround, film: FilmLimits) => ({
  lay: ground.lay,
  band: ground.template.band,
  width: periodWidth(ground),
  film,
});

/** The slivers of a layer at the ends of its piece. */
export const sliversOf = (period: LaidPeriod, ground: EdgeGround, edges: EdgeOptions): readonly Sliver[] =>
  edges.ends.flatMap((end) => sliversAt(end, period, sliverGround(ground, edges.film)));

/** Shapes of a layer without its slivers, all around the piece. */
export function takenOut(
  shapes: readonly Shape[],
  slivers: readonly Sliver[],
  ground: EdgeGround,
  { film }: EdgeOptions,
): readonly Shape[] {
  const { wall, piece, left, right } = ground.template;
  const ends = [piece.from, piece.to];
  const turns = {
    from: Math.min(...ends.map((along) => turnOfEdge(wall, left, along))),
    to: Math.max(...ends.map((along) => turnOfEdge(wall, right, along))),
  };
  return withoutSlivers(shapes, slivers, sliverGround(ground, film), turns);
}

/** Something left out at an end, and how far it reached in the laid pattern. */
export interface LeftAt {
  readonly end: BandEnd;
  readonly box: Box;
}

/** A layer's motifs on the sheet, with what can't be taken apart into motifs. */
export interface FadedMotifs {
  /** What hangs together with its own copies: as it was, to be laid as a whole. */
  readonly nets: readonly LaidPeriod[];
  readonly layers: readonly (readonly Shape[])[];
  readonly gaps: readonly { readonly layer: number; readonly at: Point; readonly length: number }[];
  readonly worst: number;
  readonly left: readonly LeftAt[];
  readonly hasNet: boolean;
  readonly together: number;
}

/** Where a piece's own band ends, of some of its ends. */
export const heightsOf = (
  { lay, template: { band } }: Pick<EdgeGround, 'lay' | 'template'>,
  ends: readonly BandEnd[],
): BandHeights => ({
  ...(ends.includes('foot') ? { foot: lay.fromAlong(band.from) } : {}),
  ...(ends.includes('lip') ? { lip: lay.fromAlong(band.to) } : {}),
});

/** The end of the band that what reaches so far in the laid pattern would be cut at; `isPast` where all of it is beyond. */
export function cutAt({ minY: low, maxY: high }: Box, { foot = -Infinity, lip = Infinity }: BandHeights) {
  if (low < foot - precision) return { end: 'foot' as const, isPast: high <= foot + precision };
  if (high > lip + precision) return { end: 'lip' as const, isPast: low >= lip - precision };
  return undefined;
}

/** The motifs of all layers that the band's ends leave whole, laid one by one. */
export function fadedMotifs(
  periods: readonly LaidPeriod[],
  ground: EdgeGround,
  edges: EdgeOptions,
): FadedMotifs {
  const { lay, template, runOff, closing } = ground;
  const { motifs, nets, together } = motifsOf(periods, edges.together);
  const lattice = periods[0]?.lattice;
  const width = periodWidth(ground);
  const piece = laidPiece(template, lay, runOff);
  const band = edges.whole ?? heightsOf(ground, edges.ends);
  const drawn = motifs.flatMap((motif) => drawnMotif(shapesOfMotif(motif, periods)) ?? []);
  const placed: PlacedMotif[] = [];
  const left: LeftAt[] = [];
  let worst = 0;
  for (const motif of drawn)
    for (const at of lattice ? placesOf(motif, lattice, width, piece) : []) {
      const box = movedBox(motif.box, at);
      const cut = cutAt(box, band);
      if (cut) {
        if (!cut.isPast && edges.ends.includes(cut.end)) left.push({ end: cut.end, box });
        continue;
      }
      const carried = stretchedOnto(lay, motif.layers, at);
      worst = Math.max(worst, carried.worst);
      placed.push({ layers: carried.layers, box });
    }
  const layers = repeatedAround(placed, periods.length, {
    lay,
    template,
    runOff,
    parts: equalParts(closing),
  });
  return {
    nets: periods.map((period, i) => onlyContours(period, (family) => nets[i]?.has(family) === true)),
    layers,
    gaps: drawn.flatMap(({ gaps }) => gaps),
    worst,
    left,
    hasNet: nets.some((families) => families.size > 0),
    together,
  };
}

/** How much is left out at each end, all around. */
function counted(left: readonly LeftAt[], { lay, template, closing }: EdgeGround): readonly LeftOut[] {
  return (['foot', 'lip'] as const).flatMap((end) => {
    const here = left.filter((item) => item.end === end);
    const [first] = here;
    if (!first) return [];
    const { minX, minY, maxX, maxY } = first.box;
    const turn = (minX + maxX) / 2 / lay.around;
    const along = Math.max(template.band.from, Math.min(template.band.to, lay.toAlong((minY + maxY) / 2)));
    return [{ end, count: here.length * equalParts(closing), turn: turn - Math.floor(turn), along }];
  });
}

/** What the edges left out, told. `faded`: motifs left out whole, where edges fade. */
export function edgesLaid(
  slivers: readonly (LeftAt & { readonly area: number })[],
  faded:
    | { readonly left: readonly LeftAt[]; readonly hasNet: boolean; readonly together: number }
    | undefined,
  ground: EdgeGround,
): EdgesLaid {
  const smallest = (of: BandEnd) => least(slivers.filter(({ end }) => end === of).map(({ area }) => area));
  return {
    slivers: counted(slivers, ground).map((left) => ({ ...left, smallest: smallest(left.end) })),
    ...(faded
      ? { faded: { motifs: counted(faded.left, ground), hasNet: faded.hasNet, together: faded.together } }
      : {}),
  };
}

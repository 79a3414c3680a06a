// Is every repeat like the next one, all the way around, and the overlap like what it lies on?

import { type Affine, movePoint, moveSegment } from '../../geometry/affine.ts';
import type { Contour, Segment } from '../../geometry/contour.ts';
import type { NearestFinder } from '../../geometry/nearest.ts';
import { distance, type Point } from '../../geometry/point.ts';
import { pointAt } from '../../geometry/segment.ts';
import { precision } from '../../geometry/tolerance.ts';
import type { Cleared } from '../asked.ts';
import { atMost, type Check } from '../check.ts';
import { type WindingSides, windingSidesOf } from '../seams/winding-sides.ts';
import { type ProvedPiece, pieceBand } from '../written/piece.ts';
import {
  girthOf,
  onward,
  type RolledCone,
  type RolledPoint,
  rightOfTurn,
  rollUp,
} from '../written/rolled-cone.ts';
import type { ProvedRow, RowLayer } from '../written/row.ts';
import { samplesOf } from '../written/samples.ts';
import { SegmentStarts } from '../written/segment-starts.ts';

/** How far away a line's like is looked for, mm; none within it counts as this far. */
const reach = 25;

/** Art this near the border of the piece may be what is left of a shape that ends in the waste, mm. */
const border = 0.05;

/** And of a side that winds, measured around, mm: it leans, so that less than this is beside it. */
const besideWinding = 0.25;

/** Curves that differ by no more are copies; those that differ by more are measured place by place, mm. */
const alike = precision / 10;

type IsInside = (p: Point) => boolean;

/** A part of a row's sheet between two sides, each so far across, mm, from the line up the wall at a turn. */
interface Region {
  readonly start: { readonly turn: number; readonly across: number };
  readonly finish: { readonly turn: number; readonly across: number };
  /** Of a piece that winds: its own sides instead. */
  readonly sides?: WindingSides;
}

const startOf = ({ turns, beside, before }: ProvedPiece): Region['start'] => ({
  turn: turns.from,
  across: beside.start - before,
});
const finishOf = ({ turns, beside, overlap }: ProvedPiece): Region['finish'] => ({
  turn: turns.to,
  across: overlap - beside.finish,
});

/** What a panel covers, in the frame of its row. */
const panelRegion = (panel: ProvedPiece): Region => ({
  start: startOf(panel),
  finish: finishOf(panel),
  ...sidesOf(panel),
});

const sidesOf = (panel: ProvedPiece): Pick<Region, 'sides'> => {
  const sides = panel.winds ? windingSidesOf(panel) : undefined;
  return sides ? { sides } : {};
};

/** What all panels of a row cover together. */
function rowRegion({ panels }: ProvedRow): Region {
  const [first, last] = [panels[0], panels.at(-1)];
  if (!first || !last) throw new Error('a row has at least one panel');
  return { start: startOf(first), finish: finishOf(last), ...sidesOf(first) };
}

/** Beside the edge of what is taken away a curve was cut, mm: there it is not as it is elsewhere. */
const besideCleared = 0.5;

/** Whether a place is where the pattern is taken away around a motif. */
const isCleared = (cleared: readonly Cleared[], cone: RolledCone, { turn, along }: RolledPoint): boolean =>
  cleared.some(({ from, to, turns, by }) => {
    const off = by + besideCleared;
    const around = off / girthOf(cone, along);
    const turned = turn - Math.floor(turn - (turns.from - around));
    return along >= from - off && along <= to + off && turned <= turns.to + around;
  });

/** Whether a point of the sheet is on a part of it, a little inside its borders, and not where a motif is. */
function insideOf(
  { cone, ...row }: ProvedRow,
  { start, finish, sides }: Region,
  cleared: readonly Cleared[] = [],
): IsInside {
  const { from, to } = pieceBand(row);
  return (p) => {
    const { turn, along } = rollUp(cone, p);
    if (isCleared(cleared, cone, { turn, along })) return false;
    if (along < from + border || along > to - border) return false;
    if (sides) {
      const first = sides.turnAt(along);
      const beside = besideWinding / girthOf(cone, along);
      return turn > first + beside && turn < first + 1 + sides.lap - beside;
    }
    // A sector wider than half a turn reaches back past its own first line: each line counts on its own side only. Beside a handle
    // the sides stand far from the lines.
    const turnOf = ({ turn: line, across }: Region['start']): number => line + across / girthOf(cone, along);
    const [first, last] = [turnOf(start), turnOf(finish)];
    const quarter = (last - first) / 4;
    if (turn < first + quarter) return rightOfTurn(cone, start.turn, p) > start.across + border;
    if (turn > last - quarter) return rightOfTurn(cone, finish.turn, p) < finish.across - border;
    return true;
  };
}

/** The motion of the sheet by so many turns. */
interface Onward {
  readonly turns: number;
  readonly motion: Affine;
}

interface Ground {
  readonly cone: RolledCone;
  readonly starts: SegmentStarts;
  readonly finder: NearestFinder;
  readonly isInside: IsInside;
  /** To the next repeat, and to the one before. */
  readonly motions: readonly Onward[];
  /** The turns that the row is between, but for so many mm beside them; undefined where its sides wind. */
  readonly reaches: { readonly from: number; readonly to: number; readonly beside: number } | undefined;
}

/**
 * Where a motion takes a point, if that is on the piece. What it takes off one side of a sheet of nearly a whole ring
 * may land on the other side: no repeat is meant to be there.
 */
function carried({ cone, isInside }: Ground, { turns, motion }: Onward, p: Point): Point | undefined {
  const there = movePoint(motion, p);
  const gone = rollUp(cone, there).turn - rollUp(cone, p).turn;
  return Math.abs(gone - turns) < 0.5 && isInside(there) ? there : undefined;
}

/**
 * How far a segment is from its like a repeat on; where there is none on the piece, a repeat before. Copies are mostly
 * the same curves point for point, which one look tells; what is not is held place by place against what is there. No more is told than
 * `known`, mm, where it is no farther.
 */
function missOf(segment: Segment, known: number, ground: Ground, isOnPanel: IsInside): number {
  if (!ground.motions.some((step) => mayBeCarried(ground, step, segment))) return known;
  for (const step of ground.motions) {
    const like = ground.starts.nearest(moveSegment(step.motion, segment), precision);
    if (like <= alike) return Math.max(known, like);
    if ([0, 0.5, 1].some((t) => carried(ground, step, pointAt(segment, t)))) break;
  }
  return sampledMiss(segment, known, ground, isOnPanel);
}

/**
 * Whether a motion may take any of a segment to where the row is. Where the art goes around once, it takes nearly all of it
 * past the other side: no more than its turn need be known of that.
 */
function mayBeCarried({ cone, reaches }: Ground, { turns }: Onward, segment: Segment): boolean {
  if (!reaches) return true;
  const { turn, along } = rollUp(cone, segment.from);
  const on = girthOf(cone, along);
  const room = (2 * (reaches.beside + hullLength(segment))) / on;
  if (!(on > 0)) return true;
  return turn + turns > reaches.from - room && turn + turns < reaches.to + room;
}

/** A segment is no longer than this, mm. */
const hullLength = (s: Segment): number =>
  s.kind === 'line'
    ? distance(s.from, s.to)
    : distance(s.from, s.c1) + distance(s.c1, s.c2) + distance(s.c2, s.to);

function sampledMiss(segment: Segment, known: number, ground: Ground, isOnPanel: IsInside): number {
  const { finder, motions } = ground;
  return samplesOf(segment)
    .filter(isOnPanel)
    .reduce((most, p) => {
      const there = motions.map((motion) => carried(ground, motion, p)).find((at) => at !== undefined);
      // Of many lines over one another the nearest is not asked for where any is as near as what is known already.
      if (!there || finder.comesBy(there, most, () => true)) return most;
      return Math.max(most, (finder.find(there, 1) ?? finder.find(there, reach))?.distance ?? reach);
    }, known);
}

/** Segments tried of a layer for each count of parts, at the most, and the share of them that must have their like. */
const tried = 400;
const mostAlike = 0.7;

/**
 * In how many equal parts the art goes around, as most of it shows: a divisor of the repeats around. For files of
 * which it isn't known; what is spoiled in places does not hide it, and is found by `repeatMiss` then.
 */
export function partsFound(layers: readonly RowLayer[], around: number): number {
  const grounds = layers.map(({ row, arts, contours }) => {
    const count = arts.reduce((sum, art) => sum + segmentsOf(art.contours).length, 0);
    const some = arts.flatMap((art) => {
      const isOnPanel = insideOf(row, panelRegion(art.panel));
      return segmentsOf(art.contours)
        .filter((_, i) => i % Math.ceil(count / tried) === 0)
        .filter(({ from, to }) => isOnPanel(from) && isOnPanel(to));
    });
    const isInside = insideOf(row, rowRegion(row));
    return { cone: row.cone, some, isInside, starts: new SegmentStarts(segmentsOf(contours)) };
  });
  for (let parts = around; parts > 1; parts--) {
    if (around % parts !== 0) continue;
    const likes = grounds.flatMap(({ cone, some, isInside, starts }) => {
      const next = onward(cone, 1 / parts);
      return some
        .map((segment) => moveSegment(next, segment))
        .filter(({ from, to }) => isInside(from) && isInside(to))
        .map((segment) => starts.nearest(segment, precision) <= precision);
    });
    if (likes.filter(Boolean).length > mostAlike * likes.length) return parts;
  }
  return 1;
}

const segmentsOf = (contours: readonly Contour[]): readonly Segment[] =>
  contours.flatMap(({ segments }) => segments);

/**
 * What a repeat misses the next one by at the most, mm, over one layer of a row; the overlap counts as one. Each panel's
 * art is looked at where the panel is, and held against all there is: the next repeat may be on another panel.
 */
export function repeatMiss(
  { row, arts, contours, finder }: RowLayer,
  equalParts: number,
  cleared: readonly Cleared[] = [],
): number {
  const region = rowRegion(row);
  const { start, finish, sides } = region;
  const beside = Math.max(Math.abs(start.across), Math.abs(finish.across)) + reach;
  const ground: Ground = {
    cone: row.cone,
    reaches: sides ? undefined : { from: start.turn, to: finish.turn, beside },
    starts: new SegmentStarts(segmentsOf(contours)),
    finder,
    isInside: insideOf(row, region, cleared),
    motions: [1, -1].map((sign) => {
      const turns = sign / equalParts;
      return { turns, motion: onward(row.cone, turns) };
    }),
  };
  return arts.reduce((most, art) => {
    const isOnPanel = insideOf(row, panelRegion(art.panel), cleared);
    return segmentsOf(art.contours).reduce(
      (known, segment) => missOf(segment, known, ground, isOnPanel),
      most,
    );
  }, 0);
}

export const repeatCheck = (value: number, equalParts: number): Check =>
  atMost({
    rule: 'repeats',
    value,
    limit: precision,
    unit: 'mm',
    says:
      equalParts > 1
        ? `what a repeat misses the next one by, ${equalParts} equal parts around and the overlap`
        : 'what the overlap misses the art under it by',
  });

// Where a piece's name stands on it, however the piece bends and lies.
import type { Contour } from '../geometry/contour.ts';
import { tightBox } from '../geometry/measure.ts';
import type { Point } from '../geometry/point.ts';
import { chordCount, pointAt } from '../geometry/segment.ts';

/** Chords by which the room for a name is told, mm. */
const tolerance = 0.1;

/** Where across the box of a piece its stretches are looked at: its middle first, which is kept where others have no more room. */
const looked = [0.5, 0.25, 0.75];

/** How much of its room a name may take. */
const nameShare = 0.9;

export interface NamePlace {
  /** The middle of the name. */
  readonly at: Point;
  /** Whether it runs up the sheet. */
  readonly isTall: boolean;
  /** Size of its letters, mm. */
  readonly size: number;
}

type Axis = 'x' | 'y';
type Chord = readonly [Point, Point];
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The place where a name so wide, in sizes of its letters, stands largest: up to `largest` mm. */
export function namePlace(outlines: readonly Contour[], width: number, largest: number): NamePlace {
  const chords = chordsOf(outlines);
  const box = tightBox(outlines);
  const middles = looked.flatMap((share): Point[] => {
    const x = box.minX + share * (box.maxX - box.minX);
    const y = box.minY + share * (box.maxY - box.minY);
    const [tall, wide] = [longest(stretches(chords, 'x', x)), longest(stretches(chords, 'y', y))];
    return [...(tall ? [{ x, y: middleOf(tall) }] : []), ...(wide ? [{ x: middleOf(wide), y }] : [])];
  });
  const places = middles.flatMap((at) => {
    const across = roomAt(stretches(chords, 'y', at.y), at.x);
    const up = roomAt(stretches(chords, 'x', at.x), at.y);
    return [
      { at, isTall: false, size: sizeIn(across, up, width, largest) },
      { at, isTall: true, size: sizeIn(up, across, width, largest) },
    ];
  });
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  return places.reduce((best, place) => (place.size > best.size * 1.001 ? place : best), {
    at: middle,
    isTall: false,
    size: 0,
  });
}

/** A name's corners stay between slanting sides too where its shares of the room along and across come to one at most. */
const sizeIn = (along: number, across: number, width: number, largest: number): number =>
  along > 0 && across > 0 ? Math.min(largest, nameShare / (width / along + 1 / across)) : 0;

const chordsOf = (outlines: readonly Contour[]): readonly Chord[] =>
  outlines.flatMap(({ segments }) =>
    segments.flatMap((segment) => {
      const count = chordCount(segment, tolerance);
      return Array.from(
        { length: count },
        (_, i): Chord => [pointAt(segment, i / count), pointAt(segment, (i + 1) / count)],
      );
    }),
  );

/** What of a line at `value` of an axis lies on the piece. */
function stretches(chords: readonly Chord[], axis: Axis, value: number): readonly Stretch[] {
  const other: Axis = axis === 'x' ? 'y' : 'x';
  const crossings = chords
    .flatMap(([a, b]) =>
      a[axis] < value !== b[axis] < value
        ? [a[other] + ((b[other] - a[other]) * (value - a[axis])) / (b[axis] - a[axis])]
        : [],
    )
    .sort((one, two) => one - two);
  return crossings.flatMap((from, i) => {
    const to = crossings[i + 1];
    return i % 2 === 0 && to !== undefined ? [{ from, to }] : [];
  });
}

const middleOf = ({ from, to }: Stretch): number => (from + to) / 2;

const longest = (all: readonly Stretch[]): Stretch | undefined =>
  all.reduce<Stretch | undefined>(
    (best, one) => (best && best.to - best.from >= one.to - one.from ? best : one),
    undefined,
  );

/** The room about a place on a line, as much on either side, mm; 0 off the piece. */
function roomAt(all: readonly Stretch[], at: number): number {
  const within = all.find(({ from, to }) => from <= at && at <= to);
  return within ? 2 * Math.min(at - within.from, within.to - at) : 0;
}

// Places on and beside the wall of a section, and what its picture is drawn with.
import type { Point } from '../../geometry/point.ts';
import type { Units } from '../../lengths/length.ts';
import type { PutWords } from '../profile-ink.ts';
import { ringAlong, ringsBetween } from '../rolled/rolled-rings.ts';
import type { Ring } from '../rolled/rolled-vessel.ts';
import type { ProfileSubject } from './profile-subject.ts';

/** What the parts of a picture are drawn with. The origin is the middle of the foot; y is down, mm. */
export interface Sheet {
  readonly put: PutWords;
  /** Size of the letters, mm: all distances off the wall go by it. */
  readonly em: number;
  readonly units: Units;
  /** Whether all of it is turned over once it is drawn, but for the words: then the second of two lines goes above the first. */
  readonly isTurned: boolean;
  /** Whether little room is left beside the section. */
  readonly isNarrow: boolean;
}

/** Baselines of two lines of words, one under the other as they are read. */
export const twoLines = ({ isTurned }: Sheet, first: number, second: number): readonly [number, number] =>
  isTurned ? [second, first] : [first, second];

/** A part of the picture, and how far it reaches to one side, mm from the axis. */
export interface Part {
  readonly text: string;
  readonly reach: number;
}

export const onRight = ({ radius, height }: Ring): Point => ({ x: radius, y: -height });
export const onLeft = ({ radius, height }: Ring): Point => ({ x: -radius, y: -height });

/** A point off the outside of the right wall, along its normal. */
export function offWall({ rings }: ProfileSubject, along: number, off: number): Point {
  const { radius, height, lean } = ringAlong(rings, along);
  return { x: radius + off * Math.cos(lean), y: -height + off * Math.sin(lean) };
}

/** A line beside the right wall, at a distance off it: outside, or inside where it is negative. */
export const besideWall = (subject: ProfileSubject, from: number, to: number, off: number): Point[] =>
  ringsBetween(subject.rings, from, to).map(({ radius, height, lean }) => ({
    x: radius + off * Math.cos(lean),
    y: -height + off * Math.sin(lean),
  }));

export const mirrored = (points: readonly Point[]): Point[] => points.map(({ x, y }) => ({ x: -x, y }));

// An area of a drawing before it is worked out: a path, how it covers, where, and through what it shows.
import type { Affine } from '../geometry/affine.ts';
import type { Point } from '../geometry/point.ts';
import type { Fill } from '../geometry/polygon-clip.ts';
import type { Pen } from '../geometry/stroke.ts';

export interface Covered {
  /** The rule by which the path is filled, or the pen that it is drawn with. */
  readonly by: Fill | Pen;
  /** Path data in its own units. */
  readonly data: string;
  readonly toMm: Affine;
  readonly clips: readonly ClipArea[];
}

/** A part of a mask, in the order of painting: one that hides takes away what those before it show. */
export interface MaskPart extends Covered {
  readonly hides?: true;
}

/** A clip path, or a mask, as it applies here: the union of its parts, themselves clipped by `within`. */
export interface ClipArea {
  readonly parts: readonly MaskPart[];
  readonly within: ClipArea | undefined;
}

/** Copies of what is drawn so far, as a pattern makes them, mm; `clips` apply to all of them together. */
export interface Copies {
  readonly steps: readonly Point[];
  readonly clips: readonly ClipArea[];
}

/** One thing painted. */
export interface Painted extends Covered {
  readonly id: string | undefined;
  /** `#rrggbb` */
  readonly colour: string;
  /** The copies it is spread in, one after the other; mostly none. */
  readonly copies: readonly Copies[];
}

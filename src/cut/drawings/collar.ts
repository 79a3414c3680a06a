// A collar: the strip of paper whose one edge is level once it is wrapped round the wall.
import type { FlatWall } from '../../unroll/flat-wall.ts';
import { type Template, templateOf, turnOfEdge } from '../../unroll/template.ts';
import { type StraightStrip, straightStrip } from './straight-strip.ts';

/** Which edge of the strip is the level line. */
export type CollarEdge = 'upper' | 'lower';

export interface CollarOptions {
  /** Where the level line runs, mm up the wall. */
  readonly along: number;
  readonly edge: CollarEdge;
  /** Across the strip, mm along the wall. */
  readonly width: number;
  /** Extra past the seam, to stick the strip together with, mm; 0 for none. */
  readonly tab: number;
  /** Half the width kept clear around a handle at turn 0, mm of girth, if there is one. */
  readonly clear?: number;
}

export interface Collar {
  readonly along: number;
  readonly edge: CollarEdge;
  readonly clear: number | undefined;
  /** The strip as a piece without trims: a part of a ring, or a rectangle on a cylinder. */
  readonly template: Template;
  readonly straight: StraightStrip;
}

/** The part of the wall that a strip on one side of its level line covers. */
export const stripOf = ({ along, edge, width }: Pick<CollarOptions, 'along' | 'edge' | 'width'>) =>
  edge === 'lower' ? { from: along, to: along + width } : { from: along - width, to: along };

/** The collar on a sheet's own wall. Needs width > 0, and a wall that goes around all over the strip. */
export function collarOf(wall: FlatWall, options: CollarOptions): Collar {
  const { along, edge, tab, clear } = options;
  const template = templateOf(wall, {
    band: stripOf(options),
    trim: { lip: 0, foot: 0 },
    overlap: tab,
    ...(clear === undefined ? {} : { clear }),
  });
  const { start, finish } = template.seam;
  const turns = turnOfEdge(wall, finish, along) - turnOfEdge(wall, start, along);
  return { along, edge, clear, template, straight: straightStrip(wall, along, turns) };
}

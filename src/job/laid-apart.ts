// A motif that is cut apart, laid upright on a sheet of its own.
import { uprightTurn } from '../cut/motif-drawing.ts';
import { layMotif } from '../pattern/motif.ts';
import type { WrapLayer } from '../pattern/wrap.ts';
import type { FlatWall } from '../unroll/flat-wall.ts';
import type { PlacedMotif } from './placed-motif.ts';

/** A motif laid on a sheet of its own, in the flat wall's frame. */
export function laidApart({ motif, at, lay }: PlacedMotif, wall: FlatWall): readonly WrapLayer[] {
  return layMotif(motif.layers, wall, { at: { turn: uprightTurn, along: at.along }, lay }).layers;
}

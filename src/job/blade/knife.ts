// The drag knife of a cutter, where its way is worked out here.
import type { Knife } from '../../sheet/knife-path.ts';
import type { Cutter } from '../typed/material.ts';

/** Turns from here up are corners to a knife, radians. Common practice, no source. */
const cornerFrom = (10 * Math.PI) / 180;

/** The knife whose axis the files are to hold the way of; undefined where they hold the lines themselves. */
export const knifeOf = ({
  compensate,
  knifeOffset: offset,
  runOn,
  corner,
  pastCorner,
}: Cutter): Knife | undefined =>
  compensate && offset > 0 ? { offset, runOn, corner, pastCorner, cornerFrom } : undefined;

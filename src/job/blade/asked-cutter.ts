// What the proof has to know of the cutter that the files are for.
import type { AskedCutter } from '../../prove/written/cutter-file.ts';
import type { Cutter } from '../typed/material.ts';
import { correctionOf } from '../typed/measured.ts';
import { knifeOf } from './knife.ts';

export function askedCutterOf(cutter: Cutter): AskedCutter {
  const knife = knifeOf(cutter);
  const scale = correctionOf(cutter.measured);
  return {
    ...(knife
      ? { knife: { offset: knife.offset, pastCorner: knife.corner === 'lift' ? knife.pastCorner : 0 } }
      : {}),
    ...(scale ? { scale } : {}),
  };
}

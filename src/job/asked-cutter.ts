// What the proof has to know of the cutter that the files are for.
import type { AskedCutter } from '../prove/cutter-file.ts';
import { knifeOf } from './knife.ts';
import { correctionOf } from './measured.ts';
import type { Cutter } from './resolved-job.ts';

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

// What the proof has to know of the cutter that the files are for.
import type { AskedCutter } from '../prove/cutter-file.ts';
import { knifeOf } from './knife.ts';
import type { Cutter } from './resolved-job.ts';

export function askedCutterOf(cutter: Cutter): AskedCutter {
  const knife = knifeOf(cutter);
  if (!knife) return {};
  const { offset, corner, pastCorner } = knife;
  return { knife: { offset, pastCorner: corner === 'lift' ? pastCorner : 0 } };
}

// The motifs of a job: what is laid once, each at a place of its own.
import { halfTurned } from '../../artwork/tile-layer.ts';
import { bridgedMotif } from '../artwork/stencil.ts';
import type { MakeInput } from '../make-input.ts';
import { isThere, type PlacedMotif } from '../typed/placed-motif.ts';
import { itemMotif } from './items.ts';
import { lettered, letteringMotif } from './lettering.ts';
import { motifFaults } from './motif-faults.ts';

type MotifsInput = Pick<MakeInput, 'job' | 'jobFile' | 'files' | 'tools' | 'recall'>;

/** Whether every motif of a job can be drawn; letters are not merged for it. @throws Refused where one can't. */
export function tryMotifs(input: MotifsInput): void {
  const { items = [], lettering = [] } = input.job;
  for (const [index, item] of items.entries()) itemMotif(input, item, index);
  for (const [index, text] of lettering.entries()) if (isThere(text)) lettered(input, text, index);
}

/** Every motif of a job as it is drawn, before it is looked at. */
function drawnMotifs(input: MotifsInput): readonly PlacedMotif[] {
  const { items = [], lettering = [], shown } = input.job;
  const motifs = [
    ...items.map((item, index) => itemMotif(input, item, index)),
    ...lettering.flatMap((text, index) => (isThere(text) ? [letteringMotif(input, text, index)] : [])),
  ].map((placed) => bridgedMotif(placed, input.job, input.jobFile));
  return shown === 'upside-down' ? motifs.map(onItsHead) : motifs;
}

/** A motif turned about its own place. */
const onItsHead = (placed: PlacedMotif): PlacedMotif => ({
  ...placed,
  motif: { ...placed.motif, layers: halfTurned(placed.motif.layers) },
});

/** Every motif of a job. @throws Refused where one can't be read. */
export function readMotifs(input: MotifsInput & Pick<MakeInput, 'blank'>): readonly PlacedMotif[] {
  const widest = Math.max(
    ...input.blank.stations.map(({ reading: { kind, mm } }) => (kind === 'girth' ? mm : Math.PI * mm)),
  );
  return drawnMotifs(input).map((placed) => ({
    ...placed,
    findings: [...placed.findings, ...motifFaults(input.job, input.jobFile, placed, widest)],
  }));
}

// The motifs of a job: what is laid once, each at a place of its own.
import { itemMotif } from './items.ts';
import { letteringMotif } from './lettering.ts';
import type { MakeInput } from './make-input.ts';
import { motifFaults } from './motif-faults.ts';
import type { PlacedMotif } from './placed-motif.ts';

/** Every motif of a job. @throws Refused where one can't be read. */
export function readMotifs(
  input: Pick<MakeInput, 'job' | 'jobFile' | 'files' | 'tools'>,
): readonly PlacedMotif[] {
  const { items = [], lettering = [] } = input.job;
  const motifs = [
    ...items.map((item, index) => itemMotif(input, item, index)),
    ...lettering.map((text, index) => letteringMotif(input, text, index)),
  ];
  return motifs.map((placed) => ({
    ...placed,
    findings: [...placed.findings, ...motifFaults(input.job, input.jobFile, placed)],
  }));
}

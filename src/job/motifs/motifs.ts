// The motifs of a job: what is laid once, each at a place of its own.
import { halfTurned } from '../../artwork/tile-layer.ts';
import { wallLength, wallOf } from '../../blank/wall.ts';
import { refuseIfAny, stop } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import { bridgedMotif } from '../artwork/stencil.ts';
import type { MakeInput } from '../make-input.ts';
import { isThere, type PlacedMotif } from '../typed/placed-motif.ts';
import { typedAt } from '../typed/typed-at.ts';
import { itemMotif } from './items.ts';
import { lettered, letteringMotif } from './lettering.ts';
import { motifFaults } from './motif-faults.ts';

type MotifsInput = Pick<MakeInput, 'job' | 'jobFile' | 'blank' | 'files' | 'tools' | 'recall'>;

/** Heights are read to a tenth of this, mm: what is typed as the very edge lies on the wall. */
const atEdge = 0.05;

/** @throws Refused where a motif's place is below the foot of the wall or above its lip: there is nothing to lay it by. */
function refuseOffWall({ job, jobFile, blank }: MotifsInput): void {
  const { items = [], lettering = [] } = job;
  const places = [
    ...items.map(({ at }, i) => ({ at, key: `items[${i}].at` })),
    ...lettering.flatMap((text, i) => (isThere(text) ? [{ at: text.at, key: `lettering[${i}].at` }] : [])),
  ];
  if (places.length === 0) return;
  const most = wallLength(wallOf(blank).wall);
  refuseIfAny(
    places
      .filter(({ at: { along } }) => along < -atEdge || along > most + atEdge)
      .map(({ at: { along }, key }) => {
        const says = `is ${inMm(along)} along, and the wall goes up to ${inMm(most)}; give a place on it`;
        return stop('off-wall', typedAt(jobFile, `${key}.along`), says);
      }),
  );
}

/** Whether every motif of a job can be drawn; letters are not merged for it. @throws Refused where one can't. */
export function tryMotifs(input: MotifsInput): void {
  refuseOffWall(input);
  const { items = [], lettering = [] } = input.job;
  for (const [index, item] of items.entries()) itemMotif(input, item, index);
  for (const [index, text] of lettering.entries()) if (isThere(text)) lettered(input, text, index);
}

/** Every motif of a job as it is drawn, before it is looked at. */
function drawnMotifs(input: MotifsInput): readonly PlacedMotif[] {
  refuseOffWall(input);
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
export function readMotifs(input: MotifsInput): readonly PlacedMotif[] {
  const widest = Math.max(
    ...input.blank.stations.map(({ reading: { kind, mm } }) => (kind === 'girth' ? mm : Math.PI * mm)),
  );
  return drawnMotifs(input).map((placed) => ({
    ...placed,
    findings: [...placed.findings, ...motifFaults(input.job, input.jobFile, placed, widest)],
  }));
}

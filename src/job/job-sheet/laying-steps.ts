// How film is laid on the vessel by a collar, up to where its seam is closed. Common practice, no source.
import { thicknessUnder } from '../../blank/coats.ts';
import { inMm } from '../../lengths/length.ts';
import { backingOff, carrierOff } from '../motifs/laying-words.ts';
import { plainStep, type Work, type WorkStep } from './work-step.ts';

/** The wrap laid, in one piece or several, its ends still free. */
export function filmLaid(work: Work): readonly WorkStep[] {
  const { lay, meets } = layWords(work);
  const ends = work.hasHandle
    ? 'both ends stop short of the handle by the same width'
    : 'both ends hang free, short of the seam';
  return [
    collarStep(work),
    plainStep(lay, `no bubble, no pucker;${meets} ${ends}`),
    ...withoutCarrier(work, carrierWords(work)),
  ];
}

function layWords({ pieces, joints = 0 }: Work): { readonly lay: string; readonly meets: string } {
  if (pieces === 1)
    return {
      lay: `lay the film to the edge of the collar: ${backingOff}, and lay it from the middle outwards`,
      meets: '',
    };
  if (joints > 0)
    return {
      lay: `lay the pieces to the edge of the collar, one by one from the foot up: ${backingOff}, and lay each from its middle outwards`,
      meets: ' each level edge lies where its guide says;',
    };
  return {
    lay: `lay the panels to the edge of the collar, in the order of their letters: ${backingOff}, and lay each joint as told above`,
    meets: ' the crosses of each joint lie on one another;',
  };
}

/** Gores laid by their middle lines, each up to the edge of the one before. */
export const goresLaid = (work: Work): readonly WorkStep[] => [
  collarStep(work),
  plainStep(
    `mark ${work.pieces} equal parts of the girth along the edge of the collar, and carry the middle of each part up the wall`,
    'the last part is as wide as the first',
  ),
  plainStep(
    `lay the gores in the order of their numbers: ${backingOff}, and lay each by its middle line first, then outwards, its edge against the one before`,
    'edges meet and do not lie over one another; if they drift, set the next gore by its own middle line',
  ),
  ...withoutCarrier(work, `${carrierOff}, of each gore before the next is laid`),
];

/** A straight strip climbs on a taper. A job that made no collar tells how one is had that fits its band and coats. */
function collarStep({ job: { collars }, band, coats, isGores = false }: Work): WorkStep {
  const level = 'its edge is level all round';
  if (collars)
    return collars.at?.length === 1
      ? plainStep('wrap the collar and tape it down', level)
      : plainStep('wrap the collars and tape them down', 'the edge of each is level all round');
  const typed = (mm: number) => inMm(mm).replace(' ', '');
  const under = thicknessUnder(coats);
  const run = `seamwright collar blank.json --along ${typed(band.from)} --along ${typed(band.to)}${under > 0 ? ` --coat ${typed(under)}` : ''}`;
  const none = isGores
    ? 'gores come without one, so run'
    : 'this job made none; let it make paper collars, or run';
  return plainStep(`wrap a collar first: ${none} ${run}`, level);
}

/** Nothing is carried that was not weeded. */
const withoutCarrier = ({ isWeeded }: Work, does: string): readonly WorkStep[] =>
  isWeeded ? [plainStep(does, 'no film comes up with it; where some does, lay it back and rub it down')] : [];

/** An end that hangs free would stick to itself; one that is lapped over carrier would not stick. */
function carrierWords({ pieces, hasHandle, job: { seam } }: Work): string {
  const each = pieces > 1 ? `${carrierOff}, of each piece before the next comes over it` : carrierOff;
  if (hasHandle) return each;
  return `${each}; an end keeps it until that end is down${seam.overlap > 0 ? ', and loses it before the other end comes over' : ''}`;
}

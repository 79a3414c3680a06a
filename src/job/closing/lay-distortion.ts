// What each lay would do to the motifs of a job: for the report, and said where the lay chosen bends them so that it shows.
import { type Finding, note } from '../../finding.ts';
import { degrees } from '../../lengths/angle.ts';
import { inPercent } from '../../lengths/percent.ts';
import type { MotifLay } from '../../pattern/rigid/motif.ts';
import { type Distortion, distortionOf, type Spacing, spacingOf } from '../../pattern/ways/distortion.ts';
import type { PatternGround } from '../plan/pattern-ground.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import type { PatternPlan } from './pattern-plan.ts';

/** The most that a lay does to a motif: shares, and degrees. */
export interface DistortionReport {
  readonly proportions: number;
  readonly angleDeg: number;
  readonly size: number;
}

export interface LayReport {
  /** Of every lay, the one taken among them. */
  readonly distortion: Readonly<Record<MotifLay, DistortionReport>>;
  /** Of whole motifs: how far apart they stand, as a share of what was drawn. */
  readonly spacing?: Spacing;
}

type LayGround = Pick<PatternGround, 'girth' | 'ends'>;

const reportOf = ({ proportions, angle, size }: Distortion): DistortionReport => ({
  proportions,
  angleDeg: degrees(angle),
  size,
});

export function layReport(
  { closing, lay }: Pick<PatternPlan, 'closing' | 'lay'>,
  ground: LayGround,
): LayReport {
  const of = (each: MotifLay) => reportOf(distortionOf(each, closing, ground));
  return {
    distortion: { even: of('even'), conformal: of('conformal'), rigid: of('rigid') },
    ...(lay === 'rigid' ? { spacing: spacingOf(closing, ground) } : {}),
  };
}

/** A round motif whose width and height differ by more is seen to be none. Common practice, no source. */
const proportionsSeen = 0.25;

/**
 * Finding `lay-bends` (note): an even lay is taken unasked, for it keeps rows level and equally far apart and closes any
 * pattern; on a steep taper, where it bends motifs so that it shows, the maker is told what the others would do.
 */
export function layFindings(
  { closing, lay }: Pick<PatternPlan, 'closing' | 'lay'>,
  ground: LayGround,
  file: TypedIn,
): Finding[] {
  const { even, conformal } = layReport({ closing, lay }, ground).distortion;
  if (lay !== 'even' || even.proportions < proportionsSeen || conformal.angleDeg >= even.angleDeg) return [];
  const says = `"even" changes the proportions of motifs by up to ${inPercent(even.proportions, 0)} on this taper, and angles by ${even.angleDeg.toFixed(1)} degrees; "conformal" keeps angles and makes motifs up to ${inPercent(conformal.size, 0)} larger or smaller, "rigid" keeps motifs as drawn and changes only the room between them`;
  return [note('lay-bends', typedAt(file, 'artwork.lay'), says)];
}

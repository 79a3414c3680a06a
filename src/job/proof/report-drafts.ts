// The report of a job from its pieces, and from what was measured on their files.
import { isMotifLayer } from '../../drawing/motif-name.ts';
import { degrees } from '../../lengths/angle.ts';
import type { SeamGap } from '../../prove/seams/seam-gap.ts';
import { layReport } from '../closing/lay-distortion.ts';
import { type Draft, type LaidPattern, wholePieces } from '../draft.ts';
import type { Part } from '../parts/part.ts';
import { motifReports } from '../parts/reported-motifs.ts';
import { runOff } from '../plan/plan.ts';
import { seamReport } from '../plan/seam.ts';
import { blankReport, type PatternReport, type Report } from '../report.ts';
import { toldOnce } from '../told-once.ts';
import { layersAsMade, type Proof } from './proof.ts';
import { proofFindings } from './proof-in-words.ts';
import { templateOfDrafts } from './template-report.ts';

/** The report of a job, and what was measured on its written files, where they were. `layers`: as made, where they are known. */
export function reportDrafts(
  drafts: readonly Draft[],
  proof?: Proof,
  parts: readonly Part[] = [],
  layers = layersAsMade(drafts),
): Omit<Report, 'files'> {
  const [first] = drafts;
  if (!first) throw new Error('a job has at least one piece');
  const { plan, pattern } = first;
  const mismatches = drafts.flatMap((draft) => draft.pattern?.wrap.mismatches ?? []);
  const fitError = Math.max(0, ...drafts.map((draft) => draft.pattern?.wrap.fitError ?? 0));
  return {
    blank: { ...blankReport(plan.wall, plan.flatBands), ...plan.measures },
    ...(plan.coats.reports.length > 0 ? { coats: plan.coats.reports } : {}),
    ...(plan.template.seam.start.offset === 0
      ? { seam: seamReport(first.job.seam, wholePieces(drafts).length - 1, pattern?.winding) }
      : {}),
    template: templateOfDrafts(drafts, runOff),
    ...(pattern
      ? {
          pattern: {
            ...patternReport(pattern, proof?.seamGap, {
              joins: mismatches.length === 0,
              fitError,
              around: plan.build.around ?? 1,
            }),
            layers: layers.filter(({ layer }) => !isMotifLayer(layer)),
          },
        }
      : {}),
    ...motifReports(drafts, layers),
    ...(proof ? { proof: { pass: proof.pass, checks: proof.checks } } : {}),
    checks: toldOnce([
      ...[...drafts, ...parts].flatMap(({ findings }) => findings),
      ...(proof ? proofFindings(proof, { file: 'wrap.cut.svg' }) : []),
    ]),
  };
}

export function patternReport(
  { plan, artwork, ground, mended }: Pick<LaidPattern, 'plan' | 'artwork' | 'ground' | 'mended'>,
  gap: SeamGap | undefined,
  laid: { readonly joins: boolean; readonly fitError: number; readonly around?: number },
): Omit<PatternReport, 'layers'> {
  const { closing, around, up } = plan;
  return {
    around,
    up,
    // As it will be once the film is laid.
    scaleAcross: closing.scaleAcross / (laid.around ?? 1),
    scaleUp: closing.scaleUp,
    joins: laid.joins,
    closes: [closing.n, closing.m],
    leanDeg: degrees(closing.lean),
    lay: artwork.lay,
    ...layReport(plan, ground),
    ...(mended ? { largestMove: mended.largestMove } : {}),
    ...(plan.way === undefined ? {} : { way: plan.way }),
    ...(plan.seamAt ? { seamAt: plan.seamAt } : {}),
    fitError: laid.fitError,
    ...(gap ? { seamGap: gap } : {}),
  };
}

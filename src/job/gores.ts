// A plain template in gores: its drawings and its report.
import { type GoreDrawings, goreDrawings } from '../cut/gore-drawing.ts';
import { writeSvg } from '../deliver/write-svg.ts';
import { inMm } from '../lengths/length.ts';
import type { Written } from './deliverables.ts';
import { type GorePlan, type GoresAsked, planGores } from './gore-plan.ts';
import type { MakeInput } from './make-input.ts';
import { blankReport, type GoresReport, type Report, type TemplateReport } from './report.ts';

export interface GoresInput extends MakeInput {
  readonly gores: GoresAsked;
}

/** A template in gores, before anything is written. */
export interface GoresDraft extends Written {
  readonly report: Omit<Report, 'files'>;
}

/** @throws Refused where gores can't be made of this wall. */
export function draftGores(input: GoresInput): GoresDraft {
  const plan = planGores(input, input.gores);
  const { options, onSheet, follows, comb } = plan;
  const drawings = goreDrawings({
    wall: follows,
    options,
    band: onSheet,
    ...(comb ? { comb } : {}),
    notes: notesOf(input, plan),
    words: input.tools.words,
  });
  const { name } = input.job;
  return {
    cut: writeSvg(drawings.cut, { title: `${name}: cut`, filled: false }),
    guide: writeSvg(drawings.guide, { title: `${name}: guide`, filled: true }),
    report: {
      blank: { ...blankReport(plan.wall, plan.flatBands), ...plan.measures },
      ...(plan.coats.reports.length > 0 ? { coats: plan.coats.reports } : {}),
      template: templateOf(input, plan, drawings),
      checks: plan.findings,
    },
  };
}

function notesOf({ job, blank, gores }: GoresInput, { options, band, joined, width }: GorePlan): string[] {
  const { count } = options;
  const overlap = job.seam.overlap > 0 ? `overlap ${inMm(job.seam.overlap)} past gore ${count}; ` : '';
  return [
    `${blank.name}: ${job.name}`,
    `seen from outside, foot down; band ${inMm(band.from)} to ${inMm(band.to)} along`,
    `${count} gores, 1 to ${count} from left to right on the wall, ${inMm(width)} at the widest`,
    joined === 'loose'
      ? 'loose: lay them edge to edge'
      : `joined at the ${joined} by a strip of ${inMm(gores.strip)}`,
    `${overlap}trim ${inMm(job.trim.foot)} at the foot, ${inMm(job.trim.lip)} at the lip`,
    'measure the squares before you cut: 25 mm and 1 in',
  ];
}

function templateOf({ job, gores }: GoresInput, plan: GorePlan, drawings: GoreDrawings): TemplateReport {
  const { options, band, comb, strain, width, joined } = plan;
  const { count } = options;
  const common = {
    shape: 'gores',
    parts: [],
    sweepDeg: 0,
    trim: job.trim,
    band,
    strain: { stretch: strain, gathered: 0 },
    runOff: 0,
  } as const;
  const parts = drawings.sizes.map(
    (size, i): TemplateReport => ({
      ...common,
      turns: { from: i / count, to: (i + 1) / count },
      width: size.width,
      height: size.height,
      overlap: i === count - 1 ? job.seam.overlap : 0,
    }),
  );
  const report: GoresReport = {
    count,
    width,
    strain,
    joined,
    ...(comb ? { strip: gores.strip, stripStrain: comb.stripStrain } : {}),
  };
  return {
    ...common,
    parts,
    turns: { from: 0, to: 1 },
    width: drawings.whole.width,
    height: drawings.whole.height,
    overlap: job.seam.overlap,
    strain: {
      stretch: Math.max(strain, comb?.stripStrain ?? 0),
      gathered: Math.max(0, -(comb?.stripStrain ?? 0)),
    },
    gores: report,
  };
}

// The collars of a job, each a piece of paper of its own.
import { thicknessUnder } from '../../blank/coats.ts';
import { type Finding, Refused } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import { outline } from '../../unroll/template.ts';
import { type CollarKey, type CollarPlanInput, planCollars } from '../plan/collar-plan.ts';
import { collarsOn } from '../typed/resolved-collars.ts';
import { type TypedIn, typedAt } from '../typed/typed-at.ts';
import { collarName, drawnCollars, writtenCollars } from './collar.ts';
import type { PartMaker } from './part.ts';

/** Keys of a job by the names that the plan has for them. */
const keys: Readonly<Record<CollarKey, string>> = {
  height: 'collars.at',
  along: 'collars.at',
  edge: 'collars.at.edge',
  width: 'collars.width',
  coat: 'coats',
  overlap: 'collars.overlap',
};

/** @throws Refused where a level line or its paper can't be had on this wall. */
export const collarParts: PartMaker = (input, drafts) => {
  const { blank, blankFile, job, jobFile, tools } = input;
  const [first] = drafts;
  if (!job.collars || !first) return [];
  const { at, width, paper, overlap } = collarsOn(job.collars, first.job.band ?? first.plan.template.band);
  const ask = {
    lines: at.map(({ along, edge }) => ({ kind: 'along' as const, mm: along, ...(edge ? { edge } : {}) })),
    width,
    paper,
    coats: thicknessUnder(first.plan.coats.coats),
    tab: overlap,
    blank,
    blankFile: blankFile ?? blank.name,
    keyed: (key: CollarKey) => keys[key],
    units: job.units,
    words: tools.words,
  };
  const { wall, collars, ofCollars } = plannedAt(ask, jobFile);
  return collars.map((collar, i) => {
    const name = collarName(i, collars.length);
    const { drawings } = drawnCollars(ask, wall, { collars: [collar], name: () => name });
    return {
      stem: `collar-${i + 1}`,
      material: 'paper' as const,
      ...writtenCollars(drawings, `${job.name}: ${name}`),
      findings: i === 0 ? ofCollars : [],
      sheet: {
        says: `${name}, of paper`,
        where: `its ${collar.edge} edge at ${inMm(collar.along)}`,
        size: `${inMm(collar.template.band.to - collar.template.band.from)} wide`,
        outlines: [outline(collar.template)],
      },
    };
  });
};

/** The plan, with what it says told where the job was typed. */
function plannedAt(ask: CollarPlanInput, jobFile: TypedIn) {
  const inJob = ({ where, ...finding }: Finding): Finding => ({
    ...finding,
    where: where.key?.startsWith('collars') ? { ...where, ...typedAt(jobFile, where.key) } : where,
  });
  try {
    const plan = planCollars(ask);
    return { ...plan, ofCollars: plan.ofCollars.map(inJob) };
  } catch (fault) {
    throw fault instanceof Refused ? new Refused(fault.findings.map(inJob)) : fault;
  }
}

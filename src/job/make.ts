// The whole job: readings and a tile in, drawings out; then, from the written files, the proof.

import type { DrawWords } from '../artwork/lettering.ts';
import type { Normalise } from '../artwork/svg-normalise.ts';
import { readTile, type Tile } from '../artwork/tile.ts';
import type { Blank } from '../blank/blank.ts';
import { wrapDrawings } from '../cut/wrap-drawing.ts';
import { readSvg } from '../deliver/read-svg.ts';
import { writeSvg } from '../deliver/write-svg.ts';
import { type Finding, look, note } from '../finding.ts';
import { precision } from '../geometry/tolerance.ts';
import { formatLength } from '../lengths/length.ts';
import { type Wrap, wrapPattern } from '../pattern/wrap.ts';
import { originOf } from '../prove/locate.ts';
import { type SeamGap, seamGap } from '../prove/seam-gap.ts';
import { girthAt } from '../unroll/flat-wall.ts';
import type { Template } from '../unroll/template.ts';
import { barePlaces } from './bare-places.ts';
import { checkItems, type ItemReport } from './items.ts';
import { notedPlaces } from './noted-places.ts';
import { joinFindings, type PatternPlan, planPattern } from './pattern-plan.ts';
import { type Plan, planWrap, runOff } from './plan.ts';
import { blankReport, type PatternReport, type Report, templateReport } from './report.ts';
import type { Artwork, Job } from './resolved-job.ts';

export interface MakeInput {
  readonly job: Job;
  readonly jobFile: string;
  readonly blank: Blank;
  readonly blankFile: string;
  /** The artwork's text, where the job has artwork. */
  readonly artwork?: { readonly text: string; readonly file: string };
  /** The texts of the job's items, one for one. */
  readonly itemTexts?: readonly string[];
  /** A plain template: it decorates nothing yet. */
  readonly plain?: boolean;
  readonly tools: { readonly normalise: Normalise; readonly words: DrawWords };
}

/** A job worked out, before anything is written. */
export interface Draft {
  readonly cut: string;
  readonly guide: string;
  /** The job with everything that was worked out put in its place. */
  readonly job: Job;
  readonly plan: Plan;
  readonly pattern: LaidPattern | undefined;
  readonly items: readonly ItemReport[];
  readonly findings: readonly Finding[];
}

interface LaidPattern {
  readonly tile: Tile;
  readonly artwork: Artwork;
  readonly plan: PatternPlan;
  readonly wrap: Wrap;
  readonly findings: readonly Finding[];
}

/** The largest angle the two ends may differ by at the seam, degrees: what a hand's eye still sees as one line. */
const tangentLimitDeg = 0.1;

/** @throws Refused where the input can't be made. */
export function draftJob(input: MakeInput): Draft {
  const plan = planWrap(input);
  const pattern = layPattern(input, plan);
  const items = checkItems(input, plan);
  const { template, flatBands } = plan;
  const drawings = wrapDrawings({
    template,
    flatLimits: flatBands.flatMap(({ from, to }) => [from, to]),
    layers: pattern?.wrap.layers ?? [],
    runOff,
    notes: guideNotes(input, plan, pattern),
    noted: notedPlaces(input.blank, items.reports, plan),
    words: input.tools.words,
  });
  const { name } = input.job;
  return {
    cut: writeSvg(drawings.cut, { title: `${name}: cut`, filled: false }),
    guide: writeSvg(drawings.guide, { title: `${name}: guide`, filled: true }),
    job: { ...resolved(input.job, template, pattern), coats: plan.coats.coats },
    plan,
    pattern,
    items: items.reports,
    findings: [...plan.findings, ...barePlaces(input, plan), ...(pattern?.findings ?? []), ...items.findings],
  };
}

function layPattern(input: MakeInput, { template }: Plan): LaidPattern | undefined {
  const { job, jobFile, artwork: art, tools } = input;
  const { artwork } = job;
  if (!artwork || !art) return undefined;
  const { tile, findings } = readTile(art.text, art.file, tools.normalise);
  const plan = planPattern(tile, artwork, job.edges, template, jobFile);
  const wrap = wrapPattern({
    tile,
    template,
    runOff,
    lattice: plan.lattice,
    closing: plan.closing,
    lay: plan.lay,
  });
  return {
    tile,
    artwork,
    plan,
    wrap,
    findings: [
      ...findings,
      ...plan.findings,
      ...joinFindings(wrap.mismatches, art.file),
      ...layerNote(wrap, art.file),
    ],
  };
}

const layerNote = (wrap: Wrap, file: string): Finding[] =>
  wrap.layers.length < 2
    ? []
    : [
        note(
          'layers',
          { file },
          `has ${wrap.layers.length} colours, each a layer of its own in wrap.cut.svg; cut one layer at a time, each from its own film`,
        ),
      ];

function guideNotes(
  { job, blank }: MakeInput,
  { template, flatBands }: Plan,
  pattern: LaidPattern | undefined,
): string[] {
  const { band, wall, trim, overlap } = template;
  const mm = (value: number) => `${value.toFixed(1)} mm`;
  const repeats = pattern
    ? [
        `${pattern.plan.around} repeats around, ${(pattern.plan.closing.scaleAcross * 100).toFixed(1)} % of drawn size`,
      ]
    : [];
  return [
    `${blank.name}: ${job.name}`,
    `seen from outside, foot down; band ${mm(band.from)} to ${mm(band.to)} up the wall from the foot corner`,
    `sheet girth ${mm(girthAt(wall, band.from))} at the foot edge, ${mm(girthAt(wall, band.to))} at the lip edge`,
    `overlap ${mm(overlap)} past the seam at the right; trim ${mm(trim.foot)} at the foot, ${mm(trim.lip)} at the lip`,
    `film lies flat from ${flatBands.map(({ from, to }) => `${mm(from)} to ${mm(to)}`).join(', and from ')}`,
    ...repeats,
    'measure the squares before you cut: 25 mm and 1 in',
  ];
}

function resolved(job: Job, template: Template, pattern: LaidPattern | undefined): Job {
  const band = { from: template.band.from, to: template.band.to };
  if (!pattern) return { ...job, band };
  const { n } = pattern.plan.closing;
  return { ...job, band, artwork: { ...pattern.artwork, ...(n > 0 ? { around: n } : {}) } };
}

/** The written files, as read back from where they were written. */
export interface Written {
  readonly cut: string;
  readonly guide: string;
}

/** The report of a draft, its seam gap measured on the written files. */
export function reportDraft(draft: Draft, written: Written): Omit<Report, 'files'> {
  const { plan, pattern } = draft;
  const cut = readSvg(written.cut, 'wrap.cut.svg');
  const origin = originOf(
    readSvg(written.guide, 'wrap.guide.svg', ['seam']),
    plan.template,
    'wrap.guide.svg',
  );
  const gap = pattern && seamGap(cut, plan.template, origin);
  return {
    blank: { ...blankReport(plan.wall, plan.flatBands), ...plan.measures },
    ...(plan.coats.reports.length > 0 ? { coats: plan.coats.reports } : {}),
    template: templateReport(plan.template, runOff, plan.strain),
    ...(pattern ? { pattern: patternReport(pattern, gap) } : {}),
    ...(draft.items.length > 0 ? { items: draft.items } : {}),
    checks: [...draft.findings, ...gapFindings(gap)],
  };
}

function patternReport({ plan, wrap, artwork }: LaidPattern, gap: SeamGap | undefined): PatternReport {
  const { closing, around, up } = plan;
  return {
    around,
    up,
    scaleAcross: closing.scaleAcross,
    scaleUp: closing.scaleUp,
    joins: wrap.mismatches.length === 0,
    closes: [closing.n, closing.m],
    leanDeg: (closing.lean * 180) / Math.PI,
    lay: artwork.lay,
    fitError: wrap.fitError,
    ...(gap ? { seamGap: gap } : {}),
  };
}

function gapFindings(gap: SeamGap | undefined): Finding[] {
  if (!gap || (gap.position <= precision && gap.tangentDeg <= tangentLimitDeg)) return [];
  const says = `the two ends miss each other by ${formatLength(gap.position, 'mm')} and ${gap.tangentDeg.toFixed(2)} degrees; up to ${precision} mm and ${tangentLimitDeg} degrees is meant`;
  return [look('seam-gap', { file: 'wrap.cut.svg', turn: 0 }, says)];
}

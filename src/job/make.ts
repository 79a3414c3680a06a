// The whole job: readings and a tile in, drawings out; then, from the written files, the proof.

import type { Normalise } from '../artwork/svg-normalise.ts';
import { readTile, type Tile } from '../artwork/tile.ts';
import type { Blank } from '../blank/blank.ts';
import { wrapDrawings } from '../cut/wrap-drawing.ts';
import { readSvg } from '../deliver/read-svg.ts';
import { writeSvg } from '../deliver/write-svg.ts';
import type { DrawWords } from '../drawing/words.ts';
import { type Finding, look, note } from '../finding.ts';
import { precision } from '../geometry/tolerance.ts';
import { degrees } from '../lengths/angle.ts';
import { formatLength, measuredLength } from '../lengths/length.ts';
import type { Lay } from '../pattern/lay.ts';
import { type Wrap, wrapPattern } from '../pattern/wrap.ts';
import { originOf } from '../prove/locate.ts';
import { type SeamGap, seamGap } from '../prove/seam-gap.ts';
import { girthAt } from '../unroll/flat-wall.ts';
import type { Template } from '../unroll/template.ts';
import { barePlaces } from './bare-places.ts';
import { checkItems, type ItemReport } from './items.ts';
import { notedPlaces } from './noted-places.ts';
import { joinFindings, layOn, type PatternGround, type PatternPlan, planPattern } from './pattern-plan.ts';
import { planPieces } from './pieces.ts';
import { type Plan, runOff } from './plan.ts';
import { blankReport, type PatternReport, type Report, templateReport, wholeTemplate } from './report.ts';
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
  readonly artwork: Artwork;
  readonly plan: PatternPlan;
  readonly wrap: Wrap;
  readonly findings: readonly Finding[];
}

/** The largest angle the two ends may differ by at the seam, degrees: what a hand's eye still sees as one line. */
const tangentLimitDeg = 0.1;

/** The pieces of a job worked out, from the foot up: mostly one. @throws Refused where the input can't be made. */
export function draftPieces(input: MakeInput): readonly Draft[] {
  const plans = planPieces(input);
  const drawn = readDrawn(input, plans);
  let y = 0;
  return plans.map((plan) => {
    const lay = drawn && layOn(drawn.artwork, plan.template, { around: drawn.ground.girth, y });
    if (lay) y = lay.fromAlong(plan.template.band.to);
    return draftPiece(input, plan, drawn && lay && layPattern(input, plan, drawn, lay));
  });
}

/** The artwork as read, and how it goes around: the same for all pieces of a band. */
interface Drawn {
  readonly tile: Tile;
  readonly artwork: Artwork;
  readonly ground: PatternGround;
  readonly plan: PatternPlan;
  readonly findings: readonly Finding[];
}

function readDrawn(
  { job, jobFile, artwork: art, tools }: MakeInput,
  plans: readonly Plan[],
): Drawn | undefined {
  const { artwork } = job;
  if (!artwork || !art) return undefined;
  const { tile, findings } = readTile(art.text, art.file, tools.normalise);
  const ground = groundOf(plans);
  const plan = planPattern(tile, artwork, job.edges, ground, jobFile);
  return { tile, artwork, ground, plan, findings: [...findings, ...plan.findings] };
}

/** Over several pieces the pattern has its size where the middle of the whole band is. */
function groundOf(plans: readonly Plan[]): PatternGround {
  const bands = plans.map(({ template }) => template.band);
  const [from, to] = [bands[0]?.from ?? 0, bands.at(-1)?.to ?? 0];
  const middle = (from + to) / 2;
  const at = plans.find(({ template }) => template.band.to >= middle) ?? plans[0];
  return { girth: at ? girthAt(at.template.wall, middle) : 0, bandLength: to - from };
}

function draftPiece(input: MakeInput, plan: Plan, pattern: LaidPattern | undefined): Draft {
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

function layPattern(
  { artwork: art }: MakeInput,
  { template }: Plan,
  { tile, artwork, plan, findings }: Drawn,
  lay: Lay,
): LaidPattern {
  const wrap = wrapPattern({ tile, template, runOff, lattice: plan.lattice, closing: plan.closing, lay });
  const file = art?.file ?? artwork.file;
  return {
    artwork,
    plan,
    wrap,
    findings: [...findings, ...joinFindings(wrap.mismatches, file), ...layerNote(wrap, file)],
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
  const mm = (value: number) => measuredLength(value, 'mm');
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

/** The report of a job, its seam gaps measured on the written files, one for each piece. */
export function reportDrafts(drafts: readonly Draft[], written: readonly Written[]): Omit<Report, 'files'> {
  const [first] = drafts;
  if (!first) throw new Error('a job has at least one piece');
  const { plan, pattern } = first;
  const gaps = drafts.flatMap((draft, i) => gapOf(draft, written[i]) ?? []);
  const gap = gaps.length === 0 ? undefined : gaps.reduce(worseGap);
  const mismatches = drafts.flatMap((draft) => draft.pattern?.wrap.mismatches ?? []);
  const fitError = Math.max(0, ...drafts.map((draft) => draft.pattern?.wrap.fitError ?? 0));
  return {
    blank: { ...blankReport(plan.wall, plan.flatBands), ...plan.measures },
    ...(plan.coats.reports.length > 0 ? { coats: plan.coats.reports } : {}),
    template: wholeTemplate(
      drafts.map((draft) => templateReport(draft.plan.template, runOff, draft.plan.strain)),
    ),
    ...(pattern
      ? { pattern: patternReport(pattern, gap, { joins: mismatches.length === 0, fitError }) }
      : {}),
    ...(first.items.length > 0 ? { items: first.items } : {}),
    checks: once([...drafts.flatMap(({ findings }) => findings), ...gapFindings(gap)]),
  };
}

/** Pieces of one job say much of the same; each thing is said once. */
const once = (findings: readonly Finding[]): Finding[] => [
  ...new Map(findings.map((finding) => [JSON.stringify(finding), finding])).values(),
];

const worseGap = (a: SeamGap, b: SeamGap): SeamGap => ({
  position: Math.max(a.position, b.position),
  tangentDeg: Math.max(a.tangentDeg, b.tangentDeg),
  crossings: a.crossings + b.crossings,
});

function gapOf({ plan, pattern }: Draft, written: Written | undefined): SeamGap | undefined {
  if (!pattern || !written) return undefined;
  const guide = readSvg(written.guide, 'wrap.guide.svg', ['seam']);
  const origin = originOf(guide, plan.template, 'wrap.guide.svg');
  return seamGap(readSvg(written.cut, 'wrap.cut.svg'), plan.template, origin);
}

function patternReport(
  { plan, artwork }: LaidPattern,
  gap: SeamGap | undefined,
  laid: { readonly joins: boolean; readonly fitError: number },
): PatternReport {
  const { closing, around, up } = plan;
  return {
    around,
    up,
    scaleAcross: closing.scaleAcross,
    scaleUp: closing.scaleUp,
    joins: laid.joins,
    closes: [closing.n, closing.m],
    leanDeg: degrees(closing.lean),
    lay: artwork.lay,
    fitError: laid.fitError,
    ...(gap ? { seamGap: gap } : {}),
  };
}

function gapFindings(gap: SeamGap | undefined): Finding[] {
  if (!gap || (gap.position <= precision && gap.tangentDeg <= tangentLimitDeg)) return [];
  const says = `the two ends miss each other by ${formatLength(gap.position, 'mm')} and ${gap.tangentDeg.toFixed(2)} degrees; up to ${precision} mm and ${tangentLimitDeg} degrees is meant`;
  return [look('seam-gap', { file: 'wrap.cut.svg', turn: 0 }, says)];
}

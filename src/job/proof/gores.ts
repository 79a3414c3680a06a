// A job in gores: its drawings, with its pattern cut onto them, and its report.
import { roundLimits, wallForm } from '../../blank/wall.ts';
import { goreDrawings } from '../../cut/drawings/gore-drawing.ts';
import { writeSvg } from '../../deliver/write-svg.ts';
import { type Finding, Refused, stop } from '../../finding.ts';
import type { Contour } from '../../geometry/contour.ts';
import { cutLength } from '../../lengths/length.ts';
import { conformalGoreLay, evenGoreLay } from '../../pattern/gores/gore-lay.ts';
import { type GorePattern, gorePattern } from '../../pattern/gores/gore-pattern.ts';
import { goreOutline } from '../../unroll/gores.ts';
import { type Drawn, layerNote, readDrawn, resolvedJob } from '../artwork/drawn.ts';
import { joinFindings } from '../closing/pattern-plan.ts';
import type { Written } from '../deliverables.ts';
import { bareOnSheet } from '../guide/noted-places.ts';
import { rigidOnPieces } from '../lay/rigid-pattern.ts';
import { begunAtSeam } from '../lay/seam-place.ts';
import type { MakeInput } from '../make-input.ts';
import { barePlaces } from '../plan/bare-places.ts';
import { type GorePlan, type GoresAsked, planGores } from '../plan/gore-plan.ts';
import type { PatternGround } from '../plan/pattern-ground.ts';
import { runOff } from '../plan/plan.ts';
import { trimFindings } from '../plan/plan-findings.ts';
import { goresTooLarge } from '../plan/sheet-room.ts';
import { blankReport, type GoresReport, type Report, type TemplateReport } from '../report.ts';
import type { Job } from '../typed/resolved-job.ts';
import { typedAt } from '../typed/typed-at.ts';
import type { LayerAsMade, Proof } from './proof.ts';
import { proofFindings } from './proof-in-words.ts';
import { patternReport } from './report-drafts.ts';

export interface GoresInput extends MakeInput {
  readonly gores: GoresAsked;
}

/** How a job's gores are cut: apart, for art runs past the outline of each. */
export const looseGores = ({ gores: count }: Pick<Job, 'gores'>): GoresAsked => ({
  ...(count === undefined ? {} : { count }),
  joined: 'loose',
  strip: 0,
});

/** A pattern cut onto gores. */
export interface GoreArtwork extends Drawn {
  readonly pattern: GorePattern;
}

/** A job in gores, before anything is written. */
export interface GoresDraft extends Written {
  /** The job with everything that was worked out put in its place. */
  readonly job: Job;
  readonly plan: GorePlan;
  readonly art: GoreArtwork | undefined;
  /** Outlines of the gores from turn 0 on, each in its own drawing: what film they take. */
  readonly outlines: readonly Contour[];
  readonly template: TemplateReport;
  readonly findings: readonly Finding[];
}

/** @throws Refused where gores can't be made of this wall, or of this job. */
export function draftGores(input: GoresInput): GoresDraft {
  const { job, gores, tools } = input;
  for (const key of ['items', 'lettering'] as const)
    if (job[key]) throw new Refused([motifsOnGores(input, key)]);
  const plan = planGores(input, gores);
  const art = goreArtwork(input, plan);
  const { options, onSheet, follows, comb, bent } = plan;
  const drawings = goreDrawings({
    wall: follows,
    options,
    band: onSheet,
    flatLimits: limitsOf(input, plan).map(bent.toGrown),
    layers: art?.pattern.layers ?? [],
    ...(comb ? { comb } : {}),
    bare: bareOnSheet(input.blank, plan),
    notes: notesOf(input, plan, art),
    words: tools.words,
  });
  const { overlap: _, ...plain } = options;
  const outlines = Array.from({ length: options.count }, (_gore, i) =>
    goreOutline(follows, i === options.count - 1 ? options : plain),
  );
  return {
    cut: writeSvg(drawings.cut, { title: `${job.name}: cut`, filled: false }),
    guide: writeSvg(drawings.guide, { title: `${job.name}: guide`, filled: true }),
    job: {
      ...resolvedJob(job, plan.band, art),
      coats: plan.coats.coats,
      pieces: 'gores',
      gores: options.count,
    },
    plan,
    art,
    outlines,
    template: templateOf(input, plan, drawings),
    findings: [
      ...plan.findings,
      ...barePlaces(input, { wall: plan.wall, band: plan.band }),
      ...goresTooLarge([...outlines.slice(0, 1), ...outlines.slice(-1)], job, input.jobFile),
      ...trimFindings(input),
      ...(art ? artFindings(art) : []),
    ],
  };
}

/** Where the wall stops for film in gores: its rounds, and the corners of a wall that has any. */
function limitsOf({ blank }: MakeInput, { wall, flatBands }: GorePlan): readonly number[] {
  const { from, to } = roundLimits(wall, blank);
  const ends = wallForm(wall) === 'stepped' ? flatBands.flatMap((flat) => [flat.from, flat.to]) : [];
  return [from, to, ...ends];
}

const motifsOnGores = ({ jobFile }: MakeInput, key: 'items' | 'lettering'): Finding =>
  stop(
    'items-on-gores',
    typedAt(jobFile, key),
    `can not lie on gores, which cover the wall; leave "${key}" out, or make a job of their own without "pieces"`,
  );

const fadeOnGores = ({ jobFile }: MakeInput): Finding =>
  stop(
    'fade-on-gores',
    typedAt(jobFile, 'edges'),
    'can not fade on gores, whose pattern is cut where they are; give "straight" or "whole-rows"',
  );

function artFindings({ artwork, findings, pattern }: GoreArtwork): readonly Finding[] {
  const open = pattern.mismatches.map(({ on, ...where }) => ({ ...where, along: on }));
  return [...findings, ...joinFindings(open, artwork.file), ...layerNote(pattern.layers, artwork)];
}

/** The pattern is fitted to the girth of the sheet in the middle of the band, and to its length there. */
function goreArtwork(input: MakeInput, plan: GorePlan): GoreArtwork | undefined {
  const { onSheet, bent, options } = plan;
  const girth = (on: number) => 2 * Math.PI * bent.at(on).radius;
  const middle = (onSheet.from + onSheet.to) / 2;
  const ground: PatternGround = {
    girth: girth(middle),
    ends: { foot: girth(onSheet.from), lip: girth(onSheet.to) },
    band: onSheet,
    bandLength: onSheet.to - onSheet.from,
    conformalHeight: conformalGoreLay(bent, onSheet, girth(middle)).fromOn(onSheet.to),
  };
  const drawn = readDrawn(input, () => ground);
  if (!drawn) return undefined;
  if (input.job.edges === 'fade') throw new Refused([fadeOnGores(input)]);
  if (drawn.artwork.lay === 'rigid') throw new Refused([rigidOnPieces(input.jobFile)]);
  const lay =
    drawn.artwork.lay === 'conformal'
      ? conformalGoreLay(bent, onSheet, ground.girth)
      : evenGoreLay(onSheet, ground.girth);
  const piece = { lay: { ...lay, toAlong: lay.toOn, fromAlong: lay.fromOn }, band: onSheet, beside: () => 0 };
  const begun = begunAtSeam(input, drawn, { pieces: [piece], edges: { shows: 0, seams: options.count } });
  const { tile, lattice, closing } = begun.plan;
  const pattern = gorePattern({ tile, lattice, closing, lay, wall: bent, gores: options, runOff });
  const mismatches = pattern.mismatches.map((open) => ({ ...open, on: bent.toBare(open.on) }));
  return { ...begun, pattern: { ...pattern, mismatches } };
}

/** The report of gores, and what was measured on their written files, where it was. */
export function reportGores(
  { plan, art, template, findings }: GoresDraft,
  layers: readonly LayerAsMade[],
  proof?: Proof,
): Omit<Report, 'files'> {
  const laid = art && {
    joins: art.pattern.mismatches.length === 0,
    fitError: art.pattern.fitError,
  };
  return {
    blank: { ...blankReport(plan.wall, plan.flatBands), ...plan.measures },
    ...(plan.coats.reports.length > 0 ? { coats: plan.coats.reports } : {}),
    template,
    ...(art && laid ? { pattern: { ...patternReport(art, proof?.seamGap, laid), layers } } : {}),
    ...(proof ? { proof: { pass: proof.pass, checks: proof.checks } } : {}),
    checks: [...findings, ...(proof ? proofFindings(proof, { file: 'wrap.cut.svg' }) : [])],
  };
}

function notesOf(
  { job, blank, gores }: GoresInput,
  { options, band, joined, width, darts }: GorePlan,
  art: GoreArtwork | undefined,
): string[] {
  const { count } = options;
  const shown = (mm: number) => cutLength(mm, job.units);
  const overlap = job.seam.overlap > 0 ? `overlap ${shown(job.seam.overlap)} past gore ${count}; ` : '';
  const closing = art?.plan.closing;
  return [
    `${blank.name}: ${job.name}`,
    `seen from outside, foot down; band ${shown(band.from)} to ${shown(band.to)} along`,
    `${count} ${darts ? 'parts between darts' : 'gores'}, 1 to ${count} from left to right on the wall, ${shown(width)} at the widest`,
    joined === 'loose'
      ? 'loose: lay each by its middle line, edge to edge'
      : darts
        ? `in one piece: ${count} darts from the ${darts.report.edge}, each to close edge to edge, ending at ${shown(darts.report.tip)} along`
        : `joined at the ${joined} by a strip of ${shown(Number(gores.strip))}`,
    `${overlap}trim ${shown(job.trim.foot)} at the foot, ${shown(job.trim.lip)} at the lip`,
    ...(art && closing
      ? [`${art.plan.around} repeats around, ${(closing.scaleAcross * 100).toFixed(1)} % of drawn size`]
      : []),
    'measure the squares before you cut: 25 mm and 1 in',
  ];
}

function templateOf(
  { job, gores }: GoresInput,
  plan: GorePlan,
  drawings: ReturnType<typeof goreDrawings>,
): TemplateReport {
  const { options, band, comb, strain, width, joined, darts } = plan;
  const { count } = options;
  const common = {
    shape: 'gores',
    parts: [],
    sweepDeg: 0,
    trim: job.trim,
    band,
    strain: { stretch: strain, gathered: 0 },
    runOff: job.artwork ? runOff : 0,
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
    ...(darts ? { darts: darts.report } : {}),
    ...(comb && gores.strip !== 'longest' ? { strip: gores.strip, stripStrain: comb.stripStrain } : {}),
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

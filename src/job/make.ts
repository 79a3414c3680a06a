// The whole job: readings and a tile in, drawings out; then, from the written files, the proof.

import { readTile } from '../artwork/tile.ts';
import type { Band } from '../blank/flat-band.ts';
import { wrapDrawings } from '../cut/wrap-drawing.ts';
import { writeSvg } from '../deliver/write-svg.ts';
import { type Finding, note, Refused, stop } from '../finding.ts';
import { degrees } from '../lengths/angle.ts';
import type { Lay } from '../pattern/lay.ts';
import { type Wrap, wrapPattern } from '../pattern/wrap.ts';
import type { SeamGap } from '../prove/seam-gap.ts';
import { barePlaces } from './bare-places.ts';
import type { Draft, LaidPattern } from './draft.ts';
import { guideNotes } from './guide-notes.ts';
import { checkItems } from './items.ts';
import type { MakeInput } from './make-input.ts';
import { textOf } from './named-files.ts';
import { notedPlaces } from './noted-places.ts';
import type { Part } from './parts.ts';
import { groundOf, type PatternGround, wholeBand } from './pattern-ground.ts';
import { joinFindings, layOn, type PatternPlan, planPattern } from './pattern-plan.ts';
import { planPieces } from './pieces.ts';
import { type Plan, runOff } from './plan.ts';
import { sheetFindings, trimFindings } from './plan-findings.ts';
import { layersAsMade, type Proof } from './proof.ts';
import { proofFindings } from './proof-in-words.ts';
import { blankReport, type PatternReport, type Report, templateReport, wholeTemplate } from './report.ts';
import type { Artwork, Job } from './resolved-job.ts';
import { type TypedIn, typedAt } from './typed-at.ts';

/** The pieces of a job worked out, from the foot up: mostly one. @throws Refused where the input can't be made. */
export function draftPieces(input: MakeInput): readonly Draft[] {
  const plans = planPieces(input);
  const drawn = readDrawn(input, plans);
  let y = 0;
  const whole = wholeBand(plans);
  return plans.map((plan, index) => {
    const lay = drawn && layOn(drawn.artwork, plan.template, { around: drawn.ground.girth, y });
    if (lay) y = lay.fromAlong(plan.template.band.to);
    const pattern = drawn && lay && layPattern(plan, drawn, lay);
    return draftPiece(input, plan, pattern, { index, count: plans.length, whole });
  });
}

/** Where a piece stands among those of its job, from the foot up; and the band that all of them cover. */
interface PiecePlace {
  readonly index: number;
  readonly count: number;
  readonly whole: Band;
}

/** The artwork as read, and how it goes around: the same for all pieces of a band. */
interface Drawn {
  readonly artwork: Artwork;
  readonly ground: PatternGround;
  readonly plan: PatternPlan;
  readonly findings: readonly Finding[];
}

function readDrawn({ job, jobFile, files, tools }: MakeInput, plans: readonly Plan[]): Drawn | undefined {
  const { artwork } = job;
  if (!artwork) return undefined;
  const { file } = artwork;
  const { tile, findings } = readTile(textOf(files, file), file, tools.normalise);
  const ground = groundOf(plans);
  const plan = planPattern(tile, artwork, job.edges, ground, { job: jobFile, art: file });
  refuseTooMany(plan, jobFile);
  return { artwork, ground, plan, findings: [...findings, ...plan.findings] };
}

/** More curves than this in one wrap is a repeat typed far too small: a cutter would take days, and memory would run out. */
const mostSegments = 1_500_000;

function refuseTooMany({ tile: { layers }, around, up }: PatternPlan, file: TypedIn): void {
  const drawn = layers
    .flatMap(({ shapes }) => shapes.flatMap(({ contours }) => contours))
    .reduce((sum, { segments }) => sum + segments.length, 0);
  const laid = drawn * around * Math.max(1, up);
  if (laid <= mostSegments) return;
  const says = `${around} around and ${Math.ceil(up)} rows up would be ${(laid / 1e6).toFixed(1)} million lines to cut; up to ${mostSegments / 1e6} million are made, so give fewer repeats, or a simpler tile`;
  throw new Refused([stop('too-many-lines', typedAt(file, 'artwork.around'), says)]);
}

function draftPiece(
  input: MakeInput,
  plan: Plan,
  pattern: LaidPattern | undefined,
  place: PiecePlace,
): Draft {
  const items = checkItems(input, plan);
  const { template, flatBands } = plan;
  const drawings = wrapDrawings({
    template,
    flatLimits: flatBands.flatMap(({ from, to }) => [from, to]),
    layers: pattern?.wrap.layers ?? [],
    runOff,
    notes: guideNotes({
      name: input.job.name,
      blank: input.blank,
      template,
      flatBands,
      piece: place,
      ...(pattern ? { pattern: pattern.plan } : {}),
    }),
    ...(input.blank.handle ? { handleSpan: input.blank.handle.spans } : {}),
    noted: notedPlaces(input.blank, items.reports, plan),
    words: input.tools.words,
  });
  const { name } = input.job;
  return {
    cut: writeSvg(drawings.cut, { title: `${name}: cut`, filled: false }),
    guide: writeSvg(drawings.guide, { title: `${name}: guide`, filled: true }),
    job: { ...resolved(input.job, place.whole, pattern), coats: plan.coats.coats },
    plan,
    pattern,
    items: items.reports,
    findings: [
      ...plan.findings,
      ...barePlaces(input, plan).filter(({ rule }) => rule !== 'lip-zone' || place.index === place.count - 1),
      ...sheetFindings(input, template),
      ...trimFindings(input),
      ...(pattern?.findings ?? []),
      ...items.findings,
    ],
  };
}

function layPattern({ template }: Plan, { artwork, plan, findings }: Drawn, lay: Lay): LaidPattern {
  const wrap = wrapPattern({ ...plan, template, runOff, lay });
  const { file } = artwork;
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

function resolved(job: Job, whole: Band, pattern: LaidPattern | undefined): Job {
  const band = { from: whole.from, to: whole.to };
  if (!pattern) return { ...job, band };
  const { way, closing } = pattern.plan;
  const { around: _, way: __, ...artwork } = pattern.artwork;
  const taken = way !== undefined ? { way } : closing.n > 0 ? { around: closing.n } : {};
  return { ...job, band, artwork: { ...artwork, ...taken } };
}

/** The report of a job, and what was measured on its written files, where they were. */
export function reportDrafts(
  drafts: readonly Draft[],
  proof?: Proof,
  parts: readonly Part[] = [],
): Omit<Report, 'files'> {
  const [first] = drafts;
  if (!first) throw new Error('a job has at least one piece');
  const { plan, pattern } = first;
  const mismatches = drafts.flatMap((draft) => draft.pattern?.wrap.mismatches ?? []);
  const fitError = Math.max(0, ...drafts.map((draft) => draft.pattern?.wrap.fitError ?? 0));
  return {
    blank: { ...blankReport(plan.wall, plan.flatBands), ...plan.measures },
    ...(plan.coats.reports.length > 0 ? { coats: plan.coats.reports } : {}),
    template: wholeTemplate(
      drafts.map((draft) => templateReport(draft.plan.template, runOff, draft.plan.strain)),
    ),
    ...(pattern
      ? {
          pattern: {
            ...patternReport(pattern, proof?.seamGap, { joins: mismatches.length === 0, fitError }),
            layers: layersAsMade(drafts),
          },
        }
      : {}),
    ...(first.items.length > 0 ? { items: first.items } : {}),
    ...(proof ? { proof: { pass: proof.pass, checks: proof.checks } } : {}),
    checks: once([
      ...[...drafts, ...parts].flatMap(({ findings }) => findings),
      ...(proof ? proofFindings(proof, { file: 'wrap.cut.svg' }) : []),
    ]),
  };
}

/** Pieces of one job say much of the same; each thing is said once. */
const once = (findings: readonly Finding[]): Finding[] => [
  ...new Map(findings.map((finding) => [JSON.stringify(finding), finding])).values(),
];

function patternReport(
  { plan, artwork }: LaidPattern,
  gap: SeamGap | undefined,
  laid: { readonly joins: boolean; readonly fitError: number },
): Omit<PatternReport, 'layers'> {
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
    ...(plan.way === undefined ? {} : { way: plan.way }),
    fitError: laid.fitError,
    ...(gap ? { seamGap: gap } : {}),
  };
}

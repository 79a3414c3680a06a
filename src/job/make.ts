// The whole job: readings and a tile in, drawings out; then, from the written files, the proof.
import type { Band } from '../blank/flat-band.ts';
import { fieldOfWrap } from '../cut/relief.ts';
import { wrapDrawings } from '../cut/wrap-drawing.ts';
import { type WrittenGroups, writeSvg } from '../deliver/write-svg.ts';
import { withoutApart } from '../drawing/drawing.ts';
import { type Finding, Refused } from '../finding.ts';
import { compose, rotation, translation } from '../geometry/affine.ts';
import { keptLayers } from '../geometry/kept-contour.ts';
import { equalParts } from '../pattern/closing.ts';
import type { Lay } from '../pattern/lay.ts';
import { wrapPattern } from '../pattern/wrap.ts';
import type { Template } from '../unroll/template.ts';
import { barePlaces } from './bare-places.ts';
import { borderStrips } from './border-strips.ts';
import { drawingsInOrder } from './cutting.ts';
import type { Draft, LaidPattern } from './draft.ts';
import { type Drawn, layerNote, readDrawn, resolvedJob } from './drawn.ts';
import { edgeFindings, edgeOptions } from './edge-findings.ts';
import { withFilmChecks } from './film-checks.ts';
import { groundKey } from './ground-key.ts';
import { guideNotes } from './guide-notes.ts';
import { type LaidMotif, laidMotifs } from './laid-apart.ts';
import { cutsEach } from './layer-cuts.ts';
import { refuseUnknownLayers } from './layer-films.ts';
import { type BandArt, inLevels } from './levels.ts';
import type { MakeInput } from './make-input.ts';
import { layersWith } from './motif-layers.ts';
import { checkPlaces } from './motif-places.ts';
import { readMotifs } from './motifs.ts';
import { notedPlaces } from './noted-places.ts';
import { findingsOnWall, motifOnSheet } from './on-sheet.ts';
import type { Levels } from './panel-places.ts';
import { markedJoints, markOf, type PanelPlace, panelPlaces } from './panel-places.ts';
import { type PanelPlan, planPanels, turnInFile } from './panels.ts';
import { groundOf, wholeBand } from './pattern-ground.ts';
import { joinFindings, layOn, type PatternPlan, underStrips } from './pattern-plan.ts';
import { planPieces } from './pieces.ts';
import type { PlacedMotif } from './placed-motif.ts';
import { type Plan, runOff } from './plan.ts';
import { trimFindings } from './plan-findings.ts';
import { reliefOf } from './relief.ts';
import { type Job, standardPanels } from './resolved-job.ts';
import { rigidOnPieces, wholeMotifs } from './rigid-pattern.ts';
import { rowsCutFindings } from './rows-cut.ts';
import { seamMeaning, topOf } from './seam.ts';
import type { Strips } from './strips.ts';
import { refuseWinding, straightEnds, windEnds } from './winding.ts';

/** The pieces of a job worked out, from the foot up: mostly one. @throws Refused where the input can't be made. */
export function draftPieces(input: MakeInput): readonly Draft[] {
  const { plans, pieces, parts, panels, levels, colours, strips } = laidJob(input);
  const motifs = readMotifs(input);
  refuseUnknownLayers(input.job, [...colours, ...coloursOf(motifs)], input.jobFile);
  const laid = laidMotifs(plans, motifs);
  const whole = wholeBand(plans);
  return pieces.flatMap(({ plan, pattern }, index) => {
    const { joints } = panels;
    const place = { index, count: plans.length, whole, joints, levels, ...(strips ? { strips } : {}) };
    const drafts = (parts[index] ?? []).map((part) =>
      draftPiece({ ...input, motifs, laid }, part, place, panels.findings),
    );
    if (input.unchecked) return drafts;
    return withFilmChecks(input, { ...plan, pattern, drafts });
  });
}

/** What a job comes to before anything is laid on it singly: the same for all vessels that differ in that alone. */
interface LaidJob {
  /** From the foot up. */
  readonly plans: readonly Plan[];
  readonly pieces: readonly LaidPiece[];
  /** Of each piece: itself, or its panels. */
  readonly parts: readonly (readonly LaidPiece[])[];
  readonly panels: PanelPlan;
  /** Where the band is cut level, beside where a wall that bends asks for it. */
  readonly levels: Levels;
  /** Colours of the artwork. */
  readonly colours: readonly string[];
  /** Cover strips on its borders. */
  readonly strips?: Strips;
}

/** The job laid, from memory where it was laid before. @throws Refused where it can't be. */
export const laidJob = (input: MakeInput): LaidJob =>
  input.recall ? input.recall.of('laid', groundKey(input), () => layJob(input)) : layJob(input);

function layJob(input: MakeInput): LaidJob {
  const { plans, levels, findings: levelled } = inLevels(input, planPieces(input), () => bandArt(input));
  if (plans.length > 1 && input.job.artwork?.lay === 'rigid')
    throw new Refused([rigidOnPieces(input.jobFile)]);
  const drawn = readDrawn(input, () => groundOf(plans));
  const laid = layPieces(plans, drawn);
  refuseWinding(input, { artwork: drawn !== undefined, pieces: plans.length, joints: 0 });
  const pieces =
    drawn && input.job.seam.style === 'winding' ? laid.map((piece) => windPiece(input, piece, drawn)) : laid;
  const planned = planPanels(
    { ...input, ...(drawn ? { pattern: goesAround(drawn.plan) } : {}) },
    pieces.map(({ plan: { template }, pattern }) => ({
      template: straightEnds(template),
      layers: pattern?.wrap.layers ?? [],
    })),
  );
  refuseWinding(input, { artwork: drawn !== undefined, pieces: plans.length, joints: planned.joints.length });
  const panels = { ...planned, findings: [...levelled, ...planned.findings] };
  const parts = pieces.map((piece) => partsOfPiece(piece, drawn, panels));
  const strips = drawn && borderStrips(input.job, drawn.plan, pieces);
  const colours = drawn?.colours ?? [];
  return { plans, pieces, parts, panels, levels, colours, ...(strips ? { strips } : {}) };
}

/** The art of the whole band in one piece, to see where it may be cut. */
function bandArt(input: MakeInput): BandArt {
  const plans = planPieces(input);
  const drawn = readDrawn(input, () => groundOf(plans));
  const [{ lay, pattern } = {}] = layPieces(plans, drawn);
  return {
    layers: pattern?.wrap.layers ?? [],
    ...(drawn && lay ? { pattern: { plan: drawn.plan, lay } } : {}),
  };
}

const coloursOf = (motifs: readonly PlacedMotif[]): readonly string[] =>
  motifs.flatMap(({ motif }) => motif.layers.map(({ colour }) => colour));

/** A piece of the band with the art on it: whole, or a panel of it. */
interface LaidPiece {
  readonly plan: Plan;
  readonly pattern: LaidPattern | undefined;
  readonly lay: Lay | undefined;
  readonly panel?: PanelPlace;
}

/** The pieces from the foot up, the pattern going on from each to the next. */
function layPieces(plans: readonly Plan[], drawn: Drawn | undefined): readonly LaidPiece[] {
  let y = 0;
  return plans.map((plan) => {
    const lay = drawn && layOn(drawn.artwork, plan.template, { around: drawn.ground.girth, y });
    if (lay) y = lay.fromAlong(plan.template.band.to);
    return { plan, lay, pattern: drawn && lay && layPattern(plan, drawn, lay) };
  });
}

/** The piece with ends that wind through its pattern. */
function windPiece(input: MakeInput, piece: LaidPiece, drawn: Drawn): LaidPiece {
  const { plan, lay } = piece;
  if (!lay) return piece;
  const layOn = (template: Template) => layPattern({ ...plan, template }, drawn, lay);
  const parts = equalParts(drawn.plan.closing);
  const motifs = readMotifs(input).map((placed) => motifOnSheet(placed, plan.lengths));
  const wound = windEnds({ ...input, motifs }, plan.template, parts, layOn);
  return { ...piece, plan: { ...plan, template: wound.template }, pattern: wound.pattern };
}

const goesAround = ({ around, closing }: PatternPlan) => ({ around, equalParts: equalParts(closing) });

/** The piece itself, or its panels. */
function partsOfPiece(
  piece: LaidPiece,
  drawn: Drawn | undefined,
  { joints, overlap }: Pick<PanelPlan, 'joints' | 'overlap'>,
): readonly LaidPiece[] {
  const { plan, lay } = piece;
  if (joints.length === 0) return [piece];
  return panelPlaces(plan.template, { joints, overlap }).map(({ template, panel }) => {
    const part = { ...plan, template };
    const laid = drawn && lay && layPattern(part, drawn, lay);
    // What the tile does not join at is told of the whole piece, once.
    const pattern = laid && piece.pattern && { ...laid, findings: piece.pattern.findings };
    return { plan: part, lay, pattern, panel };
  });
}

/** Where a piece stands among those of its job, from the foot up; and the band that all of them cover. */
interface PiecePlace {
  readonly index: number;
  readonly count: number;
  readonly whole: Band;
  /** Turns at which each of them is parted. */
  readonly joints: readonly number[];
  readonly levels: Levels;
  readonly strips?: Strips;
}

function draftPiece(
  input: MakeInput & { readonly motifs: readonly PlacedMotif[]; readonly laid: readonly LaidMotif[] },
  { plan, pattern, panel }: LaidPiece,
  place: PiecePlace,
  said: readonly Finding[],
): Draft {
  const { template, flatBands } = plan;
  // What is said of a panel's piece is said of the whole of it.
  const whole = panel ? { ...plan, template: panel.whole } : plan;
  const { motifs } = input;
  const { places, findings: misplaced } = checkPlaces(input, whole, motifs);
  const onSheet = motifs.map((placed) => motifOnSheet(placed, plan.lengths));
  const layers = layersWith(pattern?.wrap.layers ?? [], onSheet, template);
  const turned = turnInFile(template, input.job, panel !== undefined);
  const relief = reliefOf(input, fieldOfWrap(template), layers);
  const drawn = wrapDrawings({
    template,
    flatLimits: flatBands.flatMap(({ from, to }) => [from, to].map(plan.lengths.toGrown)),
    layers,
    relief: relief.cuts,
    runOff,
    notes: input.linesOnly
      ? []
      : guideNotes({
          units: input.job.units,
          name: input.job.name,
          blank: input.blank,
          template,
          band: plan.band,
          flatBands,
          piece: place,
          seam: input.job.seam,
          ...(panel ? { panel } : {}),
          film: input.job.film,
          ...(input.job.shown === undefined ? {} : { shown: input.job.shown }),
          ...(pattern ? { pattern: pattern.plan } : {}),
        }),
    joints: markedJoints(place, panel),
    ...seamMeaning(input.job.seam),
    ...topOf(input),
    turned,
    ...(input.blank.handle ? { handleSpan: input.blank.handle.spans } : {}),
    noted: notedPlaces(input.blank, onSheet, plan),
    words: input.tools.words,
  });
  // A plain template is drawn from its foot corner on, as a maker would.
  const drawings = input.plain || input.linesOnly ? drawn : drawingsInOrder(drawn);
  const { name } = input.job;
  // What both have in common is written once.
  const written: WrittenGroups = new Map();
  const cutFile = { title: `${name}: cut`, filled: false };
  const guideFile = { title: `${name}: guide`, filled: true };
  return {
    mark: markOf(place, panel),
    cut: input.linesOnly ? '' : writeSvg(drawings.cut, cutFile, written),
    guide: writeSvg(input.linesOnly ? withoutApart(drawings.guide) : drawings.guide, guideFile, written),
    job: {
      ...resolvedJob(withJoints(input.job, place), place.whole, pattern, place.strips),
      coats: plan.coats.coats,
    },
    plan,
    turned,
    ...(panel ? { panel } : {}),
    level: place,
    pattern,
    toFile: compose(rotation(turned), translation(drawings.origin.x, drawings.origin.y)),
    layers,
    motifs,
    laid: input.laid,
    places,
    findings: [
      ...plan.findings,
      ...barePlaces({ ...input, plain: input.plain === true || decoratesApart(input) }, whole).filter(
        ({ rule }) => rule !== 'lip-zone' || place.index === place.count - 1,
      ),
      ...said,
      ...trimFindings(input),
      ...(pattern?.findings ?? []),
      ...motifs.flatMap(({ findings }) => findings),
      ...misplaced,
      ...relief.findings,
    ],
  };
}

/** Whether all that decorates is cut apart: the wrap is then a plain template, to lay it by. */
export const decoratesApart = ({
  job,
  motifs,
}: {
  readonly job: Job;
  readonly motifs: readonly PlacedMotif[];
}): boolean => job.artwork === undefined && motifs.length > 0 && motifs.every(({ isApart }) => isApart);

function layPattern({ template, lengths }: Plan, drawn: Drawn, lay: Lay): LaidPattern {
  const { artwork, plan, mended, ground, findings, job, jobFile } = drawn;
  const edges = edgeOptions(job, template.band, ground.band);
  const options = { ...plan, template, runOff, lay, edges };
  const { wrap: laid, findings: said } =
    artwork.lay === 'rigid' ? wholeMotifs(drawn, options) : { wrap: wrapPattern(options), findings: [] };
  const wrap = { ...laid, layers: keptLayers(laid.layers) };
  const { file } = artwork;
  return {
    artwork,
    plan,
    ground,
    wrap,
    lay,
    ...(mended ? { mended } : {}),
    findings: [
      ...findings,
      ...findingsOnWall([...said, ...(plan.covers ? [] : joinFindings(wrap.mismatches, file))], lengths),
      ...(plan.covers ? [underStrips(file)] : []),
      ...layerNote(wrap.layers, artwork, cutsEach(job)),
      ...edgeFindings(wrap.edges, job, jobFile),
      ...rowsCutFindings(job, jobFile, { layers: wrap.layers, template, ends: edges.ends }),
    ],
  };
}

/** The job with the joints of its panels, and the heights at which it is cut level. */
function withJoints(job: Job, { joints, levels }: Pick<PiecePlace, 'joints' | 'levels'>): Job {
  if (joints.length === 0 && levels.at.length === 0) return job;
  const panels = { ...(job.panels ?? standardPanels), joints };
  return { ...job, panels: levels.at.length === 0 ? panels : { ...panels, levels: levels.at } };
}

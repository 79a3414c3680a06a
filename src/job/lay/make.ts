// The whole job: readings and a tile in, drawings out; then, from the written files, the proof.
import type { Band } from '../../blank/flat-band.ts';
import { wrapDrawings } from '../../cut/drawings/wrap-drawing.ts';
import { fieldOfWrap } from '../../cut/films/relief.ts';
import type { GuideSheet } from '../../cut/guide/guide-sheet.ts';
import { type WrittenGroups, writeSvg } from '../../deliver/write-svg.ts';
import { withoutApart } from '../../drawing/drawing.ts';
import type { Finding } from '../../finding.ts';
import { compose, rotation, translation } from '../../geometry/affine.ts';
import type { MotifPlace } from '../../pattern/rigid/motif.ts';
import { resolvedJob } from '../artwork/drawn.ts';
import { refuseUnknownLayers } from '../artwork/layer-films.ts';
import { drawingsInOrder } from '../blade/cutting.ts';
import type { Draft } from '../draft.ts';
import { guideNotes } from '../guide/guide-notes.ts';
import { notedPlaces } from '../guide/noted-places.ts';
import { stripPlaces } from '../guide/strip-places.ts';
import type { MakeInput } from '../make-input.ts';
import { clearFindings, leastLeft } from '../motifs/cleared-around.ts';
import { type LaidMotif, laidMotifs } from '../motifs/laid-apart.ts';
import { jointFindings } from '../motifs/motif-joints.ts';
import { layersWith } from '../motifs/motif-layers.ts';
import { checkPlaces } from '../motifs/motif-places.ts';
import { readMotifs } from '../motifs/motifs.ts';
import { pastBand } from '../motifs/past-band.ts';
import { wordsOnPattern, wordsOnWords } from '../motifs/words-on-pattern.ts';
import { reliefOf } from '../parts/relief.ts';
import { barePlaces } from '../plan/bare-places.ts';
import { motifOnSheet } from '../plan/on-sheet.ts';
import type { Levels } from '../plan/panel-places.ts';
import { markedJoints, markOf } from '../plan/panel-places.ts';
import { turnInFile } from '../plan/panels.ts';
import { wholeBand } from '../plan/pattern-ground.ts';
import { runOff } from '../plan/plan.ts';
import { trimFindings } from '../plan/plan-findings.ts';
import { seamMeaning, topOf } from '../plan/seam.ts';
import { decoratesApart, type PlacedMotif } from '../typed/placed-motif.ts';
import { type Job, standardPanels } from '../typed/resolved-job.ts';
import type { Strips } from '../typed/strips.ts';
import { withFilmChecks } from './film-checks.ts';
import { type LaidPiece, laidJob } from './laid-job.ts';

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
      draftPiece({ ...input, motifs, laid }, part, place, [
        ...panels.findings,
        ...jointFindings(input, laid, { joints, levels }),
        ...pastBand(laid, whole, input.jobFile),
        ...wordsOnWords(input, motifs, plan),
        ...(pattern ? wordsOnPattern(input, motifs, plan, pattern.wrap.layers) : []),
      ]),
    );
    if (input.unchecked) return drafts;
    return withFilmChecks(input, { ...plan, pattern, drafts, ...(strips ? { strips } : {}) });
  });
}

const coloursOf = (motifs: readonly PlacedMotif[]): readonly string[] =>
  motifs.flatMap(({ motif }) => motif.layers.map(({ colour }) => colour));

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

interface PieceInput extends MakeInput {
  readonly motifs: readonly PlacedMotif[];
  readonly laid: readonly LaidMotif[];
}

/** What the guide of a piece shows and says besides its art. */
const guideOf = (
  input: PieceInput,
  { plan, pattern, panel }: LaidPiece,
  place: PiecePlace,
  motifs: readonly PlacedMotif[],
) => {
  const { job, blank } = input;
  const { template, flatBands, band } = plan;
  return {
    flatLimits: flatBands.flatMap(({ from, to }) => [from, to].map(plan.lengths.toGrown)),
    joints: markedJoints(place, panel),
    ...seamMeaning(job.seam),
    ...topOf(input),
    ...(blank.handle ? { handleSpan: blank.handle.spans } : {}),
    noted: [...notedPlaces(blank, motifs, plan), ...stripPlaces(input, plan, place)],
    notes: input.linesOnly
      ? []
      : guideNotes({
          units: job.units,
          name: job.name,
          blank,
          template,
          band,
          flatBands,
          piece: place,
          seam: job.seam,
          ...(panel ? { panel } : {}),
          film: job.film,
          ...(job.shown === undefined ? {} : { shown: job.shown }),
          ...(pattern ? { pattern: pattern.plan } : {}),
        }),
  };
};

/** The two files of a piece. */
function writtenPiece(
  { job, linesOnly, plain }: PieceInput,
  drawn: GuideSheet,
): Pick<Draft, 'cut' | 'guide'> {
  // A plain template is drawn from its foot corner on, as a maker would.
  const { cut, guide } = plain || linesOnly ? drawn : drawingsInOrder(drawn);
  // What both have in common is written once.
  const written: WrittenGroups = new Map();
  const guideFile = { title: `${job.name}: guide`, filled: true };
  return {
    cut: linesOnly ? '' : writeSvg(cut, { title: `${job.name}: cut`, filled: false }, written),
    guide: writeSvg(linesOnly ? withoutApart(guide) : guide, guideFile, written),
  };
}

/** What is said of where a piece lies: at its lip only of the topmost. */
const bareFindings = (input: PieceInput, plan: LaidPiece['plan'], { index, count }: PiecePlace) => {
  const isPaper = decoratesApart(input.job);
  return barePlaces({ ...input, isPaper, plain: input.plain === true || isPaper }, plan).filter(
    ({ rule }) => rule !== 'lip-zone' || index === count - 1,
  );
};

/** Of a motif's own plan on a wall that bends: the flat wall that it is laid on, wherever it goes on to. */
const homeOf = (plan?: LaidPiece['plan']): Pick<MotifPlace, 'home'> =>
  plan && plan.wall.kind !== 'straight' ? { home: plan.template.wall } : {};

function draftPiece(input: PieceInput, piece: LaidPiece, place: PiecePlace, said: readonly Finding[]): Draft {
  const { plan, pattern, panel } = piece;
  const { template } = plan;
  const { job, motifs } = input;
  // What is said of a panel's piece is said of the whole of it.
  const whole = panel ? { ...plan, template: panel.whole } : plan;
  const { places, findings: misplaced } = checkPlaces(input, whole, motifs);
  const onSheet = motifs.map((placed, i) => ({
    ...motifOnSheet(placed, plan.lengths),
    ...homeOf(input.laid[i]?.plan),
  }));
  const { layers, leftOut } = layersWith(pattern?.wrap.layers ?? [], onSheet, template, leastLeft(job.film));
  const turned = turnInFile(template, job, panel !== undefined);
  const relief = reliefOf(input, fieldOfWrap(template), layers);
  const drawn = wrapDrawings({
    template,
    layers,
    relief: relief.cuts,
    runOff,
    turned,
    words: input.tools.words,
    ...guideOf(input, piece, place, onSheet),
  });
  return {
    mark: markOf(place, panel),
    ...writtenPiece(input, drawn),
    job: {
      ...resolvedJob(withJoints(job, place), place.whole, pattern, place.strips),
      coats: plan.coats.coats,
    },
    plan,
    turned,
    ...(panel ? { panel } : {}),
    level: place,
    pattern,
    toFile: compose(rotation(turned), translation(drawn.origin.x, drawn.origin.y)),
    layers,
    leftOut,
    motifs,
    laid: input.laid,
    places,
    findings: [
      ...plan.findings,
      ...bareFindings(input, whole, place),
      ...said,
      ...trimFindings(input),
      ...(pattern?.findings ?? []),
      ...motifs.flatMap(({ findings }) => findings),
      ...misplaced,
      ...clearFindings(input, motifs, leftOut),
      ...relief.findings,
    ],
  };
}

/** The job with the joints of its panels, and the heights at which it is cut level. */
function withJoints(job: Job, { joints, levels }: Pick<PiecePlace, 'joints' | 'levels'>): Job {
  if (joints.length === 0 && levels.at.length === 0) return job;
  const panels = { ...(job.panels ?? standardPanels), joints };
  return { ...job, panels: levels.at.length === 0 ? panels : { ...panels, levels: levels.at } };
}

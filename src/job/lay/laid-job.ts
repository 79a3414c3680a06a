// A job laid: its pieces planned and parted, the pattern on each. The same for all vessels that differ only in what is put on singly.

import { Refused } from '../../finding.ts';
import type { Shape } from '../../geometry/contour.ts';
import { keptLayers } from '../../geometry/kept-contour.ts';
import { equalParts } from '../../pattern/lattice/closing.ts';
import { type BandHeights, heightsOf } from '../../pattern/lay/band-edges.ts';
import type { Lay } from '../../pattern/lay/lay.ts';
import { wrapPattern } from '../../pattern/lay/wrap.ts';
import { withPeriods } from '../../pattern/period/period.ts';
import type { Template } from '../../unroll/template.ts';
import { type Drawn, layerNote, readDrawn } from '../artwork/drawn.ts';
import { borderStrips } from '../closing/border-strips.ts';
import { edgeFindings, edgeOptions } from '../closing/edge-findings.ts';
import { groundKey } from '../closing/ground-key.ts';
import { type BandArt, inLevels } from '../closing/levels.ts';
import { joinFindings, type PatternPlan, underStrips } from '../closing/pattern-plan.ts';
import { rowsCutFindings } from '../closing/rows-cut.ts';
import { seamSliverFindings } from '../closing/seam-slivers.ts';
import type { LaidPattern } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';
import { laidMotifs } from '../motifs/laid-apart.ts';
import { motifRoom } from '../motifs/motif-joints.ts';
import { readMotifs } from '../motifs/motifs.ts';
import { findingsOnWall, motifOnSheet } from '../plan/on-sheet.ts';
import type { Levels } from '../plan/panel-places.ts';
import { type PanelPlace, panelPlaces } from '../plan/panel-places.ts';
import { isParted, type PanelPlan, planPanels } from '../plan/panels.ts';
import { groundOf } from '../plan/pattern-ground.ts';
import { planPieces } from '../plan/pieces.ts';
import { type Plan, runOff } from '../plan/plan.ts';
import { cutsEach } from '../typed/resolved-job.ts';
import type { Strips } from '../typed/strips.ts';
import { rigidOnPieces, wholeMotifs } from './rigid-pattern.ts';
import { begunAtSeam, groundOfSeam, startsOn } from './seam-place.ts';
import { refuseWinding, straightEnds, windEnds } from './winding.ts';

/** What a job comes to before anything is laid on it singly: the same for all vessels that differ in that alone. */
export interface LaidJob {
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
  const drawn = drawnToLay(input, plans);
  if (drawn) input.next?.('laying the pattern');
  const laid = layPieces(plans, drawn);
  refuseWinding(input, { artwork: drawn !== undefined, pieces: plans.length, joints: 0 });
  const pieces =
    drawn && input.job.seam.style === 'winding'
      ? laid.map((piece) => windPiece(input, piece, drawn))
      : laid.map((piece, i) => withSeamTold(input, piece, laid.length > 1 ? i + 1 : undefined));
  const room = { shapes: roomOfMotifs(input, plans) };
  const planned = planPanels(
    { ...input, ...(drawn ? { pattern: goesAround(drawn.plan) } : {}) },
    pieces.map(({ plan: { template }, pattern }) => ({
      template: straightEnds(template),
      layers: [...(pattern?.wrap.layers ?? []), room],
    })),
  );
  refuseWinding(input, { artwork: drawn !== undefined, pieces: plans.length, joints: planned.joints.length });
  const panels = { ...planned, findings: [...levelled, ...planned.findings] };
  const parts = pieces.map((piece) => partsOfPiece(piece, drawn, panels));
  const strips = drawn && borderStrips(input.job, drawn.plan, pieces);
  const colours = drawn?.colours ?? [];
  return { plans, pieces, parts, panels, levels, colours, ...(strips ? { strips } : {}) };
}

/** The drawing and how it lies on each piece of the band, from the foot up. */
interface DrawnOnBand extends Drawn {
  readonly lays: readonly Lay[];
  /** Where the band ends in the laid pattern. */
  readonly heights: BandHeights;
}

function onBand(drawn: Drawn, plans: readonly Plan[]): DrawnOnBand {
  const starts = startsOn(plans, drawn.artwork, drawn.ground);
  const [first, last] = [starts[0], starts.at(-1)];
  const heights = {
    ...(first ? heightsOf(first, ['foot']) : {}),
    ...(last ? heightsOf(last, ['lip']) : {}),
  };
  return { ...drawn, lays: starts.map(({ lay }) => lay), heights };
}

/** The drawing, its periods worked out, begun where the seam is to be. */
function drawnToLay(input: MakeInput, plans: readonly Plan[]): DrawnOnBand | undefined {
  if (input.job.artwork) input.next?.('reading the artwork');
  const read = readDrawn(input, () => groundOf(plans));
  if (!read) return undefined;
  const { plan, artwork, ground } = read;
  const worked = { ...read, plan: { ...plan, tile: withPeriods(plan.tile, plan.lattice) } };
  const begun = begunAtSeam(input, worked, groundOfSeam(input.job.seam, startsOn(plans, artwork, ground)));
  return onBand(begun, plans);
}

/** The art of the whole band in one piece, to see where it may be cut. */
function bandArt(input: MakeInput): BandArt {
  const plans = planPieces(input);
  const read = readDrawn(input, () => groundOf(plans));
  const drawn = read && onBand(read, plans);
  const [{ lay, pattern } = {}] = layPieces(plans, drawn);
  return {
    layers: [...(pattern?.wrap.layers ?? []), { shapes: roomOfMotifs(input, plans) }],
    ...(drawn && lay ? { pattern: { plan: drawn.plan, lay } } : {}),
  };
}

/** What joints are to keep off, where the sheet asks for any. */
const roomOfMotifs = (input: MakeInput, plans: readonly Plan[]): readonly Shape[] =>
  isParted(plans, input.job) ? motifRoom(laidMotifs(plans, readMotifs(input))) : [];

/** A piece of the band with the art on it: whole, or a panel of it. */
export interface LaidPiece {
  readonly plan: Plan;
  readonly pattern: LaidPattern | undefined;
  readonly lay: Lay | undefined;
  readonly panel?: PanelPlace;
}

/** The pieces from the foot up, with the pattern on them. */
function layPieces(plans: readonly Plan[], drawn: DrawnOnBand | undefined): readonly LaidPiece[] {
  return plans.map((plan, i) => {
    const lay = drawn?.lays[i];
    return { plan, lay, pattern: drawn && lay && layPattern(plan, drawn, lay) };
  });
}

/** The piece with ends that wind through its pattern. */
function windPiece(input: MakeInput, piece: LaidPiece, drawn: DrawnOnBand): LaidPiece {
  const { plan, lay } = piece;
  if (!lay) return piece;
  const layOn = (template: Template) => layPattern({ ...plan, template }, drawn, lay);
  const parts = equalParts(drawn.plan.closing);
  const motifs = readMotifs(input).map((placed) => motifOnSheet(placed, plan.lengths));
  const wound = windEnds({ ...input, motifs }, plan.template, parts, layOn);
  return { ...piece, plan: { ...plan, template: wound.template }, pattern: wound.pattern };
}

/** The piece, and what its straight sides leave of motifs. `number`: of several, from the foot up. */
function withSeamTold(input: MakeInput, piece: LaidPiece, number: number | undefined): LaidPiece {
  const { plan, pattern } = piece;
  if (!pattern) return piece;
  const told = seamSliverFindings(input, plan.template, pattern.wrap.layers, number);
  return { ...piece, pattern: { ...pattern, findings: [...pattern.findings, ...told] } };
}

const goesAround = ({ around, closing }: PatternPlan) => ({ around, equalParts: equalParts(closing) });

/** The piece itself, or its panels. */
function partsOfPiece(
  piece: LaidPiece,
  drawn: DrawnOnBand | undefined,
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

function layPattern({ template, lengths }: Plan, drawn: DrawnOnBand, lay: Lay): LaidPattern {
  const { artwork, plan, mended, ground, findings, job, jobFile } = drawn;
  const edges = edgeOptions(job, template.band, ground.band, drawn.heights);
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

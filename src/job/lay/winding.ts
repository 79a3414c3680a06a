// A job whose seam winds through the gaps of its pattern: where it can't, what it does, and what that spares.
import { artCrossed } from '../../cut/checks/art-crossed.ts';
import { isMotifLayer } from '../../drawing/motif-name.ts';
import { type Finding, note, Refused, stop } from '../../finding.ts';
import { inMm } from '../../lengths/length.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import type { FilmCut } from '../../pattern/seam/film-crossed.ts';
import { withinEnds } from '../../pattern/seam/winding-ends.ts';
import { straightCut, windingCut, windingRadius, windingSeam } from '../../pattern/seam/winding-seam.ts';
import { girthAt, sweep } from '../../unroll/flat-wall.ts';
import { type Template, turnOfEdge, woundTemplate } from '../../unroll/template.ts';
import { windingTurn } from '../../unroll/winding.ts';
import { seamSliverFindings } from '../closing/seam-slivers.ts';
import type { LaidPattern } from '../draft.ts';
import type { MakeInput } from '../make-input.ts';
import { layersWith } from '../motifs/motif-layers.ts';
import { runOff } from '../plan/plan.ts';
import type { WindingReport } from '../plan/winding-report.ts';
import type { PlacedMotif } from '../typed/placed-motif.ts';
import { typedAt } from '../typed/typed-at.ts';

interface WoundSeam {
  readonly template: Template;
  readonly report: WindingReport;
  readonly finding: Finding;
}

/** What of a job a winding seam hangs by. */
type WindingInput = Pick<MakeInput, 'job' | 'jobFile' | 'blank'>;

/** @throws Refused where nothing winds: without artwork, at a handle, over several pieces or panels. */
export function refuseWinding(
  { job, jobFile, blank }: WindingInput,
  has: { readonly artwork: boolean; readonly pieces: number; readonly joints: number },
): void {
  if (job.seam.style !== 'winding') return;
  const why = !has.artwork
    ? 'winds through the gaps of a pattern, and this job has no artwork; give some, or another style'
    : blank.handle
      ? 'joins two ends, and a handle keeps these apart; leave the seam out'
      : has.pieces > 1
        ? `winds on one piece, and this wall takes ${has.pieces} stacked ones; give another style, or a "band" that lies flat in one`
        : has.joints > 0
          ? 'winds on one piece, and the sheet is too small for it, so it would be cut in panels; give a larger sheet, "panels": { "joints": [] }, or another style'
          : undefined;
  if (why) throw new Refused([stop('no-winding', typedAt(jobFile, 'seam.style'), `"winding" ${why}`)]);
}

/** The seam through the gaps of a pattern; `layOn` lays all film on a piece with straight ends. */
function woundSeam(
  { job, jobFile }: WindingInput,
  template: Template,
  parts: number,
  layOn: (template: Template) => readonly WrapLayer[],
): WoundSeam {
  const layers = layOn(template).map((layer) => ({ ...layer, isOnce: isMotifLayer(layer.name) }));
  const winding = windingSeam({
    template,
    layers,
    parts,
    clear: job.film.minWidth,
    overlap: job.seam.overlap,
  });
  const wound = woundTemplate(template, winding);
  if (meetsItself(wound)) throw new Refused([tooWide(jobFile)]);
  const cut = windingCut(wound, winding, layOn(straightEnds(wound)));
  const radius = windingRadius(wound, winding);
  const { from, to } = template.band;
  const turns = Array.from({ length: 201 }, (_, i) => windingTurn(winding, from + ((to - from) * i) / 200));
  const report: WindingReport = {
    ...cut,
    straight: bestStraight(
      template,
      parts,
      layers.filter(({ isOnce }) => !isOnce),
    ),
    radius: Number.isFinite(radius) ? radius : null,
    turns: { from: Math.min(...turns), to: Math.max(...turns) },
  };
  return {
    template: wound,
    report,
    finding: note('winding-seam', typedAt(jobFile, 'seam'), inWords(report)),
  };
}

/** A piece's pattern with ends that wind through it and its motifs; `layOn` lays the pattern on straight ends. */
export function windEnds(
  input: WindingInput & { readonly motifs: readonly PlacedMotif[] },
  straight: Template,
  parts: number,
  layOn: (template: Template) => LaidPattern,
): { readonly template: Template; readonly pattern: LaidPattern } {
  const { template, report, finding } = woundSeam(
    input,
    straight,
    parts,
    (of) => layersWith(layOn(of).wrap.layers, input.motifs, of).layers,
  );
  const pattern = layOn(straightEnds(template));
  const layers = pattern.wrap.layers.map((layer) => ({
    ...layer,
    shapes: withinEnds(layer.shapes, template, runOff),
  }));
  return {
    template,
    pattern: {
      ...pattern,
      wrap: { ...pattern.wrap, layers },
      winding: report,
      findings: [...pattern.findings, finding, ...seamSliverFindings(input, template, layers)],
    },
  };
}

/** The straight sides that enclose ends that wind. */
export function straightEnds({ winding: _, ...template }: Template): Template {
  return template;
}

const meetsItself = ({ wall, piece, left, right }: Template): boolean =>
  [piece.from, piece.to].some(
    (along) =>
      Math.abs(sweep(wall)) * (turnOfEdge(wall, right, along) - turnOfEdge(wall, left, along)) >= 2 * Math.PI,
  );

const tooWide = (file: WindingInput['jobFile']): Finding =>
  stop(
    'overlaps-itself',
    typedAt(file, 'seam.style'),
    'with ends that wind the flat ring would meet itself; give another style',
  );

/** Straight lines tried in one period, mm apart. */
const apart = 0.1;

/** The straight seam that cuts the least of a pattern, wherever in a period it stands. */
function bestStraight(template: Template, parts: number, layers: readonly WrapLayer[]): FilmCut {
  const { wall, band } = template;
  const first = Math.floor(0.5 * parts) / parts;
  const count = Math.ceil(girthAt(wall, (band.from + band.to) / 2) / parts / apart);
  const step = 1 / (count * parts);
  const sums = artCrossed({ template, layers, first, step, count, offset: 0 });
  const best = sums.reduce((least, sum, i) => (sum < (sums[least] ?? Infinity) ? i : least), 0);
  return straightCut(template, first + best * step, layers);
}

const crossingsInWords = ({ crossings, length }: FilmCut): string =>
  crossings === 0
    ? 'no film'
    : `film at ${crossings} ${crossings === 1 ? 'place' : 'places'}, ${inMm(Number(length.toFixed(2)))} in all`;

/** What a winding seam does, in words. */
export const inWords = (report: WindingReport): string => {
  const turns =
    report.radius === null
      ? 'it is straight'
      : `it turns on ${inMm(Number(report.radius.toFixed(2)))} at the tightest`;
  return `the seam winds through the pattern and cuts ${crossingsInWords(report)}; the best straight one would cut ${crossingsInWords(report.straight)}; ${turns}`;
};

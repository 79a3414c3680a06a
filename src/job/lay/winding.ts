// A job whose seam winds through the gaps of its pattern: where it can't, what it does, and what that spares.
import { artCrossed } from '../../cut/checks/art-crossed.ts';
import { type Finding, note, Refused, stop } from '../../finding.ts';
import { chorded } from '../../geometry/chords.ts';
import type { Contour } from '../../geometry/contour.ts';
import { least } from '../../geometry/extremes.ts';
import type { Point } from '../../geometry/point.ts';
import { inMm } from '../../lengths/length.ts';
import type { WrapLayer } from '../../pattern/lay/wrap.ts';
import { motifOnPiece, shapesOf } from '../../pattern/rigid/motif.ts';
import type { FilmCut } from '../../pattern/seam/film-crossed.ts';
import { middleOfCheapest } from '../../pattern/seam/seam-place.ts';
import { withinEnds } from '../../pattern/seam/winding-ends.ts';
import { type MotifRoom, motifRoomOf, windingPast } from '../../pattern/seam/winding-place.ts';
import {
  straightAt,
  straightCut,
  windingCut,
  windingRadius,
  windingSeam,
} from '../../pattern/seam/winding-seam.ts';
import { girthAt, sweep } from '../../unroll/flat-wall.ts';
import { type Template, turnOfEdge, woundTemplate } from '../../unroll/template.ts';
import { type Winding, windingTurn } from '../../unroll/winding.ts';
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

/** What lays film on a piece with straight ends: the pattern alone, and all that is cut with the wrap. */
interface LaysFilm {
  readonly pattern: (template: Template) => readonly WrapLayer[];
  readonly all: (template: Template) => readonly WrapLayer[];
}

/** The seam through the gaps of a pattern, past the motifs that are cut with it where there is room. */
function woundSeam(
  { job, jobFile, motifs }: WindingInput & { readonly motifs: readonly PlacedMotif[] },
  template: Template,
  parts: number,
  lays: LaysFilm,
): WoundSeam {
  const pattern = lays.pattern(template);
  const straight = bestStraight(template, parts, pattern);
  const around = (winding: Winding, layOn: LaysFilm['all']) => {
    const wound = woundTemplate(template, winding);
    if (meetsItself(wound)) throw new Refused([tooWide(jobFile)]);
    return { winding, wound, cut: windingCut(wound, winding, layOn(straightEnds(wound))) };
  };
  const options = { template, parts, clear: job.film.minWidth, overlap: job.seam.overlap };
  const found = around(windingSeam({ ...options, layers: pattern, isPeriodic: true }), lays.pattern);
  // A grid knows film by its cells: where it lets a line along motifs cut more, the straight one is the better seam.
  const isDearer = straight.cut.length < found.cut.length - told;
  const best = isDearer ? straightAt(found.winding, straight.turn) : found.winding;
  const past = windingPast(best, parts, roomsOf(motifs, template, job.film.minWidth));
  const { winding, wound, cut } =
    past === found.winding
      ? found
      : around(past ?? windingSeam({ ...options, layers: lays.all(template), isPeriodic: false }), lays.all);
  const radius = windingRadius(wound, winding);
  const { from, to } = template.band;
  const turns = Array.from({ length: 201 }, (_, i) => windingTurn(winding, from + ((to - from) * i) / 200));
  const between = { from: Math.min(...turns), to: Math.max(...turns) };
  const report: WindingReport = {
    ...cut,
    straight: isUpright(between) ? cut : straight.cut,
    radius: Number.isFinite(radius) ? radius : null,
    turns: between,
  };
  return {
    template: wound,
    report,
    finding: note('winding-seam', typedAt(jobFile, 'seam'), inWords(report)),
  };
}

/** How finely the outline of a motif is held against a seam, mm. */
const roomChords = 0.1;

const pointsOf = (contour: Contour): Point[] => {
  const { x, y } = chorded(contour, roomChords);
  return Array.from(x, (at, i) => ({ x: at, y: y[i] ?? 0 }));
};

/** The room that motifs cut with the wrap take on its wall, kept `clear` mm from. */
const roomsOf = (motifs: readonly PlacedMotif[], template: Template, clear: number): readonly MotifRoom[] =>
  motifs
    .filter(({ isApart }) => !isApart)
    .map((placed) => {
      const shapes = shapesOf(motifOnPiece(placed.motif, template, placed, runOff));
      const points = shapes.flatMap(({ contours }) => contours.flatMap(pointsOf));
      return motifRoomOf(template.wall, placed.at.turn, points, Math.max(clear, placed.clear ?? 0));
    });

/** A piece's pattern with ends that wind through it and its motifs; `layOn` lays the pattern on straight ends. */
export function windEnds(
  input: WindingInput & { readonly motifs: readonly PlacedMotif[] },
  straight: Template,
  parts: number,
  layOn: (template: Template) => LaidPattern,
): { readonly template: Template; readonly pattern: LaidPattern } {
  const { template, report, finding } = woundSeam(input, straight, parts, {
    pattern: (of) => layOn(of).wrap.layers,
    all: (of) => layersWith(layOn(of).wrap.layers, input.motifs, of).layers,
  });
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

/** Lengths of film closer than this are told alike, mm. */
const told = 0.01;

/** The straight seam that cuts the least of a pattern, wherever in a period it stands: as near to turn 0 as the pattern has it. */
function bestStraight(
  template: Template,
  parts: number,
  layers: readonly WrapLayer[],
): { readonly turn: number; readonly cut: FilmCut } {
  const { wall, band } = template;
  // At the end of a run of lines that cut the least an edge of film may lie along the line.
  const leastOf = (first: number, step: number, count: number) => {
    const sums = artCrossed({ template, layers, first, step, count, offset: 0 });
    return first + middleOfCheapest(sums, least(sums) + told) * step;
  };
  const count = Math.ceil(girthAt(wall, (band.from + band.to) / 2) / parts / apart);
  const step = 1 / (count * parts);
  // Between films that all but meet up the wall what is cut falls off steeply: a tenth of the way tells millimetres there.
  const turn = leastOf(leastOf(Math.floor(0.5 * parts) / parts, step, count) - step, step / 10, 21);
  return { turn: turn - Math.round(turn * parts) / parts, cut: straightCut(template, turn, layers) };
}

const crossingsInWords = ({ crossings, length }: FilmCut): string =>
  crossings === 0
    ? 'no film'
    : `film at ${crossings} ${crossings === 1 ? 'place' : 'places'}, ${inMm(Number(length.toFixed(2)))} in all`;

/** Turns closer than this are one: under a thousandth of a mm around. */
const oneTurn = 1e-7;

const isUpright = ({ from, to }: WindingReport['turns']): boolean => to - from < oneTurn;

/** What a winding seam does, in words. */
function inWords({ radius, straight, turns, ...cut }: WindingReport): string {
  if (isUpright(turns))
    return `the seam goes straight up, for none that winds cuts less of the pattern; it cuts ${crossingsInWords(cut)}`;
  const bends =
    radius === null
      ? 'it leans, and is straight'
      : `it turns on ${inMm(Number(radius.toFixed(2)))} at the tightest`;
  return `the seam winds through the pattern and cuts ${crossingsInWords(cut)}; the best straight one would cut ${crossingsInWords(straight)}; ${bends}`;
}

// The work of `repeat`: does a tile join itself, what repeat does it truly have, and how can it close on this blank.

import type { TraceOptions } from '../../artwork/picture/traced-picture.ts';
import type { Normalise } from '../../artwork/svg/svg-normalise.ts';
import type { ArtContent, Tile } from '../../artwork/tile.ts';
import type { Finding, Where } from '../../finding.ts';
import { degrees } from '../../lengths/angle.ts';
import { measuredLength, type Units } from '../../lengths/length.ts';
import { shown } from '../../lengths/shown.ts';
import { toldIn } from '../../lengths/told-in.ts';
import type { OpenStretch } from '../../pattern/joins/at-border.ts';
import type { BandEnd } from '../../pattern/lay/edge-slivers.ts';
import type { SeamPlace } from '../../pattern/seam/seam-place.ts';
import type { RepeatStudy } from '../../pattern/study/repeat-study.ts';
import { tileOfWay, type Way, type WayKind, waysToClose } from '../../pattern/ways/ways.ts';
import { groundFindings, refuseUnknownGround } from '../artwork/art-ground.ts';
import { readStacked, type SheetContent } from '../artwork/stacked-art.ts';
import { coversOf, nearerFiner, saysRepeat, studyOf, takenWay, wayGroundOf } from '../closing/choose-way.ts';
import { type WayEdges, wayInWords } from '../closing/way-words.ts';
import {
  edgeInWords,
  groundOfSeam,
  isUnlucky,
  mayMove,
  seamAtInWords,
  seamPlace,
  startsOn,
} from '../lay/seam-place.ts';
import { groundOf, type PatternGround } from '../plan/pattern-ground.ts';
import { type PiecesInput, planPieces } from '../plan/pieces.ts';
import type { Plan } from '../plan/plan.ts';
import { type Recall, remembered } from '../recall.ts';
import { toldOnce } from '../told-once.ts';
import type { Artwork, Job } from '../typed/resolved-job.ts';
import { typedAt } from '../typed/typed-at.ts';
import { studyFindings, studyInWords } from './repeat-words.ts';
import { endsCutBy, refusalsOf } from './way-limits.ts';

export interface RepeatInput extends PiecesInput {
  readonly job: PiecesInput['job'] & Pick<Job, 'edges'> & { readonly artwork: Artwork };
  /** The artwork; how wide it is, mm, and in how many colours it is traced, where the job does not say. */
  readonly art: { readonly content: ArtContent; readonly file: string } & TraceOptions;
  /** Drawings that lie over it in the job, from the lowest up: the repeat is that of all together. */
  readonly over?: readonly SheetContent[];
  readonly units: Units;
  /** Plain fonts that texts in it may be set in. */
  readonly fonts?: readonly Uint8Array[];
  readonly normalise: Normalise;
  /** What is known of the artwork alone, kept for other vessels; left out, nothing is. Of files with other names. */
  readonly recall?: Recall;
  /** Told what is done next, where the artwork is so large that it takes seconds. */
  readonly next?: (says: string) => void;
}

/** Artwork of fewer bytes, or shapes, than these is read, or looked through, at once. */
const manyBytes = 1e6;
const manyShapes = 3000;

/** One way of the list; mm, degrees, and distortion in percent. */
export interface WayReport {
  readonly number: number;
  readonly key: string;
  readonly kind: WayKind;
  readonly around: number;
  readonly rows: number;
  readonly scaleAcross: number;
  readonly scaleUp: number;
  /** How far a motif's proportions change where the band changes them most, in percent; and on the widest motif, mm. */
  readonly distortion: number;
  readonly distortionMm: number;
  readonly closes: readonly [number, number];
  readonly leanDeg: number;
  /** The ends of the band that film reaches over: cut there by straight edges. */
  readonly cutAt: readonly BandEnd[];
  readonly says: string;
}

export interface RepeatReport {
  readonly joins: boolean;
  /** The same, where it can be told from the tile alone. */
  readonly told: 'joins' | 'does-not-join' | 'cannot-be-told';
  /** The farthest that what crosses the borders is from where it goes on, mm. */
  readonly mismatch: number;
  /** Where the borders stay open, the worst first; mm in the drawing, y down. */
  readonly open: readonly (Omit<OpenStretch, 'at'> & { readonly x: number; readonly y: number })[];
  /** Where outlines meet their copies at an angle. */
  readonly bends: readonly { readonly x: number; readonly y: number; readonly deg: number }[];
  readonly period: PeriodReport | null;
  /** Other repeats that the art may have, the likelier first. */
  readonly others: readonly PeriodReport[];
  readonly ways: readonly WayReport[];
  /** Where a straight seam cuts little by the way that `make` takes, or else by the first; null where the drawing's left edge will do. */
  readonly seamAt: WaySeam | null;
  /** The key of the way that `make` takes when none is named; null where it asks. */
  readonly taken: string | null;
  readonly checks: readonly Finding[];
}

/** A place for the seam, and the way it is for. */
export interface WaySeam extends SeamPlace {
  readonly way: string;
  /** Whether the pattern begins there unasked. */
  readonly moves: boolean;
}

export interface PeriodReport {
  readonly a: readonly [number, number];
  readonly b: readonly [number, number];
  readonly confidence: number;
}

/** What is known of a tile on a blank. */
export interface RepeatDescription {
  readonly report: RepeatReport;
  readonly lines: readonly string[];
  readonly tile: Tile;
  readonly study: RepeatStudy;
  readonly ways: readonly Way[];
}

/** Where the ground is named: with the command, or in the job. */
const groundAt = ({ art, jobFile }: RepeatInput): Where =>
  art.ground || jobFile === undefined ? { key: '--ground' } : typedAt(jobFile, 'artwork.ground');

/** Places told one by one; more only add to a count. */
const mostPlaces = 50;

/** All that can be said of a tile's repeat on a blank. @throws Refused where tile, job or blank can't be used. */
export function describeRepeat(input: RepeatInput): RepeatDescription {
  const { job, art, units } = input;
  const read = readArt(input);
  const { tile, findings } = read;
  const plans = planPieces(input);
  const ground = groundOf(plans);
  const study = remembered(input.recall, 'repeat study', artKey(input), () => studied(input, tile));
  const { around: _, ...free } = job.artwork;
  const ways = waysToClose(tile, study, wayGroundOf(free, job.edges, ground));
  const taken = takenIn(input, tile, study, ways, ground);
  const cutBy = endsCutBy(input, tile, study, ground);
  const refusals = refusalsOf(input, tile, ways, plans.length);
  const refusal = taken && refusals.get(taken.lattice);
  const isRefused = ({ lattice }: Way) => refusals.has(lattice);
  const report: RepeatReport = {
    joins: study.joins,
    told: study.isDoubtful ? 'cannot-be-told' : study.joins ? 'joins' : 'does-not-join',
    mismatch: study.mismatch,
    open: study.borders.open.slice(0, mostPlaces).map(({ at, ...rest }) => ({ ...rest, x: at.x, y: at.y })),
    bends: study.borders.kinks
      .slice(0, mostPlaces)
      .map(({ at, angle }) => ({ x: at.x, y: at.y, deg: degrees(angle) })),
    period: study.period ? periodReport(study.period) : null,
    others: study.others.slice(0, 5).map(periodReport),
    ways: ways.map((way, i) =>
      wayReport(way, i + 1, units, { edges: job.edges, cut: cutBy(way), isRefused: isRefused(way) }),
    ),
    seamAt: seamAtOf(input, tile, study, taken ?? ways[0], plans, ground),
    taken: refusal ? null : (taken?.key ?? null),
    checks: toldOnce([
      ...(refusal || ways.every(isRefused) ? [...refusals.values()] : []),
      ...findings,
      ...groundFindings(tile, art.file),
      ...plans.flatMap((plan) => plan.findings),
      ...studyFindings(tile, study, art.file),
    ]),
  };
  const girth = measuredLength(ground.girth, units);
  const band = measuredLength(ground.bandLength, units);
  return {
    report,
    lines: [
      ...studyInWords(tile, study, art.file, units),
      `on ${input.blank.name} the pattern has ${girth} to go around in the middle of a band ${band} long; the ways it can close, best first:`,
      ...report.ways.map(({ number, key, says }) => `${number}. ${key}: ${says}`),
      ...(report.seamAt ? [toldIn(seamInWords(report.seamAt), units)] : []),
      refusal ? `make refuses ${taken.key}, as is told below` : takenInWords(job.artwork, taken, study, ways),
    ],
    tile,
    study,
    ways,
  };
}

/** All of the artwork, and of what is typed, that its tile and its repeat come from. */
function artKey({ job, art: { content: _, ...art }, over = [] }: RepeatInput): unknown {
  const { way: __, around: ___, ...drawn } = job.artwork;
  return [drawn, art, over.map(({ content: ____, ...rest }) => rest)];
}

/** The artwork as one tile. @throws Refused where it can't be read, or names a ground that it has not. */
function readArt(input: RepeatInput): ReturnType<typeof readStacked> {
  const { job, art, over = [], normalise } = input;
  const { across, colours, ground: asked } = job.artwork;
  const { length } = art.content;
  const named = art.ground ?? asked;
  const options = {
    ...(across === undefined ? {} : { across }),
    ...(colours === undefined ? {} : { colours }),
    ...(input.fonts ? { fonts: input.fonts } : {}),
    mayStep: over.length === 0 && !saysRepeat(job.artwork.repeat),
    ...art,
    ...(named === undefined ? {} : { ground: named }),
  };
  const read = remembered(input.recall, 'repeat art', artKey(input), () => {
    if (length >= manyBytes) input.next?.(`reading ${(length / 1e6).toFixed(1)} MB of artwork`);
    return readStacked([art, ...over], normalise, options);
  });
  refuseUnknownGround(named, read, groundAt(input));
  return read;
}

function studied({ job, next }: RepeatInput, tile: Tile): RepeatStudy {
  const shapes = tile.layers.reduce((sum, layer) => sum + layer.shapes.length, 0);
  if (shapes >= manyShapes) next?.(`looking for the repeat of ${shapes} shapes`);
  return studyOf(tile, job.artwork.repeat);
}

/** Where the seam goes by a way; null at the drawing's left edge, or where the job says. */
function seamAtOf(
  { job }: RepeatInput,
  tile: Tile,
  study: RepeatStudy,
  way: Way | undefined,
  plans: readonly Plan[],
  ground: PatternGround,
): RepeatReport['seamAt'] {
  if (!way || typeof job.artwork.seamAt === 'number' || job.pieces === 'gores') return null;
  const { lattice, closing, key } = way;
  const plan = { tile: tileOfWay(way, tile), lattice, closing, way: key, ...coversOf(study, way) };
  const on = groundOfSeam(job.seam, startsOn(plans, job.artwork, ground));
  const place = on && seamPlace(plan, on);
  const moves = mayMove(job.artwork, plan);
  return place && (moves || isUnlucky(place)) ? { ...place, way: key, moves } : null;
}

const seamInWords = (seam: WaySeam): string =>
  `by ${seam.way} ${seam.moves ? `the pattern begins ${seamAtInWords(seam)}` : edgeInWords(seam)}`;

const periodReport = ({ a, b, confidence }: NonNullable<RepeatStudy['period']>): PeriodReport => ({
  a: [a.x, a.y],
  b: [b.x, b.y],
  confidence,
});

const wayReport = (
  way: Way,
  number: number,
  units: Units,
  { isRefused, ...ends }: WayEdges & { readonly isRefused: boolean },
): WayReport => ({
  number,
  key: way.key,
  kind: way.kind,
  around: way.around,
  rows: way.rows,
  scaleAcross: way.closing.scaleAcross,
  scaleUp: way.closing.scaleUp,
  distortion: way.distortion * 100,
  distortionMm: way.distortionMm,
  closes: [way.closing.n, way.closing.m],
  leanDeg: degrees(way.closing.lean),
  cutAt: ends.cut,
  says: `${wayInWords(way, units, ends)}${isRefused ? '; make refuses it by this lay' : ''}`,
});

/** The way that `make` takes: the one that the job names, or the one it takes by the job's own count around. */
function takenIn(
  { job: { artwork, edges } }: RepeatInput,
  tile: Tile,
  study: RepeatStudy,
  ways: readonly Way[],
  ground: PatternGround,
): Way | undefined {
  const { way: named, around } = artwork;
  const wayGround = wayGroundOf(artwork, edges, ground);
  const counted = around === undefined ? ways : waysToClose(tile, study, wayGround);
  if (named === undefined) return takenWay(study, counted, artwork, wayGround);
  return typeof named === 'number' ? counted[named - 1] : counted.find(({ key }) => key === named);
}

function takenInWords(
  { way: named, around }: Artwork,
  taken: Way | undefined,
  study: RepeatStudy,
  ways: readonly Way[],
): string {
  if (named !== undefined)
    return taken
      ? `make takes ${taken.key}, which the job names`
      : `the job names the way ${shown(named)}, which is none of these: make will refuse it`;
  if (!taken)
    return 'none is clearly best, so make asks: name one in the job, "artwork": { "way": ... }, by its number or its name';
  const other = `"artwork": { "way": "${taken.key}" }`;
  if (around !== undefined) return `make takes ${taken.key}, by the count around that the job gives`;
  return `make takes ${taken.key} unless the job names another: ${other}${passedInWords(taken, study, ways)}`;
}

/** Why what is listed first is not what a tile that joins is laid by. */
function passedInWords(taken: Way, study: RepeatStudy, ways: readonly Way[]): string {
  const [first] = ways;
  if (!first || first.key === taken.key || !study.joins || study.stepped) return '';
  const why = nearerFiner(study, ways)
    ? 'for a tile that joins is laid whole'
    : 'as some of the art does not recur by that repeat';
  return `; ${first.key}, which comes nearer the drawn size, is not taken unasked, ${why}`;
}

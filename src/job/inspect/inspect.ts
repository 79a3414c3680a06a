// `inspect`: whether artwork can be cut, weeded and carried, before anything is laid.

import type { TraceOptions } from '../../artwork/picture/traced-picture.ts';
import { stackedTile, toldApart } from '../../artwork/stacked-tile.ts';
import type { Normalise } from '../../artwork/svg/svg-normalise.ts';
import { type ArtContent, type DrawnArt, noArea, readArt, uncutRules } from '../../artwork/tile.ts';
import { drawnFaults, type FilmLayer, layerEdges, layerFaults } from '../../cut/checks/art-faults.ts';
import { isInFrame, maskLayer, unitedLayer, withinFrame } from '../../cut/checks/film-layers.ts';
import type { CutLimits } from '../../cut/checks/limits.ts';
import { weededFilm } from '../../cut/films/weeding.ts';
import type { DrawnLine } from '../../drawing/drawn-line.ts';
import type { Finding, Where } from '../../finding.ts';
import type { Point } from '../../geometry/point.ts';
import { inMm } from '../../lengths/length.ts';
import { groundFindings, refuseUnknownGround } from '../artwork/art-ground.ts';
import { limitsOf } from '../artwork/cut-limits.ts';
import { drawnFinding, filmFinding } from '../artwork/fault-words.ts';
import {
  type ArtToMend,
  joinArt,
  largestMove,
  type MendNote,
  mendArt,
  mendNotes,
} from '../artwork/mend-art.ts';
import { cuttingOf, filmWeeding, toldWeeding, type WeedingReport } from '../blade/weeding.ts';
import type { Cutter, Film } from '../typed/material.ts';

/** Artwork, with how wide it is to be, mm, as drawn if left out; and in how many colours a picture is traced. */
export interface InspectInput extends TraceOptions {
  readonly content: ArtContent;
  readonly file: string;
  /** Drawings laid over it, from the lowest up. */
  readonly over?: readonly OverContent[];
  readonly film: Film;
  readonly cutter: Cutter;
  /** Whether it is to be mended, and what is told is of the mended art. */
  readonly mend?: boolean;
  /** Plain fonts that texts in it may be set in. */
  readonly fonts?: readonly Uint8Array[];
  readonly normalise: Normalise;
  /** Told what is done next, before each of the longer steps. */
  readonly next?: (says: string) => void;
}

/** A drawing laid over another. */
export interface OverContent {
  readonly content: ArtContent;
  readonly file: string;
  readonly colour?: string;
}

export interface InspectReport {
  /** Numbered in their order from 1, as the marks of the picture are. */
  readonly checks: readonly Finding[];
  /** How many pieces of film stay. */
  readonly pieces: number;
  /** mm */
  readonly cutLength: number;
  /** What stays and what is weeded, and how long cutting and weeding take; left out where there is no film. */
  readonly weeding?: WeedingReport;
  /** Of mended art: how many places were, and how far an edge moved at most, mm. */
  readonly mended?: { readonly places: number; readonly largestMove: number };
}

/** Art before and after it was mended. */
export interface Mended {
  readonly before: readonly FilmLayer[];
  readonly after: readonly FilmLayer[];
  /** Lines that were joined with none. */
  readonly left: readonly DrawnLine[];
  readonly notes: readonly MendNote[];
  readonly places: number;
  readonly largestMove: number;
}

/** Artwork looked at: brought to its size, its film in areas that overlap nowhere. */
export interface Inspected {
  readonly report: InspectReport;
  readonly art: DrawnArt;
  /** The film that stays, at its final size, mm. */
  readonly film: readonly FilmLayer[];
  /** Final size over the size that places are told in. */
  readonly scale: number;
  readonly mended?: Mended;
}

/** @throws Refused where the artwork can't be read. */
export function inspect(input: InspectInput): Inspected {
  const { file, film: filmOf, cutter } = input;
  const { art, fileOf } = readSheets(input);
  refuseUnknownGround(input.ground, { tile: art, grounds: art.grounds }, { key: '--ground' });
  const limits = limitsOf(filmOf, cutter);
  input.next?.('uniting what is drawn');
  const united = art.layers.map(unitedLayer);
  // A file that gives its size is told in its own mm; one that does not, in the size it is given here.
  const { scale } = art;
  const atIn = (layer: string, { x, y }: Point): Where => ({
    file: fileOf(layer),
    x: x / scale,
    y: y / scale,
  });
  const at = ({ x, y }: Point): Where => ({ file, x: x / scale, y: y / scale });
  const mended = input.mend
    ? mendedOf({ ...art, layers: united }, art.lines, limits, filmOf.use, at)
    : undefined;
  const whole = mended?.after ?? united;
  const layers = whole.map((layer) => withinFrame(layer, art));
  const filmIn = (of: readonly FilmLayer[]) =>
    filmOf.use === 'mask' ? of.map((layer) => maskLayer(layer, art)) : of;
  const film = filmIn(layers);
  input.next?.('looking at its lines');
  const lineFaults = mended
    ? drawnFaults(mended.left, limits).filter(({ rule }) => rule === 'open-line')
    : drawnFaults(art.lines, limits);
  // Looked for in whole shapes: what the frame cuts of one goes on in the next copy of a tile.
  const isSeen = ({ at }: { readonly at: Point }) => isInFrame(at, art);
  input.next?.('looking for thin film and gaps');
  const checks = [
    ...layerFaults(filmIn(whole), limits)
      .filter(isSeen)
      .map((fault) => filmFinding(fault, atIn(fault.layer, fault.at), limits, filmOf.use)),
    ...[...lineFaults, ...layerEdges(whole)]
      .filter(isSeen)
      .map((fault) => drawnFinding(fault, atIn(fault.line.colour, fault.at), limits)),
    ...readingFindings(art),
    ...groundFindings(art, file),
    ...nothingToCut(art, file),
    ...(mended?.notes ?? []).map(({ finding }) => finding),
  ];
  input.next?.('reckoning what is weeded');
  const report = {
    checks: [...checks].sort((a, b) => seriousness(b) - seriousness(a)),
    pieces: film.reduce((sum, { shapes }) => sum + shapes.length, 0),
    ...workWith(layers, art, input),
    ...(mended ? { mended: { places: mended.places, largestMove: mended.largestMove } } : {}),
  };
  return { report, art, film, scale, ...(mended ? { mended } : {}) };
}

/** What cutting and weeding the layers takes. */
function workWith(
  layers: readonly FilmLayer[],
  art: DrawnArt,
  { film: { use }, cutter }: InspectInput,
): Pick<InspectReport, 'cutLength' | 'weeding'> {
  const films = layers.map((layer) =>
    filmWeeding(layer.name, weededFilm({ art: layer.shapes, ground: maskLayer(layer, art).shapes }, use)),
  );
  const cutting = cuttingOf(
    layers.flatMap(({ shapes }) => shapes),
    cutter,
  );
  return {
    cutLength: cutting.cutLength,
    ...(layers.length === 0 ? {} : { weeding: toldWeeding(films, cutting, use, cutter) }),
  };
}

/** The drawings as one, and which file has a layer. @throws Refused where one can't be read, or they are no tile together. */
function readSheets(input: InspectInput): {
  readonly art: DrawnArt;
  readonly fileOf: (layer: string) => string;
} {
  const { over = [] } = input;
  const read = ({ content, file }: OverContent): DrawnArt => {
    input.next?.(`reading ${file}`);
    return readArt(content, file, input.normalise, input);
  };
  const { file } = input;
  const first = read(input);
  if (over.length === 0) return { art: first, fileOf: () => file };
  const sheets = over.map((sheet) => ({ ...sheet, art: read(sheet) }));
  const {
    tile,
    sheets: stacked,
    grounds,
    findings,
  } = stackedTile(toldApart([{ file, art: first }, ...sheets]));
  const files = new Map(
    stacked.flatMap((sheet) => sheet.lines.map(({ colour }) => [colour, sheet.file] as const)),
  );
  const lines = stacked.flatMap((sheet) => sheet.lines);
  return {
    art: { ...first, ...tile, lines, grounds, findings },
    fileOf: (layer) => files.get(layer) ?? file,
  };
}

/** Outlines joined, then the film mended. */
function mendedOf(
  art: ArtToMend,
  lines: readonly DrawnLine[],
  limits: CutLimits,
  use: Film['use'],
  at: (p: Point) => Where,
): Mended {
  const joined = joinArt(art, lines, limits);
  const mended = mendArt({ ...art, layers: joined.layers }, limits, use);
  const mends = [...joined.mends, ...mended.mends];
  return {
    before: art.layers,
    left: joined.left,
    after: mended.layers,
    notes: mendNotes(mends, limits, at),
    places: mends.length,
    largestMove: largestMove(mends),
  };
}

const seriousness = ({ level }: Finding): number => ['note', 'look', 'stop'].indexOf(level);

/** Art without film is no clean art, unless what is no film in it is told by itself. */
function nothingToCut({ layers, lines, findings }: DrawnArt, file: string): Finding[] {
  const isTold = lines.length > 0 || findings.some(({ rule }) => uncutRules.has(rule));
  return layers.length > 0 || isTold ? [] : [{ ...noArea(file), level: 'look' }];
}

/** What was found in reading. */
const readingFindings = ({ findings }: DrawnArt): Finding[] =>
  findings.map((finding) => {
    if (!uncutRules.has(finding.rule)) return finding;
    const says =
      finding.rule === 'text' ? `${finding.says}; no text is measured here until then` : finding.says;
    return { ...finding, level: 'look', says };
  });

/** What was found, in words. */
export function inspectionLines({ report }: Inspected): string[] {
  const { checks, pieces, cutLength, mended, weeding } = report;
  const found = checks.filter(({ level }) => level !== 'note').length;
  return [
    ...(mended
      ? [
          `mended in ${mended.places} ${mended.places === 1 ? 'place' : 'places'}; an edge moved by ${inMm(mended.largestMove)} at most`,
        ]
      : []),
    `${pieces} ${pieces === 1 ? 'piece' : 'pieces'} of film, ${(cutLength / 1000).toFixed(2)} m of cutting`,
    ...(weeding?.says ?? []),
    found === 0
      ? 'nothing stands against cutting it'
      : `${found} ${found === 1 ? 'thing wants' : 'things want'} your eye, told below`,
  ];
}

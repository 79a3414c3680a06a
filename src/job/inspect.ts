// `inspect`: whether artwork can be cut, weeded and carried, before anything is laid.
import type { Normalise } from '../artwork/svg-normalise.ts';
import { type ArtContent, type DrawnArt, readArt, uncutRules } from '../artwork/tile.ts';
import type { TraceOptions } from '../artwork/traced-picture.ts';
import { drawnFaults, type FilmLayer, layerEdges, layerFaults } from '../cut/art-faults.ts';
import { maskLayer, unitedLayer } from '../cut/film-layers.ts';
import type { DrawWords } from '../drawing/words.ts';
import type { Finding, Where } from '../finding.ts';
import { contourLength } from '../geometry/arc-length.ts';
import type { Shape } from '../geometry/contour.ts';
import type { Point } from '../geometry/point.ts';
import { inspectedPicture } from '../picture/inspected.ts';
import { limitsOf } from './cut-limits.ts';
import { drawnFinding, filmFinding } from './fault-words.ts';
import type { Cutter, Film } from './resolved-job.ts';

/** Artwork, with how wide it is to be, mm, as drawn if left out; and in how many colours a picture is traced. */
export interface InspectInput extends TraceOptions {
  readonly content: ArtContent;
  readonly file: string;
  readonly film: Film;
  readonly cutter: Cutter;
  readonly normalise: Normalise;
}

export interface InspectReport {
  /** Numbered in their order from 1, as the marks of the picture are. */
  readonly checks: readonly Finding[];
  /** How many pieces of film stay. */
  readonly pieces: number;
  /** mm */
  readonly cutLength: number;
}

/** Artwork looked at: brought to its size, its film in areas that overlap nowhere. */
export interface Inspected {
  readonly report: InspectReport;
  readonly art: DrawnArt;
  /** The film that stays, at its final size, mm. */
  readonly film: readonly FilmLayer[];
  /** Final size over the size that places are told in. */
  readonly scale: number;
}

/** @throws Refused where the artwork can't be read. */
export function inspect(input: InspectInput): Inspected {
  const { content, file, film: filmOf, cutter, normalise } = input;
  const art = readArt(content, file, normalise, input);
  const limits = limitsOf(filmOf, cutter);
  const united = art.layers.map(unitedLayer);
  const film = filmOf.use === 'mask' ? united.map((layer) => maskLayer(layer, art)) : united;
  // A file that gives its size is told in its own mm; one that does not, in the size it is given here.
  const { scale } = art;
  const at = ({ x, y }: Point): Where => ({ file, x: x / scale, y: y / scale });
  const checks = [
    ...layerFaults(film, limits).map((fault) => filmFinding(fault, at(fault.at), limits, filmOf.use)),
    ...[...drawnFaults(art.lines, limits), ...layerEdges(united)].map((fault) =>
      drawnFinding(fault, at(fault.at), limits),
    ),
    ...readingFindings(art),
  ];
  const report = {
    checks: [...checks].sort((a, b) => seriousness(b) - seriousness(a)),
    pieces: film.reduce((sum, { shapes }) => sum + shapes.length, 0),
    cutLength: united.reduce((sum, { shapes }) => sum + outlineLength(shapes), 0),
  };
  return { report, art, film, scale };
}

const seriousness = ({ level }: Finding): number => ['note', 'look', 'stop'].indexOf(level);

const outlineLength = (shapes: readonly Shape[]): number =>
  shapes.reduce((sum, { contours }) => sum + contours.reduce((own, c) => own + contourLength(c), 0), 0);

/** What was found in reading. */
const readingFindings = ({ findings }: DrawnArt): Finding[] =>
  findings.map((finding) => (uncutRules.has(finding.rule) ? { ...finding, level: 'look' } : finding));

/** The picture of inspected artwork, each finding that has a place marked with its number. */
export function inspectionPicture(
  { art, film, report, scale }: Inspected,
  title: string,
  words: DrawWords,
): string {
  const marks = report.checks.flatMap(({ where, rule, says }, i) =>
    where.x === undefined || where.y === undefined
      ? []
      : [{ number: i + 1, at: { x: where.x * scale, y: where.y * scale }, rule, says }],
  );
  const notes = report.checks.flatMap(({ where, says, rule }, i) =>
    where.x === undefined ? [`${i + 1}. ${rule}: ${says}`] : [],
  );
  return inspectedPicture(
    {
      title,
      width: art.width,
      height: art.height,
      layers: film,
      lines: [],
      marks,
      notes: [...(report.checks.length === 0 ? ['nothing stands against cutting it'] : []), ...notes],
    },
    words,
  );
}

/** What was found, in words. */
export function inspectionLines({ report }: Inspected): string[] {
  const { checks, pieces, cutLength } = report;
  const found = checks.filter(({ level }) => level !== 'note').length;
  return [
    `${pieces} ${pieces === 1 ? 'piece' : 'pieces'} of film, ${(cutLength / 1000).toFixed(2)} m of cutting`,
    found === 0
      ? 'nothing stands against cutting it'
      : `${found} ${found === 1 ? 'thing wants' : 'things want'} your eye, told below`,
  ];
}

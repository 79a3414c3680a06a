// Weeding told ahead: what stays and what is picked out, how long the blade takes and how long the hand.
import { partedFilm } from '../../cut/films/parted-film.ts';
import { type WeededFilm, weededFilm, weedingRule } from '../../cut/films/weeding.ts';
import { readSvg } from '../../deliver/read-svg.ts';
import type { Drawing, DrawnGroup, DrawnPath } from '../../drawing/drawing.ts';
import { contourLength } from '../../geometry/arc-length.ts';
import type { Contour, Shape } from '../../geometry/contour.ts';
import { shapeArea, signedArea } from '../../geometry/measure.ts';
import { travelOf } from '../../sheet/cut-order.ts';
import type { FilmUse } from '../artwork/fault-words.ts';
import type { Recall } from '../recall.ts';
import type { Cutter } from '../typed/material.ts';
import type { Job } from '../typed/resolved-job.ts';
import { bladeHome } from './cutting.ts';
import { artOf, filmsOfArt } from './films-of-art.ts';

export interface Pieces {
  readonly pieces: number;
  /** mm² */
  readonly area: number;
}

/** How long a machine takes. */
export interface CuttingReport {
  /** mm */
  readonly cutLength: number;
  /** How often the blade comes down. */
  readonly lifts: number;
  readonly cutSeconds: number;
}

/** One film. */
export interface FilmWeeding {
  /** The cut file it is in; left out where there is none. */
  readonly file?: string;
  /** The layer of art; empty where there is none. */
  readonly layer: string;
  /** The film it is cut from, as sheets are told by it: its colour; left out where it is all one film. */
  readonly film?: string;
  readonly stays: Pieces;
  readonly waste: Pieces;
  readonly weedSeconds: number;
}

export interface WeedingReport extends CuttingReport {
  readonly use: FilmUse;
  readonly stays: Pieces;
  readonly waste: Pieces;
  readonly weedSeconds: number;
  /** The rule of thumb that `weedSeconds` comes of. */
  readonly rule: string;
  /** All of it in words. */
  readonly says: readonly string[];
  readonly films: readonly FilmWeeding[];
}

/** How long a cutter takes for lines in the order they stand. */
export function cuttingOf(paths: readonly DrawnPath[], { speed, lift, passes }: Cutter): CuttingReport {
  const cutLength = lengthOf(paths.flatMap(({ contours }) => contours));
  const { lifts } = travelOf(paths, bladeHome);
  return { cutLength, lifts, cutSeconds: passes * (cutLength / speed + lifts * lift) };
}

const lengthOf = (contours: readonly Contour[]): number =>
  contours.reduce((sum, contour) => sum + contourLength(contour), 0);

/** A cut file as it is delivered, and the lines that are wanted of it, where a knife's axis takes another way. */
export interface CutFile {
  readonly stem: string;
  /** Of layers that have cut files of their own: the stem of each. */
  readonly layers?: readonly { readonly layer: string; readonly stem: string }[];
  readonly cut: string;
  readonly wanted: string;
}

/** Both of a cut file, read back. */
export interface ReadCutFile extends Pick<CutFile, 'stem' | 'layers'> {
  readonly cut: Drawing;
  readonly wanted: Drawing;
}

export function readCutFile({ cut, wanted, ...of }: CutFile): ReadCutFile {
  const { stem } = of;
  const read = (text: string) => readSvg(text, `${stem}.cut.svg`);
  const drawing = read(wanted);
  return { ...of, wanted: drawing, cut: cut === wanted ? drawing : read(cut) };
}

export type FilmsOfFile = readonly {
  readonly stem: string;
  /** The cut file it is in. */
  readonly file: string;
  readonly layer: string;
  readonly colour: string | undefined;
  /** The film it is cut from. */
  readonly from: string;
  readonly outlines: readonly Contour[];
  readonly relief: readonly Contour[];
  readonly film: WeededFilm;
}[];

const contoursOf = (groups: readonly DrawnGroup[]): readonly Contour[] =>
  groups.flatMap(({ paths }) => paths.flatMap(({ contours }) => contours));

/**
 * The films of a cut file, one a layer of art; none where it holds no art, for then nothing is weeded. A layer that the
 * vessels of a list share is parted once, where `recall` is given.
 */
export function filmsOfFile(
  { stem, layers, wanted: drawing }: ReadCutFile,
  use: FilmUse,
  recall?: Recall,
): FilmsOfFile {
  const outlines = contoursOf(drawing.groups.filter(({ role }) => role === 'outline'));
  const relief = contoursOf(drawing.groups.filter(({ role }) => role === 'relief'));
  return filmsOfArt(artOf(drawing)).map(({ film, group: { layer = '', colour, paths } }) => ({
    stem,
    file: `${layers?.find((one) => one.layer === layer)?.stem ?? stem}.cut.svg`,
    layer,
    colour,
    from: film,
    outlines,
    relief,
    film: filmOf(outlines, paths, use, recall),
  }));
}

function filmOf(
  outlines: readonly Contour[],
  paths: readonly DrawnPath[],
  use: FilmUse,
  recall: Recall | undefined,
): WeededFilm {
  const part = () => weededFilm(partedFilm(outlines, paths.map(shapeOf)), use);
  return recall ? recall.of('weeding', JSON.stringify([use, outlines, paths]), part) : part();
}

/** A path of a cut file as an area: its holes are cut before its outer line, and stand before it. */
const shapeOf = ({ contours }: DrawnPath): Shape => ({
  contours: [...contours].sort((a, b) => Math.abs(signedArea(b)) - Math.abs(signedArea(a))),
});

const piecesOf = (shapes: readonly Shape[]): Pieces => ({
  pieces: shapes.length,
  area: shapes.reduce((sum, shape) => sum + shapeArea(shape), 0),
});

const sumOf = (all: readonly Pieces[]): Pieces => ({
  pieces: all.reduce((sum, { pieces }) => sum + pieces, 0),
  area: all.reduce((sum, { area }) => sum + area, 0),
});

/** A film in figures. */
export const filmWeeding = (layer: string, { stays, waste, seconds }: WeededFilm): FilmWeeding => ({
  layer,
  stays: piecesOf(stays),
  waste: piecesOf(waste),
  weedSeconds: seconds,
});

/** What one vessel's files ask of the cutter and of the hand; undefined where no art is cut. */
export function weedingReport(
  files: readonly ReadCutFile[],
  { film: { use }, cutter }: Pick<Job, 'film' | 'cutter'>,
  films: FilmsOfFile,
): WeedingReport | undefined {
  if (films.length === 0) return undefined;
  const groups = files.flatMap(({ cut }) => cut.groups);
  const paths = groups.flatMap((group) => group.paths);
  const rows = films.map(({ file, layer, from, film }) => ({
    file,
    film: from,
    ...filmWeeding(layer, film),
  }));
  return toldWeeding(rows, cuttingOf(paths, cutter), use, cutter);
}

/** The films that are cut, in the order they are laid. */
export const filmsIn = (weeded: readonly Pick<FilmWeeding, 'film' | 'layer'>[]): readonly string[] => [
  ...new Set(weeded.map(({ film, layer }) => film ?? layer)),
];

/** Films and the machine's time put together, in figures and in words. */
export function toldWeeding(
  films: readonly FilmWeeding[],
  cutting: CuttingReport,
  use: FilmUse,
  cutter: Cutter,
): WeedingReport {
  const [stays, waste] = [sumOf(films.map((one) => one.stays)), sumOf(films.map((one) => one.waste))];
  const weedSeconds = films.reduce((sum, one) => sum + one.weedSeconds, 0);
  const said = { ...cutting, use, stays, waste, weedSeconds };
  return { ...said, rule: ruleInWords(), says: weedingWords(said, cutter), films };
}

const counted = ({ pieces, area }: Pieces): string =>
  `${pieces} ${pieces === 1 ? 'piece' : 'pieces'}, ${(area / 100).toFixed(1)} cm²`;

/** A time as it is said of work: seconds under two minutes, then minutes. */
export const timeInWords = (seconds: number): string =>
  seconds < 120 ? `${seconds.toFixed(0)} s` : `${(seconds / 60).toFixed(0)} min`;

const ruleInWords = (): string => {
  const { piece, edge, small, hold } = weedingRule;
  return `${piece} s for each piece of waste, 1 s for ${edge} mm of edge, ${hold} s more for each piece under ${small / 100} cm² that stays (common practice, no source: time your own hand and go by that)`;
};

function weedingWords(
  {
    use,
    stays,
    waste,
    cutLength,
    lifts,
    cutSeconds,
    weedSeconds,
  }: Omit<WeedingReport, 'rule' | 'says' | 'films'>,
  { speed, lift, passes }: Cutter,
): string[] {
  const isDecal = use === 'decal';
  return [
    isDecal
      ? `a decal: the artwork stays (${counted(stays)}); weed what lies around and inside it (${counted(waste)})`
      : `a mask: what lies around and inside the artwork stays (${counted(stays)}); weed the artwork (${counted(waste)})`,
    `${(cutLength / 1000).toFixed(2)} m of cutting and ${lifts} lifts of the blade: about ${timeInWords(cutSeconds)} at ${speed} mm a second and ${lift} s a lift${passes > 1 ? `, ${passes} times` : ''}, by the cutter's profile`,
    `weeding: about ${timeInWords(weedSeconds)}, by ${ruleInWords()}`,
  ];
}

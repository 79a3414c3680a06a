// `prove`: what a folder of delivered files holds, put to the proof.
import type { Band } from '../../blank/flat-band.ts';
import { gcd } from '../../pattern/lattice/lattice.ts';
import type { AskedMotif, Cleared, LayerAsMade } from '../../prove/asked.ts';
import { proofOfGores } from '../../prove/gore-proof.ts';
import { type Proof, proofOf, type SheetText } from '../../prove/proof.ts';
import type { PieceText } from '../../prove/written/delivered-file.ts';
import { askedGoresOf } from '../proof/gore-proof.ts';
import { askedOf, type KnownPattern } from '../proof/proof.ts';
import { readBlank } from '../typed/read-blank.ts';
import { readJob } from '../typed/read-job.ts';
import { isObject } from '../typed/schema.ts';

/** The files of a folder: JSON parsed, cut files and guides as text by their names. */
export interface DeliveredFolder {
  readonly job: unknown;
  readonly blank: unknown;
  readonly blankFile: string;
  readonly report?: unknown;
  readonly texts: Readonly<Record<string, string>>;
}

/** What the files of a part are named by. */
type PieceKind = 'wrap' | 'strip' | 'cover' | 'collar';

/**
 * The parts there are files of, from the foot up, panels in the order of their turns: `wrap`; `wrap-1`, `wrap-2` from the
 * foot up; `wrap-a`, `wrap-b` or `wrap-1-a` for panels; and so of cover strips.
 */
function piecesIn(texts: DeliveredFolder['texts'], kind: PieceKind): PieceText[] {
  const part = new RegExp(`^${kind}(?:-(\\d{1,3}))?(?:-([a-z]))?\\.(?:cut|guide)\\.svg$`);
  const found = new Map<string, { readonly piece: number; readonly panel: string }>();
  for (const name of Object.keys(texts)) {
    const match = part.exec(name);
    const stem = name.replace(/\.(?:cut|guide)\.svg$/, '');
    if (match) found.set(stem, { piece: Number(match[1] ?? 0), panel: match[2] ?? '' });
  }
  return [...found]
    .sort(([, a], [, b]) => a.piece - b.piece || (a.panel < b.panel ? -1 : 1))
    .map(([stem]) => textsOf(texts, stem));
}

function textsOf(texts: DeliveredFolder['texts'], stem: string): PieceText {
  const [cut, guide] = [texts[`${stem}.cut.svg`], texts[`${stem}.guide.svg`]];
  const layers = Object.entries(texts).flatMap(([name, text]) =>
    pieceOfLayer(texts, name) === stem ? [{ stem: stemOfCut(name), cut: text }] : [],
  );
  return {
    stem,
    ...(cut === undefined ? {} : { cut }),
    ...(guide === undefined ? {} : { guide }),
    ...(layers.length > 0 ? { layers } : {}),
  };
}

/** Every piece that a folder's cut files and guides are of. */
export const piecesOfFolder = (texts: DeliveredFolder['texts']): readonly PieceText[] =>
  Object.keys(texts)
    .filter((name) => name.endsWith('.guide.svg') && !name.startsWith('sheet-'))
    .map((name) => textsOf(texts, name.replace(/\.guide\.svg$/, '')));

const stemOfCut = (name: string): string => name.replace(/\.cut\.svg$/, '');

/** The piece that a cut file holds one layer of: one whose guide is there, but no cut file of all its layers. */
function pieceOfLayer(texts: DeliveredFolder['texts'], name: string): string | undefined {
  if (!name.endsWith('.cut.svg') || texts[`${stemOfCut(name)}.guide.svg`] !== undefined) return undefined;
  const parts = stemOfCut(name).split('-');
  for (let i = parts.length - 1; i > 0; i--) {
    const stem = parts.slice(0, i).join('-');
    if (texts[`${stem}.guide.svg`] !== undefined)
      return texts[`${stem}.cut.svg`] === undefined ? stem : undefined;
  }
  return undefined;
}

const sheetName = /^(sheet-\d+)\.cut\.svg$/;

/**
 * The sheets, each with how often the report says it is to be cut; once where it says nothing. One that it tells of and
 * that is not there is a file without anything in it.
 */
function sheetsIn(texts: DeliveredFolder['texts'], report: unknown): SheetText[] {
  const told = isObject(report) && Array.isArray(report.sheets) ? report.sheets.filter(isObject) : [];
  const names = new Set([
    ...Object.keys(texts),
    ...told.flatMap(({ file }) => (typeof file === 'string' ? [file] : [])),
  ]);
  return [...names].flatMap((name) => {
    const stem = sheetName.exec(name)?.[1];
    if (stem === undefined) return [];
    const { times, film } = told.find(({ file }) => file === name) ?? {};
    const guide = texts[`${stem}.guide.svg`];
    return [
      {
        stem,
        cut: texts[name] ?? '',
        ...(guide === undefined ? {} : { guide }),
        times: isNumber(times) ? times : 1,
        ...(typeof film === 'string' ? { film } : {}),
      },
    ];
  });
}

/** Cut files of other pieces. */
const othersIn = (texts: DeliveredFolder['texts'], known: readonly PieceText[]): PieceText[] =>
  Object.keys(texts)
    .filter((name) => name.endsWith('.cut.svg') && !sheetName.test(name))
    .map((name) => textsOf(texts, pieceOfLayer(texts, name) ?? stemOfCut(name)))
    .filter(({ stem }, i, all) => all.findIndex((other) => other.stem === stem) === i)
    .filter(({ stem }) => !known.some((piece) => piece.stem === stem));

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** How often the pattern is the same around, by the whole numbers it closes with. */
function partsOf(closes: unknown): number | undefined {
  if (!Array.isArray(closes) || !closes.every(isNumber)) return undefined;
  const [n = 0, m = 0] = closes;
  const parts = gcd(Math.round(n), Math.round(m));
  return parts > 0 ? parts : undefined;
}

function layerOf(value: unknown): LayerAsMade | undefined {
  if (!isObject(value) || !isObject(value.middle)) return undefined;
  const { layer, piece: number, area } = value;
  const { right, up } = value.middle;
  if (typeof layer !== 'string' || !isNumber(number) || !isNumber(area)) return undefined;
  return isNumber(right) && isNumber(up) ? { layer, piece: number, area, middle: { right, up } } : undefined;
}

const layersIn = (value: unknown): readonly LayerAsMade[] =>
  Array.isArray(value) ? value.flatMap((layer) => layerOf(layer) ?? []) : [];

/** What a report says of the pattern and the motifs; what it does not say is not asked for. */
function patternIn(report: unknown): KnownPattern {
  const pattern = isObject(report) && isObject(report.pattern) ? report.pattern : {};
  const equalParts = partsOf(pattern.closes);
  const { items: told, lettering } = isObject(report) ? report : {};
  const items = [told, lettering].flatMap((list) => (Array.isArray(list) ? list.filter(isObject) : []));
  const within = items.filter(({ apart }) => apart === false).flatMap(({ layers }) => layersIn(layers));
  return {
    layers: [...layersIn(pattern.layers), ...within],
    motifs: items.flatMap((item) => motifOf(item) ?? []),
    cleared: items.flatMap((item) => clearedOf(item) ?? []),
    ...(equalParts === undefined ? {} : { equalParts }),
  };
}

/** A motif that is cut apart, as a report tells it. */
function motifOf({
  name,
  at,
  apart,
  layers,
  reach,
}: Readonly<Record<string, unknown>>): AskedMotif | undefined {
  if (apart !== true || typeof name !== 'string' || !isObject(at) || !isNumber(at.along)) return undefined;
  const up = bandOf(reach);
  return { name, along: at.along, layers: layersIn(layers), ...(up ? { reach: up } : {}) };
}

function bandOf(value: unknown): Band | undefined {
  const { from, to } = isObject(value) ? value : {};
  return isNumber(from) && isNumber(to) ? { from, to } : undefined;
}

/** Where the pattern is taken away around a motif. */
function clearedOf(item: Readonly<Record<string, unknown>>): Cleared | undefined {
  const { apart, clear, cleared: by = clear, reach } = item;
  const [up, turns] = [bandOf(reach), isObject(reach) ? bandOf(reach.turns) : undefined];
  return apart === false && isNumber(by) && up && turns ? { ...up, turns, by } : undefined;
}

/** The names of the cut files and guides that a report tells of; undefined where it tells of none. */
function toldIn(report: unknown): readonly string[] | undefined {
  const files = isObject(report) && Array.isArray(report.files) ? report.files.filter(isObject) : [];
  const names = files.flatMap(({ file }) => (typeof file === 'string' && isProved(file) ? [file] : []));
  return names.length > 0 ? names : undefined;
}

const isProved = (name: string): boolean => /\.(?:cut|guide)\.svg$/.test(name);

/** Cut files and guides of a folder that its report does not tell of: an earlier make left them, and they are not proved. */
export function leftOver({ report, texts }: Pick<DeliveredFolder, 'report' | 'texts'>): readonly string[] {
  const told = toldIn(report);
  return told ? Object.keys(texts).filter((name) => isProved(name) && !told.includes(name)) : [];
}

/** The files that the last make wrote. One that is gone is a file without anything in it. */
function madeTexts({ report, texts }: DeliveredFolder): DeliveredFolder['texts'] {
  const told = toldIn(report);
  return told ? Object.fromEntries(told.map((name) => [name, texts[name] ?? ''])) : texts;
}

/** The proof of a folder. @throws Refused where its job or blank can't be read. */
export function proofOfFolder(folder: DeliveredFolder): Proof {
  const { job: typed, blank, blankFile, report } = folder;
  const texts = madeTexts(folder);
  const job = readJob(typed, 'job.json');
  const known = patternIn(report);
  if (job.pieces === 'gores') {
    const asked = askedGoresOf({ job, blank: readBlank(blank, blankFile) }, known.layers ?? []);
    return proofOfGores(asked, piecesIn(texts, 'wrap')[0] ?? { stem: 'wrap' }, sheetsIn(texts, report));
  }
  const asked = askedOf({ job, blank: readBlank(blank, blankFile), told: known });
  const [wraps, strips] = [piecesIn(texts, 'wrap'), piecesIn(texts, 'strip')];
  const [collars, covers] = [piecesIn(texts, 'collar'), piecesIn(texts, 'cover')];
  return proofOf(asked, {
    wraps,
    strips,
    collars,
    covers,
    others: othersIn(texts, [...wraps, ...strips, ...collars, ...covers]),
    sheets: sheetsIn(texts, report),
  });
}

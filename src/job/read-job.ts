// A job as typed in a *.job.json file to the resolved job: everything in mm, nothing that has a standard left out.
import { type Finding, Refused } from '../finding.ts';
import { cross, type Point } from '../geometry/point.ts';
import { inMm } from '../lengths/length.ts';
import { shown } from '../lengths/shown.ts';
import { blankKeys, readBlankAt } from './read-blank.ts';
import { coatKeys, readCoat } from './read-coats.ts';
import { itemKeys, readItem } from './read-items.ts';
import {
  cutterKeys,
  cutterReader,
  filmKeys,
  filmReader,
  type NamedFiles,
  sheetKeys,
  sheetReader,
} from './read-material.ts';
import { alongKeys, readAlong } from './read-spans.ts';
import {
  type Artwork,
  type Job,
  type Repeat,
  standardCutter,
  standardFilm,
  standardOverlap,
  standardTrim,
} from './resolved-job.ts';
import {
  holding,
  holdingList,
  isObject,
  optional,
  type Place,
  type Reader,
  readKeys,
  report,
  required,
  standard,
  within,
} from './schema.ts';
import {
  choice,
  displacement,
  given,
  inUnits,
  later,
  length,
  lengthOrZero,
  list,
  number,
  text,
  units,
  unitsOf,
} from './schema-values.ts';

/** Most repeats taken as meant around a vessel: past it each is narrower than a blade's corner. */
const mostAround = 10_000;

/** More ways than this are never listed. */
const mostWays = 100;

/** Least area of a repeat, mm²: under it two lattice vectors point the same way but for rounding. */
const leastRepeat = 1e-6;

const seamKeys = {
  style: standard(
    'Seam',
    choice<'butt' | 'overlap'>(['butt', 'overlap'], ['cut-through', 'winding', 'strip']),
    'overlap',
  ),
  overlap: optional('Overlap', lengthOrZero),
  hold: optional('Least overlap that holds', lengthOrZero),
  strip: optional('Cover strip', later('leave it out, and use a "butt" or an "overlap" seam')),
};

const trimKeys = {
  lip: standard('Trim at the lip', lengthOrZero, standardTrim.lip),
  foot: standard('Trim at the foot', lengthOrZero, standardTrim.foot),
};

const gridKeys = {
  across: optional('Repeat across', length()),
  up: optional('Repeat up', length()),
  drop: standard('Drop', displacement, 0),
  shift: standard('Shift', displacement, 0),
};

const readVector: Reader<Point> = (value, place) => {
  if (!Array.isArray(value) || value.length !== 2)
    return report(place, 'not-a-vector', 'will not do here; give two lengths, [x, y]');
  const [x, y] = [displacement(value[0], within(place, 0)), displacement(value[1], within(place, 1))];
  return x === undefined || y === undefined ? undefined : { x, y };
};

const latticeKeys = {
  a: required('First lattice vector', readVector),
  b: required('Second lattice vector', readVector),
};

const readRepeat: Reader<Repeat> = (value, place) => {
  const isLattice = isObject(value) && ('a' in value || 'b' in value);
  if (!isLattice) return readGrid(value, place);
  const mixed = Object.keys(gridKeys).filter((name) => Object.hasOwn(value, name));
  for (const name of mixed)
    report(
      within(place, name),
      'one-of-two',
      'is given beside a lattice; keep "a" and "b", or leave them out',
    );
  const lattice = Object.fromEntries(Object.entries(value).filter(([name]) => !mixed.includes(name)));
  const keys = readKeys(lattice, latticeKeys, place);
  if (keys?.a === undefined || keys.b === undefined) return undefined;
  const { a, b } = keys;
  return hasArea(a, b) ? { kind: 'lattice', a, b } : noArea(place, a, b);
};

const readGrid: Reader<Repeat> = (value, place) => {
  const keys = readKeys(value, gridKeys, place);
  if (keys === undefined) return undefined;
  const { across, up, drop, shift } = keys;
  if (across !== undefined && up !== undefined) {
    const [a, b] = [
      { x: across, y: drop },
      { x: shift, y: up },
    ];
    if (!hasArea(a, b)) return noArea(place, a, b);
  }
  return { kind: 'grid', ...given({ across, up }), drop, shift };
};

const hasArea = (a: Point, b: Point): boolean => Math.abs(cross(a, b)) >= leastRepeat;

function noArea(place: Place, a: Point, b: Point): undefined {
  const [first, second] = [a, b].map(({ x, y }) => `[${inMm(x)}, ${inMm(y)}]`);
  const says = `moves by ${first} and by ${second}, which point the same way and repeat nothing; give two ways that cross`;
  return report(place, 'repeat-without-area', says);
}

/** A way by its key, or by its number in the list. */
const readWay: Reader<string | number> = (value, place) =>
  typeof value === 'string'
    ? text(value, place)
    : number({ least: 1, most: mostWays, whole: true })(value, place);

const artworkKeys = {
  file: required('Artwork', text),
  repeat: holding(optional('Repeat', readRepeat), gridKeys),
  lay: standard('Lay', choice<'even' | 'conformal'>(['even', 'conformal'], ['rigid']), 'even'),
  around: optional('Repeats around', number({ least: 1, most: mostAround, whole: true })),
  scale: standard('Scale', choice<'both' | 'across'>(['both', 'across']), 'both'),
  way: optional('Way to close', readWay),
};

const readArtwork: Reader<Artwork> = (value, place) => {
  const keys = readKeys(value, artworkKeys, place);
  if (keys?.file === undefined) return undefined;
  const { file, lay, scale, around, way, repeat = { kind: 'grid', drop: 0, shift: 0 } } = keys;
  if (way !== undefined && around !== undefined)
    return report(
      within(place, 'around'),
      'one-of-two',
      'is given beside "way", which says how many go around; keep one of the two',
    );
  return { file, repeat, lay, scale, ...given({ around, way }) };
};

const readSeam: Reader<Job['seam']> = (value, place) => {
  const keys = readKeys(value, seamKeys, place);
  if (keys === undefined) return undefined;
  const { style, hold, overlap = style === 'butt' ? 0 : standardOverlap } = keys;
  if (style !== 'butt' || overlap === 0) return { style, overlap, ...given({ hold }) };
  const says = `${inMm(overlap)} is more than a "butt" seam has; leave it out, or give the style "overlap"`;
  return report(within(place, 'overlap'), 'butt-overlap', says);
};

const readTrim: Reader<Job['trim']> = (value, place) => readKeys(value, trimKeys, place);

const readBlankOfJob: Reader<Job['blank']> = (value, place) => {
  if (isObject(value)) {
    const blank = readBlankAt(value, place);
    return blank && { kind: 'here', blank };
  }
  if (typeof value !== 'string')
    return report(
      place,
      'not-text',
      `${shown(value)} will not do here; give the path of a blank file, or the blank itself`,
    );
  const file = text(value, place);
  return file === undefined ? undefined : { kind: 'file', file };
};

/** The keys of a job that names these files. */
const jobKeysWith = (named: NamedFiles) => ({
  name: required('Name', text),
  units: standard('Units', units, 'mm'),
  blank: holding(required('Blank', readBlankOfJob), blankKeys),
  band: holding(optional('Band', readAlong), alongKeys),
  coats: holdingList(standard('Coats', list(readCoat), []), coatKeys),
  film: holding(standard('Film', filmReader(named), standardFilm), filmKeys),
  cutter: holding(standard('Cutter', cutterReader(named), standardCutter), cutterKeys),
  artwork: holding(optional('Artwork', readArtwork), artworkKeys),
  pieces: standard('Pieces', choice<'one' | 'stacked'>(['one', 'stacked'], ['gores']), 'one'),
  edges: standard(
    'Edges',
    choice<'straight' | 'whole-rows'>(['straight', 'whole-rows'], ['fade']),
    'straight',
  ),
  seam: holding(standard('Seam', readSeam, { style: 'overlap', overlap: standardOverlap }), seamKeys),
  trim: holding(standard('Trim', readTrim, standardTrim), trimKeys),
  items: holdingList(standard('Items', list(readItem), []), itemKeys),
  lettering: optional('Lettering', later('leave "lettering" out')),
  sheet: holding(optional('Sheet', sheetReader(named)), sheetKeys),
  batch: optional('Vessels alike', number({ least: 1, most: 10_000, whole: true })),
});

/**
 * The job that a parsed file holds, with everything explicit that has a standard. `named`: the files that
 * `materialFiles` tells of.
 * @throws Refused with every problem, each with its file and key; those of a blank given in place are among them.
 */
export function readJob(value: unknown, file: string, named: NamedFiles = {}): Job {
  const problems: Finding[] = [];
  const start: Place = { file, key: '', units: 'mm', report: (finding) => void problems.push(finding) };
  refuseBlank(value, start);
  const keys =
    problems.length > 0
      ? undefined
      : readKeys(value, jobKeysWith(named), inUnits(start, unitsOf(value, 'mm')));
  if (keys?.name === undefined || keys.blank === undefined || problems.length > 0)
    throw new Refused(problems);
  const { name, blank, band, artwork, sheet, batch, items, lettering: _, ...rest } = keys;
  const kept = given({ band, artwork, sheet, batch, items: items.length > 0 ? items : undefined });
  return { ...rest, name, blank, ...kept };
}

/** A blank given as a job would else be told key by key. */
function refuseBlank(value: unknown, place: Place): void {
  if (!isObject(value) || !('stations' in value) || 'blank' in value) return;
  report(place, 'not-a-job', 'is a blank, not a job; give a job, an object whose "blank" names this file');
}

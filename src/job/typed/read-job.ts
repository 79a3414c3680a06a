// A job as typed in a *.job.json file to the resolved job: everything in mm, nothing that has a standard left out.
import { type Finding, Refused } from '../../finding.ts';
import { shown } from '../../lengths/shown.ts';
import { standardCutter, standardFilm } from './material.ts';
import { artworkKeys, readArtwork } from './read-artwork.ts';
import { blankKeys, readBlankAt } from './read-blank.ts';
import { coatKeys, readCoat } from './read-coats.ts';
import { collarKeys, readCollars } from './read-collars.ts';
import { cutterKeys, cutterReader, sheetOn } from './read-cutter.ts';
import { itemKeys, readItem } from './read-items.ts';
import { layersKeys, readLayers } from './read-layers.ts';
import { letteringKeys, readLetterings } from './read-lettering.ts';
import { maskKeys, readMask } from './read-mask.ts';
import { filmKeys, filmReader, type NamedFiles, sheetKeys, sheetReader } from './read-material.ts';
import { panelKeys, readPanels } from './read-panels.ts';
import { printerKeys, printerReader } from './read-printer.ts';
import { readRelief, reliefKeys } from './read-relief.ts';
import { readSeam, seamKeys } from './read-seam.ts';
import { alongKeys, readAlong } from './read-spans.ts';
import { readStencil, stencilKeys } from './read-stencil.ts';
import { goreCounts, type Job, standardOverlap, standardTrim } from './resolved-job.ts';
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
import { choice, given, inUnits, lengthOrZero, list, number, text, units, unitsOf } from './schema-values.ts';

const trimKeys = {
  lip: standard('Trim at the lip', lengthOrZero, standardTrim.lip),
  foot: standard('Trim at the foot', lengthOrZero, standardTrim.foot),
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
  shown: standard(
    'Stands for show',
    choice<'upright' | 'upside-down'>(['upright', 'upside-down']),
    'upright',
  ),
  film: holding(standard('Film', filmReader(named), standardFilm), filmKeys),
  cutter: holding(standard('Cutter', cutterReader(named), standardCutter), cutterKeys),
  printer: holding(optional('Printer', printerReader(named)), printerKeys),
  artwork: holding(optional('Artwork', readArtwork), artworkKeys),
  layers: holding(optional('Layers', readLayers), layersKeys),
  mask: holding(optional('Mask', readMask), maskKeys),
  relief: holding(optional('Relief cuts', readRelief), reliefKeys),
  stencil: holding(optional('Stencil', readStencil), stencilKeys),
  pieces: standard('Pieces', choice<Job['pieces']>(['one', 'stacked', 'gores']), 'one'),
  gores: optional('Number of gores', number({ ...goreCounts, whole: true })),
  edges: standard('Edges', choice<Job['edges']>(['straight', 'whole-rows', 'fade']), 'straight'),
  seam: holding(standard('Seam', readSeam, { style: 'overlap', overlap: standardOverlap }), seamKeys),
  trim: holding(standard('Trim', readTrim, standardTrim), trimKeys),
  items: holdingList(standard('Items', list(readItem), []), itemKeys),
  lettering: holdingList(standard('Lettering', readLetterings, []), letteringKeys),
  collars: holding(optional('Collars', readCollars), collarKeys),
  sheet: holding(optional('Sheet', sheetReader(named)), sheetKeys),
  panels: holding(optional('Panels', readPanels), panelKeys),
  batch: optional('Vessels alike', number({ least: 1, most: 10_000, whole: true })),
});

/** The keys of a job. */
export const jobKeys = jobKeysWith({});

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
  refuseMisfits(keys, start);
  const sheet = sheetOn(keys.cutter, keys.sheet, start);
  if (problems.length > 0) throw new Refused(problems);
  const {
    name,
    blank,
    band,
    artwork,
    sheet: _,
    panels,
    batch,
    gores,
    items,
    lettering,
    printer,
    shown,
    layers,
    mask,
    relief,
    collars,
    stencil,
    ...rest
  } = keys;
  const some = <T>(list: readonly T[]) => (list.length > 0 ? list : undefined);
  const motifs = { items: some(items), lettering: some(lettering) };
  const kept = given({
    band,
    artwork,
    sheet,
    panels,
    batch,
    gores,
    printer,
    layers,
    mask,
    relief,
    collars,
    stencil,
    shown: shown === 'upright' ? undefined : shown,
    ...motifs,
  });
  // Gores lie edge to edge, the last with the first too, unless an overlap is asked for.
  const meets = rest.pieces === 'gores' && isObject(value) && !('seam' in value);
  const seam = meets ? { style: 'butt' as const, overlap: 0 } : rest.seam;
  return { ...rest, seam, name, blank, ...kept };
}

/** What gores can't have, and what only they can. */
function refuseMisfits(
  {
    pieces,
    gores,
    seam,
    panels,
    film,
    collars,
  }: Pick<Job, 'pieces' | 'seam' | 'film'> & { gores: unknown; panels: unknown; collars: unknown },
  place: Place,
): void {
  if (gores !== undefined && pieces !== 'gores')
    report(
      within(place, 'gores'),
      'no-gores',
      `${shown(gores)} is for gores only; give "pieces": "gores" with it, or leave it out`,
    );
  if (pieces !== 'gores') return;
  if (seam.style === 'cut-through' || seam.style === 'strip' || seam.style === 'winding')
    report(
      within(place, 'seam.style'),
      'seam-of-gores',
      `"${seam.style}" is for wraps; gores meet at many edges, so give "butt", or "overlap" for the last over the first`,
    );
  if (film.measured)
    report(
      within(place, 'film.measured'),
      'measured-of-gores',
      'is for wraps, which are pulled around; gores are laid each by its own middle line, so leave it out for them',
    );
  if (collars !== undefined)
    report(
      within(place, 'collars'),
      'collars-of-gores',
      'are cut with wraps; for gores leave them out and cut them by themselves, with `seamwright collar`',
    );
  if (panels !== undefined)
    report(
      within(place, 'panels'),
      'panels-of-gores',
      'are for wraps; each gore is a piece of its own already, so leave them out and give more "gores" where one is too large',
    );
}

/** A blank given as a job would else be told key by key. */
function refuseBlank(value: unknown, place: Place): void {
  if (!isObject(value) || !('stations' in value) || 'blank' in value) return;
  report(place, 'not-a-job', 'is a blank, not a job; give a job, an object whose "blank" names this file');
}

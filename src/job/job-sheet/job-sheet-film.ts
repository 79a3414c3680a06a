// The parts of the job sheet about film: how much, on which sheets, and what it and the coats cost.
import { asLaid } from '../../blank/coats.ts';
import type { Block, Section } from '../../deliver/write-page.ts';
import { signedArea } from '../../geometry/measure.ts';
import { formatLength, measuredLength } from '../../lengths/length.ts';
import { layerWords } from '../artwork/colour-words.ts';
import { type FilmWeeding, filmsIn } from '../blade/weeding.ts';
import { sheetsPictureFile } from '../pictures/sheets-picture.ts';
import type { FileReport, Report, SheetReport } from '../report.ts';
import { type FilmNeeded, filmNeeded } from '../sheets/film-needed.ts';
import type { SheetPiece } from '../sheets/film-piece.ts';
import { paperSheets } from '../sheets/films-to-cut.ts';
import type { Job } from '../typed/resolved-job.ts';

const shareOf = (value: number): string => `${(value * 100).toFixed(0)} %`;

export interface FilmInput {
  readonly job: Job;
  readonly pieces: readonly Pick<SheetPiece, 'file' | 'film' | 'material'>[];
  readonly report: Omit<Report, 'files'>;
  readonly files: readonly FileReport[];
  readonly isShared?: boolean;
}

export function filmSection({ job, pieces, report, files, isShared = false }: FilmInput): Section[] {
  const weeded = report.weeding?.films ?? [];
  const area = pieces
    .filter(({ material }) => material === undefined)
    .reduce((sum, piece) => sum + filmsOfPiece(piece, weeded) * areaOf(piece), 0);
  const items = [
    `${(area / 100).toFixed(0)} cm² of film ${formatLength(job.film.thickness, job.units)} thick for one vessel, trims and overlap with it${filmsInWords(weeded)}`,
  ];
  const { sheet } = job;
  const needed = sheet ? filmNeeded(report.sheets ?? [], sheet) : [];
  if (isShared)
    items.push('its pieces lie on sheets with those of the other vessels: sheets.svg, beside this folder');
  else if (sheet && needed.length === 0)
    items.push('a piece is larger than the sheet, so sheets are not counted');
  for (const film of needed) items.push(`${namedBefore(film, needed)}${filmInWords(film, job)}`);
  return [
    {
      heading: 'Film',
      blocks: [{ kind: 'list', items }, ...sheetBlocks(report.sheets ?? [], files)],
    },
  ];
}

/** How many films are cut of a piece: one a colour of its art. */
function filmsOfPiece({ file }: Pick<SheetPiece, 'file'>, weeded: readonly FilmWeeding[]): number {
  const files = file.split(', ');
  const own = weeded.filter((one) => one.file !== undefined && files.includes(one.file));
  return Math.max(1, filmsIn(own).length);
}

const areaOf = ({ film }: Pick<SheetPiece, 'film'>): number =>
  film.reduce((sum, { outline, count }) => sum + count * Math.abs(signedArea(outline)), 0);

function filmsInWords(weeded: readonly FilmWeeding[]): string {
  const count = filmsIn(weeded).length;
  return count > 1 ? `, cut from ${count} films` : '';
}

const isPaper = ({ film }: Pick<FilmNeeded, 'film'>): boolean => film === paperSheets;

/** A film by its colour, where there are several. */
function filmName(needed: FilmNeeded, all: readonly FilmNeeded[]): string {
  if (isPaper(needed)) return 'paper for the collars';
  if (all.filter((film) => !isPaper(film)).length === 1 || needed.film === '') return 'film';
  return `film in ${layerWords(needed.film)}`;
}

const namedBefore = (needed: FilmNeeded, all: readonly FilmNeeded[]): string =>
  all.length > 1 ? `${filmName(needed, all)}: ` : '';

function filmInWords(
  { sheets, rollLength, lastUsed, waste }: FilmNeeded,
  { sheet, units }: Pick<Job, 'sheet' | 'units'>,
): string {
  if (!sheet) return '';
  const shown = (mm: number) => measuredLength(mm, units);
  if (rollLength !== undefined)
    return `${shown(rollLength)} of a roll ${shown(sheet.across)} wide for all, of which ${shareOf(waste)} is waste`;
  const size = `${shown(sheet.across)} by ${shown(sheet.up ?? 0)}`;
  return `${sheets === 1 ? 'one sheet' : `${sheets} sheets`} of ${size} for all; of the last one ${shown(lastUsed)} is used, and ${shareOf(waste)} of what is cut into is waste`;
}

/** What lies on each sheet, and how. */
function sheetBlocks(sheets: readonly SheetReport[], files: readonly FileReport[]): Block[] {
  if (sheets.length === 0) return [];
  const rows = sheets.map(({ file, film, pieces, times }) => [
    file,
    layerWords(film),
    [...new Set(pieces.map(({ part }) => part))]
      .map((part) => `${pieces.filter((piece) => piece.part === part).length} of ${part}`)
      .join(', '),
    times === 1 ? 'once' : `${times} times`,
  ]);
  return [
    { kind: 'table', head: ['sheet', 'film', 'pieces', 'cut it'], rows },
    ...(files.some(({ file }) => file === sheetsPictureFile)
      ? [{ kind: 'picture' as const, file: sheetsPictureFile, says: 'How the pieces lie on their sheets' }]
      : []),
  ];
}

/** Sheets, or metres of a roll: what a price is for. */
const amountOf = ({ sheets, rollLength }: FilmNeeded): number =>
  rollLength === undefined ? sheets : rollLength / 1000;

export function costSection({ coats = [], sheets = [] }: Omit<Report, 'files'>, job: Job): Section[] {
  const batch = job.batch ?? 1;
  const rows: { readonly says: string; readonly cost: number }[] = [];
  const needed = job.sheet ? filmNeeded(sheets, job.sheet) : [];
  // The price is that of the film.
  for (const film of needed)
    if (job.sheet?.price !== undefined && !isPaper(film))
      rows.push({ says: filmName(film, needed), cost: amountOf(film) * job.sheet.price });
  const given = asLaid(job.coats);
  for (const [i, { name, volume }] of coats.entries()) {
    const coat = given[i];
    if (coat?.price === undefined) continue;
    const litres = Math.max(volume * batch, coat.leastBatch ?? 0) / 1000;
    rows.push({ says: name, cost: litres * coat.price });
  }
  if (rows.length === 0) return [];
  const total = rows.reduce((sum, { cost }) => sum + cost, 0);
  const line = ({ says, cost }: { says: string; cost: number }) => [
    says,
    cost.toFixed(2),
    (cost / batch).toFixed(2),
  ];
  return [
    {
      heading: 'Cost of material',
      blocks: [
        {
          kind: 'table',
          head: ['what', batch === 1 ? 'in all' : `for all ${batch}`, 'for each'],
          rows: [...rows, { says: 'all of it', cost: total }].map(line),
        },
        {
          kind: 'words',
          text: 'In the currency the prices were given in; only what has a price is counted.',
        },
      ],
    },
  ];
}

// What a run of a command gives to be written, whoever writes it: a folder's files, a page's downloads.
import type { FileReport, Report } from './report.ts';

/** A piece that goes onto sheets. */
export interface LaidPiece {
  readonly stem: string;
  /** How far it is turned in its file, radians, x towards y. */
  readonly turned: number;
  /** Left out: the films of its colours. */
  readonly material?: 'paper';
}

export type FileContent = string | Uint8Array;

export interface NamedFile extends FileReport {
  readonly content: FileContent;
}

/** What stands to be cut or drawn of one piece: what the blade follows, and all of it for the eye. */
export interface Written {
  readonly cut: string;
  readonly guide: string;
}

/** The cut file of one layer of a piece, `STEM.cut.svg`. */
export interface LayerCut {
  readonly layer: string;
  readonly stem: string;
  readonly cut: string;
}

/** A piece with the stem of its files' names. */
export interface WrittenPiece extends Written {
  readonly stem: string;
  /** Cut files of its layers, where each has one of its own; they are then written in place of the one for all. */
  readonly layers?: readonly LayerCut[];
}

/** The files of a run, in two steps, because what is reported of the drawings is measured on them as they were written. */
export interface Deliverables {
  /** Pieces written first, as `STEM.cut.svg` and `STEM.guide.svg`. */
  readonly pieces: readonly WrittenPiece[];
  /** All the other files and the report, from the pieces as read back from where they were written. */
  readonly rest: (pieces: readonly WrittenPiece[]) => Promise<Rest>;
  /** Pieces that are to be laid on sheets with those of other vessels. */
  readonly sharing?: readonly LaidPiece[];
}

export interface Rest {
  readonly files: readonly NamedFile[];
  readonly report: Omit<Report, 'files'>;
}

export const reportFile = 'report.json';

/** The page that a folder is opened by. */
export const indexFile = 'index.html';

/** Name of a part of a wrap or template, by its mark; the only one has the bare stem. */
export const stemOf = (stem: string, mark: string): string => (mark === '' ? stem : `${stem}-${mark}`);

/** A piece's files: what is cut of it, and its guide. */
export const filesOfPiece = ({ stem, cut, guide, layers }: WrittenPiece): readonly NamedFile[] => [
  ...(layers
    ? layers.map((one) => ({
        file: `${one.stem}.cut.svg`,
        role: 'cut',
        layer: one.layer,
        content: one.cut,
      }))
    : [{ file: `${stem}.cut.svg`, role: 'cut', content: cut }]),
  { file: `${stem}.guide.svg`, role: 'guide', content: guide },
];

export const jsonContent = (value: object): string => `${JSON.stringify(value, undefined, 2)}\n`;

/** The report with all that was written, the report itself too; `beside` is what is made of all of them. */
export const fullReport = (
  pieces: readonly WrittenPiece[],
  { files, report }: Rest,
  beside: readonly FileReport[] = [],
): Report => ({
  ...report,
  files: [...pieces.flatMap(filesOfPiece), ...files, { file: reportFile, role: 'report' }, ...beside].map(
    ({ content: _, ...listed }: FileReport & { readonly content?: FileContent }) =>
      onItsSheet(listed, report),
  ),
});

/** A piece's file with the number of the first sheet that it is cut from. */
function onItsSheet(listed: FileReport, { sheets = [] }: Rest['report']): FileReport {
  const stem = listed.file.replace(/\.(?:cut|guide)\.svg$/, '');
  const first = sheets.find(({ pieces }) =>
    pieces.some(({ part }) => part === stem || (stem === 'wrap' && isGore(part))),
  );
  return listed.sheet !== undefined || !first ? listed : { ...listed, sheet: first.sheet };
}

/** Gores lie on sheets apart, and are all in one file. */
const isGore = (part: string): boolean => part.startsWith('gore-');

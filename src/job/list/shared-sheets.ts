// Sheets shared by vessels that differ: all the pieces of a list's rows that are cut from the same film, laid together.

import { type Proof, proofOfSheets, type SheetText } from '../../prove/proof.ts';
import type { PieceText } from '../../prove/written/delivered-file.ts';
import { askedCutterOf } from '../blade/asked-cutter.ts';
import { cutOfGuide, isPlain, sheetsForCutter } from '../cutter/machine-files.ts';
import type { LaidPiece, NamedFile } from '../deliverables.ts';
import { sheetsPictures } from '../pictures/sheets-picture.ts';
import type { SheetReport } from '../report.ts';
import type { PieceToNest } from '../sheets/films-to-cut.ts';
import { mostPieces, type NestedSheets, type NestSearch, nestSheets } from '../sheets/nest-sheets.ts';
import type { JobTools } from '../tools.ts';
import type { Job } from '../typed/resolved-job.ts';

/** A vessel whose pieces share sheets with others'. */
export interface SharingRow {
  /** Its folder's name: its pieces are known on a sheet by it. */
  readonly folder: string;
  readonly job: Job;
  readonly pieces: readonly LaidPiece[];
}

/** The same with its files as they were delivered. */
export interface SharedRow extends SharingRow {
  readonly texts: readonly PieceText[];
}

/** Sheets of one search, and whose pieces lie on them. */
export interface SharedSheetsReport {
  /** Folders of the vessels. */
  readonly rows: readonly string[];
  readonly sheets: readonly SheetReport[];
}

/** What has to be the same for pieces to lie on one sheet. */
const stockKey = ({ sheet, film, cutter, batch }: Job): string =>
  JSON.stringify([sheet, film, cutter, batch]);

/** Rows that are laid together, in their order: of the same film, sheet and cutter, and no more at once than one search takes. */
export function sharingSets<R extends SharingRow>(rows: readonly R[]): readonly (readonly R[])[] {
  const sets = new Map<string, R[][]>();
  for (const row of rows) {
    if (!row.job.sheet || row.pieces.length === 0) continue;
    const key = stockKey(row.job);
    const own = sets.get(key) ?? [];
    sets.set(key, own);
    const last = own.at(-1);
    const count = (last ?? []).reduce((sum, { pieces }) => sum + pieces.length, row.pieces.length);
    if (last && count * (row.job.batch ?? 1) <= mostPieces) last.push(row);
    else own.push([row]);
  }
  return [...sets.values()].flat();
}

/** How a row's piece is called on a sheet. */
const nameOn = (folder: string, stem: string): string => `${folder}.${stem}`;

/** The lines that are wanted of a piece: those of its cut file, or of its guide where a cutter gets others, or layers apart. */
function linesOf({ stem, cut, guide }: PieceText, { cutter, name }: Job): string {
  if (cut !== undefined && isPlain(cutter)) return cut;
  if (guide === undefined) throw new Error(`${stem} has no guide`);
  return cutOfGuide(guide, `${stem}.guide.svg`, name);
}

/** Lays one set; no sheets where a piece fits none. `first`: the number of its first sheet. */
export async function laySet(
  rows: readonly SharedRow[],
  { title, first, search }: { readonly title: string; readonly first: number; readonly search?: NestSearch },
): Promise<NestedSheets> {
  const [one] = rows;
  if (!one) return { files: [], reports: [], texts: [], shown: [] };
  const pieces = rows.flatMap(({ folder, job, pieces: laid, texts }) =>
    laid.flatMap(({ stem, turned, material }): PieceToNest[] => {
      const text = texts.find((own) => own.stem === stem);
      if (!text) return [];
      const piece = { stem: nameOn(folder, stem), cut: linesOf(text, job), turned };
      return [material ? { ...piece, material } : piece];
    }),
  );
  const nested = await nestSheets({ job: { ...one.job, name: title }, pieces }, search, first);
  return sheetsForCutter(nested, title, one.job.cutter);
}

/** Holds the sheets of one set against the delivered pieces of its rows. */
export function proveSet(rows: readonly SharedRow[], sheets: readonly SheetText[]): Proof {
  const [one] = rows;
  const { sheet, batch = 1, cutter } = one?.job ?? {};
  if (!sheet || !cutter) return { pass: false, checks: [] };
  // Collars that no sheet holds are cut by themselves.
  const hasPaper = sheets.some(({ film }) => film === 'paper');
  const parts = rows.flatMap(({ folder, texts }) =>
    texts
      .filter(({ stem }) => hasPaper || !stem.startsWith('collar'))
      .map((text) => ({ ...text, stem: nameOn(folder, text.stem) })),
  );
  const asked = { ...sheet, up: sheet.up ?? Number.POSITIVE_INFINITY, batch };
  return proofOfSheets({ sheet: asked, cutter: askedCutterOf(cutter) }, parts, sheets);
}

/** All that is laid of what rows share. */
export interface SharedSheets {
  readonly sets: readonly SharedSheetsReport[];
  readonly proofs: readonly Proof[];
  /** All that was delivered. */
  readonly files: readonly NamedFile[];
}

/** Where files of vessels are, and where those of the sheets go. */
export interface SharedDelivery {
  /** A vessel with its files as they were delivered. */
  readonly full: (row: SharingRow) => Promise<SharedRow>;
  readonly deliver: (file: NamedFile) => Promise<void>;
  /** A file as it was delivered. */
  readonly readBack: (file: string) => Promise<string>;
  readonly words: () => Promise<JobTools['words']>;
}

/** Lays what rows share, set by set, so that no more than one set's files are held at a time; read back and proved. */
export async function shareSheets(
  rows: readonly SharingRow[],
  title: string,
  { full, deliver, readBack, words }: SharedDelivery,
): Promise<SharedSheets> {
  const sets: SharedSheetsReport[] = [];
  const proofs: Proof[] = [];
  const files: NamedFile[] = [];
  const shown: NestedSheets['shown'][number][] = [];
  for (const set of sharingSets(rows)) {
    const laid: SharedRow[] = [];
    for (const row of set) laid.push(await full(row));
    const nested = await laySet(laid, { title, first: shown.length + 1 });
    if (nested.files.length === 0) continue;
    for (const file of nested.files) await deliver(file);
    const texts = [];
    for (const text of nested.texts) texts.push({ ...text, cut: await readBack(`${text.stem}.cut.svg`) });
    proofs.push(proveSet(laid, texts));
    sets.push({ rows: set.map(({ folder }) => folder), sheets: nested.reports });
    files.push(...nested.files);
    shown.push(...nested.shown);
  }
  if (shown.length === 0) return { sets, proofs, files };
  const reports = sets.flatMap(({ sheets }) => sheets);
  const pictures = sheetsPictures({ shown, reports }, title, { words: await words() });
  for (const picture of pictures) await deliver(picture);
  return { sets, proofs, files: [...files, ...pictures] };
}

// The sheets that vessels of a list share: laid from their delivered files, written beside their folders, read back and proved.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { NamedFile } from '../job/deliverables.ts';
import type { MadeRow } from '../job/list/names-report.ts';
import { piecesOfFolder } from '../job/list/prove-folder.ts';
import {
  laySet,
  proveSet,
  type SharedRow,
  type SharedSheetsReport,
  type SharingRow,
  sharingSets,
} from '../job/list/shared-sheets.ts';
import { sheetsPictures } from '../job/pictures/sheets-picture.ts';
import type { Proof } from '../job/proof/proof.ts';
import type { NestedSheets } from '../job/sheets/nest-sheets.ts';
import { readJob } from '../job/typed/read-job.ts';
import { parseJson } from '../job/typed/read-json.ts';
import type { Delivery } from './delivery.ts';
import { readText } from './files.ts';
import { loadWords } from './tools.ts';

export interface SharedSheets {
  readonly sets: readonly SharedSheetsReport[];
  readonly proofs: readonly Proof[];
  /** All that was staged. */
  readonly files: readonly NamedFile[];
}

/** The delivered cut files and guides of a vessel's pieces. */
export async function withTexts<R extends SharingRow>(folder: string, row: R): Promise<R & SharedRow> {
  const own = join(folder, row.folder);
  // A folder that was taken away in the middle has no files: the first that is asked for says so.
  const names = (await readdir(own).catch(() => ['wrap.cut.svg']))
    .filter((name) => /\.(cut|guide)\.svg$/.test(name))
    .sort();
  const texts: Record<string, string> = {};
  for (const name of names) texts[name] = await readText(join(own, name), join(row.folder, name));
  return { ...row, texts: piecesOfFolder(texts) };
}

/** A vessel's job as it was worked out. */
export async function sharingRow(
  folder: string,
  { folder: own, sharing: pieces }: Pick<MadeRow, 'folder' | 'sharing'>,
): Promise<SharingRow> {
  const name = join(own, 'job.json');
  return {
    folder: own,
    pieces,
    job: readJob(parseJson(await readText(join(folder, name), name), name), name),
  };
}

/** Lays what rows share, set by set, so that no more than one set's files are held at a time. */
export async function stageShared(
  made: readonly MadeRow[],
  { whole, folder, title }: { readonly whole: Delivery; readonly folder: string; readonly title: string },
): Promise<SharedSheets> {
  const rows: SharingRow[] = [];
  for (const row of made) if (row.sharing.length > 0) rows.push(await sharingRow(folder, row));
  const sets: SharedSheetsReport[] = [];
  const proofs: Proof[] = [];
  const files: NamedFile[] = [];
  const shown: NestedSheets['shown'][number][] = [];
  for (const set of sharingSets(rows)) {
    const full: SharedRow[] = [];
    for (const row of set) full.push(await withTexts(folder, row));
    const nested = await laySet(full, { title, first: shown.length + 1 });
    if (nested.files.length === 0) continue;
    for (const { file, content } of nested.files) await whole.stage(file, content);
    const texts = [];
    for (const text of nested.texts) {
      const cut = await whole.readBack(`${text.stem}.cut.svg`);
      texts.push({ ...text, cut });
    }
    proofs.push(proveSet(full, texts));
    sets.push({ rows: set.map((row) => row.folder), sheets: nested.reports });
    files.push(...nested.files);
    shown.push(...nested.shown);
  }
  if (shown.length === 0) return { sets, proofs, files };
  const reports = sets.flatMap(({ sheets }) => sheets);
  const pictures = sheetsPictures({ shown, reports }, title, { words: await loadWords() });
  for (const { file, content } of pictures) await whole.stage(file, content);
  return { sets, proofs, files: [...files, ...pictures] };
}

// The sheets that vessels of a list share: laid from their delivered files, written beside their folders, read back and proved.
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { MadeRow } from '../job/list/names-report.ts';
import { piecesOfFolder } from '../job/list/prove-folder.ts';
import {
  type SharedRow,
  type SharedSheets,
  type SharingRow,
  shareSheets,
} from '../job/list/shared-sheets.ts';
import { readJob } from '../job/typed/read-job.ts';
import { parseJson } from '../job/typed/read-json.ts';
import type { Delivery } from './delivery.ts';
import { readText } from './files.ts';
import { loadWords } from './tools.ts';

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

/** Lays what rows share, from their folders into the delivery. */
export async function stageShared(
  made: readonly MadeRow[],
  { whole, folder, title }: { readonly whole: Delivery; readonly folder: string; readonly title: string },
): Promise<SharedSheets> {
  const rows: SharingRow[] = [];
  for (const row of made) if (row.sharing.length > 0) rows.push(await sharingRow(folder, row));
  return shareSheets(rows, title, {
    full: (row) => withTexts(folder, row),
    deliver: ({ file, content }) => whole.stage(file, content),
    readBack: (file) => whole.readBack(file),
    words: loadWords,
  });
}

// A row's folder: written whole with a note of what it was made from, and told from one that is not.
import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { type Deliverables, jsonContent, type LaidPiece, reportFile } from '../job/deliverables.ts';
import type { NamedRow } from '../job/list/names.ts';
import { type MadeRow, madeRow } from '../job/list/names-report.ts';
import type { MakeFilesInput } from '../job/make-options.ts';
import type { Report } from '../job/report.ts';
import { stageAll } from './deliver.ts';
import { delivered } from './delivery.ts';
import { recover } from './staging.ts';

/** The note: written with the files, and the last to be moved into place. */
const rowFile = 'row.json';

interface RowNote {
  /** Of the job, the blank, the files they name, what is asked for, and the program. */
  readonly made: string;
  /** Of the content of each file. */
  readonly files: Readonly<Record<string, string>>;
  /** What is to be laid on sheets with other vessels' pieces. */
  readonly sharing?: readonly LaidPiece[];
}

const hashOf = (content: string | Uint8Array): string => createHash('sha256').update(content).digest('hex');

const { version } = createRequire(import.meta.url)('../../package.json') as { readonly version: string };

/** What a row is made from and how, as a fingerprint: the same means the same files. */
export function fingerprint({ job, blank, files }: MakeFilesInput, asked: object): string {
  const named = [...files].map(([file, bytes]) => [file, hashOf(bytes)]);
  return hashOf(JSON.stringify([version, job, blank, named, asked]));
}

/** A row's folder as an earlier run left it, where it was made from the same and every file of it stands as written. */
export async function asMade(folder: string, row: NamedRow, made: string): Promise<MadeRow | undefined> {
  if (!existsSync(folder)) return undefined;
  await recover(folder);
  try {
    const note = JSON.parse(await readFile(join(folder, rowFile), 'utf8')) as RowNote;
    if (note.made !== made) return undefined;
    for (const [file, hash] of Object.entries(note.files))
      if (hashOf(await readFile(join(folder, file))) !== hash) return undefined;
    const report = JSON.parse(await readFile(join(folder, reportFile), 'utf8')) as Report;
    return madeRow(row, report, report.files ?? [], note.sharing);
  } catch {
    // A file is missing, or is none of ours: the row is made anew.
    return undefined;
  }
}

/** Write a row's files. */
export async function writeRow(
  folder: string,
  row: NamedRow,
  made: string,
  deliverables: Deliverables,
): Promise<MadeRow> {
  const report = await delivered(folder, async (delivery) => {
    const staged = await stageAll(delivery, deliverables);
    const note: RowNote = {
      made,
      files: Object.fromEntries(staged.files.map(({ file, content }) => [file, hashOf(content)])),
      ...(deliverables.sharing ? { sharing: deliverables.sharing } : {}),
    };
    await delivery.stage(rowFile, jsonContent(note));
    return staged.report;
  });
  return madeRow(row, report, report.files ?? [], deliverables.sharing);
}

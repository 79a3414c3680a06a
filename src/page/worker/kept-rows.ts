// Vessels of a list, kept until the sheets that they share are laid: packed, for a list may have thousands.
import { unzipped, zipped } from '../../job/archive.ts';
import type { LaidPiece, NamedFile } from '../../job/deliverables.ts';
import { piecesOfFolder } from '../../job/list/prove-folder.ts';
import type { SharedRow, SharingRow } from '../../job/list/shared-sheets.ts';
import { readJob } from '../../job/typed/read-job.ts';
import { parseJson } from '../../job/typed/read-json.ts';

export class KeptRows {
  readonly rows: SharingRow[] = [];
  /** The drawings of each by its folder. */
  readonly #drawings = new Map<string, Uint8Array>();

  /** A vessel as it goes onto sheets with others: its job as it was worked out, its pieces as they were made. */
  keep(folder: string, pieces: readonly LaidPiece[], files: readonly NamedFile[]): void {
    const name = `${folder}/job.json`;
    const job = files.find(({ role }) => role === 'job');
    this.rows.push({ folder, pieces, job: readJob(parseJson(String(job?.content), name), name) });
    const drawings = files
      .filter(({ file }) => /\.(cut|guide)\.svg$/.test(file))
      .sort((a, b) => (a.file < b.file ? -1 : 1))
      .map(({ file, content }) => [file, new TextEncoder().encode(String(content))] as const);
    this.#drawings.set(folder, zipped(Object.fromEntries(drawings)));
  }

  /** The same with its drawings. */
  full(row: SharingRow): SharedRow {
    const packed = this.#drawings.get(row.folder);
    const files = packed ? unzipped(packed, () => true) : {};
    const texts = Object.entries(files).map(([file, bytes]) => [file, new TextDecoder().decode(bytes)]);
    return { ...row, texts: piecesOfFolder(Object.fromEntries(texts)) };
  }
}

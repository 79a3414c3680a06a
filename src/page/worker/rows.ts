// A list of names: its rows looked at, one of them seen, all of them made, as the command `names` does.
import { Refused } from '../../finding.ts';
import { ZipWriter } from '../../job/archive.ts';
import {
  type FileContent,
  filesOfPiece,
  fullReport,
  jsonContent,
  reportFile,
} from '../../job/deliverables.ts';
import { indexOfRows } from '../../job/index-page.ts';
import {
  jobOfRow,
  type NamedRow,
  type NamesInput,
  namedRows,
  refusalOf,
  textsFilled,
} from '../../job/list/names.ts';
import { type MadeRow, madeRow, namesFile, namesReport } from '../../job/list/names-report.ts';
import { type SharedSheets, shareSheets } from '../../job/list/shared-sheets.ts';
import { toolsForRows, tryRow } from '../../job/list/try-row.ts';
import { makeFiles } from '../../job/make-files.ts';
import type { MakeFilesInput } from '../../job/make-options.ts';
import { Recall } from '../../job/recall.ts';
import type { RefusedRow } from '../../job/typed/list.ts';
import { type FileBytes, textOf } from '../../job/typed/named-files.ts';
import type { Paper } from '../../job/typed/print-paper.ts';
import { readList } from '../../job/typed/read-list.ts';
import type { NamesAnswer, NamesAsked, RowsAnswer } from '../model/messages.ts';
import { loadTools } from './engine.ts';
import { KeptRows } from './kept-rows.ts';

/** Tells how far it is. */
type Tell = (step: number, of: number, says: string) => void;

export class Rows {
  readonly rows: readonly NamedRow[];
  readonly #asked: NamesAsked;
  readonly #files: FileBytes;
  readonly #input: NamesInput;
  readonly #tools: MakeFilesInput['tools'];
  readonly #recall = new Recall();

  private constructor(
    asked: NamesAsked,
    files: FileBytes,
    input: NamesInput,
    rows: readonly NamedRow[],
    tools: MakeFilesInput['tools'],
  ) {
    this.#asked = asked;
    this.#files = files;
    this.#input = input;
    this.rows = rows;
    this.#tools = toolsForRows(tools);
  }

  /** @throws Refused where the list can't be read, or the job names a column that it has not. */
  static async of(asked: NamesAsked, files: FileBytes): Promise<Rows> {
    const { bench, list: given } = asked;
    const list = readList(given.text, given.file);
    const typed = { ...bench.job, blank: bench.blankFile };
    const input = { typed, jobFile: bench.jobFile, list };
    const texts = await textsFilled(input, async () => bench.blank);
    return new Rows(asked, files, input, namedRows(list, texts), await loadTools());
  }

  /** @throws Refused where the row's values make no job. */
  async inputOf(row: NamedRow): Promise<MakeFilesInput> {
    const { bench } = this.#asked;
    const fetchText = async (file: string) =>
      file === bench.blankFile ? JSON.stringify(bench.blank) : textOf(this.#files, file);
    const { job, blank, blankFile } = await jobOfRow(this.#input, row, fetchText);
    const { jobFile } = bench;
    const shared = { files: this.#files, recall: this.#recall, tools: this.#tools };
    return { job, jobFile, blank, blankFile: blankFile ?? jobFile, ...shared };
  }

  /** Looks for all that may keep rows from being made. */
  async check(tell: Tell): Promise<RowsAnswer & { readonly fit: readonly NamedRow[] }> {
    const refused: RefusedRow[] = [...this.#input.list.refused];
    const fit: NamedRow[] = [];
    for (const [i, row] of this.rows.entries()) {
      tell(i, this.rows.length, `looking at line ${row.line}`);
      try {
        tryRow(await this.inputOf(row));
        fit.push(row);
      } catch (fault) {
        if (!(fault instanceof Refused)) throw fault;
        refused.push({ line: row.line, says: refusalOf(fault, row) });
      }
    }
    refused.sort((a, b) => a.line - b.line);
    return { rows: fit.map(({ line, label, folder }) => ({ line, label, folder })), refused, fit };
  }

  /** All that can be made, a folder a row, in one archive. */
  async make(paper: Paper | undefined, tell: Tell): Promise<NamesAnswer> {
    const { fit, refused } = await this.check(tell);
    const parts: Uint8Array<ArrayBuffer>[] = [];
    const zip = new ZipWriter((part) => parts.push(part.slice()));
    const add = (file: string, content: string | Uint8Array) =>
      zip.add(file, typeof content === 'string' ? new TextEncoder().encode(content) : content);
    const made: MadeRow[] = [];
    const sharing = new KeptRows();
    // As they lie where the archive is unpacked in `out/` beside the job.
    const fromFolder = (file: string): string => `../../${file}`;
    for (const [i, row] of fit.entries()) {
      tell(i, fit.length, `making line ${row.line}, ${row.label}`);
      const input = await this.inputOf(row);
      const sheets = input.job.sheet ? ({ sheets: 'shared' } as const) : {};
      const {
        pieces,
        rest,
        sharing: shared,
      } = await makeFiles(input, {
        pictures: false,
        paper,
        fromFolder,
        ...sheets,
      });
      const more = await rest(pieces);
      const report = fullReport(pieces, more);
      const files = [...pieces.flatMap(filesOfPiece), ...more.files];
      for (const { file, content } of files) add(`${row.folder}/${file}`, content);
      add(`${row.folder}/${reportFile}`, jsonContent(report));
      made.push(madeRow(row, report, report.files ?? [], shared));
      if (shared && shared.length > 0) sharing.keep(row.folder, shared, files);
    }
    if (sharing.rows.length > 0) tell(fit.length, fit.length, 'laying the sheets that they share');
    const title = `${this.#input.jobFile} and ${this.#input.list.file}`;
    const shared = await this.#sheetsOf(sharing, title, add);
    const report = namesReport(made, refused, shared);
    const index = indexOfRows(title, report);
    add(namesFile, jsonContent(report));
    add(index.file, index.content);
    zip.end();
    return { parts, report };
  }

  /** The sheets that the vessels share, beside their folders. */
  async #sheetsOf(
    kept: KeptRows,
    title: string,
    add: (file: string, content: FileContent) => void,
  ): Promise<SharedSheets> {
    const delivered = new Map<string, string>();
    return shareSheets(kept.rows, title, {
      full: async (row) => kept.full(row),
      deliver: async ({ file, content }) => {
        add(file, content);
        delivered.set(file, String(content));
      },
      readBack: async (file) => delivered.get(file) ?? '',
      words: async () => this.#tools.words,
    });
  }
}

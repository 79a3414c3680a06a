// What the rows of a list are made from: the job filled from each, and what they share read and worked out once.
import { dirname, relative, resolve } from 'node:path';
import { jobOfRow, type NamedRow, type NamesInput } from '../job/list/names.ts';
import type { MadeRow } from '../job/list/names-report.ts';
import { toolsForRows, tryRow } from '../job/list/try-row.ts';
import { makeFiles } from '../job/make-files.ts';
import type { MakeFilesInput } from '../job/make-options.ts';
import { Recall } from '../job/recall.ts';
import type { JobTools } from '../job/tools.ts';
import { filesNamed } from '../job/typed/named-files.ts';
import type { Paper } from '../job/typed/print-paper.ts';
import type { Printer } from '../job/typed/read-printer.ts';
import { FilesTogether, type KeptFiles } from './files.ts';
import { asMade, fingerprint, writeRow } from './row-files.ts';

/** What all rows are made from, and how: plain values. */
export interface BatchOptions extends NamesInput {
  /** Path of the job's file. */
  readonly jobPath: string;
  readonly pictures: boolean;
  readonly paper: Paper | undefined;
  /** Goes before that of the job. */
  readonly printer: Printer | undefined;
}

export interface BatchInput extends BatchOptions {
  readonly kept: KeptFiles;
  readonly tools: JobTools;
}

export interface MadeOrFound {
  readonly row: MadeRow;
  /** Whether an earlier run had left it. */
  readonly isFound: boolean;
}

export class NamesBatch {
  readonly #input: BatchInput;
  readonly #recall = new Recall();

  constructor(input: BatchInput) {
    this.#input = { ...input, tools: toolsForRows(input.tools) };
  }

  /** Looks for all that may keep a row from being made. @throws Refused */
  async check(row: NamedRow): Promise<undefined> {
    tryRow(await this.#inputOf(row));
  }

  /** A row's files written to a folder; or found there as an earlier run left them. @throws Refused where it can't be made. */
  async make(row: NamedRow, folder: string): Promise<MadeOrFound> {
    const input = await this.#inputOf(row);
    const { pictures, paper, jobPath } = this.#input;
    const sheets = input.job.sheet ? ({ sheets: 'shared' } as const) : {};
    const made = fingerprint(input, { pictures, paper, ...sheets });
    const found = await asMade(folder, row, made);
    if (found) return { row: found, isFound: true };
    const fromFolder = (file: string) =>
      relative(resolve(folder), resolve(dirname(jobPath), file)).replaceAll('\\', '/');
    const deliverables = await makeFiles(input, { pictures, paper, fromFolder, ...sheets });
    return { row: await writeRow(folder, row, made, deliverables), isFound: false };
  }

  async #inputOf(row: NamedRow): Promise<MakeFilesInput> {
    const { kept, tools, jobFile, printer } = this.#input;
    const { job, blank, blankFile } = await jobOfRow(this.#input, row, (file, key) => kept.text(file, key));
    const files = new Map<string, Uint8Array>();
    const together = new FilesTogether();
    for (const { file, key } of filesNamed(job))
      if (!files.has(file))
        files.set(file, await together.read(() => kept.bytes(file, key), { file: jobFile, key }));
    const asked = printer ? { ...job, printer } : job;
    return {
      job: asked,
      jobFile,
      blank,
      blankFile: blankFile ?? jobFile,
      files,
      recall: this.#recall,
      tools,
    };
  }
}

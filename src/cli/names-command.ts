// `seamwright names`: a job once a row of a list.
import { readFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Refused, stop, toLine } from '../finding.ts';
import { archiveFile, ZipWriter } from '../job/archive.ts';
import { jsonContent, type NamedFile } from '../job/deliverables.ts';
import { indexOfRows } from '../job/index-page.ts';
import { type NamedRow, namedRows, refusalOf, textsFilled } from '../job/list/names.ts';
import {
  asksForEyes,
  looksInWords,
  type NamesReport,
  namesFile,
  namesInWords,
  namesReport,
} from '../job/list/names-report.ts';
import type { RefusedRow } from '../job/typed/list.ts';
import { parseJson } from '../job/typed/read-json.ts';
import { readList } from '../job/typed/read-list.ts';
import { unitsOf } from '../job/typed/schema-values.ts';
import { Delivery } from './delivery.ts';
import { KeptFiles, readText } from './files.ts';
import { besideJob } from './job-input.ts';
import type { CommonOptions } from './options.ts';
import { printJson, refusedStatus } from './output.ts';
import { givenPrinter, type PrintFlags, printPaper } from './print-flags.ts';
import { Progress } from './progress.ts';
import { RowThreads } from './row-threads.ts';
import { stageShared } from './shared-sheets.ts';
import { tellIn, told } from './units-told.ts';

export interface NamesFlags extends CommonOptions, PrintFlags {
  readonly pictures?: boolean;
  readonly zip?: boolean;
}

/** Rows that are left out, each told on standard error as it is found. */
class LeftOut {
  readonly rows: RefusedRow[] = [];
  readonly #file: string;

  constructor(file: string, rows: readonly RefusedRow[]) {
    this.#file = file;
    for (const row of rows) this.add(row);
  }

  add(row: RefusedRow): void {
    this.rows.push(row);
    process.stderr.write(
      `left out: ${told(toLine(stop('row', { file: this.#file, line: row.line }, row.says)))}\n`,
    );
  }
}

/** What all work over rows has. */
interface Run {
  readonly threads: RowThreads;
  readonly leftOut: LeftOut;
}

/** Work over rows, as many at a time as there are threads; what comes of each, in their order, without those refused. */
async function eachRow<T>(
  rows: readonly NamedRow[],
  { threads, leftOut }: Run,
  progress: Progress,
  work: (row: NamedRow) => Promise<T>,
): Promise<readonly T[]> {
  const done: (T | undefined)[] = rows.map(() => undefined);
  const left = rows.entries();
  const goOn = async () => {
    for (const [i, row] of left) {
      try {
        done[i] = await work(row);
      } catch (fault) {
        if (!(fault instanceof Refused) || fault.findings.some(({ rule }) => ofTheRun.has(rule))) throw fault;
        leftOut.add({ line: row.line, says: refusalOf(fault, row) });
      }
      progress.step();
    }
  };
  await Promise.all(Array.from({ length: threads.count }, goOn));
  return done.filter((one) => one !== undefined);
}

/** What is refused of no row, but of all: where nothing can be written. */
const ofTheRun: ReadonlySet<string> = new Set(['busy', 'unwritable']);

/** `engine`: the one that reads SVG, on its way; all threads have the same. */
export async function namesCommand(
  jobPath: string,
  listFile: string,
  flags: NamesFlags,
  engine: Promise<object>,
): Promise<number> {
  const paper = printPaper(flags);
  const printer = await givenPrinter(flags);
  const list = readList(await readText(listFile, listFile), basename(listFile));
  const jobFile = basename(jobPath);
  const job = { typed: parseJson(await readText(jobPath, jobPath), jobPath), jobFile, list };
  tellIn(unitsOf(job.typed, 'mm'));
  const kept = new KeptFiles(besideJob(jobPath), jobFile);
  const texts = await textsFilled(job, async (file) => parseJson(await kept.text(file, 'blank'), file));
  const rows = namedRows(list, texts);
  if (rows.length === 0 && list.refused.length === 0)
    throw new Refused([
      stop('no-rows', { file: listFile }, 'has no rows under its first line; give one a vessel'),
    ]);
  const leftOut = new LeftOut(listFile, list.refused);
  const input = {
    ...job,
    list: { ...list, rows: [] },
    jobPath,
    pictures: flags.pictures === true,
    paper,
    printer,
  };
  const threads = new RowThreads({ ...input, engine: await engine }, rows.length);
  try {
    const run = { threads, leftOut };
    const checked = await eachRow(rows, run, new Progress('checked', rows.length), async (row) => {
      await threads.check(row);
      return row;
    });
    const folder = flags.out ?? join(dirname(jobPath), 'out');
    if (checked.length > 0)
      return await writeRows(checked, run, { ...flags, folder, title: `${jobFile} and ${list.file}` });
    return noneMade(leftOut, flags.json);
  } finally {
    await threads.end();
  }
}

function noneMade({ rows }: LeftOut, json = false): number {
  if (json) printJson(namesReport([], rows));
  process.stderr.write('no row can be made, so nothing is written\n');
  return refusedStatus;
}

async function writeRows(
  asked: readonly NamedRow[],
  run: Run,
  { folder, json, zip = false, title }: NamesFlags & { readonly folder: string; readonly title: string },
): Promise<number> {
  const progress = new Progress('made', asked.length);
  const whole = new Delivery(folder, async () => {
    await run.threads.stop();
    return progress.stopped();
  });
  try {
    await whole.hold();
    const made = await eachRow(asked, run, progress, (row) =>
      run.threads.make(row, join(folder, row.folder)),
    );
    if (made.length === 0) return noneMade(run.leftOut, json);
    const rows = made.map(({ row }) => row);
    const shared = await stageShared(rows, { whole, folder, title });
    const report = namesReport(
      rows,
      run.leftOut.rows,
      shared,
      zip ? [{ file: archiveFile, role: 'archive' }] : [],
    );
    const pages = [{ file: namesFile, content: jsonContent(report) }, indexOfRows(title, report)];
    for (const { file, content } of pages) await whole.stage(file, content);
    const own = [...shared.files, ...pages];
    if (zip) await whole.stageParts(archiveFile, (append) => archiveRows(own, report, folder, append));
    await whole.finish();
    for (const line of looksInWords(report)) process.stderr.write(`${told(line)}\n`);
    const found = made.filter(({ isFound }) => isFound).length;
    if (json) printJson(report);
    else process.stdout.write(`${namesInWords(report, found, folder).join('\n')}\n`);
    return asksForEyes(report) ? 1 : 0;
  } finally {
    await whole.discard();
  }
}

/** An archive of the files of all rows, as they stand in their folders, after those that are still to be moved into place. */
async function archiveRows(
  own: readonly Pick<NamedFile, 'file' | 'content'>[],
  { files }: NamesReport,
  folder: string,
  append: (part: Uint8Array) => void,
): Promise<void> {
  const zip = new ZipWriter(append);
  for (const { file, content } of own) zip.add(file, Buffer.from(content));
  for (const { file, line } of files)
    if (line !== undefined) zip.add(file, await readFile(join(folder, file)));
  zip.end();
}

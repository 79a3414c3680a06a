// A list made from end to end as `names` does, without a disk: its rows, the sheets they share, and what is wrong with any of it.
import { Refused, stop } from '../../src/finding.ts';
import { filesOfPiece, fullReport } from '../../src/job/deliverables.ts';
import { jobOfRow, type NamedRow, namedRows, refusalOf, textsFilled } from '../../src/job/list/names.ts';
import { piecesOfFolder, proofOfFolder } from '../../src/job/list/prove-folder.ts';
import { laySet, proveSet, type SharedRow, sharingSets } from '../../src/job/list/shared-sheets.ts';
import { toolsForRows, tryRow } from '../../src/job/list/try-row.ts';
import { makeFiles } from '../../src/job/make-files.ts';
import type { MakeFilesInput } from '../../src/job/make-options.ts';
import { Recall } from '../../src/job/recall.ts';
import type { Report } from '../../src/job/report.ts';
import { filesNamed } from '../../src/job/typed/named-files.ts';
import { readJob } from '../../src/job/typed/read-job.ts';
import { parseJson } from '../../src/job/typed/read-json.ts';
import { readList } from '../../src/job/typed/read-list.ts';
import { setText } from '../job/a-font.ts';
import { pictureEngine } from '../pictures/compare.ts';
import type { ListJob } from './list-jobs.ts';
import { unprovedOf } from './unproved.ts';

/** So many trials a search has, for sheets of a few pieces. */
const search = { trials: 300 };

/** A row as it was written. */
interface Written {
  readonly row: NamedRow;
  readonly texts: Readonly<Record<string, string>>;
  readonly report: Report;
  readonly shared: SharedRow;
  /** Processor time that it took. */
  readonly seconds: number;
}

/** Longest that a row may take, seconds of the processor's time. */
const mostSeconds = 10;

async function writtenOf(row: NamedRow, input: MakeFilesInput): Promise<Written> {
  const before = process.cpuUsage();
  const sheets = input.job.sheet ? ({ sheets: 'shared' } as const) : {};
  const made = await makeFiles(input, { pictures: false, fromFolder: (file) => file, search, ...sheets });
  const more = await made.rest(made.pieces);
  const report = fullReport(made.pieces, more);
  const texts = Object.fromEntries(
    [...made.pieces.flatMap(filesOfPiece), ...more.files].flatMap(({ file, content }) =>
      typeof content === 'string' ? [[file, content]] : [],
    ),
  );
  const svgs = Object.entries(texts).filter(([file]) => /\.(cut|guide)\.svg$/.test(file));
  const shared = {
    folder: row.folder,
    pieces: made.sharing ?? [],
    job: readJob(parseJson(texts['job.json'] ?? '', 'job.json'), 'job.json'),
    texts: piecesOfFolder(Object.fromEntries(svgs.sort(([a], [b]) => (a < b ? -1 : 1)))),
  };
  const { user, system } = process.cpuUsage(before);
  return { row, texts, report, shared, seconds: (user + system) / 1e6 };
}

/** What is not as it should be of a row, in words. */
function faultsOfRow({ row, texts, report, seconds }: Written): string[] {
  const parsed = (name: string) => parseJson(texts[name] ?? '', name);
  const proof = proofOfFolder({
    job: parsed('job.json'),
    blank: parsed('blank.json'),
    blankFile: 'blank.json',
    report: parseJson(JSON.stringify(report), 'report.json'),
    texts,
  });
  return [
    ...unprovedOf(report, proof),
    ...(seconds > mostSeconds ? [`took ${seconds.toFixed(1)} s`] : []),
  ].map((fault) => `${row.folder}: ${fault}`);
}

/** What is not as it should be of the sheets that rows share. */
async function faultsOfSheets(rows: readonly Written[]): Promise<{ sheets: number; faults: string[] }> {
  const faults: string[] = [];
  let first = 1;
  for (const set of sharingSets(rows.map(({ shared }) => shared))) {
    const nested = await laySet(set, { title: 'a list', first, search });
    if (nested.files.length === 0) faults.push('no sheet is laid, and no row says why');
    if (nested.files.length === 0) continue;
    first += nested.shown.length;
    const { checks } = proveSet(set, nested.texts);
    if (checks.length === 0) faults.push('sheets: nothing was proved');
    for (const { rule, pass, value, limit } of checks)
      if (!pass) faults.push(`sheets: ${rule}: ${value}, and the limit is ${limit}`);
  }
  return { sheets: first - 1, faults };
}

/** Where a row made among others is not the one made alone. */
const unlike = (one: Written, other: Written): string[] =>
  Object.keys({ ...one.texts, ...other.texts })
    .filter((file) => one.texts[file] !== other.texts[file])
    .map((file) => `${one.row.folder}: ${file} is not as when made alone`);

export interface ListMade {
  readonly made: number;
  /** Why each row that was left out was. */
  readonly refused: readonly string[];
  /** So many that rows share. */
  readonly sheets: number;
  /** Rules that are told of each row that was made. */
  readonly told: readonly (readonly string[])[];
  readonly faults: readonly string[];
}

/** Everything that a list's rows are made with. */
interface Rows {
  readonly rows: readonly NamedRow[];
  /** What a row is made from, alone. @throws Refused */
  readonly inputOf: (row: NamedRow) => Promise<MakeFilesInput>;
  /** What rows share. */
  readonly together: Pick<MakeFilesInput, 'recall' | 'tools'>;
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** @throws Refused where nothing can be read of it. */
async function rowsOf({ job: typed, list: text, files }: ListJob): Promise<Rows> {
  const list = readList(text, 'names.csv');
  const given = { typed, jobFile: 't.job.json', list };
  const textOf = (file: string): string => {
    const found = files[file];
    if (found === undefined) throw new Refused([stop('no-file', { file }, 'is not there')]);
    return found;
  };
  const texts = await textsFilled(given, async (file) => parseJson(textOf(file), file));
  const tools = { ...(await pictureEngine()), words: () => [], setText };
  return {
    rows: namedRows(list, texts),
    together: { recall: new Recall(), tools: toolsForRows(tools) },
    inputOf: async (row) => {
      const { job, blank, blankFile } = await jobOfRow(given, row, async (file) => textOf(file));
      return {
        job,
        blank,
        jobFile: 't.job.json',
        blankFile: blankFile ?? 't.job.json',
        files: new Map(filesNamed(job).map(({ file }) => [file, bytesOf(textOf(file))])),
        tools,
      };
    },
  };
}

/** Work over rows; what comes of each, without those refused, which are told with why. */
async function eachRow<T>(
  rows: readonly NamedRow[],
  refused: string[],
  work: (row: NamedRow) => Promise<T>,
): Promise<readonly T[]> {
  const done: T[] = [];
  for (const row of rows) {
    try {
      done.push(await work(row));
    } catch (fault) {
      if (!(fault instanceof Refused)) throw fault;
      refused.push(refusalOf(fault, row));
    }
  }
  return done;
}

/** What comes of a job and its list. @throws Refused where all of it is. */
export async function listMade(typed: ListJob): Promise<ListMade> {
  const { rows, inputOf, together } = await rowsOf(typed);
  const [refused, late]: [string[], string[]] = [[], []];
  const checked = await eachRow(rows, refused, async (row) => {
    tryRow({ ...(await inputOf(row)), ...together });
    return row;
  });
  const written = await eachRow(checked, late, async (row) =>
    writtenOf(row, { ...(await inputOf(row)), ...together }),
  );
  const last = written.length > 1 ? written.at(-1) : undefined;
  const shared = await faultsOfSheets(written);
  return {
    made: written.length,
    refused: [...refused, ...late],
    sheets: shared.sheets,
    told: written.map(({ report }) => report.checks.map(({ rule }) => rule)),
    faults: [
      ...late.map((says) => `refused only once files are written: ${says}`),
      ...(last ? unlike(last, await writtenOf(last.row, await inputOf(last.row))) : []),
      ...written.flatMap(faultsOfRow),
      ...shared.faults,
    ],
  };
}

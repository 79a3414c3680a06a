// names.json, the one report of all rows of a list, and the same in words.
import type { Finding } from '../../finding.ts';
import type { LaidPiece } from '../deliverables.ts';
import { indexFile } from '../deliverables.ts';
import type { FileReport, Report } from '../report.ts';
import type { RefusedRow } from '../typed/list.ts';
import type { NamedRow } from './names.ts';
import type { SharedSheets, SharedSheetsReport } from './shared-sheets.ts';

export const namesFile = 'names.json';

/** A vessel made of a row. */
export interface MadeRow {
  readonly line: number;
  /** What stands on it. */
  readonly label: string;
  readonly folder: string;
  /** Whether its files, rolled back onto the blank, held; undefined where nothing was proved. */
  readonly proved?: boolean;
  /** What needs the maker's eye; notes stand in its own report. */
  readonly checks: readonly Finding[];
  /** By their names from the folder of all rows. */
  readonly files: readonly FileReport[];
  /** What is to be laid on sheets with other vessels' pieces. */
  readonly sharing: readonly LaidPiece[];
}

export interface NamesReport {
  /** So many vessels were made, in this run or in one before it. */
  readonly done: number;
  readonly refused: readonly RefusedRow[];
  readonly rows: readonly Omit<MadeRow, 'files' | 'sharing'>[];
  /** Sheets that vessels share, and whether they were proved to hold the pieces; left out where there are none. */
  readonly shared?: { readonly proved: boolean; readonly sets: readonly SharedSheetsReport[] };
  readonly files: readonly (FileReport & { readonly line?: number })[];
}

export const madeRow = (
  { line, label, folder }: NamedRow,
  { checks, proof }: Pick<Report, 'checks' | 'proof'>,
  files: readonly FileReport[],
  sharing: readonly LaidPiece[] = [],
): MadeRow => ({
  line,
  label,
  folder,
  ...(proof ? { proved: proof.pass } : {}),
  checks: checks.filter(({ level }) => level !== 'note'),
  files: files.map(({ file, role }) => ({ file: `${folder}/${file}`, role })),
  sharing,
});

/** `beside`: what else stands beside the folders, but the sheets, the page that opens all of it and this report. */
export const namesReport = (
  made: readonly MadeRow[],
  refused: readonly RefusedRow[],
  shared: SharedSheets = { sets: [], proofs: [], files: [] },
  beside: readonly FileReport[] = [],
): NamesReport => ({
  done: made.length,
  refused: [...refused].sort((a, b) => a.line - b.line),
  rows: made.map(({ files: _, sharing: __, ...row }) => row),
  ...(shared.sets.length > 0
    ? { shared: { proved: shared.proofs.every(({ pass }) => pass), sets: shared.sets } }
    : {}),
  files: [
    ...made.flatMap(({ line, files }) => files.map((file) => ({ ...file, line }))),
    { file: namesFile, role: 'report' },
    { file: indexFile, role: 'index' },
    ...shared.files.map(({ file, role }) => ({ file, role })),
    ...beside,
  ],
});

/** Whether a maker has to look at anything. */
export const asksForEyes = ({ refused, rows, shared }: NamesReport): boolean =>
  shared?.proved === false ||
  refused.length > 0 ||
  rows.some(({ proved, checks }) => proved === false || checks.length > 0);

const vessels = (count: number): string => (count === 1 ? 'one vessel' : `${count} vessels`);

/** What needs the maker's eye, one line a rule: the first row that has it, and how many more do. */
export function looksInWords({ rows }: NamesReport): readonly string[] {
  const rules = [...new Set(rows.flatMap(({ checks }) => checks.map(({ rule }) => rule)))];
  return rules.flatMap((rule) => {
    const having = rows.filter(({ checks }) => checks.some((check) => check.rule === rule));
    const first = having[0];
    const says = first?.checks.find((check) => check.rule === rule)?.says;
    if (!first || says === undefined) return [];
    const more = having.length === 1 ? '' : ` (and ${vessels(having.length - 1)} more)`;
    return [`look: ${first.folder} (line ${first.line}): ${says}${more}`];
  });
}

/** What was done, for a person. */
export function namesInWords(report: NamesReport, found: number, folder: string): readonly string[] {
  const { done, refused, rows } = report;
  const sheets = report.shared?.sets.reduce((sum, set) => sum + set.sheets.length, 0) ?? 0;
  const shared = report.shared?.proved
    ? 'proved to hold every piece, none over another'
    : `whose proof FAILED: "prove ${folder}" says in what`;
  const failed = rows.filter(({ proved }) => proved === false);
  const asBefore =
    found === 0 ? '' : `, ${found === done ? 'all' : found} of them as an earlier run left them`;
  return [
    `${vessels(done)} made${asBefore}${refused.length === 0 ? '' : `; ${refused.length} of the list left out`}`,
    ...(failed.length === 0
      ? [`proof: the written files of ${done === 1 ? 'it' : 'all'}, rolled back onto the blank, hold`]
      : [`proof: the written files FAIL in ${failed.map((row) => row.folder).join(', ')}`]),
    ...(report.shared ? [`sheets that they share: ${sheets}, ${shared}`] : []),
    `written to ${folder}: a folder a vessel, ${namesFile}, and ${indexFile} that opens all of it`,
  ];
}

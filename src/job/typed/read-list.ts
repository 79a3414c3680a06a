// A list of rows from CSV text, each with the line it begins at. Adapter: papaparse (MIT) takes cells and quotes apart.
import papa from 'papaparse';
import { Refused, stop } from '../../finding.ts';
import { shown } from '../../lengths/shown.ts';
import type { List, ListRow } from './list.ts';

/** More rows and columns than this are not one batch of vessels, and more letters no text that goes onto one. */
const most = { rows: 10_000, columns: 200, letters: 10_000 };

const separators = [';', '\t', ','] as const;

/** Most letters that name a column. */
const longestName = 200;

/** What spreadsheets may say before the header: `sep=;`. */
const saidSeparator = /^sep=(.)$/i;

/**
 * The rows of a list. Its first line names the columns, and tells by what cells are set apart: a comma, a semicolon or a
 * tab, whichever stands there most. Line ends of any kind become one. Lines without a word in them are passed over.
 * Source: RFC 4180 (2005), section 2, but for the separators.
 * @throws Refused where it has no columns, a quote that is not closed, or more rows than are made.
 */
export function readList(text: string, file: string): List {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const [, said] = saidSeparator.exec(plain.slice(0, plain.indexOf('\n'))) ?? [];
  const skipped = said === undefined ? 0 : 1;
  const body = skipped === 0 ? plain : plain.slice(plain.indexOf('\n') + 1);
  const separator = said ?? separatorOf(body);
  const [header, ...rows] = rowsOf(body, separator, { file, skipped });
  const columns = columnsOf(header, file);
  const told = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const trimmed = told.map(({ line, cells }) => ({ line, cells: withoutEmptyEnd(cells, columns.length) }));
  const isWhole = ({ cells }: ListRow) => cells.length === columns.length;
  return {
    file,
    columns,
    rows: trimmed.filter(isWhole),
    refused: trimmed
      .filter((row) => !isWhole(row))
      .map(({ line, cells }) => ({ line, says: wrongCount(cells.length, columns.length) })),
    hasDecimalComma: separator === ';',
  };
}

/** The separator that stands most often outside quotes in the first line; a comma where none does. */
function separatorOf(text: string): string {
  const counts = new Map<string, number>(separators.map((separator) => [separator, 0]));
  let isQuoted = false;
  // A cell may be of any length: a pattern for what stands in quotes would fill the stack.
  for (let i = 0; i < text.length; i++) {
    const letter = text.charAt(i);
    if (letter === '"') isQuoted = !isQuoted;
    else if (isQuoted) continue;
    else if (letter === '\n') break;
    else if (counts.has(letter)) counts.set(letter, (counts.get(letter) ?? 0) + 1);
  }
  const count = (separator: string) => counts.get(separator) ?? 0;
  const [first] = [...separators].sort((a, b) => count(b) - count(a));
  return first === undefined || count(first) === 0 ? ',' : first;
}

interface ListPlace {
  readonly file: string;
  /** Lines before the header. */
  readonly skipped: number;
}

function rowsOf(text: string, delimiter: string, { file, skipped }: ListPlace): ListRow[] {
  const rows: ListRow[] = [];
  let [line, from] = [1 + skipped, 0];
  papa.parse(text, {
    delimiter,
    newline: '\n',
    fastMode: false,
    step: ({ data, errors, meta }) => {
      if (errors.length > 0) throw new Refused([stop('broken-quotes', { file, line }, unclosed)]);
      const longest = data.reduce((length, cell) => Math.max(length, cell.length), 0);
      if (longest > most.letters)
        throw new Refused([stop('cell-too-long', { file, line }, tooLong(longest))]);
      if (rows.length > most.rows) throw new Refused([stop('too-many-rows', { file }, tooManyRows)]);
      rows.push({ line, cells: data });
      for (; from < meta.cursor; from++) if (text.charAt(from) === '\n') line++;
    },
  });
  return rows;
}

const unclosed =
  'a cell begins with a double quote and does not end with one; close it, and write a quote within a cell twice ("")';

const tooLong = (letters: number): string =>
  `has a cell of ${letters} letters; up to ${most.letters} are read: look for a double quote that is not closed, or for what is no list`;

const tooManyRows = `has more than ${most.rows} rows; give them in several lists`;

function columnsOf(header: ListRow | undefined, file: string): readonly string[] {
  const columns = withoutEmptyEnd(header?.cells ?? [], 0).map((name) => name.trim());
  const refuse = (rule: string, says: string) =>
    new Refused([stop(rule, { file, line: header?.line ?? 1 }, says)]);
  if (columns.length === 0) throw refuse('no-columns', 'has no columns; name them in the first line');
  if (columns.length > most.columns)
    throw refuse('too-many-columns', `has ${columns.length} columns; up to ${most.columns} are read`);
  const long = columns.find((name) => name.length > longestName);
  if (long !== undefined)
    throw refuse('column-name-long', `${shown(long)} names a column by more than ${longestName} letters`);
  const twice = columns.find((name, i) => name !== '' && columns.indexOf(name) < i);
  if (twice !== undefined) throw refuse('column-twice', `${shown(twice)} names two columns; rename one`);
  return columns;
}

/** Cells without the empty ones past a number of them: what spreadsheets add. */
function withoutEmptyEnd(cells: readonly string[], least: number): readonly string[] {
  const end = cells.findLastIndex((cell, i) => i < least || cell.trim() !== '');
  return cells.slice(0, end + 1);
}

const wrongCount = (count: number, columns: number): string =>
  `has ${count} ${count === 1 ? 'cell' : 'cells'}, and the list has ${columns} ${columns === 1 ? 'column' : 'columns'}; a cell with a separator in it stands in double quotes`;

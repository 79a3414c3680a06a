// A job once a row of a list: what is filled from the list, what each row is called, and the job of a row.
import { type Finding, Refused, refuseIfAny, stop, toLine } from '../../finding.ts';
import { shown } from '../../lengths/shown.ts';
import { columnsIn } from '../typed/columns-in.ts';
import { type FetchText, type Fill, type GivenJob, givenJob } from '../typed/given-job.ts';
import type { List, ListRow } from '../typed/list.ts';
import { filled, filledText, type TypedText, textsToFill } from '../typed/list-columns.ts';
import { isObject, nearestTo } from '../typed/schema.ts';
import { rowFolders } from './row-folders.ts';

/** A job and a list. */
export interface NamesInput {
  /** The job's file as parsed. */
  readonly typed: unknown;
  readonly jobFile: string;
  readonly list: List;
}

/** A row and what it is called. */
export interface NamedRow extends ListRow {
  /** What stands on the vessel. */
  readonly label: string;
  /** Its folder: no two are alike, on any file system. */
  readonly folder: string;
}

const unknownColumns = (
  texts: readonly TypedText[],
  file: string,
  { columns, file: listFile }: List,
): Finding[] =>
  texts.flatMap(({ key, text }) =>
    columnsIn(text)
      .filter((name) => !columns.includes(name))
      .map((name) => {
        const says = `{${name}} is no column of ${listFile}; the nearest is {${nearestTo(name, columns)}}`;
        return stop('unknown-column', { file, key }, says);
      }),
  );

/** Fills what stands in a file from a row. @throws Refused where it names a column that the list has not. */
const fillFrom =
  (row: ListRow, list: List): Fill =>
  (value, keys, file) => {
    refuseIfAny(unknownColumns(textsToFill(value), file, list));
    return filled(value, keys, row, list);
  };

/** The job that a row makes. @throws Refused where it can't be read with the row's values. */
export const jobOfRow = (
  { typed, jobFile, list }: NamesInput,
  row: ListRow,
  fetchText: FetchText,
): Promise<GivenJob> => givenJob(typed, jobFile, fetchText, fillFrom(row, list));

/**
 * Texts of the job and of its blank that are filled from the list. The blank's file is looked at where the job names one
 * whatever the row. @throws Refused where none is filled, or one names a column that the list has not.
 */
export async function textsFilled(
  { typed, jobFile, list }: NamesInput,
  parsedBlank: (file: string) => Promise<unknown>,
): Promise<readonly TypedText[]> {
  const blankFile = isObject(typed) && typeof typed.blank === 'string' ? typed.blank : undefined;
  const isSame = blankFile !== undefined && columnsIn(blankFile).length === 0;
  const ofJob = textsToFill(typed);
  const ofBlank = isSame ? textsToFill(await parsedBlank(blankFile)) : [];
  const unknown = [
    ...unknownColumns(ofJob, jobFile, list),
    ...unknownColumns(ofBlank, blankFile ?? '', list),
  ];
  refuseIfAny(unknown);
  const texts = [...ofJob, ...ofBlank];
  if (texts.length > 0) return texts;
  const [first = 'name'] = list.columns;
  const says = `nothing in it is filled from ${list.file}, so that all vessels would be alike; write {${first}} where that column is to stand`;
  throw new Refused([stop('nothing-filled', { file: jobFile }, says)]);
}

/** The rows with their names, in their order: by the job's name, else by its lettering, else by what is filled first. */
export function namedRows(list: List, texts: readonly TypedText[]): readonly NamedRow[] {
  const label =
    texts.find(({ key }) => key === 'name') ??
    texts.find(({ key }) => /^lettering\[\d+\]\.text$/.test(key)) ??
    texts[0];
  const labelled = list.rows.map((row) => ({
    ...row,
    label: filledText(label?.text ?? '', row, list)
      .replace(/\s+/g, ' ')
      .trim(),
  }));
  const folders = rowFolders(labelled);
  return labelled.map((row, i) => ({ ...row, folder: folders[i] ?? '' }));
}

/** Why a row is left out, in one line. */
export const refusalOf = ({ findings }: Refused, { label }: Pick<NamedRow, 'label'>): string =>
  `${label === '' ? '' : `${shown(label)}: `}${findings.map(toLine).join('; ')}`;

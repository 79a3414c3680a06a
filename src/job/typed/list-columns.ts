// `{column}` in the texts and numbers of a job or a blank: found, and filled from a row of a list.
import { columnsIn, placeholder } from './columns-in.ts';
import type { List, ListRow } from './list.ts';
import { maybeLines } from './read-lettering.ts';
import { isObject, type Keys } from './schema.ts';
import { text } from './schema-values.ts';

const onlyOne = /^\{([^{}\n]+)\}$/;

/** A number with a decimal comma, whatever unit follows. */
const withComma = /^(\s*[+-]?\d+),(\d+\D*)$/;

const plainNumber = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

/** A text at its key, such as `lettering[0].text`. */
export interface TypedText {
  readonly key: string;
  readonly text: string;
}

/** Every text of a parsed file that names a column. */
export const textsToFill = (value: unknown, key = ''): readonly TypedText[] => {
  if (typeof value === 'string') return columnsIn(value).length > 0 ? [{ key, text: value }] : [];
  if (Array.isArray(value)) return value.flatMap((item, i) => textsToFill(item, `${key}[${i}]`));
  if (!isObject(value)) return [];
  return Object.entries(value).flatMap(([name, item]) =>
    textsToFill(item, key === '' ? name : `${key}.${name}`),
  );
};

export type Source = Pick<List, 'columns' | 'hasDecimalComma'>;

/** A text filled from a row. What a cell holds is not filled again. */
export const filledText = (typed: string, row: ListRow, { columns }: Source): string =>
  typed.replace(placeholder, (whole, name: string) => row.cells[columns.indexOf(name.trim())] ?? whole);

/**
 * A parsed file filled from a row. Where a key takes no words, a cell that is a plain number becomes one, and a decimal
 * comma a point: `{girth}` may stand where a number does. `keys`: those of the file's own object.
 */
export function filled(value: unknown, keys: Keys | undefined, row: ListRow, source: Source): unknown {
  if (typeof value === 'string') return filledNumber(value, row, source);
  if (Array.isArray(value)) return value.map((item) => filled(item, keys, row, source));
  if (!isObject(value)) return value;
  const entries = Object.entries(value).map(([name, item]) => {
    const key = keys && Object.hasOwn(keys, name) ? keys[name] : undefined;
    const isWords = key?.read === text || key?.read === maybeLines;
    return typeof item === 'string' && isWords
      ? [name, filledText(item, row, source)]
      : [name, filled(item, key?.inside?.keys, row, source)];
  });
  return Object.fromEntries(entries);
}

function filledNumber(typed: string, row: ListRow, source: Source): unknown {
  const { cells } = row;
  const pointed = source.hasDecimalComma
    ? { ...row, cells: cells.map((cell) => cell.replace(withComma, '$1.$2')) }
    : row;
  const text = filledText(typed, pointed, source);
  return onlyOne.test(typed) && plainNumber.test(text.trim()) ? Number(text) : text;
}

// JSON text to a plain value. Our own reader, for two things the built-in one does not tell: the line and column of a
// fault in every engine, and a key given twice, of which it would drop the first in silence.
import { Refused, stop } from '../../finding.ts';
import { shown } from '../../lengths/shown.ts';

/** Deepest nesting read: a job has five levels, and a file made to exhaust the stack has thousands. */
const deepest = 64;

/** Most values read of one file, those in lists and objects counted too: ten times those of a report of a large job. */
const mostValues = 1_000_000;

/** Where reading has come to in the text. */
interface Cursor {
  readonly text: string;
  readonly file: string;
  at: number;
  /** Values read so far. */
  values: number;
}

/**
 * The value of a JSON text (RFC 8259; a byte order mark is passed over).
 * @throws Refused, rules `broken-json`, `half-letter` and `key-twice`, with line and column, both from 1.
 */
export function parseJson(text: string, file: string): unknown {
  const cursor: Cursor = { text: text.replace(/^\uFEFF/, ''), file, at: 0, values: 0 };
  skipSpace(cursor);
  if (cursor.at === cursor.text.length) throw fault(cursor, 'the file is empty; give a JSON object, { ... }');
  const value = readValue(cursor, 0);
  skipSpace(cursor);
  if (cursor.at < cursor.text.length) throw unexpected(cursor, 'the end of the file');
  return value;
}

function readValue(cursor: Cursor, depth: number): unknown {
  if (depth > deepest) throw fault(cursor, `is nested over ${deepest} deep; no file of ours needs that`);
  if (++cursor.values > mostValues)
    throw fault(cursor, `holds more than ${mostValues} values; no file of ours needs that`);
  const first = cursor.text.charAt(cursor.at);
  if (first === '{') return readObject(cursor, depth);
  if (first === '[') return readList(cursor, depth);
  if (first === '"') return readText(cursor);
  return readWord(cursor);
}

function readObject(cursor: Cursor, depth: number): object {
  const entries = new Map<string, unknown>();
  cursor.at++;
  if (taken(cursor, '}')) return {};
  do {
    skipSpace(cursor);
    const start = cursor.at;
    if (cursor.text.charAt(start) === '}') throw trailingComma(cursor);
    if (cursor.text.charAt(start) !== '"') throw unexpected(cursor, 'a key in double quotes');
    const key = readText(cursor);
    if (entries.has(key))
      throw fault({ ...cursor, at: start }, `${shown(key)} is given twice; keep one`, 'key-twice');
    if (!taken(cursor, ':')) throw unexpected(cursor, `":" after the key ${shown(key)}`);
    skipSpace(cursor);
    entries.set(key, readValue(cursor, depth + 1));
  } while (taken(cursor, ','));
  if (!taken(cursor, '}')) throw unexpected(cursor, '"," or "}"');
  return Object.fromEntries(entries);
}

function readList(cursor: Cursor, depth: number): readonly unknown[] {
  const items: unknown[] = [];
  cursor.at++;
  if (taken(cursor, ']')) return items;
  do {
    skipSpace(cursor);
    if (cursor.text.charAt(cursor.at) === ']') throw trailingComma(cursor);
    items.push(readValue(cursor, depth + 1));
  } while (taken(cursor, ','));
  if (!taken(cursor, ']')) throw unexpected(cursor, '"," or "]"');
  return items;
}

function readText(cursor: Cursor): string {
  const end = endOfText(cursor);
  if (cursor.text.charAt(end) !== '"')
    throw fault({ ...cursor, at: end }, textFault(cursor.text.charAt(end)));
  const token = cursor.text.slice(cursor.at, end + 1);
  const read = String(JSON.parse(token));
  // Half of one that takes two (a sign such as 🐚 does) is no letter: no file could hold it. Source: Unicode 15.0, definition D75.
  const half = /\p{Surrogate}/u.exec(read)?.[0];
  if (half !== undefined)
    throw fault(cursor, `${shown(half)} is half a letter; write the letter itself`, 'half-letter');
  cursor.at = end + 1;
  return read;
}

/**
 * Where a text that begins here ends, or can't go on. In stretches: the engine remembers each letter that one pattern went over, and
 * some millions are too many.
 */
function endOfText({ text, at }: Cursor): number {
  const stretch = /(?:[^"\\\p{Cc}]|[\u007f-\u009f]|\\["\\/bfnrt]|\\u[0-9a-fA-F]{4}){1,4096}/uy;
  let end = at + 1;
  stretch.lastIndex = end;
  while (stretch.test(text)) end = stretch.lastIndex;
  return end;
}

const textFault = (found: string): string =>
  found === '\\'
    ? 'a backslash here begins no escape; write \\\\ for a backslash'
    : 'a text is not closed on its line; put a double quote at its end';

function readWord(cursor: Cursor): unknown {
  const pattern = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![^\s,:{}[\]"])/y;
  pattern.lastIndex = cursor.at;
  const token = pattern.exec(cursor.text)?.[0];
  if (token === undefined)
    throw unexpected(cursor, 'a value: a number, a text in double quotes, a list or an object');
  cursor.at += token.length;
  return JSON.parse(token);
}

function skipSpace(cursor: Cursor): void {
  const space = /[ \t\n\r]*/y;
  space.lastIndex = cursor.at;
  cursor.at += space.exec(cursor.text)?.[0].length ?? 0;
}

/** Steps over a mark and the space before it when the mark comes next. */
function taken(cursor: Cursor, mark: string): boolean {
  skipSpace(cursor);
  if (cursor.text.charAt(cursor.at) !== mark) return false;
  cursor.at++;
  return true;
}

function unexpected(cursor: Cursor, wanted: string): Refused {
  const found = /[^\s,:{}[\]"]+|\S/y;
  found.lastIndex = cursor.at;
  const token = found.exec(cursor.text)?.[0];
  return fault(
    cursor,
    `${token === undefined ? 'the file ends' : `${shown(token)} stands`} where ${wanted} should`,
  );
}

/** At the comma, where it is to be mended, not at the bracket after it. */
function trailingComma(cursor: Cursor): Refused {
  const closing = shown(cursor.text.charAt(cursor.at));
  const at = cursor.text.lastIndexOf(',', cursor.at);
  return fault({ ...cursor, at }, `a comma stands before the closing ${closing}; take the comma out`);
}

function fault({ text, file, at }: Cursor, says: string, rule = 'broken-json'): Refused {
  // Counted one by one: a list of forty million lines took a gigabyte.
  let [line, start] = [1, 0];
  for (const { 0: end, index } of text.slice(0, at).matchAll(/\r\n|\n|\r/g)) {
    line++;
    start = index + end.length;
  }
  return new Refused([stop(rule, { file, line, column: at - start + 1 }, says)]);
}

// Text of the bytes of a file that a maker gave.
import { Refused, stop } from '../finding.ts';

/** The encoding standard's decoder, alike in Node and browsers; the core's types know neither of them. It leaves out a byte order mark. */
declare const TextDecoder: new (
  encoding?: string,
  options?: { readonly fatal: boolean },
) => { decode(bytes: Uint8Array): string };

/** Text in an encoding, by any of the names that the encoding standard knows; nothing where it is none, or not known. */
export function decoded(bytes: Uint8Array, encoding: string): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** The encoding that a byte order mark tells; UTF-8 where there is none. Source: Unicode 15.0, section 23.8, table 23-6. */
export function markedEncoding([first, second]: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  return first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
}

/**
 * Text in UTF-8, or in UTF-16 that begins with its byte order mark; without the mark.
 * @throws Refused, rule `not-utf-8`, with the line: any letter guessed would stand on the vessel.
 */
export function typedText(bytes: Uint8Array, file: string): string {
  const encoding = markedEncoding(bytes);
  const text = decoded(bytes, encoding);
  if (text !== undefined) return text;
  const line = encoding === 'utf-8' ? { line: firstBroken(bytes) } : {};
  const as = /\.csv$/i.test(file) ? 'as "CSV UTF-8"' : 'in UTF-8';
  const says = `is not text in UTF-8, so letters with accents would be lost; save it ${as}`;
  throw new Refused([stop('not-utf-8', { file, ...line }, says)]);
}

/** The first line that is no UTF-8, from 1. No letter of UTF-8 has the byte that ends a line in it. */
function firstBroken(bytes: Uint8Array): number {
  let line = 1;
  for (let from = 0; from < bytes.length; line++) {
    const end = bytes.indexOf(10, from);
    const to = end < 0 ? bytes.length : end;
    if (decoded(bytes.subarray(from, to), 'utf-8') === undefined) break;
    from = to + 1;
  }
  return line;
}

// The text of an SVG file, whichever way its letters are encoded.
import { Refused, stop } from '../../finding.ts';
import { decoded, markedEncoding, typedText } from '../../lengths/typed-text.ts';

/** What an XML file says of its encoding, within its first bytes. Source: XML 1.0, fifth edition, section 4.3.3. */
const declared = /^<\?xml\s[^>]{0,150}\sencoding\s{0,20}=\s{0,20}["']([\w.:-]{1,40})["']/;

/**
 * Text in UTF-8, in UTF-16, or in what the file declares; without a byte order mark. What begins as no drawing does is given as far as
 * its beginning can be shown.
 * @throws Refused where it can't be read as it says.
 */
export function svgTextOf(bytes: Uint8Array, file: string): string {
  const start = String.fromCharCode(...bytes.subarray(0, 250)).replace(/^\u00ef\u00bb\u00bf/, '');
  const encoding = markedEncoding(bytes) === 'utf-8' ? encodingBy(start) : undefined;
  if (encoding === undefined)
    return /^\s*[^\s<\u00fe\u00ff]/.test(start) ? (decoded(bytes, 'utf-8') ?? start) : typedText(bytes, file);
  const text = decoded(bytes, encoding);
  if (text !== undefined) return text;
  const says = `says that its text is in ${encoding}, and can't be read so; save it in UTF-8`;
  throw new Refused([stop('not-utf-8', { file }, says)]);
}

/** An encoding that no byte order mark tells, by a file's first bytes, a letter each; nothing where it is UTF-8. */
function encodingBy(start: string): string | undefined {
  // Without a mark UTF-16 shows by its first letter. Source: XML 1.0, fifth edition, appendix F.1.
  if (start.startsWith('<\0')) return 'utf-16le';
  if (start.startsWith('\0<')) return 'utf-16be';
  const encoding = declared.exec(start)?.[1];
  // What could be read so far is in no UTF-16, whatever a program has written into it.
  return encoding === undefined || /^(?:utf|ucs|unicode)/i.test(encoding) ? undefined : encoding;
}

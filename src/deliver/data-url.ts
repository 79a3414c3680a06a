// Bytes within a page: a URL that holds them itself. Source: RFC 2397, and RFC 4648 section 4 for base64; both seen before.
const letters = Uint8Array.from(
  'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/',
  (letter) => letter.charCodeAt(0),
);
const filler = '='.charCodeAt(0);

/** A call takes so many characters of a text at once without running out of its stack. */
const atOnce = 8192;

/** The URL of bytes of a media type, such as `image/png`. */
export function dataUrl(bytes: Uint8Array, type: string): string {
  const codes = new Uint8Array(Math.ceil(bytes.length / 3) * 4).fill(filler);
  for (let i = 0, to = 0; i < bytes.length; i += 3, to += 4) {
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const last = Math.min(3, bytes.length - i);
    for (let k = 0; k <= last; k++) codes[to + k] = letters[(three >> (18 - 6 * k)) & 63] ?? 0;
  }
  let text = '';
  for (let i = 0; i < codes.length; i += atOnce)
    text += String.fromCharCode(...codes.subarray(i, i + atOnce));
  return `data:${type};base64,${text}`;
}

// Bytes within a page: a URL that holds them itself. Source: RFC 2397, and RFC 4648 section 4 for base64; both seen before.
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** The URL of bytes of a media type, such as `image/png`. */
export function dataUrl(bytes: Uint8Array, type: string): string {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const three = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    const four = [18, 12, 6, 0].map((shift) => letters[(three >> shift) & 63] ?? '').join('');
    const left = bytes.length - i;
    parts.push(left >= 3 ? four : left === 2 ? `${four.slice(0, 3)}=` : `${four.slice(0, 2)}==`);
  }
  return `data:${type};base64,${parts.join('')}`;
}

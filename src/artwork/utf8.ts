// Text of the bytes of a file.

/** The encoding standard's decoder, alike in Node and browsers; the core's types know neither of them. */
declare const TextDecoder: new () => { decode(bytes: Uint8Array): string };

/** Text in UTF-8, without a byte order mark. */
export const utf8 = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

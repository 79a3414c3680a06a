// What the page may do: its own files and nothing else. No outside address, no script but its own, no form, no frame.

/** `wasm-unsafe-eval` lets the engine's WebAssembly start; it allows no text to become script. */
const rules = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  // Pictures that the engine draws are handed to the page as blobs.
  "img-src 'self' blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
];

/** The policy as a header; or as it may stand in a page, where what only a header can say is left out. */
export const contentPolicy = (where: 'header' | 'page'): string =>
  (where === 'header' ? [...rules, "frame-ancestors 'none'"] : rules).join('; ');

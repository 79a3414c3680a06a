// What of WebAssembly is asked of node: its published types leave that to those of a browser.
declare namespace WebAssembly {
  function compile(bytes: Uint8Array): Promise<object>;
}

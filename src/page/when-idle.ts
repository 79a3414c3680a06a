// Work that can wait until the page has nothing else to do.

export function whenIdle(run: () => void): void {
  // Not every browser tells when it is idle.
  if ('requestIdleCallback' in globalThis) requestIdleCallback(run);
  else setTimeout(run, 50);
}

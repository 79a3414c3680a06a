// How long a change took to be seen, told to the browser's own record of times, for the bench and for whoever looks there.

/** The last one of its name alone is kept. `since`: when the change was made, by the page's clock, ms. */
export function markRedraw(name: string, since: number): void {
  performance.clearMeasures(name);
  performance.measure(name, { start: since });
}

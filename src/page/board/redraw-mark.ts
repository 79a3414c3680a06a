// How long a change took to be seen, told to the browser's own record of times, for the bench and for whoever looks there.

/** To be called in the frame that draws a change: its time ends when the next one begins, for then it has been shown. The last one of its name alone is kept. `since`: when the change was made, by the page's clock, ms. */
export function markRedraw(name: string, since: number): void {
  requestAnimationFrame(() => {
    performance.clearMeasures(name);
    performance.measure(name, { start: since });
  });
}

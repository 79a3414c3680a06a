// Keys on a drawing that is moved and zoomed by hand.

export type Keys = Readonly<Record<string, () => void>>;

/** An arrow key while Shift is held has a name of its own. */
const nameOf = ({ key, shiftKey }: KeyboardEvent): string =>
  shiftKey && key.startsWith('Arrow') ? `Shift ${key}` : key;

/** A handler that does what a key stands for, and leaves every other key, and those with others held, to the browser. */
export const onKeys =
  (keys: Keys) =>
  (event: KeyboardEvent): void => {
    const act = event.ctrlKey || event.metaKey || event.altKey ? undefined : keys[nameOf(event)];
    if (!act) return;
    event.preventDefault();
    act();
  };

/** The keys that bring nearer or take away. */
export const zoomKeys = (zoomBy: (factor: number) => void): Keys => ({
  '+': () => zoomBy(1.25),
  '=': () => zoomBy(1.25),
  '-': () => zoomBy(0.8),
});

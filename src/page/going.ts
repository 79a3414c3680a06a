// Where the keyboard goes on: to a field that is named, and, where what was pressed is gone, to what is left beside it.

/** Takes the maker to a field by its half and key, such as `job:coats[0].thickness`; its step is opened. */
export function goTo(field: string | number): void {
  document.dispatchEvent(new CustomEvent('go-to-field', { detail: field }));
}

/** The keyboard goes on to a field that stands beside what was pressed, once it is there; the page stays where it is. */
export function goOnIn(field: string): void {
  requestAnimationFrame(() => {
    const there = document.querySelector<HTMLElement>(`[data-path="${CSS.escape(field)}"]`);
    there?.focus({ preventScroll: true });
  });
}

const reachable = 'button, input, select, textarea, summary, [tabindex="0"]';

const canTake = (element: HTMLElement): boolean =>
  element.isConnected &&
  element.tabIndex >= 0 &&
  !element.matches(':disabled') &&
  element.getClientRects().length > 0;

/** After a press that takes away what was pressed: without it, who works by keys would begin again at the page's top. */
export function keepFocus(): void {
  const pressed = document.activeElement;
  if (!(pressed instanceof HTMLElement) || pressed === document.body) return;
  const all = [...document.querySelectorAll<HTMLElement>(reachable)];
  const at = all.indexOf(pressed);
  requestAnimationFrame(() => {
    if (document.activeElement !== document.body || at < 0 || canTake(pressed)) return;
    const nearest = [...all.slice(at + 1), ...all.slice(0, at).reverse()].find(canTake);
    nearest?.focus({ preventScroll: true });
  });
}

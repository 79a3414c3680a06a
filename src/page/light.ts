// Day or night: as the machine has it, or as the maker chose, kept in this browser. It is of the page and not of the job, so undo leaves it.
import { signal } from '@preact/signals';

const choices = ['system', 'light', 'dark'] as const;
export type Light = (typeof choices)[number];

const key = 'seamwright light';

function kept(): Light {
  try {
    const value = localStorage.getItem(key);
    return choices.find((one) => one === value) ?? 'system';
  } catch {
    // A browser that keeps nothing throws.
    return 'system';
  }
}

export const light = signal<Light>('system');

function choose(next: Light): void {
  light.value = next;
  document.documentElement.dataset.light = next;
}

/** To be called before anything is drawn. */
export const startLight = (): void => choose(kept());

/** The next of the three. */
export function changeLight(): void {
  choose(choices[(choices.indexOf(light.value) + 1) % choices.length] ?? 'system');
  try {
    localStorage.setItem(key, light.value);
  } catch {
    // It holds until the page is closed.
  }
}

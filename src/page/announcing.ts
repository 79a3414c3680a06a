// What those who listen are told when a change has been worked out: how the checks stand, and what stands against the job.
import { effect } from '@preact/signals';
import { findingSays } from './parts/plain-words.ts';
import { checksState } from './steps/step-states.ts';
import { findings, isBusy, isStillToGive, isUntouched, said } from './store.ts';

/** So long after the last key the reader of the screen has said it, ms. */
const pause = 700;

/** How the checks stand, with the first thing that stops the job. */
function standing(): string {
  const stop = findings.value.find((finding) => finding.level === 'stop' && !isStillToGive(finding));
  return `Checks: ${checksState().says}${stop ? `. ${findingSays(stop)}` : ''}`;
}

/** Tells it whenever it has changed and the maker rests; what is said meanwhile, such as help that was asked for, is heard first. */
export function startAnnouncing(): void {
  let told = '';
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    clearTimeout(timer);
    said.value;
    if (isBusy.value || isUntouched.value) return;
    const now = standing();
    if (now === told) return;
    timer = setTimeout(() => {
      told = now;
      said.value = now;
    }, pause);
  });
}

// The guide's panel: what to do next, and how far it is.
import { effect, signal } from '@preact/signals';
import { goTo } from '../going.ts';
import { guideSteps } from '../model/guide-steps.ts';
import { startAnew } from '../opening.ts';
import { made } from '../steps/files-step.tsx';
import { bench, isGuided, selected, view } from '../store.ts';

/** The step of the guide that is to be done; undefined where no guide is open. */
const at = signal<number | undefined>(undefined);

export function startGuide(): void {
  // Its readings are in mm: typed on a bench in inches, 62 would be a cup as high as a man.
  startAnew('mm');
  selected.value = undefined;
  made.value = undefined;
  at.value = 0;
  // The button that began it is gone with the welcome: who works by keys goes on at the guide.
  requestAnimationFrame(() => document.querySelector<HTMLElement>('.guide button')?.focus());
}

effect(() => {
  isGuided.value = at.value !== undefined;
});

// A step that is done gives way to the next one.
effect(() => {
  const step = at.value === undefined ? undefined : guideSteps[at.value];
  if (!step || at.value === undefined) return;
  const state = {
    bench: bench.value,
    isMade: made.value !== undefined,
    hasSelected: selected.value !== undefined,
    view: view.value,
  };
  if (step.isDone(state)) at.value = at.value + 1;
});

export function Guide() {
  if (at.value === undefined) return null;
  const step = guideSteps[at.value];
  const close = () => {
    at.value = undefined;
  };
  return (
    <aside class="guide" aria-label="First-time guide">
      <p class="guide-count">
        {step ? `Lighthouse cup: ${at.value + 1} of ${guideSteps.length}` : 'Lighthouse cup: done'}
      </p>
      <p class="guide-says" role="status">
        {step
          ? step.says
          : 'That is the whole job. Save all as one zip, measure the squares on the print, and cut.'}
      </p>
      <progress max={guideSteps.length} value={at.value} aria-label="How far the guide is" />
      <div class="button-row">
        {step ? (
          <button type="button" class="plain" onClick={() => goTo(step.at)}>
            Show me where
          </button>
        ) : null}
        <button type="button" class="quiet" onClick={close}>
          {step ? 'Leave the guide' : 'Close'}
        </button>
      </div>
    </aside>
  );
}

// One step of the job's card: its number, its name, how it stands, and what is done in it.
import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';

export interface StepState {
  readonly is: 'ready' | 'look' | 'stop' | 'open';
  readonly says: string;
}

interface StepProps {
  readonly number: number;
  readonly title: string;
  /** How it stands: the step alone is drawn anew when that changes, not what is in it. */
  readonly state: () => StepState;
  readonly open: Signal<ReadonlySet<number>>;
  readonly onEnter?: () => void;
  readonly children: ComponentChildren;
}

export function Step({ number, title, state, open, onEnter, children }: StepProps) {
  const { is, says } = state();
  const isOpen = open.value.has(number);
  const toggle = () => {
    const next = new Set(open.value);
    if (!next.delete(number)) {
      next.add(number);
      onEnter?.();
    }
    open.value = next;
  };
  return (
    <section class={`step step-${is}`} aria-label={title}>
      <h2 id={`step-${number}`}>
        <button type="button" aria-expanded={isOpen} aria-controls={`step-${number}-body`} onClick={toggle}>
          <span class="step-number">{number}</span>
          <span class="step-title">{title}</span>
          <span class="step-state">
            {says === '' ? null : <span class="unseen">: </span>}
            {says}
          </span>
        </button>
      </h2>
      <div class="step-body" id={`step-${number}-body`} hidden={!isOpen} onFocusIn={onEnter}>
        {isOpen ? children : null}
      </div>
    </section>
  );
}

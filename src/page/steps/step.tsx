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

/** By Escape to the head of the step that the keyboard is in, and from there to the drawing: fields are many. */
function toHead(event: KeyboardEvent & { readonly currentTarget: HTMLElement }): void {
  const { target, currentTarget, key } = event;
  // A list that is open takes Escape for itself.
  if (key !== 'Escape' || target instanceof HTMLSelectElement || document.querySelector('dialog[open]'))
    return;
  const head = currentTarget.querySelector<HTMLElement>('h2 button');
  const find = (what: string) => document.querySelector<HTMLElement>(`#drawing ${what}`);
  const drawing = find('[role="application"]') ?? find('[aria-selected="true"]');
  (document.activeElement === head ? drawing : head)?.focus();
}

/** Where arrows go from a head, as in any stack of such: to the one below or above, to the first or the last. */
const goes: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowDown: (at, last) => Math.min(at + 1, last),
  ArrowUp: (at) => Math.max(at - 1, 0),
  Home: () => 0,
  End: (_, last) => last,
};

function amongHeads(event: KeyboardEvent & { readonly currentTarget: HTMLElement }): void {
  const go = goes[event.key];
  if (!go) return;
  const heads = [...document.querySelectorAll<HTMLElement>('.step h2 button')];
  event.preventDefault();
  heads[go(heads.indexOf(event.currentTarget), heads.length - 1)]?.focus();
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
    <section class={`step step-${is}`} aria-label={title} onKeyDown={toHead}>
      <h2 id={`step-${number}`}>
        <button
          type="button"
          aria-expanded={isOpen}
          aria-controls={`step-${number}-body`}
          onClick={toggle}
          onKeyDown={amongHeads}
        >
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

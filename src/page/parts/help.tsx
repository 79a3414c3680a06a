// Help beside a field: a sentence and a small picture of how to take the reading, opened where it stands.
import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { said } from '../store.ts';
import { HelpPicture } from './help-picture.tsx';
import { type HelpKey, helpWords } from './help-words.ts';

/** The key that opens the help of the field that has the keyboard. */
export const helpKey = 'F1';

/** What holds a field and its help. */
const holders = '.field, .choice, .tick-help, .ground';

/** By `helpKey` the help of a field opens and closes, by Escape it closes; the keyboard stays in the field. To be heard before what is around it. */
export function onHelpKey(event: KeyboardEvent): void {
  const holder = event.target instanceof Element ? event.target.closest(holders) : null;
  const button = holder?.querySelector<HTMLElement>('.help-button');
  const closes = event.key === 'Escape' && button?.ariaExpanded === 'true';
  if (!button || (event.key !== helpKey && !closes)) return;
  event.preventDefault();
  event.stopPropagation();
  button.click();
  // What opens above it moves the field down.
  const field = event.target instanceof Element ? event.target : button;
  requestAnimationFrame(() => field.scrollIntoView({ block: 'nearest' }));
}

interface HelpProps {
  readonly about: HelpKey;
  readonly label: string;
  /** Whether a field beside it opens it by key: then it is no stop of its own, for every field would be two. */
  readonly byKey?: boolean;
}

export function Help({ about, label, byKey = false }: HelpProps) {
  const id = useId();
  const isOpen = useSignal(false);
  return (
    <span class="help">
      <button
        type="button"
        class="help-button"
        aria-expanded={isOpen.value}
        aria-controls={id}
        aria-label={`How to: ${label}`}
        tabIndex={byKey ? -1 : undefined}
        onClick={() => {
          isOpen.value = !isOpen.value;
          if (byKey && isOpen.value) said.value = helpWords[about];
        }}
        onKeyDown={(event) => {
          if (event.key === 'Escape') isOpen.value = false;
        }}
      >
        ?
      </button>
      <span class="help-panel" id={id} hidden={!isOpen.value}>
        {isOpen.value ? (
          <>
            <HelpPicture about={about} />
            <span>{helpWords[about]}</span>
          </>
        ) : null}
      </span>
    </span>
  );
}

// Help beside a field: a sentence and a small picture of how to take the reading, opened where it stands.
import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { HelpPicture } from './help-picture.tsx';
import { type HelpKey, helpWords } from './help-words.ts';

export function Help({ about, label }: { readonly about: HelpKey; readonly label: string }) {
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
        onClick={() => {
          isOpen.value = !isOpen.value;
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

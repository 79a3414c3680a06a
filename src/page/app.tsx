// The whole page: the drawing first, the job's card beside it.
import { computed, signal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Board } from './board/board.tsx';
import { keepFocus } from './going.ts';
import { stepOfKey } from './model/field-words.ts';
import { openFiles } from './opening.ts';
import { Guide } from './parts/guide.tsx';
import { helpKey, onHelpKey } from './parts/help.tsx';
import { Top } from './parts/top.tsx';
import { taken } from './save.ts';
import { ArtStep } from './steps/art-step.tsx';
import { ChecksStep } from './steps/checks-step.tsx';
import { FilesStep } from './steps/files-step.tsx';
import { SeamStep } from './steps/seam-step.tsx';
import { Step } from './steps/step.tsx';
import { artState, checksState, filesState, seamState, vesselState } from './steps/step-states.ts';
import { VesselStep } from './steps/vessel-step.tsx';
import { bench, isBusy, offerView, redo, said, undo, view } from './store.ts';

const open = signal<ReadonlySet<number>>(new Set([1]));

/** Opens the step of a field and takes the maker there. */
function goToField(event: Event): void {
  const to: unknown = event instanceof CustomEvent ? event.detail : undefined;
  if (to === 'tab') {
    document.querySelector<HTMLElement>('#tab-vessel')?.focus();
    return;
  }
  const [half, key = ''] = String(to).split(':');
  const number = typeof to === 'number' ? to : stepOfKey(half === 'blank' ? 'blank' : 'job', key);
  open.value = new Set([...open.value, number]);
  requestAnimationFrame(() => {
    const fields = [...document.querySelectorAll<HTMLElement>('[data-path]')];
    const path = String(to);
    const field = fields.find(({ dataset }) => dataset.path === path || path.startsWith(`${dataset.path}.`));
    const within = fields.find(({ dataset }) => dataset.path?.startsWith(path));
    const there = field ?? within ?? document.querySelector<HTMLElement>(`#step-${number} button`);
    for (let folded = there?.closest('details'); folded; folded = folded.parentElement?.closest('details'))
      folded.open = true;
    there?.scrollIntoView({ block: 'center' });
    there?.focus({ preventScroll: true });
  });
}

function onKey(event: KeyboardEvent): void {
  const isTyping = event.target instanceof HTMLInputElement && event.target.type === 'text';
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
  // What has the keyboard may be gone with the step.
  keepFocus();
  // A field that is being typed in shows what was typed; it lets go of that first.
  const typedIn = isTyping && event.target instanceof HTMLElement ? event.target : undefined;
  typedIn?.blur();
  event.preventDefault();
  if (event.shiftKey) redo();
  else undo();
  typedIn?.focus();
}

/** A file may be dropped anywhere: without this, the browser would leave the page for it. */
const onDragOver = (event: DragEvent): void => event.preventDefault();

async function onDrop(event: DragEvent): Promise<void> {
  event.preventDefault();
  await openFiles(taken(event.dataTransfer?.files ?? []), 'files');
}

/** Seen when it has the keyboard: the drawing is many stops away from most of the card. */
const ToDrawing = () => (
  <a class="skip" href="#drawing">
    To the drawing
  </a>
);

const jobName = computed(() => String(bench.value.job.name ?? 'Job'));

export function App() {
  useEffect(() => {
    document.addEventListener('go-to-field', goToField);
    document.addEventListener('keydown', onKey);
    document.addEventListener('keydown', onHelpKey, { capture: true });
    document.addEventListener('click', keepFocus, { capture: true });
    document.addEventListener('dragover', onDragOver);
    document.addEventListener('drop', onDrop);
    return () => {
      document.removeEventListener('dragover', onDragOver);
      document.removeEventListener('drop', onDrop);
      document.removeEventListener('go-to-field', goToField);
      document.removeEventListener('keydown', onKey);
      document.removeEventListener('keydown', onHelpKey, { capture: true });
      document.removeEventListener('click', keepFocus, { capture: true });
    };
  }, []);
  /** A step that shapes the flat drawing shows it in place of the wall. */
  const leaveWall = () => {
    if (view.value === 'wall') offerView('flat');
  };
  return (
    <div class="page">
      <a class="skip" href="#card">
        To the job’s steps
      </a>
      <ToDrawing />
      <Top />
      <main class="bench" data-busy={isBusy}>
        <h1 class="unseen">{jobName}</h1>
        <Board />
        <div class="card" id="card" tabIndex={-1}>
          <Guide />
          <Step number={1} title="Vessel" state={vesselState} open={open} onEnter={() => offerView('wall')}>
            <VesselStep />
          </Step>
          <Step number={2} title="Artwork and lettering" state={artState} open={open} onEnter={leaveWall}>
            <ArtStep />
          </Step>
          <Step number={3} title="Coats, film and seam" state={seamState} open={open} onEnter={leaveWall}>
            <SeamStep />
          </Step>
          <Step number={4} title="Checks" state={checksState} open={open}>
            <ChecksStep />
          </Step>
          <Step number={5} title="Files" state={filesState} open={open}>
            <FilesStep />
          </Step>
          <footer class="foot">
            <p>Everything is worked out in this browser; nothing leaves the machine.</p>
            <p class="by-keys">
              By keys: <kbd>Esc</kbd> goes to the head of a step, and from there to the drawing; <kbd>↑</kbd>{' '}
              and <kbd>↓</kbd> to the next head; in a field <kbd>{helpKey}</kbd> opens its help.
            </p>
          </footer>
          <ToDrawing />
        </div>
      </main>
      <p class="unseen" role="status">
        {said}
      </p>
    </div>
  );
}

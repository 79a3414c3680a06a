// Starts the page: what was kept, the engine's questions, and the keeping of every change.
import { effect, type ReadonlySignal } from '@preact/signals';
import { render } from 'preact';
import { startAnnouncing } from './announcing.ts';
import { App } from './app.tsx';
import { startDrawingFirst } from './drawing-first.ts';
import { startLaying } from './flat-asking.ts';
import { keepBench, keepColours, keepingFault, keepList, keptBench, keptColours, keptList } from './keep.ts';
import { startAsking } from './later-asking.ts';
import { startLight } from './light.ts';
import { keepingSays } from './parts/top.tsx';
import { begin, bench, colours, hasArtwork, list, view } from './store.ts';

/** A pause in changing after which the bench is kept, ms. */
const pause = 200;

/** Keeps what a signal holds whenever it changes, and at the latest when the page goes. */
function keepChanges<T>(of: ReadonlySignal<T>, put: (value: T) => Promise<void>): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let keptLast = of.value;
  const keep = () => {
    const now = of.peek();
    if (now === keptLast) return;
    put(now).then(
      () => {
        keptLast = now;
        keepingSays.value = '';
      },
      (fault: unknown) => {
        keepingSays.value = keepingFault(fault);
      },
    );
  };
  effect(() => {
    void of.value;
    clearTimeout(timer);
    timer = setTimeout(keep, pause);
  });
  addEventListener('pagehide', keep);
}

async function start(): Promise<void> {
  startLight();
  try {
    const kept = await keptBench();
    if (kept) begin({ bench: kept });
    if (kept && hasArtwork.value) view.value = 'flat';
    const rows = await keptList();
    if (rows) begin({ list: rows });
    const coloured = await keptColours();
    if (coloured) begin({ colours: coloured });
  } catch (fault) {
    keepingSays.value = keepingFault(fault);
  }
  startDrawingFirst();
  startLaying();
  startAsking();
  startAnnouncing();
  keepChanges(bench, keepBench);
  keepChanges(list, keepList);
  keepChanges(colours, keepColours);
  const root = document.getElementById('root');
  if (root) render(<App />, root);
  // An address that is neither https nor this machine keeps nothing for later, and works all the same.
  await navigator.serviceWorker?.register('sw.js').catch(() => undefined);
}

void start();

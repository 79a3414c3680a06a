// Starts the page: what was kept, the engine's questions, and the keeping of every change.
import { render } from 'preact';
import { startAnnouncing } from './announcing.ts';
import { App } from './app.tsx';
import { startDrawingFirst } from './drawing-first.ts';
import { startLaying } from './flat-asking.ts';
import { beginWithKept, startKeeping } from './keeping.ts';
import { startAsking } from './later-asking.ts';
import { startLight } from './light.ts';
import { hasArtwork, view } from './store.ts';

async function start(): Promise<void> {
  startLight();
  await beginWithKept();
  if (hasArtwork.value) view.value = 'flat';
  startDrawingFirst();
  startLaying();
  startAsking();
  startAnnouncing();
  startKeeping();
  const root = document.getElementById('root');
  if (root) render(<App />, root);
  // An address that is neither https nor this machine keeps nothing for later, and works all the same.
  await navigator.serviceWorker?.register('sw.js').catch(() => undefined);
}

void start();

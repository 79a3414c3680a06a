// What a key changes on the drawing is seen first; the words and fields around it follow in the frame after, which nobody feels.
import { options } from 'preact';

/** A page that is not in sight is given no frames: then what waits for one comes after so long, ms. */
const longest = 100;

let isDrawing = false;

/** To be said where the drawing itself follows a change within the frame that is to come. */
export function drawFirst(): void {
  isDrawing = true;
}

function afterFrame(run: () => void): void {
  let isRun = false;
  const once = (): void => {
    if (isRun) return;
    isRun = true;
    isDrawing = false;
    run();
  };
  setTimeout(once, longest);
  requestAnimationFrame(() => setTimeout(once));
}

export function startDrawingFirst(): void {
  // Asked for at the first change of all, so whether the drawing follows is known only when all have been told.
  options.debounceRendering = (render) =>
    queueMicrotask(() => {
      if (isDrawing) afterFrame(render);
      else render();
    });
}

// The wall as the engine draws it from the readings, in the page itself: an image apart would be a frame or two later.
import { useLayoutEffect } from 'preact/hooks';
import { vessel } from '../store.ts';
import { markRedraw } from './redraw-mark.ts';

export function WallBoard() {
  const { answer, refused } = vessel.value;
  const { svg, notes } = answer?.profile ?? {};
  useLayoutEffect(() => {
    const { since } = vessel.peek();
    if (svg === undefined || since === undefined) return undefined;
    const frame = requestAnimationFrame(() => markRedraw('wall redraw', since));
    return () => cancelAnimationFrame(frame);
  }, [svg]);
  if (svg === undefined)
    return <p class="board-empty">Type the vessel’s readings, and its wall is drawn here as you type.</p>;
  return (
    <div class="picture-board">
      <div
        class={refused ? 'picture wall-picture picture-stale' : 'picture wall-picture'}
        role="img"
        aria-label="The wall in section, with its flat band, rounds, readings and lip zone"
        // The engine's own drawing: numbers, and words that it escapes.
        dangerouslySetInnerHTML={{ __html: svg }}
      />
      {refused ? (
        <p class="board-figures">
          This is how it was before the last change; see the checks for what is wanting.
        </p>
      ) : notes && notes.length > 0 ? (
        <p class="board-figures">{notes.join('. ')}.</p>
      ) : null}
    </div>
  );
}

// The wall as the engine draws it from the readings, in the page itself: an image apart would be a frame or two later.
import { useLayoutEffect, useRef } from 'preact/hooks';
import { inPlainWords } from '../parts/plain-words.ts';
import { narrowWall, vessel } from '../store.ts';
import { markRedraw } from './redraw-mark.ts';

const asSentence = (note: string): string => `${note.charAt(0).toUpperCase()}${note.slice(1)}.`;

/** As wide as a phone. */
const narrow = '(max-width: 34rem)';

/** Tells the engine of a narrow window. */
function tellWindow(picture: HTMLElement): void {
  const { width = 0, height = 0 } = picture.querySelector('svg')?.getBoundingClientRect() ?? {};
  const before = narrowWall.peek();
  if (!matchMedia(narrow).matches) narrowWall.value = undefined;
  else if (before?.width !== width || before.height !== height) narrowWall.value = { width, height };
}

export function WallBoard() {
  const { answer, refused } = vessel.value;
  const { svg, notes } = answer?.profile ?? {};
  // What the picture shows, for whoever hears it: the same figures in words.
  const told = (answer?.lines.slice(1, 4) ?? []).map((line) => asSentence(inPlainWords(line))).join(' ');
  const picture = useRef<HTMLDivElement>(null);
  const isDrawn = svg !== undefined;
  useLayoutEffect(() => {
    const { current } = picture;
    if (!current) return undefined;
    const watch = new ResizeObserver(() => tellWindow(current));
    watch.observe(current);
    return () => watch.disconnect();
  }, [isDrawn]);
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
        ref={picture}
        class={refused ? 'picture wall-picture picture-stale' : 'picture wall-picture'}
        role="img"
        aria-label={`The wall in section, with its flat band, rounds, readings and lip zone. ${told}`}
        // The engine's own drawing: numbers, and words that it escapes.
        dangerouslySetInnerHTML={{ __html: svg }}
      />
      {refused ? (
        <p class="board-figures">
          This is how it was before the last change; see the checks for what is wanting.
        </p>
      ) : notes && notes.length > 0 ? (
        <p class="board-figures">{notes.map(asSentence).join(' ')}</p>
      ) : null}
    </div>
  );
}

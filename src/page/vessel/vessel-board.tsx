// The finished vessel: turned in 3D where the browser can, else from four sides as the engine drew it.
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { sidesInWindow } from '../../job/view/sides-in-window.ts';
import { PictureBoard } from '../board/picture-board.tsx';
import {
  areSidesSeen,
  flat,
  isFlatOnly,
  isFromSides,
  isStillToGive,
  isWithout3d,
  rolled,
  sides,
} from '../store.ts';
import { SolidView } from './solid-view.tsx';

/** What stands where there is no vessel yet. */
function emptyWords(): string {
  const { refused } = areSidesSeen.value ? sides.value : rolled.value;
  if (refused && !refused.every(isStillToGive))
    return 'The finished vessel is drawn here once what stands against it in step 4 is settled.';
  return flat.value.answer && !refused
    ? 'The finished vessel is being drawn…'
    : 'The finished vessel is drawn here once its readings are whole.';
}

export function VesselBoard() {
  const { answer, refused } = rolled.value;
  const solid = answer?.solid;
  if (solid && !areSidesSeen.value)
    return (
      <SolidView
        solid={solid}
        isStale={refused !== undefined}
        showSides={() => {
          isFromSides.value = true;
        }}
        giveUp={() => {
          isWithout3d.value = true;
        }}
      />
    );
  return <FourSides />;
}

/** As wide as a phone. */
const narrow = '(max-width: 34rem)';

/** The window's width and height, px, kept up with. */
function useWindow() {
  const element = useRef<HTMLDivElement>(null);
  const [window, setWindow] = useState<{ readonly width: number; readonly height: number }>();
  useLayoutEffect(() => {
    const { current } = element;
    if (!current) return undefined;
    const tell = () => setWindow({ width: current.clientWidth, height: current.clientHeight });
    tell();
    const watch = new ResizeObserver(tell);
    watch.observe(current);
    return () => watch.disconnect();
  }, []);
  return { element, window };
}

function FourSides() {
  const { answer, refused } = sides.value;
  const { element, window } = useWindow();
  const svg = answer?.svg;
  const shown = useMemo(
    () => (svg && window ? sidesInWindow(svg, window, matchMedia(narrow).matches) : undefined),
    [svg, window],
  );
  return (
    <>
      {isFromSides.value && !isFlatOnly.value ? (
        <div class="board-tools" role="toolbar" aria-label="Finished vessel">
          <button
            type="button"
            class="tool"
            onClick={() => {
              isFromSides.value = false;
            }}
          >
            Turn it in 3D
          </button>
        </div>
      ) : null}
      <div
        class={shown?.isMoved ? 'sides sides-moved' : 'sides'}
        ref={element}
        {...(shown?.isMoved ? { tabIndex: 0, role: 'group', 'aria-label': 'Four sides: move along' } : {})}
      >
        <PictureBoard
          svg={shown?.svg}
          name="The finished vessel from four sides, drawn from the flat template"
          empty={emptyWords()}
          isStale={refused !== undefined}
        />
      </div>
      {answer && isFlatOnly.value ? (
        <p class="board-figures">
          This browser shows no 3D (WebGL is off or missing), so the vessel is shown from four sides.
        </p>
      ) : null}
    </>
  );
}

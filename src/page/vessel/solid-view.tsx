// The finished vessel to turn by hand: drag, arrow keys or touch. Nothing moves by itself.
import { useRef } from 'preact/hooks';
import { DragInWords } from '../board/drag-words.tsx';
import { onKeys } from '../board/key-hands.ts';
import { dragged } from '../board/motif-drag.ts';
import { letGo } from '../board/motif-nudge.ts';
import { PlaceInWords } from '../board/place-words.tsx';
import { type Fingers, pointerHands } from '../board/pointer-hands.ts';
import type { SolidSeen } from '../model/messages.ts';
import { shownPlace } from '../store.ts';
import { ColourPanel } from './colour-panel.tsx';
import { isColouring, side } from './looks.ts';
import { handsOfSolid, keysOfSolid, nearer } from './solid-hands.ts';
import { type OpenScene, usePaperCopy, useScene } from './use-scene.ts';
import { save, saveTurning } from './vessel-saves.ts';
import { VesselTools } from './vessel-tools.tsx';

interface SolidViewProps {
  readonly solid: SolidSeen;
  /** Whether it shows what was before the last change, for that could not be drawn. */
  readonly isStale: boolean;
  readonly showSides: () => void;
  /** Called where this browser draws no 3D, or stops doing so. */
  readonly giveUp: () => void;
}

export function SolidView({ solid, isStale, showSides, giveUp }: SolidViewProps) {
  const open = useScene(solid, giveUp);
  const { canvas, scene, isShown, turning } = open;
  const paper = usePaperCopy(open);
  const fingers = useRef<Fingers>(new Map());
  const hands = pointerHands(fingers.current, handsOfSolid(solid, scene));
  return (
    <div class="solid-board">
      <VesselTools
        solid={solid}
        showSides={showSides}
        nearer={nearer}
        save={() => save(open)}
        saveTurning={() => saveTurning(open)}
        turning={turning.value}
      />
      <div class="solid-row">
        <div
          class="solid-hands"
          role="application"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the vessel is turned with the arrow keys.
          tabIndex={0}
          aria-label="The finished vessel. Arrow keys turn and tip it, plus and minus zoom, 0 shows the front, Enter marks the place in the middle, Shift with an arrow key moves the motif that is marked."
          aria-describedby="solid-figures"
          onKeyDown={onKeys(keysOfSolid(solid, scene, canvas))}
          onKeyUp={({ key }) => key === 'Shift' && letGo()}
          onBlur={letGo}
          {...hands.on}
        >
          <canvas
            ref={canvas}
            class={isStale ? 'solid-canvas picture-stale' : 'solid-canvas'}
            data-ready={isShown.value ? 'yes' : 'no'}
          />
          <canvas ref={paper} class="solid-paper" />
        </div>
        {isColouring.value ? <ColourPanel solid={solid} /> : null}
      </div>
      <SolidFigures open={open} isStale={isStale} />
    </div>
  );
}

/** What is seen, in words. */
function SolidFigures({ open, isStale }: { readonly open: OpenScene; readonly isStale: boolean }) {
  const { facing } = side.value;
  const isOpen = open.scene.value !== undefined;
  return (
    <p class="board-figures" id="solid-figures" aria-live="polite">
      {isStale ? 'This is how it was before the last change; see the checks for what is wanting. ' : ''}
      {dragged.value ? <DragInWords dragged={dragged.value} /> : null}
      {isOpen && !dragged.value
        ? `Turn ${facing.toFixed(3)} faces you: ${(facing * 360).toFixed(0)}° around from the seam.`
        : null}
      {isOpen ? null : 'Opening the 3D view…'}
      {shownPlace.value && !dragged.value ? (
        <>
          {' '}
          Marked: <PlaceInWords place={shownPlace.value} />.
        </>
      ) : null}
    </p>
  );
}

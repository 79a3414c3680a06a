// The finished vessel to turn by hand: drag, arrow keys or touch. Nothing moves by itself.
import { useSignal, useSignalEffect } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { DragInWords } from '../board/drag-words.tsx';
import { type Keys, onKeys, zoomKeys } from '../board/key-hands.ts';
import { dragged, grabMotif } from '../board/motif-drag.ts';
import { letGo, nudgeKeys } from '../board/motif-nudge.ts';
import { PlaceInWords } from '../board/place-words.tsx';
import { type Fingers, pointerHands } from '../board/pointer-hands.ts';
import { markRedraw } from '../board/redraw-mark.ts';
import type { SolidSeen } from '../model/messages.ts';
import { download } from '../save.ts';
import { pinned, pointed, said, shownPlace, takingUp } from '../store.ts';
import { ColourPanel } from './colour-panel.tsx';
import { front, isColouring, looks, nearerBy, side, turnedBy } from './looks.ts';
import type { VesselScene } from './scene.ts';
import { VesselTools } from './vessel-tools.tsx';

interface SolidViewProps {
  readonly solid: SolidSeen;
  /** Whether it shows what was before the last change, for that could not be drawn. */
  readonly isStale: boolean;
  readonly showSides: () => void;
  /** Called where this browser draws no 3D, or stops doing so. */
  readonly giveUp: () => void;
}

/** A step of the arrow keys: 10 degrees around, 5 degrees up. */
const step = { around: 1 / 36, up: Math.PI / 36 } as const;
/** A drag over this many px is one whole turn. */
const dragTurn = 700;

/** Asked of a canvas of its own, for the library complains aloud where there is none. */
const hasWebGl = (): boolean => document.createElement('canvas').getContext('webgl2') !== null;

export function SolidView({ solid, isStale, showSides, giveUp }: SolidViewProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const paper = useRef<HTMLCanvasElement>(null);
  const scene = useSignal<VesselScene | undefined>(undefined);
  const shown = useSignal(solid);
  const drawn = useSignal(0);
  const isShown = useSignal(false);
  /** How far a turning picture is; while one is made, nothing else is drawn. */
  const turning = useSignal<number | undefined>(undefined);
  useEffect(() => {
    shown.value = solid;
  }, [solid, shown]);

  useEffect(() => {
    const { current } = canvas;
    if (!current) return undefined;
    let isOpen = true;
    takingUp.value = true;
    const start = async () => {
      if (!hasWebGl()) return giveUp();
      const { VesselScene } = await import('./scene.ts');
      if (isOpen) scene.value = new VesselScene(current);
    };
    start().catch(giveUp);
    const lost = () => isOpen && giveUp();
    current.addEventListener('webglcontextlost', lost);
    const watch = new ResizeObserver(() => {
      drawn.value = drawn.peek() + 1;
    });
    watch.observe(current);
    return () => {
      isOpen = false;
      watch.disconnect();
      current.removeEventListener('webglcontextlost', lost);
      takingUp.value = false;
      scene.peek()?.end();
    };
  }, []);

  useSignalEffect(() => {
    const [now, vessel] = [scene.value, shown.value];
    if (!now) return;
    takingUp.value = true;
    const show = async () => {
      if (!(await now.show(vessel)) || scene.peek() !== now) return;
      now.dress(looks.peek());
      takingUp.value = false;
      isShown.value = true;
      drawn.value = drawn.peek() + 1;
    };
    show().catch(giveUp);
  });
  const dressed = useRef<number | undefined>(undefined);
  useSignalEffect(() => {
    dressed.current = performance.now();
    scene.value?.dress(looks.value);
    drawn.value = drawn.peek() + 1;
  });
  useSignalEffect(() => {
    void drawn.value;
    const [now, from, place, held] = [scene.value, side.value, shownPlace.value, dragged.value];
    if (turning.value !== undefined) return undefined;
    const frame = requestAnimationFrame(() => {
      now?.mark(place);
      now?.limits(held);
      now?.draw(from);
      if (now && dressed.current !== undefined) markRedraw('vessel redraw', dressed.current);
      dressed.current = undefined;
    });
    return () => cancelAnimationFrame(frame);
  });

  // On paper stands a copy: what is drawn in 3D is gone as soon as it has been shown.
  useEffect(() => {
    const copy = () => {
      const [from, to] = [canvas.current, paper.current];
      if (!from || !to || !scene.peek()) return;
      scene.peek()?.draw(side.peek());
      Object.assign(to, { width: from.width, height: from.height });
      to.getContext('2d')?.drawImage(from, 0, 0);
    };
    addEventListener('beforeprint', copy);
    return () => removeEventListener('beforeprint', copy);
  }, [scene]);

  /** `around` by what goes by in front, to the left; on a vessel that stands on its lip turns run the other way. */
  const turn = (around: number, up: number) => {
    side.value = turnedBy(side.value, solid.standsOnLip ? -around : around, up);
  };
  const nearer = (factor: number) => {
    side.value = nearerBy(side.value, factor);
  };
  const fingers = useRef<Fingers>(new Map());
  // What is dragged goes with the hand: to the right, and what was further left comes to the front.
  const hands = pointerHands(fingers.current, {
    pan: (dx, dy) => turn(-dx / dragTurn, dy / 200),
    zoom: (by) => nearer(by),
    tap: (at) => {
      pinned.value = scene.value?.placeAt(at);
    },
    grab: (at) => {
      const grip = grabMotif(scene.value?.placeAt(at));
      return (
        grip && {
          to: (now) => {
            const place = scene.value?.placeAt(now);
            if (place) grip.to(place);
          },
          end: grip.end,
        }
      );
    },
    hover: (at) => {
      pointed.value = at && scene.value?.placeAt(at);
    },
  });
  const keys: Keys = {
    ArrowLeft: () => turn(step.around, 0),
    ArrowRight: () => turn(-step.around, 0),
    ArrowUp: () => turn(0, step.up),
    ArrowDown: () => turn(0, -step.up),
    ...zoomKeys(nearer),
    ...nudgeKeys(solid.standsOnLip),
    Enter: () => {
      const { clientWidth, clientHeight } = canvas.current ?? { clientWidth: 0, clientHeight: 0 };
      pinned.value = scene.value?.placeAt({ x: clientWidth / 2, y: clientHeight / 2 });
    },
    0: () => {
      side.value = front;
    },
  };
  const save = async () => {
    scene.value?.mark(undefined);
    const bytes = await scene.value?.picture(side.value);
    if (bytes) download('vessel.png', bytes);
    said.value = bytes ? 'vessel.png saved.' : '';
  };
  const saveTurning = async () => {
    const { value } = scene;
    if (!value) return;
    turning.value = 0;
    const { turningPicture } = await import('./turning.ts');
    value.mark(undefined);
    const bytes = await turningPicture(value, side.value, (share) => {
      turning.value = share;
    });
    download('vessel.gif', bytes);
    said.value = 'vessel.gif saved.';
  };
  const orSay = (work: Promise<void>) => {
    work
      .catch((fault: unknown) => {
        said.value = fault instanceof Error ? fault.message : String(fault);
      })
      .finally(() => {
        turning.value = undefined;
        drawn.value = drawn.peek() + 1;
      });
  };
  const { facing } = side.value;
  return (
    <div class="solid-board">
      <VesselTools
        solid={solid}
        showSides={showSides}
        nearer={nearer}
        save={() => orSay(save())}
        saveTurning={() => orSay(saveTurning())}
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
          onKeyDown={onKeys(keys)}
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
      <p class="board-figures" id="solid-figures" aria-live="polite">
        {isStale ? 'This is how it was before the last change; see the checks for what is wanting. ' : ''}
        {dragged.value ? <DragInWords dragged={dragged.value} /> : null}
        {scene.value && !dragged.value
          ? `Turn ${facing.toFixed(3)} faces you: ${(facing * 360).toFixed(0)}° around from the seam.`
          : null}
        {scene.value ? null : 'Opening the 3D view…'}
        {shownPlace.value && !dragged.value ? (
          <>
            {' '}
            Marked: <PlaceInWords place={shownPlace.value} />.
          </>
        ) : null}
      </p>
    </div>
  );
}

// The flat template under a window: pan, zoom, rulers, measuring, and the findings where they are.
import { useRef } from 'preact/hooks';
import type { Finding } from '../../finding.ts';
import { findings, flat } from '../store.ts';
import { FlatFigures } from './flat-figures.tsx';
import { handsOfFlat, keysOfFlat, toggleMeasure, zoomBy } from './flat-hands.ts';
import { FlatMarks } from './flat-marks.tsx';
import { FlatTools } from './flat-tools.tsx';
import { onKeys } from './key-hands.ts';
import { placeOnSheet } from './laid-out.ts';
import { letGo } from './motif-nudge.ts';
import { type Fingers, pointerHands } from './pointer-hands.ts';
import { onScreen, type Point } from './sheet-view.ts';
import { type FlatWindow, useFlatWindow } from './use-flat-window.ts';

/** Where a finding stands in the window. */
function placeOfFinding({ laid, view }: FlatWindow, where: Finding['where']): Point | undefined {
  if (where.along === undefined || !laid.value || !view.value) return undefined;
  const on = placeOnSheet(laid.value, { turn: where.turn ?? 0.5, along: where.along });
  return on && onScreen(view.value, on);
}

export function FlatBoard() {
  const open = useFlatWindow();
  const { canvas, size, view, laid, hidden, measuring, measured } = open;
  const fingers = useRef<Fingers>(new Map());
  const hands = pointerHands(fingers.current, handsOfFlat(open));
  const isStale = flat.value.refused !== undefined;
  return (
    <div class="flat-board">
      <FlatTools
        zoomBy={(by) => zoomBy(open, by)}
        showWhole={open.showWhole}
        isMeasuring={measuring.value}
        toggleMeasure={() => toggleMeasure(open)}
        hidden={hidden}
      />
      <div class="flat-window" style={{ '--shape': `${size.value.width} / ${size.value.height}` }}>
        <div
          class={measuring.value ? 'flat-hands flat-measuring' : 'flat-hands'}
          role="application"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved with the arrow keys.
          tabIndex={0}
          aria-label="Flat template. Arrow keys move it, plus and minus zoom, 0 shows the whole, M measures, Enter marks the place in the middle, Shift with an arrow key moves the motif that is marked."
          aria-describedby="flat-figures"
          onKeyDown={onKeys(keysOfFlat(open))}
          onKeyUp={({ key }) => key === 'Shift' && letGo()}
          onBlur={letGo}
          {...hands.on}
        >
          <canvas ref={canvas} class={isStale ? 'flat-canvas picture-stale' : 'flat-canvas'} />
          {measuring.value ? <span class="flat-cross" aria-hidden="true" /> : null}
        </div>
        {view.value && laid.value ? (
          <FlatMarks
            findings={findings.value}
            placeOf={(where) => placeOfFinding(open, where)}
            size={size.value}
          />
        ) : null}
      </div>
      <FlatFigures measuring={measuring} measured={measured} />
    </div>
  );
}

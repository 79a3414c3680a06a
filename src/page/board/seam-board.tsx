// The two ends of the wrap side by side, as they meet at the seam: at a chosen zoom, with what they miss each other by in figures.
import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { endsAtSeam } from '../../job/view/flat-ends.ts';
import { measuredLength } from '../../lengths/length.ts';
import { gapAngle, gapLength } from '../parts/gap-length.ts';
import { bench, flat, seam, shownPlace } from '../store.ts';
import { type Keys, onKeys, zoomKeys } from './key-hands.ts';
import { type Fingers, pointerHands } from './pointer-hands.ts';
import { drawSeam } from './seam-ink.ts';
import { useSizedCanvas } from './sized-canvas.ts';

/** Screen px to the mm: from a hand's width in the window down to a blade's. */
const scales = { least: 2, first: 10, most: 400 } as const;
/** A step of the arrow keys, px. */
const step = 40;
/** How far the ends are held apart, px on the screen: so that both edges are seen. */
const heldApart = 24;

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

export function SeamBoard() {
  const { canvas, size } = useSizedCanvas();
  const scale = useSignal<number>(scales.first);
  const isApart = useSignal(false);
  const asked = useSignal<number | undefined>(shownPlace.peek()?.along);
  const band = useComputed(() => flat.value.answer?.report.template?.band);
  const along = useComputed(() => {
    const { from, to } = band.value ?? { from: 0, to: 0 };
    return within(asked.value ?? (from + to) / 2, from, to);
  });
  const ends = useComputed(() => flat.value.answer && endsAtSeam(flat.value.answer.view, along.value));

  useSignalEffect(() => {
    const { current } = canvas;
    if (!current || !ends.value) return;
    const seen = { ends: ends.value, along: along.value, scale: scale.value, size: size.value };
    const apart = isApart.value ? heldApart : 0;
    const { units } = bench.value;
    const frame = requestAnimationFrame(() => drawSeam(current, { ...seen, apart, units }));
    return () => cancelAnimationFrame(frame);
  });

  const zoomBy = (by: number) => {
    scale.value = within(scale.value * by, scales.least, scales.most);
  };
  const move = (px: number) => {
    asked.value = along.value + px / scale.value;
  };
  const fingers = useRef<Fingers>(new Map());
  const hands = pointerHands(fingers.current, {
    pan: (_, dy) => move(dy),
    zoom: zoomBy,
    tap: () => undefined,
    hover: () => undefined,
  });
  const keys: Keys = {
    ArrowUp: () => move(step),
    ArrowDown: () => move(-step),
    ...zoomKeys(zoomBy),
  };
  return (
    <div class="flat-board">
      <div class="board-tools" role="toolbar" aria-label="Seam">
        <button type="button" class="tool" aria-label="Nearer" onClick={() => zoomBy(1.5)}>
          +
        </button>
        <button type="button" class="tool" aria-label="Further away" onClick={() => zoomBy(1 / 1.5)}>
          −
        </button>
        <button
          type="button"
          class="tool"
          onClick={() => {
            asked.value = band.value?.to;
          }}
        >
          Lip
        </button>
        <button
          type="button"
          class="tool"
          onClick={() => {
            asked.value = band.value?.from;
          }}
        >
          Foot
        </button>
        <button
          type="button"
          class="tool"
          aria-pressed={isApart.value}
          onClick={() => {
            isApart.value = !isApart.value;
          }}
        >
          Hold apart
        </button>
      </div>
      <div class="flat-window">
        <div
          class="flat-hands"
          role="application"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved with the arrow keys.
          tabIndex={0}
          aria-label="The seam. Up and down arrows go along it, plus and minus zoom."
          aria-describedby="seam-figures"
          onKeyDown={onKeys(keys)}
          {...hands.on}
        >
          <canvas ref={canvas} class="flat-canvas" />
        </div>
        {ends.value ? (
          <>
            <span class="seam-end seam-end-left">End, turn 1</span>
            <span class="seam-end seam-end-right">Beginning, turn 0</span>
          </>
        ) : (
          <p class="board-empty seam-none">
            {flat.value.answer
              ? 'No two ends of a wrap meet here: it is in gores, or a handle lies between them.'
              : 'The seam is shown here once the readings are whole.'}
          </p>
        )}
      </div>
      <p class="board-figures" id="seam-figures" aria-live="polite">
        {ends.value ? `${measuredLength(along.value, bench.value.units)} along from the foot. ` : ''}
        <GapInWords />
      </p>
    </div>
  );
}

/** What the ends miss each other by, as it was measured on the cut file. */
function GapInWords() {
  const { answer, busy, refused, fault } = seam.value;
  if (busy) return <>Measuring the cut file…</>;
  if (refused ?? fault) return <>It is measured once nothing stands against the job.</>;
  const gap = answer?.gap;
  if (!gap || gap.crossings === 0) return answer ? <>No edge of the pattern crosses the seam.</> : null;
  return (
    <>
      The ends meet <strong>{gapLength(gap.position, bench.value.units)}</strong> and{' '}
      <strong>{gapAngle(gap.tangentDeg)}</strong>, at {gap.crossings} edges of the cut file.
    </>
  );
}

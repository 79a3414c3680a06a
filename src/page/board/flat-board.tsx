// The flat template under a window: pan, zoom, rulers, measuring, and the findings where they are.
import { useComputed, useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { measuredLength } from '../../lengths/length.ts';
import {
  bench,
  findings,
  flat,
  flatLaid,
  followed,
  isStillToGive,
  pinned,
  pointed,
  selected,
  shownPlace,
  trueWithin,
  wentTo,
} from '../store.ts';
import { DragInWords } from './drag-words.tsx';
import { useEffectNow } from './effect-now.ts';
import { drawSheet, type Measured } from './flat-ink.ts';
import { FlatMarks } from './flat-marks.tsx';
import { FlatTools } from './flat-tools.tsx';
import { type Keys, onKeys, zoomKeys } from './key-hands.ts';
import { laidOut, placeOnSheet, placeOnWall, placePastEdges } from './laid-out.ts';
import { dragged, grabMotif } from './motif-drag.ts';
import { letGo, nudgeKeys } from './motif-nudge.ts';
import { PlaceInWords } from './place-words.tsx';
import { type Fingers, pointerHands } from './pointer-hands.ts';
import { markRedraw } from './redraw-mark.ts';
import {
  centred,
  fitting,
  onScreen,
  onSheet,
  type Point,
  panned,
  type SheetView,
  zoomed,
} from './sheet-view.ts';
import { useSizedCanvas } from './sized-canvas.ts';
import { sprayAround, spraysShown } from './sprays-shown.ts';

/** What no eye finds, in dots of the screen. */
const halfADot = 0.5;

/** A step of the arrow keys, px. */
const step = 40;

export function FlatBoard() {
  const { canvas, size } = useSizedCanvas();
  const view = useSignal<SheetView | undefined>(undefined);
  const hidden = useSignal<ReadonlySet<string>>(new Set());
  const measuring = useSignal(false);
  const measured = useSignal<Measured>({});
  const laid = useComputed(() => {
    if (followed.value) return laidOut(followed.value.view, followed.value.art);
    return flatLaid.value && laidOut(flatLaid.value.view);
  });
  const units = useComputed(() => bench.value.units);
  /** The change that was drawn last, by when it was made. */
  const drawnOf = useRef<number | undefined>(undefined);
  const fitKey = useComputed(() => JSON.stringify(laid.value?.box));

  const showWhole = () => {
    if (laid.value && size.value.width > 0) view.value = fitting(laid.value.box, size.value);
  };
  // A new outline or a new window shows the whole again; a pattern that changes within it leaves the view alone.
  useEffectNow(() => {
    void fitKey.value;
    void size.value;
    showWhole();
    return undefined;
  });
  // Gone to once, as soon as there is a view: it may have been selected from elsewhere, and later changes leave the view alone.
  useEffectNow(() => {
    const [finding, now] = [selected.value, view.value];
    if (finding?.where.along === undefined || finding === wentTo.peek() || !laid.value || !now)
      return undefined;
    wentTo.value = finding;
    const { turn = 0.5, along } = finding.where;
    const place = placeOnSheet(laid.value, { turn, along });
    if (place) view.value = centred(now, place, size.peek(), 6);
    return undefined;
  });
  useEffectNow(() => {
    const { current } = canvas;
    if (!current || !laid.value || !view.value) return undefined;
    const seen = { laid: laid.value, view: view.value, size: size.value, hidden: hidden.value };
    const asked = {
      ...seen,
      units: units.value,
      measured: measured.value,
      pointed: shownPlace.value,
      dragged: dragged.value,
      sprays: spraysShown(hidden.value),
      sprayAround: sprayAround(hidden.value),
    };
    trueWithin.value = halfADot / (view.value.scale * (globalThis.devicePixelRatio || 1));
    const of = followed.peek();
    const { since } = of ?? flat.peek();
    const frame = requestAnimationFrame(() => {
      drawSheet(current, { ...asked, isPassing: of !== undefined });
      if (since === undefined) return;
      const isFirst = drawnOf.current !== since;
      drawnOf.current = since;
      if (isFirst) markRedraw('flat redraw', since);
      if (!of) markRedraw('flat laid', since);
    });
    return () => cancelAnimationFrame(frame);
  });

  const measureAt = (at: Point) => {
    if (!view.value) return;
    const place = onSheet(view.value, at);
    const { from, to } = measured.value;
    measured.value = from && !to ? { from, to: place } : { from: place };
  };
  const hover = (at: Point | undefined) => {
    if (!view.value || !laid.value) return;
    pointed.value = at && placeOnWall(laid.value, onSheet(view.value, at));
  };
  const fingers = useRef<Fingers>(new Map());
  const hands = pointerHands(fingers.current, {
    pan: (dx, dy) => {
      if (view.value) view.value = panned(view.value, dx, dy);
    },
    zoom: (by, at) => {
      if (view.value) view.value = zoomed(view.value, by, at);
    },
    tap: (at) => {
      if (measuring.value) measureAt(at);
      else if (view.value && laid.value) pinned.value = placeOnWall(laid.value, onSheet(view.value, at));
    },
    hover,
    grab: (at) => {
      if (measuring.value || !view.value || !laid.value) return undefined;
      const grip = grabMotif(placeOnWall(laid.value, onSheet(view.value, at)));
      return (
        grip && {
          to: (now) => {
            const place = laid.value && view.value && placePastEdges(laid.value, onSheet(view.value, now));
            if (place) grip.to(place);
          },
          end: grip.end,
        }
      );
    },
  });
  const middle = (): Point => ({ x: size.value.width / 2, y: size.value.height / 2 });
  const zoomBy = (by: number) => {
    if (view.value) view.value = zoomed(view.value, by, middle());
  };
  const keys: Keys = {
    ArrowLeft: () => hands.pan(step, 0),
    ArrowRight: () => hands.pan(-step, 0),
    ArrowUp: () => hands.pan(0, step),
    ArrowDown: () => hands.pan(0, -step),
    ...zoomKeys(zoomBy),
    ...nudgeKeys(),
    0: showWhole,
    m: () => toggleMeasure(),
    Enter: () => {
      if (measuring.value) measureAt(middle());
      else if (view.value && laid.value)
        pinned.value = placeOnWall(laid.value, onSheet(view.value, middle()));
    },
  };
  const toggleMeasure = () => {
    measuring.value = !measuring.value;
    measured.value = {};
  };
  const isStale = flat.value.refused !== undefined;
  const place = shownPlace.value;
  const { from, to } = measured.value;
  const distance = from && to && Math.hypot(to.x - from.x, to.y - from.y);
  return (
    <div class="flat-board">
      <FlatTools
        zoomBy={zoomBy}
        showWhole={showWhole}
        isMeasuring={measuring.value}
        toggleMeasure={toggleMeasure}
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
          onKeyDown={onKeys(keys)}
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
            placeOf={(where) => {
              if (where.along === undefined || !laid.value || !view.value) return undefined;
              const on = placeOnSheet(laid.value, { turn: where.turn ?? 0.5, along: where.along });
              return on && onScreen(view.value, on);
            }}
            size={size.value}
          />
        ) : null}
      </div>
      {/* Read out once the job is laid, not at every key: what is busy waits. */}
      <p class="board-figures" id="flat-figures" aria-live="polite" aria-busy={flat.value.busy}>
        {measuring.value && distance === undefined
          ? from
            ? 'Now the second point (or Enter for the middle of the window).'
            : 'Measure: point at the first place (or Enter for the middle of the window).'
          : null}
        {distance === undefined
          ? null
          : `${measuredLength(distance, units.value)} on the flat sheet, point to point.`}
        {dragged.value ? <DragInWords dragged={dragged.value} /> : null}
        {!measuring.value && !dragged.value && place ? <PlaceInWords place={place} /> : null}
        {!measuring.value && !place ? <FlatSummary /> : null}
      </p>
    </div>
  );
}

function FlatSummary() {
  const { refused } = flat.value;
  const template = followed.value?.template ?? flatLaid.value?.report.template;
  if (refused?.every(isStillToGive) && template)
    return <>This is how it was before: a field is still to be filled in.</>;
  if (refused && !refused.every(isStillToGive))
    return (
      <>
        {template ? 'This is how it was before. It is not laid anew' : 'It is not laid'}: step 4 says what
        stands against it.
      </>
    );
  if (!template)
    return flat.value.busy ? (
      <>Laying it flat…</>
    ) : (
      <>Type the vessel’s readings, and its template is drawn here.</>
    );
  const { units } = bench.value;
  const size = `${measuredLength(template.width, units)} by ${measuredLength(template.height, units)}`;
  const shape =
    template.shape === 'sector' ? `part of a ring, ${template.sweepDeg.toFixed(2)}° of it` : template.shape;
  return (
    <>
      Cut piece {size}: {shape}.
    </>
  );
}

// The window on the flat drawing: what of it is seen, where, and what is measured on it; drawn again whenever that changes.
import { type ReadonlySignal, type Signal, useComputed, useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { bench, flat, flatLaid, followed, selected, shownPlace, trueWithin, wentTo } from '../store.ts';
import { useEffectNow } from './effect-now.ts';
import { drawSheet, type Measured } from './flat-ink.ts';
import { type LaidOut, laidOut, placeOnSheet } from './laid-out.ts';
import { dragged } from './motif-drag.ts';
import { markRedraw } from './redraw-mark.ts';
import { centred, fitting, type SheetView } from './sheet-view.ts';
import { type SizedCanvas, useSizedCanvas } from './sized-canvas.ts';
import { sprayAround, spraysShown } from './sprays-shown.ts';

/** What no eye finds, in dots of the screen. */
const halfADot = 0.5;

/** The least scale at which a finding that is gone to is seen, px to the mm. */
const findingScale = 6;

export interface FlatWindow extends SizedCanvas {
  /** Nothing until there is a drawing and room for it. */
  readonly view: Signal<SheetView | undefined>;
  readonly laid: ReadonlySignal<LaidOut | undefined>;
  /** Keys of the layers that are not shown. */
  readonly hidden: Signal<ReadonlySet<string>>;
  readonly measuring: Signal<boolean>;
  readonly measured: Signal<Measured>;
  readonly showWhole: () => void;
}

/** Room above and below the pieces for their ticks and the words beside them, more than a window leaves by itself, mm. */
const marks = 3;

export function useFlatWindow(): FlatWindow {
  const sized = useSizedCanvas();
  const view = useSignal<SheetView | undefined>(undefined);
  const hidden = useSignal<ReadonlySet<string>>(new Set());
  const measuring = useSignal(false);
  const measured = useSignal<Measured>({});
  const laid = useComputed(() => {
    if (followed.value) return laidOut(followed.value.view, followed.value.art);
    return flatLaid.value && laidOut(flatLaid.value.view);
  });
  const showWhole = () => {
    if (!laid.value || sized.size.value.width === 0) return;
    const { box } = laid.value;
    const shown = { ...box, minY: box.minY - marks, maxY: box.maxY + marks };
    view.value = fitting(shown, sized.size.value);
  };
  const open = { ...sized, view, laid, hidden, measuring, measured, showWhole };
  useWholeShown(open);
  useGoingTo(open);
  useDrawing(open);
  return open;
}

/** A new outline or a new window shows the whole again; a pattern that changes within it leaves the view alone. */
function useWholeShown({ laid, size, showWhole }: FlatWindow): void {
  const fitKey = useComputed(() => JSON.stringify(laid.value?.box));
  useEffectNow(() => {
    void fitKey.value;
    void size.value;
    showWhole();
    return undefined;
  });
}

/**
 * Goes to the finding that is selected, once, as soon as there is a view: it may have been selected from elsewhere, and later
 * changes leave the view alone.
 */
function useGoingTo({ laid, size, view }: FlatWindow): void {
  useEffectNow(() => {
    const [finding, now] = [selected.value, view.value];
    if (finding?.where.along === undefined || finding === wentTo.peek() || !laid.value || !now)
      return undefined;
    wentTo.value = finding;
    const { turn = 0.5, along } = finding.where;
    const place = placeOnSheet(laid.value, { turn, along });
    if (place) view.value = centred(now, place, size.peek(), findingScale);
    return undefined;
  });
}

function useDrawing({ canvas, size, view, laid, hidden, measured }: FlatWindow): void {
  const units = useComputed(() => bench.value.units);
  /** The change that was drawn last, by when it was made. */
  const drawnOf = useRef<number | undefined>(undefined);
  useEffectNow(() => {
    const { current } = canvas;
    if (!current || !laid.value || !view.value) return undefined;
    const asked = {
      laid: laid.value,
      view: view.value,
      size: size.value,
      hidden: hidden.value,
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
}

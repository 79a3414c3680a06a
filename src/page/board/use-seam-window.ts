// Which part of the seam is shown and how: the place along the wall, the zoom, and whether the ends are held apart.
import { useComputed, useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { endsAtSeam } from '../../job/view/flat-ends.ts';
import { bench, flat, shownPlace } from '../store.ts';
import { type Keys, zoomKeys } from './key-hands.ts';
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

export type SeamWindow = ReturnType<typeof useSeamWindow>;

/** The window onto the seam, drawn on its canvas whenever what it shows changes; with the hands and keys that move it. */
export function useSeamWindow() {
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
  const goTo = (edge: 'from' | 'to') => {
    asked.value = band.value?.[edge];
  };
  const fingers = useRef<Fingers>(new Map());
  const hands = pointerHands(fingers.current, {
    pan: (_, dy) => move(dy),
    zoom: zoomBy,
    tap: () => undefined,
    hover: () => undefined,
  });
  const keys: Keys = { ArrowUp: () => move(step), ArrowDown: () => move(-step), ...zoomKeys(zoomBy) };
  return { canvas, along, ends, isApart, zoomBy, goTo, hands, keys };
}

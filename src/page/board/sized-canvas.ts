// A canvas that knows how large it is shown.
import { type Signal, useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Size } from './sheet-view.ts';

export interface SizedCanvas {
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  /** px on the screen; 0 x 0 until it is shown. */
  readonly size: Signal<Size>;
}

/** A canvas to be given as `ref`, and its size, which follows the window. */
export function useSizedCanvas(): SizedCanvas {
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = useSignal<Size>({ width: 0, height: 0 });
  useEffect(() => {
    const { current } = canvas;
    if (!current) return undefined;
    const watch = new ResizeObserver(() => {
      size.value = { width: current.clientWidth, height: current.clientHeight };
    });
    watch.observe(current);
    return () => watch.disconnect();
  }, [size]);
  return { canvas, size };
}

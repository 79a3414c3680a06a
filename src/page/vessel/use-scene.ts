// The 3D scene of a vessel on its canvas: opened once, shown anew with every vessel, drawn again whenever what is seen changes.
import { type Signal, useSignal, useSignalEffect } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { dragged } from '../board/motif-drag.ts';
import { markRedraw } from '../board/redraw-mark.ts';
import type { SolidSeen } from '../model/messages.ts';
import { shownPlace, takingUp } from '../store.ts';
import { looks, side } from './looks.ts';
import type { VesselScene } from './scene.ts';

export interface OpenScene {
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  /** Nothing until the browser has opened it. */
  readonly scene: Signal<VesselScene | undefined>;
  /** Whether the vessel stands there. */
  readonly isShown: Signal<boolean>;
  /** How far a turning picture is; while one is made, nothing else is drawn. */
  readonly turning: Signal<number | undefined>;
  readonly drawAgain: () => void;
}

/** Asked of a canvas of its own, for the library complains aloud where there is none. */
const hasWebGl = (): boolean => document.createElement('canvas').getContext('webgl2') !== null;

/** @param giveUp called where this browser draws no 3D, or stops doing so. */
export function useScene(solid: SolidSeen, giveUp: () => void): OpenScene {
  const canvas = useRef<HTMLCanvasElement>(null);
  const scene = useSignal<VesselScene | undefined>(undefined);
  const drawn = useSignal(0);
  const isShown = useSignal(false);
  const turning = useSignal<number | undefined>(undefined);
  const drawAgain = () => {
    drawn.value = drawn.peek() + 1;
  };
  useOpening(canvas, scene, { giveUp, drawAgain });
  useShowing(solid, scene, { giveUp, whenShown: () => (isShown.value = true), drawAgain });
  useDrawing(scene, { drawn, turning, drawAgain });
  return { canvas, scene, isShown, turning, drawAgain };
}

/** Opens the scene with the canvas, and ends it with it. */
function useOpening(
  canvas: RefObject<HTMLCanvasElement | null>,
  scene: Signal<VesselScene | undefined>,
  { giveUp, drawAgain }: { readonly giveUp: () => void; readonly drawAgain: () => void },
): void {
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
    const watch = new ResizeObserver(drawAgain);
    watch.observe(current);
    return () => {
      isOpen = false;
      watch.disconnect();
      current.removeEventListener('webglcontextlost', lost);
      takingUp.value = false;
      scene.peek()?.end();
    };
  }, []);
}

/** Puts each new vessel into the scene, in the colours it is seen in. */
function useShowing(
  solid: SolidSeen,
  scene: Signal<VesselScene | undefined>,
  {
    giveUp,
    whenShown,
    drawAgain,
  }: { readonly giveUp: () => void; readonly whenShown: () => void; readonly drawAgain: () => void },
): void {
  const shown = useSignal(solid);
  useEffect(() => {
    shown.value = solid;
  }, [solid, shown]);
  useSignalEffect(() => {
    const [now, vessel] = [scene.value, shown.value];
    if (!now) return;
    takingUp.value = true;
    const show = async () => {
      if (!(await now.show(vessel)) || scene.peek() !== now) return;
      now.dress(looks.peek());
      takingUp.value = false;
      whenShown();
      drawAgain();
    };
    show().catch(giveUp);
  });
}

/** Draws it whenever colours, the side it is seen from or what is marked on it change. */
function useDrawing(
  scene: Signal<VesselScene | undefined>,
  {
    drawn,
    turning,
    drawAgain,
  }: {
    readonly drawn: Signal<number>;
    readonly turning: Signal<number | undefined>;
    readonly drawAgain: () => void;
  },
): void {
  const dressed = useRef<number | undefined>(undefined);
  useSignalEffect(() => {
    dressed.current = performance.now();
    scene.value?.dress(looks.value);
    drawAgain();
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
}

/** On paper stands a copy: what is drawn in 3D is gone as soon as it has been shown. */
export function usePaperCopy({
  canvas,
  scene,
}: Pick<OpenScene, 'canvas' | 'scene'>): RefObject<HTMLCanvasElement | null> {
  const paper = useRef<HTMLCanvasElement>(null);
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
  return paper;
}

// Mouse, pen and touch on a drawing: drag to move, wheel or two fingers to zoom, a tap to point.
import type { Point } from './sheet-view.ts';

export interface Hands {
  readonly pan: (dx: number, dy: number) => void;
  readonly zoom: (by: number, at: Point) => void;
  readonly tap: (at: Point) => void;
  readonly hover: (at: Point | undefined) => void;
  /** Takes hold of what lies under the pointer, to be moved by it; undefined where nothing can be. */
  readonly grab?: (at: Point) => Held | undefined;
}

/** What a pointer has hold of. */
export interface Held {
  readonly to: (at: Point) => void;
  readonly end: () => void;
}

/** Less than this is a tap with an unsteady hand, px. */
const tapReach = 5;

const at = (event: MouseEvent): Point => {
  const box = (event.currentTarget as Element).getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
};

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** Handlers for an element, which keeps its own `down`. */
export function pointerHands(down: Fingers, { pan, zoom, tap, hover, grab }: Hands) {
  return {
    pan,
    on: {
      onPointerDown: (event: PointerEvent) => {
        (event.currentTarget as Element).setPointerCapture(event.pointerId);
        const held = down.size === 0 ? grab?.(at(event)) : undefined;
        down.set(event.pointerId, { start: at(event), now: at(event), ...(held ? { held } : {}) });
      },
      onPointerMove: (event: PointerEvent) => {
        const here = at(event);
        const finger = down.get(event.pointerId);
        if (!finger) return hover(here);
        if (finger.held && (finger.isDrag || apart(here, finger.start) > tapReach)) {
          finger.isDrag = true;
          return finger.held.to(here);
        }
        if (finger.held) return;
        const others = [...down.entries()].filter(([id]) => id !== event.pointerId);
        const [, other] = others[0] ?? [];
        if (other) {
          const middle = { x: (here.x + other.now.x) / 2, y: (here.y + other.now.y) / 2 };
          const before = apart(finger.now, other.now);
          if (before > 0) zoom(apart(here, other.now) / before, middle);
          pan((here.x - finger.now.x) / 2, (here.y - finger.now.y) / 2);
        } else if (apart(here, finger.start) > tapReach || finger.isDrag) {
          pan(here.x - finger.now.x, here.y - finger.now.y);
          finger.isDrag = true;
        } else return;
        finger.now = here;
      },
      onPointerUp: (event: PointerEvent) => {
        const finger = down.get(event.pointerId);
        down.delete(event.pointerId);
        if (finger?.isDrag) finger.held?.end();
        if (finger && !finger.isDrag && down.size === 0) tap(at(event));
      },
      onPointerCancel: (event: PointerEvent) => {
        down.get(event.pointerId)?.held?.end();
        down.delete(event.pointerId);
      },
      onPointerLeave: () => hover(undefined),
      onWheel: (event: WheelEvent) => {
        event.preventDefault();
        zoom(Math.exp(-event.deltaY / 400), at(event));
      },
    },
  };
}

/** The fingers that are down, by the pointer's own number. */
export type Fingers = Map<number, Finger>;

interface Finger {
  readonly start: Point;
  now: Point;
  isDrag?: boolean;
  readonly held?: Held;
}

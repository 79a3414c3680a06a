// Turning the finished vessel by hand and by keys, and marking places on it.
import type { Signal } from '@preact/signals';
import type { RefObject } from 'preact';
import { type Keys, zoomKeys } from '../board/key-hands.ts';
import { grabMotif } from '../board/motif-drag.ts';
import { nudgeKeys } from '../board/motif-nudge.ts';
import type { Hands } from '../board/pointer-hands.ts';
import type { SolidSeen } from '../model/messages.ts';
import { pinned, pointed } from '../store.ts';
import { front, nearerBy, side, turnedBy } from './looks.ts';
import type { VesselScene } from './scene.ts';

/** A step of the arrow keys: 10 degrees around, 5 degrees up. */
const step = { around: 1 / 36, up: Math.PI / 36 } as const;
/** A drag over this many px is one whole turn. */
const dragTurn = 700;

/** `around` by what goes by in front, to the left; on a vessel that stands on its lip turns run the other way. */
const turn = ({ standsOnLip }: SolidSeen, around: number, up: number) => {
  side.value = turnedBy(side.value, standsOnLip ? -around : around, up);
};

export const nearer = (factor: number) => {
  side.value = nearerBy(side.value, factor);
};

/** What is dragged goes with the hand: to the right, and what was further left comes to the front. */
export const handsOfSolid = (solid: SolidSeen, scene: Signal<VesselScene | undefined>): Hands => ({
  pan: (dx, dy) => turn(solid, -dx / dragTurn, dy / 200),
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

export const keysOfSolid = (
  solid: SolidSeen,
  scene: Signal<VesselScene | undefined>,
  canvas: RefObject<HTMLCanvasElement | null>,
): Keys => ({
  ArrowLeft: () => turn(solid, step.around, 0),
  ArrowRight: () => turn(solid, -step.around, 0),
  ArrowUp: () => turn(solid, 0, step.up),
  ArrowDown: () => turn(solid, 0, -step.up),
  ...zoomKeys(nearer),
  ...nudgeKeys(solid.standsOnLip),
  Enter: () => {
    const { clientWidth, clientHeight } = canvas.current ?? { clientWidth: 0, clientHeight: 0 };
    pinned.value = scene.value?.placeAt({ x: clientWidth / 2, y: clientHeight / 2 });
  },
  0: () => {
    side.value = front;
  },
});

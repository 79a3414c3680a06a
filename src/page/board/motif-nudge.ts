// Moving a motif or a text by keys on either view, as a hand would drag it: the one that lies at the marked place.
import { bench, pinned, pointed, said, type WallPlace } from '../store.ts';
import type { Keys } from './key-hands.ts';
import { dragged, type Grip, grabMotif } from './motif-drag.ts';

/** A key moves it by a degree around, or by a mm along the wall. */
const step = { turn: 1 / 360, along: 1 } as const;

interface Carried {
  readonly grip: Grip;
  /** What was marked when it was taken, and where its middle has been carried to. */
  readonly from: WallPlace;
  readonly middle: WallPlace;
  /** What the last key left marked, and the bench it left: once another stands there, it is taken anew. */
  readonly marked: WallPlace;
  readonly bench: unknown;
}

let carried: Carried | undefined;

function taken(): Pick<Carried, 'grip' | 'from' | 'middle'> | undefined {
  const from = pinned.peek();
  if (carried && carried.marked === from && carried.bench === bench.peek()) return carried;
  const grip = grabMotif(from);
  return grip && from && { grip, from, middle: grip.at };
}

function nudge(turns: number, mm: number): void {
  const held = taken();
  if (!held) {
    said.value = 'No motif is marked: bring one to the middle and press Enter.';
    return;
  }
  const { grip, from, middle } = held;
  grip.to({
    turn: from.turn + middle.turn - grip.at.turn + turns,
    along: from.along + middle.along - grip.at.along + mm,
  });
  const marked = dragged.peek()?.at ?? middle;
  pinned.value = marked;
  pointed.value = undefined;
  carried = { grip, from, middle: marked, marked, bench: bench.peek() };
}

/** `isTurnedOver`: on a vessel that stands on its lip both ways run the other way. */
export function nudgeKeys(isTurnedOver = false): Keys {
  const way = isTurnedOver ? -1 : 1;
  return {
    'Shift ArrowLeft': () => nudge(-way * step.turn, 0),
    'Shift ArrowRight': () => nudge(way * step.turn, 0),
    'Shift ArrowUp': () => nudge(0, way * step.along),
    'Shift ArrowDown': () => nudge(0, -way * step.along),
  };
}

/** The key is let go: its limits are seen no longer. */
export function letGo(): void {
  if (carried && dragged.peek()) carried.grip.end();
}

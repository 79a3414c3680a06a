// What hands and keys do on the flat drawing: move it, zoom, measure, mark a place, move a motif.
import { pinned, pointed } from '../store.ts';
import { type Keys, zoomKeys } from './key-hands.ts';
import { placeOnWall, placePastEdges } from './laid-out.ts';
import { grabMotif } from './motif-drag.ts';
import { nudgeKeys } from './motif-nudge.ts';
import type { Hands, Held } from './pointer-hands.ts';
import { onSheet, type Point, panned, zoomed } from './sheet-view.ts';
import type { FlatWindow } from './use-flat-window.ts';

/** A step of the arrow keys, px. */
const step = 40;

const pan = ({ view }: FlatWindow, dx: number, dy: number): void => {
  if (view.value) view.value = panned(view.value, dx, dy);
};

const zoom = ({ view }: FlatWindow, by: number, at: Point): void => {
  if (view.value) view.value = zoomed(view.value, by, at);
};

const middle = ({ size }: FlatWindow): Point => ({ x: size.value.width / 2, y: size.value.height / 2 });

/** Zooms about the middle of the window. */
export const zoomBy = (open: FlatWindow, by: number): void => zoom(open, by, middle(open));

export function toggleMeasure({ measuring, measured }: FlatWindow): void {
  measuring.value = !measuring.value;
  measured.value = {};
}

const placeUnder = ({ view, laid }: FlatWindow, at: Point) =>
  view.value && laid.value && placeOnWall(laid.value, onSheet(view.value, at));

/** The first place that is pointed at, then the second; another begins anew. */
function measureAt({ view, measured }: FlatWindow, at: Point): void {
  if (!view.value) return;
  const place = onSheet(view.value, at);
  const { from, to } = measured.value;
  measured.value = from && !to ? { from, to: place } : { from: place };
}

function tap(open: FlatWindow, at: Point): void {
  if (open.measuring.value) measureAt(open, at);
  else if (open.view.value && open.laid.value) pinned.value = placeUnder(open, at);
}

function grab(open: FlatWindow, at: Point): Held | undefined {
  const { measuring, view, laid } = open;
  if (measuring.value || !view.value || !laid.value) return undefined;
  const grip = grabMotif(placeUnder(open, at));
  return (
    grip && {
      to: (now) => {
        const place = laid.value && view.value && placePastEdges(laid.value, onSheet(view.value, now));
        if (place) grip.to(place);
      },
      end: grip.end,
    }
  );
}

export const handsOfFlat = (open: FlatWindow): Hands => ({
  pan: (dx, dy) => pan(open, dx, dy),
  zoom: (by, at) => zoom(open, by, at),
  tap: (at) => tap(open, at),
  grab: (at) => grab(open, at),
  hover: (at) => {
    if (open.view.value && open.laid.value) pointed.value = at && placeUnder(open, at);
  },
});

export const keysOfFlat = (open: FlatWindow): Keys => ({
  ArrowLeft: () => pan(open, step, 0),
  ArrowRight: () => pan(open, -step, 0),
  ArrowUp: () => pan(open, 0, step),
  ArrowDown: () => pan(open, 0, -step),
  ...zoomKeys((by) => zoomBy(open, by)),
  ...nudgeKeys(),
  0: open.showWhole,
  m: () => toggleMeasure(open),
  Enter: () => tap(open, middle(open)),
});

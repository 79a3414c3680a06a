// Where the flat sheet lies under the window it is seen through: pan and zoom as plain numbers.

export interface SheetView {
  /** Screen px to the mm. */
  readonly scale: number;
  /** The sheet's origin on the screen, px. */
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Closest and furthest that is of use: a blade's width fills the window, or a metre of film does. */
const scales = { least: 0.2, most: 400 } as const;

/** Room that rulers take at the left and the top, px. */
export const rulerWidth = 26;

export const onScreen = (view: SheetView, { x, y }: Point): Point => ({
  x: view.x + x * view.scale,
  y: view.y + y * view.scale,
});

export const onSheet = (view: SheetView, { x, y }: Point): Point => ({
  x: (x - view.x) / view.scale,
  y: (y - view.y) / view.scale,
});

/** A view that shows a whole box, with a little room around it. */
export function fitting(box: Box, { width, height }: Size): SheetView {
  const room = 16;
  const [across, up] = [width - rulerWidth - 2 * room, height - rulerWidth - 2 * room];
  const scale = Math.max(
    scales.least,
    Math.min(across / (box.maxX - box.minX), up / (box.maxY - box.minY), scales.most),
  );
  return {
    scale,
    x: rulerWidth + room + across / 2 - ((box.minX + box.maxX) / 2) * scale,
    y: rulerWidth + room + up / 2 - ((box.minY + box.maxY) / 2) * scale,
  };
}

/** The view after zooming by a factor, with the place under `at` kept where it is. */
export function zoomed(view: SheetView, by: number, at: Point): SheetView {
  const scale = Math.min(scales.most, Math.max(scales.least, view.scale * by));
  const factor = scale / view.scale;
  return { scale, x: at.x - (at.x - view.x) * factor, y: at.y - (at.y - view.y) * factor };
}

export const panned = (view: SheetView, dx: number, dy: number): SheetView => ({
  ...view,
  x: view.x + dx,
  y: view.y + dy,
});

/** A view with a place of the sheet in its middle, no further away than `least`. */
export function centred(view: SheetView, place: Point, { width, height }: Size, least: number): SheetView {
  const scale = Math.max(view.scale, least);
  return {
    scale,
    x: (width + rulerWidth) / 2 - place.x * scale,
    y: (height + rulerWidth) / 2 - place.y * scale,
  };
}

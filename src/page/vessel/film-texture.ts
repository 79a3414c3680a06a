// The flat drawing's film on its ground, drawn on a canvas once for the sheet to be covered with.
import type { VesselView } from '../../job/vessel-view.ts';
import type { Looks } from './looks.ts';

/** The longer side of the canvas, px: every WebGL 2 screen takes 2048, nearly all take this. */
const longest = 4096;

/** The part of the cut file that the sheet was, over the coat or the bare vessel. `most` is what the screen takes, px. */
export function filmCanvas(
  { sheet, layers, coats }: VesselView,
  looks: Looks,
  most: number,
): HTMLCanvasElement {
  const { x, y, width, height } = sheet.box;
  const canvas = document.createElement('canvas');
  const scale = Math.min(longest, most) / Math.max(width, height);
  canvas.width = Math.ceil(width * scale);
  canvas.height = Math.ceil(height * scale);
  const ink = canvas.getContext('2d');
  if (!ink) return canvas;
  ink.fillStyle = looks.blank;
  ink.fillRect(0, 0, canvas.width, canvas.height);
  ink.setTransform(canvas.width / width, 0, 0, canvas.height / height, 0, 0);
  ink.translate(-x, -y);
  ink.fillStyle = looks.coat;
  for (const { ground } of coats) {
    ink.beginPath();
    for (const point of ground) ink.lineTo(point.x, point.y);
    ink.fill();
  }
  for (const { name, colour, pieces } of layers) {
    ink.fillStyle = looks.films[name] ?? colour;
    for (const d of pieces) ink.fill(new Path2D(d), 'evenodd');
  }
  return canvas;
}

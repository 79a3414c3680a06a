// Where each layer of film covers the sheet, drawn once for a job: colours then change without drawing it again.
import type { VesselView } from '../../job/vessel-view.ts';

/** The longer side of a canvas, px: every WebGL 2 screen takes 2048, nearly all take this. */
const longest = 4096;

/** A canvas holds three layers, one in each of its colours. */
export const channels = ['r', 'g', 'b'] as const;
export type Channel = (typeof channels)[number];
const inks: Readonly<Record<Channel, string>> = { r: '#f00', g: '#0f0', b: '#00f' };

/** The cover of all films, three to a canvas, in their order. `most` is what the screen takes, px. */
export function coverCanvases(
  sheet: VesselView['sheet'],
  layers: readonly { readonly pieces: readonly string[] }[],
  most: number,
): readonly HTMLCanvasElement[] {
  const { x, y, width, height } = sheet.box;
  const scale = Math.min(longest, most) / Math.max(width, height);
  const canvases: HTMLCanvasElement[] = [];
  for (let first = 0; first < layers.length; first += channels.length) {
    const canvas = document.createElement('canvas');
    canvas.width = Math.ceil(width * scale);
    canvas.height = Math.ceil(height * scale);
    canvases.push(canvas);
    const ink = canvas.getContext('2d');
    if (!ink) continue;
    ink.fillStyle = '#000';
    ink.fillRect(0, 0, canvas.width, canvas.height);
    ink.setTransform(canvas.width / width, 0, 0, canvas.height / height, 0, 0);
    ink.translate(-x, -y);
    ink.globalCompositeOperation = 'lighter';
    for (const [i, channel] of channels.entries()) {
      ink.fillStyle = inks[channel];
      // One fill a piece: pieces of a layer nowhere overlap, and one path of them all takes longer.
      for (const d of layers[first + i]?.pieces ?? []) ink.fill(new Path2D(d), 'evenodd');
    }
  }
  return canvases;
}

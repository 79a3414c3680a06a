// Where each layer of film covers the sheet, drawn once for a job, in the engine's thread: filling so many areas would hold up the page's own.
import type { VesselView } from '../../job/view/vessel-view.ts';
import { type Channel, channels } from '../model/cover-channels.ts';
import type { FilmCover } from '../model/messages.ts';

/** The longer side of a cover, px: every WebGL 2 screen takes 2048, nearly all take this. */
const longest = 4096;

const inks: Readonly<Record<Channel, string>> = { r: '#f00', g: '#0f0', b: '#00f' };

/** Rows of a strip, px: what a screen takes up in some 5 ms where it has no graphics card, and in 20 where its processor is shared. */
const stripRows = 64;

/** The covers of all films, three to one, in their order; undefined where this browser draws in no thread but the page's. */
export async function filmCovers({
  sheet,
  layers,
  mask,
}: VesselView): Promise<readonly FilmCover[] | undefined> {
  if (typeof OffscreenCanvas === 'undefined') return undefined;
  const { x, y, width, height } = sheet.box;
  const scale = longest / Math.max(width, height);
  const films = mask ? [...layers, mask] : layers;
  const covers: FilmCover[] = [];
  for (let first = 0; first < films.length; first += channels.length) {
    const canvas = new OffscreenCanvas(Math.ceil(width * scale), Math.ceil(height * scale));
    const ink = canvas.getContext('2d', { alpha: false });
    if (!ink) return undefined;
    ink.fillStyle = '#000';
    ink.fillRect(0, 0, canvas.width, canvas.height);
    ink.setTransform(canvas.width / width, 0, 0, canvas.height / height, 0, 0);
    ink.translate(-x, -y);
    ink.globalCompositeOperation = 'lighter';
    for (const [i, channel] of channels.entries()) {
      ink.fillStyle = inks[channel];
      // One fill a piece: pieces of a layer nowhere overlap, and one path of them all takes longer.
      for (const d of films[first + i]?.pieces ?? []) ink.fill(new Path2D(d), 'evenodd');
    }
    covers.push(await inStrips(canvas));
  }
  return covers;
}

async function inStrips(canvas: OffscreenCanvas): Promise<FilmCover> {
  const { width, height } = canvas;
  const tops = Array.from({ length: Math.ceil(height / stripRows) }, (_, i) => i * stripRows);
  const strips = await Promise.all(
    tops.map((top) => createImageBitmap(canvas, 0, top, width, Math.min(stripRows, height - top))),
  );
  return { width, height, strips };
}

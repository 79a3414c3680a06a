// A tile as read, written back as plain paths, and compared with the file it came from pixel by pixel.
import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';
import type { Tile } from '../../src/artwork/tile.ts';
import { writePathData } from '../../src/drawing/path-data.ts';

/** Steps per mm of the paths written here: far finer than a pixel. */
const steps = 1e5;

/** An SVG text of the tile's layers in mm, each in its colour, cut by the tile's own edges. */
export function tileAsSvg({ width, height, layers }: Tile): string {
  const groups = layers.map(({ colour, shapes }) => {
    const paths = shapes.map(({ contours }) => `<path d="${writePathData(contours, steps)}"/>`);
    return `<g fill="${colour}" fill-rule="evenodd">${paths.join('')}</g>`;
  });
  const size = `width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size}>${groups.join('')}</svg>`;
}

/** A ground no tile uses, so that white film is seen as well as black. */
const ground = [230, 170, 255] as const;

function onGround(png: Uint8Array): PNG {
  const picture = PNG.sync.read(Buffer.from(png));
  const { data } = picture;
  for (let i = 0; i < data.length; i += 4) {
    const alpha = (data[i + 3] ?? 0) / 255;
    for (const [channel, under] of ground.entries())
      data[i + channel] = Math.round((data[i + channel] ?? 0) * alpha + under * (1 - alpha));
    data[i + 3] = 255;
  }
  return picture;
}

/** Share of the pixels of two pictures that differ; all of them where the sizes do. */
export function shareThatDiffers(one: Uint8Array | undefined, other: Uint8Array | undefined): number {
  if (one === undefined || other === undefined) return 1;
  const [a, b] = [onGround(one), onGround(other)];
  if (a.width !== b.width || a.height !== b.height) return 1;
  return pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.1 }) / (a.width * a.height);
}
